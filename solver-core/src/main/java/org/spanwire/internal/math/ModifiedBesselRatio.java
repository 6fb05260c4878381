package org.spanwire.internal.math;

import org.apache.commons.math3.complex.Complex;

/** The ratio I0(z)/I1(z) of modified Bessel functions for complex argument, without overflow. */
public final class ModifiedBesselRatio {

  private ModifiedBesselRatio() {}

  /**
   * I0(z)/I1(z) by the continued fraction I_n/I_(n−1) = 1/(2n/z + I_(n+1)/I_n) (Abramowitz and
   * Stegun 1964, 9.6.26), evaluated backward; for Re z &gt; 40, where a second exponential of size
   * exp(−2 Re z) no longer counts, by Hankel's asymptotic series (9.7.1). Good to 1e-13 for Re z ≥
   * 0.
   *
   * @param z not zero, real part not negative
   */
  public static Complex zeroOverOne(Complex z) {
    if (z.getReal() > 40) {
      return asymptotic(z, 0).divide(asymptotic(z, 1));
    }
    Complex ratio = Complex.ZERO;
    Complex twiceInverse = z.reciprocal().multiply(2);
    for (int n = 40 + (int) (2 * z.abs()); n >= 1; n--) {
      ratio = twiceInverse.multiply(n).add(ratio).reciprocal();
    }
    return ratio.reciprocal();
  }

  private static Complex asymptotic(Complex z, int order) {
    double mu = 4.0 * order * order;
    Complex term = Complex.ONE;
    Complex sum = Complex.ONE;
    for (int n = 1; n <= 20; n++) {
      double odd = 2 * n - 1;
      term = term.multiply(-(mu - odd * odd) / (8.0 * n)).divide(z);
      sum = sum.add(term);
    }
    return sum;
  }
}
