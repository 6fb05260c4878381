package org.spanwire.practice;

/**
 * Modes of operation and the share of the peak envelope power that they put out on average while
 * transmitting. Common practice, no source; a station's own figures go first.
 */
public enum Mode {
  /** Speech on single sideband, not compressed. */
  SSB("SSB speech", 0.2),
  /** Speech on single sideband, compressed. */
  SSB_COMPRESSED("SSB speech, compressed", 0.5),
  /** Morse code. */
  CW("CW", 0.4),
  /** Frequency modulation. */
  FM("FM", 1),
  /** Carrier without a break: data modes, and tuning up. */
  DATA("data", 1);

  private final String label;
  private final double duty;

  Mode(String label, double duty) {
    this.label = label;
    this.duty = duty;
  }

  /** What the trade calls it. */
  public String label() {
    return label;
  }

  /** Average power over peak envelope power while transmitting, 0 to 1. */
  public double duty() {
    return duty;
  }
}
