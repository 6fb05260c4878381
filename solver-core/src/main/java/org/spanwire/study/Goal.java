package org.spanwire.study;

import java.math.BigDecimal;
import java.util.Objects;
import java.util.OptionalDouble;
import java.util.function.ToDoubleFunction;
import org.spanwire.Solution;

/**
 * A quantity that a design is made good in, at its worst over bands and installations.
 *
 * @param measure what it is
 * @param elevationDegrees for gain: the elevation, empty for the largest gain of all
 */
public record Goal(Measure measure, OptionalDouble elevationDegrees) {

  /** What a goal looks at. */
  public enum Measure {
    /** SWR at the transmitter before any tuner, the larger the worse. */
    WORST_SWR("worst-swr", "", false),
    /** Gain in dBi, the largest over azimuth, the smaller the worse. */
    GAIN("gain", "dBi", true),
    /** Heat of the chokes at the top of the feed line at the design's power. */
    CHOKE_WATTS("choke-watts", "W", false);

    private final String label;
    private final String unit;
    private final boolean rising;

    Measure(String label, String unit, boolean rising) {
      this.label = label;
      this.unit = unit;
      this.rising = rising;
    }

    /** The word that asks for it. */
    public String label() {
      return label;
    }

    /** Its unit; empty for a ratio. */
    public String unit() {
      return unit;
    }

    /** Whether more of it is better. */
    public boolean moreIsBetter() {
      return rising;
    }
  }

  /** Checks that both are there. */
  public Goal {
    Objects.requireNonNull(measure, "measure");
    Objects.requireNonNull(elevationDegrees, "elevationDegrees");
  }

  /** A goal without an angle. */
  public static Goal of(Measure measure) {
    return new Goal(measure, OptionalDouble.empty());
  }

  /** The word that asks for it, with its angle. */
  public String label() {
    if (elevationDegrees.isEmpty()) {
      return measure.label();
    }
    BigDecimal degrees = BigDecimal.valueOf(elevationDegrees.getAsDouble()).stripTrailingZeros();
    return measure.label() + "@" + degrees.toPlainString() + "deg";
  }

  /** Less is better: the quantity, or its negative. */
  double cost(double value) {
    return measure.moreIsBetter() ? -value : value;
  }

  ToDoubleFunction<Solution> decibels() {
    return solution ->
        elevationDegrees.isPresent()
            ? solution.gainAtElevation(elevationDegrees.getAsDouble()).gainDbi()
            : solution.peakGain().gainDbi();
  }

  /**
   * The quantity at a frequency.
   *
   * @param number of the goal's ratio in decibels
   */
  double value(Look look, int range, double frequencyHz, int number) {
    return switch (measure) {
      case WORST_SWR -> look.swr(range, frequencyHz, Plane.TRANSMITTER);
      case GAIN -> look.decibels(range, frequencyHz, number);
      case CHOKE_WATTS -> look.chokeWatts(range, frequencyHz);
    };
  }
}
