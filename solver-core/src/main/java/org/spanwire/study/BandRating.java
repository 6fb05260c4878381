package org.spanwire.study;

import java.util.Comparator;
import java.util.List;
import java.util.OptionalDouble;
import java.util.function.Function;
import org.spanwire.circuit.bench.OperatingMode;
import org.spanwire.practice.Ratings;

/**
 * What the parts bear on a band at the transmitter's power, and the power at which each reaches its
 * limit.
 *
 * @param band name of the band
 * @param loads the parts' loads, each the largest over the frequencies looked at
 * @param limits the powers at which parts reach their limits, each the smallest over the
 *     frequencies; in no order that means anything
 */
public record BandRating(String band, List<Load> loads, List<Limit> limits) {

  /**
   * The load of a part while a steady carrier of the transmitter's power is sent.
   *
   * @param part its name
   * @param volts rms voltage across it, or of a wire against ground, where it means something
   * @param amperes rms current through it
   * @param watts heat in it
   * @param wattsPerMetre heat of a wire where it is largest
   */
  public record Load(
      String part,
      OptionalDouble volts,
      OptionalDouble amperes,
      OptionalDouble watts,
      OptionalDouble wattsPerMetre) {

    /** Peak voltage. */
    public OptionalDouble peakVolts() {
      return volts.isPresent()
          ? OptionalDouble.of(Math.sqrt(2) * volts.getAsDouble())
          : OptionalDouble.empty();
    }
  }

  /** Why a part bears no more. */
  public enum Cause {
    /** It grows too hot: average power counts. */
    HEAT("heat"),
    /** Its rated voltage is reached: peak envelope power counts. */
    VOLTAGE("voltage"),
    /** The air around a wire discharges: peak envelope power counts. */
    CORONA("corona");

    private final String label;

    Cause(String label) {
      this.label = label;
    }

    /** What the trade calls it. */
    public String label() {
      return label;
    }
  }

  /**
   * A power that a part bears.
   *
   * @param part its name
   * @param cause why no more
   * @param watts power of the transmitter in watts, as through a tuner: average power for heat,
   *     peak envelope power otherwise
   * @param frequencyHz where in the band it is lowest
   */
  public record Limit(String part, Cause cause, double watts, double frequencyHz) {

    /** Peak envelope power in watts that it bears in a mode, sent without pause. */
    public double envelopeWatts(OperatingMode mode) {
      return cause == Cause.HEAT ? watts / mode.duty() : watts;
    }
  }

  /** Copies the lists. */
  public BandRating {
    loads = List.copyOf(loads);
    limits = List.copyOf(limits);
  }

  /** The lowest limit in a mode. */
  public Limit lowest(OperatingMode mode) {
    return limits.stream()
        .min(Comparator.comparingDouble(limit -> limit.envelopeWatts(mode)))
        .orElseThrow();
  }

  /** The largest of a quantity over places of a wire. */
  static double largest(List<Ratings.Place> places, Function<Ratings.Place, Double> quantity) {
    return places.stream().mapToDouble(quantity::apply).max().orElseThrow();
  }
}
