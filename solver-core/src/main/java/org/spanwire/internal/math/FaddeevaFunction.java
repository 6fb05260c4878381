package org.spanwire.internal.math;

import org.apache.commons.math3.complex.Complex;

/**
 * The Faddeeva function w(z) = e^{−z²} erfc(−jz) by Weideman's expansion in (L + jz)/(L − jz) (SIAM
 * J. Numer. Anal. 31, 1497, 1994) with 40 terms, in the lower half plane by w(z) = 2e^{−z²} −
 * w(−z). Relative error below 1e-14 for Im z ≥ 0.
 */
public final class FaddeevaFunction {

  private static final int TERMS = 40;
  private static final double SCALE = Math.sqrt(TERMS / Math.sqrt(2));
  private static final double[] COEFFICIENTS = coefficients();

  private FaddeevaFunction() {}

  /** Fourier coefficients of e^{−t²}(L² + t²) at t = L tan(θ/2), by the trapezoidal rule. */
  private static double[] coefficients() {
    int half = 2 * TERMS;
    double[] a = new double[TERMS];
    for (int i = 1 - half; i < half; i++) {
      double theta = Math.PI * i / half;
      double t = SCALE * Math.tan(0.5 * theta);
      double f = Math.exp(-t * t) * (SCALE * SCALE + t * t);
      for (int n = 0; n < TERMS; n++) {
        a[n] += f * Math.cos((n + 1) * theta) / (2 * half);
      }
    }
    return a;
  }

  /**
   * w(z).
   *
   * @throws ArithmeticException in the lower half plane where the function exceeds the range of
   *     doubles
   */
  public static Complex value(Complex z) {
    if (z.getImaginary() < 0) {
      Complex growing = z.multiply(z).negate().exp().multiply(2);
      if (growing.isInfinite() || growing.isNaN()) {
        throw new ArithmeticException("the Faddeeva function of " + z + " is too large");
      }
      return growing.subtract(upper(z.negate()));
    }
    return upper(z);
  }

  private static Complex upper(Complex z) {
    Complex below = new Complex(SCALE + z.getImaginary(), -z.getReal()); // L − jz
    Complex mapped =
        new Complex(SCALE - z.getImaginary(), z.getReal()).divide(below); // (L + jz)/(L − jz)
    Complex sum = Complex.ZERO;
    for (int n = TERMS - 1; n >= 0; n--) {
      sum = sum.multiply(mapped).add(COEFFICIENTS[n]);
    }
    return sum.multiply(2).divide(below).add(1 / Math.sqrt(Math.PI)).divide(below);
  }
}
