package org.spanwire.circuit.bench;

import java.util.Arrays;
import java.util.List;
import java.util.Optional;

/**
 * Average over peak power of transmissions while the key is down.
 *
 * <p>FCC OET Bulletin 65 Supplement B, 1997, table 2 (from memory). A station's own figures go
 * first.
 */
public enum OperatingMode {
  /** Speech, single sideband, no processing. */
  SSB("ssb", "SSB speech", 0.2),
  /** Speech, single sideband, heavy processing. */
  SSB_PROCESSED("ssb-processed", "SSB speech, heavily processed", 0.5),
  /** Morse telegraphy. */
  CW("cw", "CW", 0.4),
  /** Frequency modulation. */
  FM("fm", "FM", 1),
  /** Data by frequency shift. */
  DATA("data", "data", 1),
  /** A steady carrier. */
  CARRIER("carrier", "carrier", 1);

  private final String word;
  private final String label;
  private final double duty;

  OperatingMode(String word, String label, double duty) {
    this.word = word;
    this.label = label;
    this.duty = duty;
  }

  /** The mode of a word, if there is one. */
  public static Optional<OperatingMode> find(String word) {
    return Arrays.stream(values()).filter(mode -> mode.word.equals(word)).findFirst();
  }

  /** The words of all modes. */
  public static List<String> words() {
    return Arrays.stream(values()).map(OperatingMode::word).toList();
  }

  /** As written in a design or an option: "ssb". */
  public String word() {
    return word;
  }

  /** What the trade calls it. */
  public String label() {
    return label;
  }

  /** Average over peak envelope power. */
  public double duty() {
    return duty;
  }
}
