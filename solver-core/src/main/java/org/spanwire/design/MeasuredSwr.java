package org.spanwire.design;

import java.util.Comparator;
import java.util.List;
import java.util.Objects;
import java.util.Optional;
import org.spanwire.circuit.TransmissionLine;

/**
 * SWR as read at an installation, its first feed alone.
 *
 * @param title what was measured
 * @param plane where along the feed chain
 * @param referenceOhm impedance that the instrument refers SWR to, in ohms, positive
 * @param line what lay between that place and the instrument and is no part of the design
 * @param readings at least one
 */
public record MeasuredSwr(
    String title,
    Plane plane,
    double referenceOhm,
    Optional<TransmissionLine> line,
    List<Reading> readings) {

  /** Standard error of an SWR over itself where none is stated; common practice, no source. */
  public static final double USUAL_ERROR = 0.05;

  private static final double LARGEST = 1000;

  /** Where along the feed chain SWR was read, looking towards the antenna. */
  public enum Plane {
    /** At the antenna's terminals. */
    FEEDPOINT,
    /** At the transmitter's side of the transformer. */
    TRANSFORMER_INPUT,
    /** At the transmitter's end of the chain. */
    TRANSMITTER
  }

  /**
   * One reading.
   *
   * @param frequencyHz frequency in hertz, positive
   * @param swr 1 to 1000
   * @param error standard error over the SWR, above 0, below 1
   */
  public record Reading(double frequencyHz, double swr, double error) {

    /** Checks the ranges. */
    public Reading {
      if (!(frequencyHz > 0) || Double.isInfinite(frequencyHz)) {
        throw new IllegalArgumentException(
            "frequency " + frequencyHz + " Hz must be positive and finite");
      }
      if (!(swr >= 1 && swr <= LARGEST)) {
        throw new IllegalArgumentException(
            "SWR " + swr + " must lie between 1 and " + (int) LARGEST);
      }
      if (!(error > 0 && error < 1)) {
        throw new IllegalArgumentException(
            "error " + error + " of an SWR must lie between 0 and 1, such as 5 %");
      }
    }
  }

  /** Takes a copy, rising in frequency. */
  public MeasuredSwr {
    Objects.requireNonNull(title, "title");
    Objects.requireNonNull(plane, "plane");
    Objects.requireNonNull(line, "line");
    readings = readings.stream().sorted(Comparator.comparingDouble(Reading::frequencyHz)).toList();
    if (!(referenceOhm > 0) || Double.isInfinite(referenceOhm)) {
      throw new IllegalArgumentException(
          "reference impedance " + referenceOhm + " ohm must be positive and finite");
    }
    if (readings.isEmpty()) {
      throw new IllegalArgumentException("no readings; add one such as {at: 7 MHz, swr: 1.8}");
    }
  }
}
