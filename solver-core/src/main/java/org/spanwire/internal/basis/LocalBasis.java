package org.spanwire.internal.basis;

/**
 * Basis functions on one piece, t from −1 to 1, in terms of Legendre polynomials: two linear end
 * functions N_0 = (P_0 − P_1)/2 and N_1 = (P_0 + P_1)/2, and bubbles N_k = (P_k − P_(k−2))/√(2(2k −
 * 1)), k ≥ 2, that vanish at both ends (integrated Legendre polynomials; Szabó and Babuška, Finite
 * Element Analysis, 1991, chapter 6).
 */
public final class LocalBasis {

  private LocalBasis() {}

  /** Lower Legendre degree of function i. */
  public static int low(int i) {
    return i < 2 ? 0 : i - 2;
  }

  /** Higher Legendre degree of function i. */
  public static int high(int i) {
    return i < 2 ? 1 : i;
  }

  /** Coefficient of the lower degree. */
  public static double lowFactor(int i) {
    return i < 2 ? 0.5 : -1 / Math.sqrt(2.0 * (2 * i - 1));
  }

  /** Coefficient of the higher degree. */
  public static double highFactor(int i) {
    return i == 0 ? -0.5 : i == 1 ? 0.5 : 1 / Math.sqrt(2.0 * (2 * i - 1));
  }

  /** Legendre degree of dN_i/dt, which is a single polynomial. */
  public static int derivativeDegree(int i) {
    return i < 2 ? 0 : i - 1;
  }

  /** Coefficient of dN_i/dt. */
  public static double derivativeFactor(int i) {
    return i == 0 ? -0.5 : i == 1 ? 0.5 : Math.sqrt((2 * i - 1) / 2.0);
  }
}
