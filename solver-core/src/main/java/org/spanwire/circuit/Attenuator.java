package org.spanwire.circuit;

import org.apache.commons.math3.complex.Complex;

/**
 * A matched attenuator.
 *
 * @param lossDb loss in dB, not negative
 * @param referenceOhm impedance it is matched to at both ports, in ohms
 */
public record Attenuator(double lossDb, double referenceOhm) implements Network {

  /** Checks the ranges. */
  public Attenuator {
    if (!(lossDb >= 0)) {
      throw new IllegalArgumentException("loss " + lossDb + " dB must not be negative");
    }
  }

  @Override
  public NPort at(double frequencyHz) {
    Complex through = new Complex(Math.pow(10, -lossDb / 20), 0);
    return NPort.ofScattering(
        new Complex[][] {{Complex.ZERO, through}, {through, Complex.ZERO}}, referenceOhm);
  }
}
