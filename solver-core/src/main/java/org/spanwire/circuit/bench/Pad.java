package org.spanwire.circuit.bench;

/**
 * A resistor or two that let a port of low impedance end a transformer's high-impedance side, and
 * what to subtract from the measured loss.
 *
 * @param seriesOhm resistor towards the transformer, in ohms, not negative
 * @param shuntOhm resistor across the port, in ohms, positive; infinite for none
 * @param portOhm impedance of the port, in ohms, positive
 */
public record Pad(double seriesOhm, double shuntOhm, double portOhm) {

  /** Checks the ranges. */
  public Pad {
    if (!(seriesOhm >= 0) || !(shuntOhm > 0) || !(portOhm > 0) || Double.isInfinite(portOhm)) {
      throw new IllegalArgumentException(
          "pad of %s ohm in series and %s ohm in shunt at %s ohm: none may be negative"
              .formatted(seriesOhm, shuntOhm, portOhm));
    }
  }

  /** A series resistor alone, high − port. */
  public static Pad seriesResistor(double highOhm, double portOhm) {
    return new Pad(highOhm - portOhm, Double.POSITIVE_INFINITY, portOhm);
  }

  /**
   * The pad of least loss that is matched on both sides: series √(H (H − P)), shunt P √(H/(H − P))
   * (common in filter and attenuator texts; from memory).
   */
  public static Pad minimumLoss(double highOhm, double portOhm) {
    if (!(highOhm > portOhm)) {
      throw new IllegalArgumentException(
          "high side %s ohm must be above the port's %s ohm".formatted(highOhm, portOhm));
    }
    return new Pad(
        Math.sqrt(highOhm * (highOhm - portOhm)),
        portOhm * Math.sqrt(highOhm / (highOhm - portOhm)),
        portOhm);
  }

  /** Resistance that the transformer sees, in ohms. */
  public double inputOhm() {
    return seriesOhm + 1 / (1 / shuntOhm + 1 / portOhm);
  }

  /** Power into the pad over power into the port, in dB: to be subtracted from a measured loss. */
  public double correctionDb() {
    double parallel = 1 / (1 / shuntOhm + 1 / portOhm);
    return 10 * Math.log10(inputOhm() / parallel * (portOhm / parallel));
  }
}
