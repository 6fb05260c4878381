package org.spanwire.study;

import java.util.List;
import java.util.Optional;
import org.spanwire.unit.Quantity;

/**
 * What a measured reflection coefficient says of a design's parameters. Misfits are root mean
 * square differences of reflection coefficients at the measuring instrument's reference.
 *
 * @param estimates one per parameter, in the order asked for
 * @param correlations of the estimates' errors, in that order; NaN where they cannot be told
 * @param nominalMisfit of the design as it is
 * @param misfit of the design with the estimates, from solutions
 * @param causes every parameter alone, the others as they are; the likeliest first
 * @param reading the reading that would part the two likeliest causes best, if there are two
 * @param frequencies number of frequencies used
 * @param solves number of times the antenna was solved
 * @param modelError largest error found of a reflection coefficient of the model that was fitted,
 *     against solutions that it had not seen
 */
public record FitResult(
    List<Estimate> estimates,
    double[][] correlations,
    double nominalMisfit,
    double misfit,
    List<Cause> causes,
    Optional<Reading> reading,
    int frequencies,
    int solves,
    double modelError) {

  /** Takes copies. */
  public FitResult {
    estimates = List.copyOf(estimates);
    causes = List.copyOf(causes);
    correlations = copy(correlations);
  }

  /** A fresh copy. */
  @Override
  public double[][] correlations() {
    return copy(correlations);
  }

  private static double[][] copy(double[][] matrix) {
    double[][] copy = matrix.clone();
    for (int i = 0; i < copy.length; i++) {
      copy[i] = copy[i].clone();
    }
    return copy;
  }

  /**
   * An estimated parameter.
   *
   * @param parameter its name
   * @param nominal value in the design
   * @param value estimate
   * @param standardError in SI units, from the misfit; NaN where the readings do not tell
   * @param low lower end of the 95 % confidence interval in SI units, NaN likewise
   * @param high upper end
   * @param atBound whether it lies at an end of the range that was looked at
   */
  public record Estimate(
      String parameter,
      Quantity nominal,
      Quantity value,
      double standardError,
      double low,
      double high,
      boolean atBound) {}

  /**
   * One parameter as the only cause.
   *
   * @param parameter its name
   * @param value the value that explains most
   * @param misfit what remains
   * @param explained share of the design's sum of squared differences that it explains, 0 to 1
   * @param enough whether what remains is no more than 1.5 times what remains with all parameters
   *     fitted
   */
  public record Cause(
      String parameter, Quantity value, double misfit, double explained, boolean enough) {}

  /**
   * A further reading.
   *
   * @param frequencyHz where, in a band of the design
   * @param firstSwr SWR there by the likeliest cause, at the measuring plane
   * @param secondSwr SWR there by the second
   * @param difference of the reflection coefficients
   */
  public record Reading(double frequencyHz, double firstSwr, double secondSwr, double difference) {}
}
