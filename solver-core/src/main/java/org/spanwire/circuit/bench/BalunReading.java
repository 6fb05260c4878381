package org.spanwire.circuit.bench;

import org.apache.commons.math3.complex.Complex;
import org.spanwire.circuit.NPort;

/**
 * A three-port balun at one frequency, ended in its nominal impedances: port 1 unbalanced, ports 2
 * and 3 its outputs, S_d = (S21 − S31)/√2, S_c = (S21 + S31)/√2 (Bockelman and Eisenstadt 1995).
 *
 * @param frequencyHz frequency in hertz
 * @param lossDb from port 1 into the differential mode, −10 log10(|S_d|²/(1 − |S11|²))
 * @param returnLossDb at port 1
 * @param imbalance of the outputs
 * @param conversionDb from the common to the differential mode of the outputs, −20 log10|S_dc|
 */
public record BalunReading(
    double frequencyHz,
    double lossDb,
    double returnLossDb,
    Imbalance imbalance,
    double conversionDb) {

  /**
   * From a measured 3-port, whatever its references.
   *
   * @param frequencyHz frequency in hertz
   * @param network parameters there
   * @param unbalancedOhm nominal impedance of port 1 in ohms
   * @param balancedOhm nominal impedance across ports 2 and 3 in ohms; half of it ends each
   * @throws IllegalArgumentException if it is not a 3-port or an output is dead
   */
  public static BalunReading of(
      double frequencyHz, NPort network, double unbalancedOhm, double balancedOhm) {
    if (network.ports() != 3) {
      throw new IllegalArgumentException("a balun has 3 ports, the data " + network.ports());
    }
    Complex half = new Complex(balancedOhm / 2, 0);
    NPort nominal = network.renormalized(new Complex(unbalancedOhm, 0), half, half);
    NPort modes = nominal.mixedMode(2, 3);
    if (nominal.s(2, 1).equals(Complex.ZERO) || nominal.s(3, 1).equals(Complex.ZERO)) {
      throw new IllegalArgumentException(
          "an output gets no signal at " + frequencyHz + " Hz; check the connections");
    }
    return new BalunReading(
        frequencyHz,
        BackToBack.lossDb(modes, 1, 2),
        -20 * Math.log10(nominal.s(1, 1).abs()),
        Imbalance.of(nominal.s(2, 1), nominal.s(3, 1)),
        -20 * Math.log10(modes.s(2, 3).abs()));
  }
}
