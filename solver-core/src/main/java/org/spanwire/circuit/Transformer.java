package org.spanwire.circuit;

import org.apache.commons.math3.complex.Complex;

/**
 * Transformers as 2-ports: port 1 towards the transmitter, port 2 towards the antenna, across the
 * two terminals of the feedpoint.
 */
public final class Transformer {

  private Transformer() {}

  /**
   * An ideal transformer.
   *
   * @param ratio impedance at port 2 over impedance at port 1, positive
   * @param referenceOhm reference impedance of port 1 in ohms; that of port 2 is ratio times as
   *     much
   */
  public static Network ideal(double ratio, double referenceOhm) {
    if (!(ratio > 0) || Double.isInfinite(ratio)) {
      throw new IllegalArgumentException(
          "transformer ratio " + ratio + " must be positive and finite");
    }
    NPort network =
        NPort.ofScattering(
            new Complex[][] {{Complex.ZERO, Complex.ONE}, {Complex.ONE, Complex.ZERO}},
            new Complex(referenceOhm, 0),
            new Complex(ratio * referenceOhm, 0));
    return f -> network;
  }

  /**
   * A three-terminal network (port 1 unbalanced; ports 2 and 3 from each antenna terminal to the
   * common node) seen by a floating antenna, which takes no common-mode current: port 2 is then
   * across the antenna terminals. A 2-port is taken as it is.
   *
   * @throws CircuitException at the frequencies where the network has other than 2 or 3 ports
   */
  public static Network floating(Network network) {
    return f -> {
      NPort at = network.at(f);
      return switch (at.ports()) {
        case 2 -> at;
        case 3 -> floating(at);
        default ->
            throw new CircuitException(
                "transformer has " + at.ports() + " ports; expected 2, or 3 with both terminals");
      };
    };
  }

  static NPort floating(NPort threePort) {
    NPort equal =
        threePort.reference(2).equals(threePort.reference(3))
            ? threePort
            : threePort.renormalized(
                threePort.reference(1), threePort.reference(2), threePort.reference(2));
    return equal.mixedMode(2, 3).terminated(3, Complex.INF);
  }
}
