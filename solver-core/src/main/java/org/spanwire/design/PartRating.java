package org.spanwire.design;

import java.util.Objects;
import java.util.OptionalDouble;

/**
 * What a part bears, as its maker or a bench run says.
 *
 * @param heatWatts heat in watts that it sheds without end, if stated
 * @param peakVolts peak voltage across it, if stated
 */
public record PartRating(OptionalDouble heatWatts, OptionalDouble peakVolts) {

  /** Name of the transformers of the feed chain. */
  public static final String TRANSFORMER = "transformer";

  /** Name of the lines of the feed chain. */
  public static final String LINE = "line";

  /** Name of the choke at the top of the feed line. */
  public static final String CHOKE = "choke";

  /** Name of the terminals at the feedpoint. */
  public static final String FEEDPOINT = "feedpoint";

  /** Name of the insulators at the free ends of the wires. */
  public static final String ENDS = "ends";

  /** Checks the ranges. */
  public PartRating {
    Objects.requireNonNull(heatWatts, "heatWatts");
    Objects.requireNonNull(peakVolts, "peakVolts");
    if (heatWatts.isEmpty() && peakVolts.isEmpty()) {
      throw new IllegalArgumentException("a rating needs heat or voltage, such as {heat: 10 W}");
    }
  }
}
