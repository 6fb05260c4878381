package org.spanwire.internal.math;

/** Legendre polynomials by their three-term recurrence (Abramowitz and Stegun 1964, 22.7.10). */
public final class LegendrePolynomials {

  /** Degrees up to which 1/k is kept: a division costs more than the rest of a step. */
  private static final int KEPT = 64;

  private static final double[] INVERSE = new double[KEPT + 1];

  static {
    for (int k = 1; k <= KEPT; k++) {
      INVERSE[k] = 1.0 / k;
    }
  }

  private LegendrePolynomials() {}

  /**
   * Writes P_0(t) … P_order(t) times a factor into out from offset on.
   *
   * @param t argument in [−1, 1]
   * @param order highest degree, at least 0
   */
  public static void fill(double t, int order, double factor, double[] out, int offset) {
    out[offset] = factor;
    if (order == 0) {
      return;
    }
    out[offset + 1] = factor * t;
    double before = factor;
    double last = factor * t;
    for (int k = 2; k <= order; k++) {
      double next =
          ((2 * k - 1) * t * last - (k - 1) * before) * (k <= KEPT ? INVERSE[k] : 1.0 / k);
      out[offset + k] = next;
      before = last;
      last = next;
    }
  }

  /**
   * Writes P'_0(t) … P'_order(t) times a factor into out from offset on: P'_k = k P_(k−1) + t
   * P'_(k−1), from the recurrences of Abramowitz and Stegun (1964), 22.7.10 and 22.8.5.
   *
   * @param t argument in [−1, 1]
   * @param order highest degree, at least 0
   */
  public static void fillDerivatives(double t, int order, double factor, double[] out, int offset) {
    double polynomial = 1;
    double next = t;
    out[offset] = 0;
    for (int k = 1; k <= order; k++) {
      out[offset + k] = k * factor * polynomial + t * out[offset + k - 1];
      double following = ((2 * k + 1) * t * next - k * polynomial) / (k + 1);
      polynomial = next;
      next = following;
    }
  }
}
