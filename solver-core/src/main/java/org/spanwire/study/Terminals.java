package org.spanwire.study;

import org.apache.commons.math3.complex.Complex;
import org.spanwire.circuit.NPort;
import org.spanwire.circuit.Network;
import org.spanwire.design.Stage;

/**
 * What stands between the feed chain, the two arms of a radiator and the outside of the feed line.
 * Port 1 is the unbalanced port, port 2 the terminal of the arm towards the wire's first point,
 * port 3 that towards its last, all against the common node o: the cold side of port 1, which the
 * outside of the line ties to through the choke Zc.
 *
 * <pre>
 * balanced: v2 = v/2, v3 = −v/2        unbalanced: v2 = v, port 3 is the node o
 *
 *        ┌───── 2 (first point)               ┌───── 2 (first point)
 *  1 ──┐ │                              1 ──┐ │
 *      )||( ── o                            )||(
 *  o ──┘ │                              o ──┘ │
 *        └───── 3 (last point)                └───── 3 (last point), o
 *
 *  o ──[Zc]── outside of the line       o ──[Zc]── outside of the line
 * </pre>
 *
 * <p>A transformer measured with three ports is its own circuit: its common node ties to the
 * outside of the line in the same way. Without a transformer the line's inner conductor goes to
 * port 2 and its shield to port 3: unbalanced. Polarity exchanges ports 2 and 3.
 */
final class Terminals {

  private Terminals() {}

  /** An ideal 1:1 tie. */
  static Network tie(Stage.Output output, double referenceOhm) {
    Complex r = new Complex(referenceOhm, 0);
    NPort network =
        switch (output) {
          case BALANCED -> {
            double t = Math.sqrt(0.5);
            yield NPort.ofScattering(
                rows(new double[][] {{0, t, -t}, {t, -0.5, -0.5}, {-t, -0.5, -0.5}}),
                r,
                r.multiply(0.5),
                r.multiply(0.5));
          }
          case UNBALANCED ->
              NPort.ofScattering(rows(new double[][] {{0, 1, 0}, {1, 0, 0}, {0, 0, -1}}), r);
        };
    return f -> network;
  }

  /** A network with one more port, behind which stands an impedance alone. */
  static NPort beside(NPort network, Complex impedance) {
    NPort load = NPort.load(impedance, network.reference(1).getReal());
    int n = network.ports();
    Complex[][] s = new Complex[n + 1][n + 1];
    Complex[] references = new Complex[n + 1];
    for (int i = 0; i <= n; i++) {
      for (int j = 0; j <= n; j++) {
        s[i][j] = i < n && j < n ? network.s(i + 1, j + 1) : Complex.ZERO;
      }
      references[i] = network.reference(Math.min(i + 1, n));
    }
    s[n][n] = load.s(1, 1);
    references[n] = load.reference(1);
    return NPort.ofScattering(s, references);
  }

  /**
   * Terminals with an admittance across the first two of them; across the only one of a one-port.
   *
   * <p>With d = (1, −1, 0) and y the admittance over that of the reference, v' = v and i' = i + y d
   * dᵀ v give S' = S − k r rᵀ, r = (1 + S) d, k = (y/2)/(1 + (y/2) dᵀ r).
   *
   * @param terminals reciprocal, with one real reference
   * @param siemens the admittance; its negative takes it away again
   */
  static NPort across(NPort terminals, Complex siemens) {
    if (siemens.equals(Complex.ZERO)) {
      return terminals;
    }
    int n = terminals.ports();
    Complex[] r = new Complex[n];
    for (int i = 1; i <= n; i++) {
      Complex own = i == 1 ? Complex.ONE : i == 2 ? Complex.ONE.negate() : Complex.ZERO;
      Complex second = n > 1 ? terminals.s(i, 2) : Complex.ZERO;
      r[i - 1] = own.add(terminals.s(i, 1)).subtract(second);
    }
    Complex half = siemens.multiply(terminals.reference(1)).multiply(0.5);
    Complex along = n > 1 ? r[0].subtract(r[1]) : r[0];
    Complex k = half.divide(Complex.ONE.add(half.multiply(along)));
    Complex[][] s = new Complex[n][n];
    for (int i = 0; i < n; i++) {
      for (int j = 0; j < n; j++) {
        s[i][j] = terminals.s(i + 1, j + 1).subtract(k.multiply(r[i]).multiply(r[j]));
      }
    }
    return NPort.ofScattering(s, terminals.reference(1));
  }

  private static Complex[][] rows(double[][] values) {
    Complex[][] rows = new Complex[values.length][values.length];
    for (int i = 0; i < values.length; i++) {
      for (int j = 0; j < values.length; j++) {
        rows[i][j] = new Complex(values[i][j], 0);
      }
    }
    return rows;
  }
}
