package org.spanwire.internal.halfspace;

/** Complex square root into two fields, so that inner loops allocate nothing. */
final class ComplexRoot {

  double re;
  double im;

  /** Principal root, Re ≥ 0. */
  void principal(double x, double y) {
    double modulus = Math.sqrt(x * x + y * y);
    if (modulus == 0) {
      re = 0;
      im = 0;
    } else if (x >= 0) {
      re = Math.sqrt(0.5 * (modulus + x));
      im = 0.5 * y / re;
    } else {
      im = Math.copySign(Math.sqrt(0.5 * (modulus - x)), y);
      re = 0.5 * y / im;
    }
  }

  /**
   * The root that is continuous while the argument of x + jy stays within π of 2η, given e^{jη} =
   * (c, s).
   */
  void around(double x, double y, double c, double s) {
    double c2 = c * c - s * s;
    double s2 = 2 * c * s;
    principal(x * c2 + y * s2, y * c2 - x * s2);
    double r = re * c - im * s;
    im = re * s + im * c;
    re = r;
  }
}
