package org.spanwire.internal.math;

import org.apache.commons.math3.complex.Complex;

/**
 * Modified Bessel functions of orders 0 and 1 with their exponentials taken out, so that nothing
 * overflows: e^(−z) I0(z), e^(−z) I1(z), e^z K0(z), e^z K1(z).
 *
 * <p>K from the Hankel functions, K0(z) = −(jπ/2) H0⁽²⁾(−jz), K1(z) = −(π/2) H1⁽²⁾(−jz) (Abramowitz
 * and Stegun 1964, 9.6.4); I from the ratio I0/I1 and the Wronskian I0 K1 + I1 K0 = 1/z (9.6.15).
 * Relative error below 1e-11.
 *
 * @param i0 e^(−z) I0(z)
 * @param i1 e^(−z) I1(z)
 * @param k0 e^z K0(z)
 * @param k1 e^z K1(z)
 */
public record ScaledModifiedBessel(Complex i0, Complex i1, Complex k0, Complex k1) {

  /**
   * The four functions.
   *
   * @param z not zero, argument from 0 to π/4
   */
  public static ScaledModifiedBessel at(Complex z) {
    double[] hankel = new double[8];
    BesselFunctions.hankelScaled(z.getImaginary(), -z.getReal(), hankel);
    Complex k0 = new Complex(hankel[1], -hankel[0]).multiply(Math.PI / 2);
    Complex k1 = new Complex(-hankel[2], -hankel[3]).multiply(Math.PI / 2);
    Complex ratio = ModifiedBesselRatio.zeroOverOne(z);
    Complex i1 = z.multiply(ratio.multiply(k1).add(k0)).reciprocal();
    return new ScaledModifiedBessel(ratio.multiply(i1), i1, k0, k1);
  }
}
