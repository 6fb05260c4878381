package org.spanwire.circuit;

import java.util.Objects;
import org.apache.commons.math3.complex.Complex;

/**
 * What drives current along the outside of a feed line, as seen by a choke in its path (Thévenin's
 * theorem).
 *
 * @param openVoltage voltage across the open place of the choke, rms volts
 * @param sourceImpedance impedance of all the rest seen from there, in ohms, finite
 */
public record CommonModeDrive(Complex openVoltage, Complex sourceImpedance) {

  /** Checks that both are there. */
  public CommonModeDrive {
    Objects.requireNonNull(openVoltage, "openVoltage");
    Objects.requireNonNull(sourceImpedance, "sourceImpedance");
  }

  /**
   * Current through a choke, V/(Z_source + Z_choke), rms amperes; 0 for an infinite choke.
   *
   * @throws CircuitException if the choke tunes out all that is there
   */
  public Complex current(Complex chokeImpedance) {
    if (chokeImpedance.isInfinite()) {
      return Complex.ZERO;
    }
    Complex sum = sourceImpedance.add(chokeImpedance);
    if (sum.equals(Complex.ZERO)) {
      throw new CircuitException(
          "choke of " + chokeImpedance + " ohm resonates without loss; give it a resistance");
    }
    return openVoltage.divide(sum);
  }

  /** Voltage across a choke, rms volts. */
  public Complex voltage(Complex chokeImpedance) {
    return chokeImpedance.isInfinite()
        ? openVoltage
        : current(chokeImpedance).multiply(chokeImpedance);
  }

  /** Heat in a choke, |I|² R, in watts. */
  public double dissipation(Complex chokeImpedance) {
    if (chokeImpedance.isInfinite()) {
      return 0;
    }
    double current = current(chokeImpedance).abs();
    return current * current * chokeImpedance.getReal();
  }
}
