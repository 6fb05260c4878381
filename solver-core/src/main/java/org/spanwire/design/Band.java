package org.spanwire.design;

import java.util.Objects;

/**
 * A frequency band.
 *
 * @param name as the trade calls it: "40 m"
 * @param lowHz lower edge in hertz, positive
 * @param highHz upper edge in hertz, above the lower
 */
public record Band(String name, double lowHz, double highHz) {

  /** Checks the edges. */
  public Band {
    Objects.requireNonNull(name, "name");
    if (!(lowHz > 0) || !(highHz > lowHz) || Double.isInfinite(highHz)) {
      throw new IllegalArgumentException(
          "band "
              + name
              + " runs from "
              + lowHz
              + " Hz to "
              + highHz
              + " Hz; expected two positive edges, the lower one first");
    }
  }

  /** The middle between the edges in hertz. */
  public double middleHz() {
    return 0.5 * (lowHz + highHz);
  }

  /** Whether a frequency in hertz lies in the band, edges included. */
  public boolean contains(double frequencyHz) {
    return frequencyHz >= lowHz && frequencyHz <= highHz;
  }
}
