package org.spanwire.circuit.bench;

/**
 * Average over peak power of transmissions while the key is down.
 *
 * <p>FCC OET Bulletin 65 Supplement B, 1997, table 2 (from memory).
 */
public enum OperatingMode {
  /** Speech, single sideband, no processing. */
  SSB(0.2),
  /** Speech, single sideband, heavy processing. */
  SSB_PROCESSED(0.5),
  /** Morse telegraphy. */
  CW(0.4),
  /** Frequency modulation. */
  FM(1),
  /** Data by frequency shift. */
  DATA(1),
  /** A steady carrier. */
  CARRIER(1);

  private final double duty;

  OperatingMode(double duty) {
    this.duty = duty;
  }

  /** Average over peak envelope power. */
  public double duty() {
    return duty;
  }
}
