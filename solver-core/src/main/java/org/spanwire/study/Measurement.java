package org.spanwire.study;

import java.util.List;
import java.util.Objects;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.stream.IntStream;
import org.apache.commons.math3.complex.Complex;
import org.spanwire.circuit.Mismatch;
import org.spanwire.circuit.NetworkData;
import org.spanwire.circuit.TransmissionLine;
import org.spanwire.design.MeasuredSwr;

/**
 * What an instrument showed of an installation, at one plane of its feed chain: reflection
 * coefficients, or their magnitudes alone where only SWR was read.
 *
 * @param plane where
 * @param referenceOhm reference of the instrument in ohms
 * @param line between the plane and the instrument, where that is no part of the design
 * @param readings at least one, rising in frequency, all with phase or all without
 */
public record Measurement(
    Plane plane, double referenceOhm, Optional<TransmissionLine> line, List<Reading> readings) {

  /**
   * One reading.
   *
   * @param frequencyHz frequency in hertz, positive
   * @param reflection the reflection coefficient; its magnitude where the phase is not known
   * @param phase whether the phase is known
   * @param error standard error of the magnitude, if it is stated
   */
  public record Reading(
      double frequencyHz, Complex reflection, boolean phase, OptionalDouble error) {

    /** An SWR without phase. */
    static Reading of(MeasuredSwr.Reading swr) {
      double magnitude = (swr.swr() - 1) / (swr.swr() + 1);
      return new Reading(
          swr.frequencyHz(),
          new Complex(magnitude),
          false,
          OptionalDouble.of(magnitudeError(swr.error(), magnitude)));
    }

    /** The part of a reflection coefficient beside the reading that can be compared with it. */
    Complex difference(Complex modelled) {
      return (phase ? modelled : new Complex(modelled.abs())).subtract(reflection);
    }
  }

  /** Takes a copy. */
  public Measurement {
    Objects.requireNonNull(plane, "plane");
    Objects.requireNonNull(line, "line");
    readings = List.copyOf(readings);
    if (readings.isEmpty()) {
      throw new IllegalArgumentException("nothing was measured");
    }
    if (!(readings.get(0).frequencyHz() > 0)) {
      throw new IllegalArgumentException("the measured frequencies begin at 0 Hz; remove that row");
    }
    if (readings.stream().map(Reading::phase).distinct().count() > 1) {
      throw new IllegalArgumentException("readings with phase and without; expected one kind");
    }
  }

  /** A measured one-port, whose errors are not known. */
  public static Measurement of(NetworkData measured, Plane plane) {
    if (measured.ports() != 1) {
      throw new IllegalArgumentException(
          "the measured network has " + measured.ports() + " ports; expected 1");
    }
    List<Reading> readings =
        IntStream.range(0, measured.frequencies().length)
            .mapToObj(
                i ->
                    new Reading(
                        measured.frequencies()[i],
                        measured.sample(i).s(1, 1),
                        true,
                        OptionalDouble.empty()))
            .toList();
    double reference = measured.sample(0).reference(1).getReal();
    return new Measurement(plane, reference, Optional.empty(), readings);
  }

  /** SWR that was read. */
  public static Measurement of(MeasuredSwr swr) {
    return new Measurement(
        Plane.valueOf(swr.plane().name()),
        swr.referenceOhm(),
        swr.line(),
        swr.readings().stream().map(Reading::of).toList());
  }

  /** Whether phases are known. */
  public boolean phase() {
    return readings.get(0).phase();
  }

  /** Whether every reading states its error. */
  boolean statesErrors() {
    return readings.stream().allMatch(each -> each.error().isPresent());
  }

  /** Error of |Γ| for an error of the SWR, as a share of it: d|Γ| = (1 − |Γ|²)/2 dS/S. */
  static double magnitudeError(double share, double magnitude) {
    return share * (1 - magnitude * magnitude) / 2;
  }

  /** The mean error of the SWR read, as a share of it, where errors are stated. */
  public OptionalDouble swrError() {
    return statesErrors()
        ? readings.stream()
            .mapToDouble(
                each -> each.error().getAsDouble() / magnitudeError(1, each.reflection().abs()))
            .average()
        : OptionalDouble.empty();
  }

  /** Number of real numbers read. */
  int numbers() {
    return (phase() ? 2 : 1) * readings.size();
  }

  /** At most so many readings, thinned out evenly. */
  Measurement thinned(int most) {
    if (readings.size() <= most) {
      return this;
    }
    double step = (readings.size() - 1.0) / (most - 1);
    return new Measurement(
        plane,
        referenceOhm,
        line,
        IntStream.range(0, most).mapToObj(i -> readings.get((int) Math.round(i * step))).toList());
  }

  /** The reflection coefficient that the instrument would show. */
  Complex reflection(List<PlaneMismatch> planes, double frequencyHz) {
    Complex impedance =
        planes.stream()
            .filter(each -> each.plane() == plane)
            .findFirst()
            .orElseThrow(
                () -> new IllegalArgumentException("the chain has no plane " + plane.label()))
            .mismatch()
            .impedance();
    Complex seen = line.map(each -> each.stub(impedance).at(frequencyHz)).orElse(impedance);
    return Mismatch.of(seen, referenceOhm).reflection();
  }
}
