package org.spanwire.internal.math;

/**
 * Complete elliptic integrals of the first and second kind by the arithmetic-geometric mean
 * (Abramowitz and Stegun 1964, 17.6), parameter m = 1 − m1. They take the complementary parameter
 * m1 so that the logarithmic limit m1 → 0 keeps full accuracy.
 */
public final class EllipticIntegrals {

  private static final int MAX_STEPS = 40;

  private EllipticIntegrals() {}

  /**
   * K of complementary parameter m1.
   *
   * @param m1 1 − m, in (0, 1]
   */
  public static double firstKind(double m1) {
    double a = 1;
    double b = Math.sqrt(m1);
    for (int i = 0; i < MAX_STEPS && Math.abs(a - b) > 1e-15 * a; i++) {
      double next = 0.5 * (a + b);
      b = Math.sqrt(a * b);
      a = next;
    }
    return Math.PI / (a + b);
  }

  /**
   * E of complementary parameter m1.
   *
   * @param m1 1 − m, in (0, 1]
   */
  public static double secondKind(double m1) {
    double a = 1;
    double b = Math.sqrt(m1);
    double sum = 0.5 * (1 - m1);
    double power = 0.5;
    for (int i = 0; i < MAX_STEPS && Math.abs(a - b) > 1e-15 * a; i++) {
      double c = 0.5 * (a - b);
      double next = 0.5 * (a + b);
      b = Math.sqrt(a * b);
      a = next;
      power *= 2;
      sum += power * c * c;
    }
    return Math.PI / (a + b) * (1 - sum);
  }
}
