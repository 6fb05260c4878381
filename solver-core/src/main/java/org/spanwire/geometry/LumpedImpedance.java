package org.spanwire.geometry;

import org.apache.commons.math3.complex.Complex;

/** Impedance of a lumped part against frequency, time convention exp(+jωt). */
@FunctionalInterface
public interface LumpedImpedance {

  /**
   * Impedance in ohms at a frequency in hertz. An open circuit (a lossless trap at resonance) is
   * {@link Complex#INF}.
   */
  Complex at(double frequencyHz);

  /**
   * Resistance, inductance and capacitance in series.
   *
   * @param resistance ohms, not negative
   * @param inductance henries, not negative
   * @param capacitance farads, positive; infinite if there is no capacitor
   */
  static LumpedImpedance series(double resistance, double inductance, double capacitance) {
    check(resistance, inductance, capacitance);
    return f -> {
      double w = 2 * Math.PI * f;
      return new Complex(resistance, w * inductance - 1 / (w * capacitance));
    };
  }

  /**
   * A parallel trap: an inductor with its series loss resistance, in parallel with a capacitor.
   *
   * @param resistance loss resistance of the inductor in ohms, not negative
   * @param inductance henries, positive
   * @param capacitance farads, positive
   */
  static LumpedImpedance parallel(double resistance, double inductance, double capacitance) {
    check(resistance, inductance, capacitance);
    return f -> {
      double w = 2 * Math.PI * f;
      Complex admittance =
          new Complex(0, w * capacitance).add(new Complex(resistance, w * inductance).reciprocal());
      return admittance.equals(Complex.ZERO) ? Complex.INF : admittance.reciprocal();
    };
  }

  private static void check(double resistance, double inductance, double capacitance) {
    if (!(resistance >= 0) || !(inductance >= 0) || !(capacitance > 0)) {
      throw new IllegalArgumentException(
          "lumped impedance needs resistance and inductance of at least 0 and a positive capacitance, got "
              + resistance
              + " ohm, "
              + inductance
              + " H, "
              + capacitance
              + " F");
    }
  }
}
