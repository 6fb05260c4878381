package org.spanwire.study;

/**
 * A range of frequencies.
 *
 * @param lowHz low end in hertz
 * @param highHz high end in hertz, not below the low end
 */
public record FrequencyRange(double lowHz, double highHz) {

  /** Checks the order. */
  public FrequencyRange {
    if (!(lowHz > 0 && highHz >= lowHz)) {
      throw new IllegalArgumentException(
          "frequency range " + lowHz + " to " + highHz + " Hz is no range");
    }
  }

  /** The middle in hertz. */
  public double middleHz() {
    return lowHz + (highHz - lowHz) / 2;
  }

  /** Refuses a frequency in hertz outside. */
  void check(double frequencyHz) {
    if (!(frequencyHz >= lowHz && frequencyHz <= highHz)) {
      throw new IllegalArgumentException(
          "frequency " + frequencyHz + " Hz must lie between " + lowHz + " and " + highHz + " Hz");
    }
  }

  /** True at exactly either end. */
  boolean isEdge(double frequencyHz) {
    return frequencyHz == lowHz || frequencyHz == highHz;
  }
}
