package org.spanwire.study;

import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;
import org.apache.commons.math3.complex.Complex;
import org.spanwire.unit.Quantity;

/**
 * What a measurement says of a design's parameters. Misfits are root mean square differences of
 * reflection coefficients at the measuring instrument's reference, of their magnitudes where only
 * SWR was read.
 *
 * @param estimates one per parameter, in the order asked for
 * @param correlations of the estimates' errors, in that order; NaN where they cannot be told
 * @param nominalMisfit of the design as it is
 * @param misfit of the design with the estimates, from solutions
 * @param overErrors root mean square of the differences over the readings' stated errors, with the
 *     estimates; empty where no errors are stated
 * @param asDesigned whether the design as it is fits as well as the readings can tell; never if
 *     nothing {@link #fits}
 * @param causes every parameter alone, the others as they are; the likeliest first
 * @param others values of all parameters that fit as well as the readings can tell, beside single
 *     causes or the estimates
 * @param reading the further reading on the design's bands that would part best what the readings
 *     leave open: two candidates that both fit, else the ends of the estimates' errors
 * @param comparisons the readings used, rising in frequency, beside what the design and the
 *     estimates would show
 * @param solves number of times the antenna was solved
 * @param modelError largest error found of a reflection coefficient of the model that was fitted,
 *     against solutions that it had not seen
 */
public record FitResult(
    List<Estimate> estimates,
    double[][] correlations,
    double nominalMisfit,
    double misfit,
    OptionalDouble overErrors,
    boolean asDesigned,
    List<Cause> causes,
    List<Candidate> others,
    Optional<Reading> reading,
    List<Comparison> comparisons,
    int solves,
    double modelError) {

  /** Times the readings' stated errors that a fit may be off by. */
  static final double MOST_OVER_ERRORS = 3;

  /** Takes copies. */
  public FitResult {
    estimates = List.copyOf(estimates);
    causes = List.copyOf(causes);
    others = List.copyOf(others);
    comparisons = List.copyOf(comparisons);
    correlations = copy(correlations);
  }

  /** Number of frequencies used. */
  public int frequencies() {
    return comparisons.size();
  }

  /** A fresh copy. */
  @Override
  public double[][] correlations() {
    return copy(correlations);
  }

  /**
   * Whether the estimates explain the readings to three times their errors, if these are stated.
   */
  public boolean fits() {
    return overErrors.isEmpty() || overErrors.getAsDouble() <= MOST_OVER_ERRORS;
  }

  private static double[][] copy(double[][] matrix) {
    double[][] copy = matrix.clone();
    for (int i = 0; i < copy.length; i++) {
      copy[i] = copy[i].clone();
    }
    return copy;
  }

  /**
   * A reading beside what the model says; SWR is infinite at total reflection.
   *
   * @param frequencyHz frequency in hertz
   * @param readSwr SWR that was read
   * @param designedSwr SWR of the design as it is, by the model that was fitted
   * @param estimatedSwr SWR with the estimates, from a solution
   */
  public record Comparison(
      double frequencyHz, double readSwr, double designedSwr, double estimatedSwr) {

    static Comparison of(Measurement.Reading reading, Complex designed, Complex estimated) {
      return new Comparison(
          reading.frequencyHz(), swr(reading.reflection()), swr(designed), swr(estimated));
    }

    private static double swr(Complex reflection) {
      double magnitude = reflection.abs();
      return magnitude >= 1 ? Double.POSITIVE_INFINITY : (1 + magnitude) / (1 - magnitude);
    }
  }

  /**
   * An estimated parameter.
   *
   * @param parameter its name
   * @param nominal value in the design
   * @param value estimate
   * @param standardError in SI units, from the misfit and the errors stated; NaN where the readings
   *     do not tell
   * @param low lower end of the 95 % confidence interval in SI units, no further than the range
   *     that was looked at, NaN likewise
   * @param high upper end
   * @param atBound whether it lies at an end of the range that was looked at
   * @param change what it means for the installation
   */
  public record Estimate(
      String parameter,
      Quantity nominal,
      Quantity value,
      double standardError,
      double low,
      double high,
      boolean atBound,
      PhysicalChange change) {

    /** Whether the design's value lies outside the confidence interval. */
    public boolean differs() {
      return nominal.value() < low || nominal.value() > high;
    }
  }

  /**
   * One parameter as the only cause.
   *
   * @param parameter its name
   * @param value the value that explains most
   * @param misfit what remains
   * @param explained share of the design's sum of squared differences that it explains, 0 to 1
   * @param enough whether what remains is no more than 1.5 times what remains with all parameters
   *     fitted, or 1.5 times the readings' stated errors if that is more; never if nothing {@link
   *     FitResult#fits}
   * @param change what it means for the installation
   */
  public record Cause(
      String parameter,
      Quantity value,
      double misfit,
      double explained,
      boolean enough,
      PhysicalChange change) {}

  /**
   * A parameter's value.
   *
   * @param parameter its name
   * @param value its value
   */
  public record Setting(String parameter, Quantity value) {}

  /**
   * Values that may be behind the readings.
   *
   * @param settings parameters that are not as designed
   */
  public record Candidate(List<Setting> settings) {

    /** Takes a copy. */
    public Candidate {
      settings = List.copyOf(settings);
    }
  }

  /**
   * A further reading.
   *
   * @param frequencyHz where, in a band of the design
   * @param alternatives whether first and second both fit; else they are the ends of the errors of
   *     the estimates
   * @param first the likelier one, if both fit
   * @param second the other
   * @param firstSwr SWR by the first, as the instrument would show it
   * @param secondSwr SWR by the second
   * @param difference of the reflection coefficients, of their magnitudes where only SWR is read
   * @param overError that difference over the error of a reading
   */
  public record Reading(
      double frequencyHz,
      boolean alternatives,
      Candidate first,
      Candidate second,
      double firstSwr,
      double secondSwr,
      double difference,
      double overError) {

    private static final double CLEAR = 3;

    /** Whether it would part them beyond the error of a reading. */
    public boolean parts() {
      return overError >= CLEAR;
    }
  }
}
