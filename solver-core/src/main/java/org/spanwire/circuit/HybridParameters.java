package org.spanwire.circuit;

import org.apache.commons.math3.complex.Complex;

/** Hybrid parameters of a 2-port and their inverse, which Touchstone files may hold. */
final class HybridParameters {

  private HybridParameters() {}

  /** H with (V1, I2) = H (I1, V2). */
  static Complex[][] of(NPort twoPort) {
    ComplexMatrix v = twoPort.voltages();
    ComplexMatrix i = twoPort.currents();
    return PowerWaves.quotient(
            NPort.pair(v.at(0, 0), v.at(0, 1), i.at(1, 0), i.at(1, 1)),
            NPort.pair(i.at(0, 0), i.at(0, 1), v.at(1, 0), v.at(1, 1)),
            "hybrid")
        .toArray();
  }

  /** The 2-port with (V1, I2) = H (I1, V2). */
  static NPort network(Complex[][] h, Complex... references) {
    ComplexMatrix m = NPort.pair(Complex.ONE, h[0][1].negate(), Complex.ZERO, h[1][1].negate());
    ComplexMatrix n = NPort.pair(h[0][0].negate(), Complex.ZERO, h[1][0].negate(), Complex.ONE);
    return NPort.ofEquations(m, n, references);
  }

  /** G with (I1, V2) = G (V1, I2). */
  static Complex[][] inverseOf(NPort twoPort) {
    ComplexMatrix v = twoPort.voltages();
    ComplexMatrix i = twoPort.currents();
    return PowerWaves.quotient(
            NPort.pair(i.at(0, 0), i.at(0, 1), v.at(1, 0), v.at(1, 1)),
            NPort.pair(v.at(0, 0), v.at(0, 1), i.at(1, 0), i.at(1, 1)),
            "inverse hybrid")
        .toArray();
  }

  /** The 2-port with (I1, V2) = G (V1, I2). */
  static NPort inverseNetwork(Complex[][] g, Complex... references) {
    ComplexMatrix m = NPort.pair(g[0][0].negate(), Complex.ZERO, g[1][0].negate(), Complex.ONE);
    ComplexMatrix n = NPort.pair(Complex.ONE, g[0][1].negate(), Complex.ZERO, g[1][1].negate());
    return NPort.ofEquations(m, n, references);
  }
}
