package org.spanwire.internal.field;

import org.apache.commons.math3.complex.Complex;

/**
 * Plane-wave reflection coefficients of the plane z = 0 seen from the air: r_p for the magnetic
 * field of a wave polarised in the plane of incidence (vertical polarisation) and r_s for the
 * electric field of one polarised across it (horizontal polarisation),
 *
 * <p>r_p = (ε c − q)/(ε c + q), r_s = (c − q)/(c + q), q = √(ε − 1 + c²), Im q ≤ 0, c the sine of
 * the elevation (Born and Wolf 1999, section 1.5; Stratton 1941, section 9.5). A perfect conductor
 * has r_p = 1 and r_s = −1.
 */
final class Fresnel {

  private final double epsRe;
  private final double epsIm;

  /** For a complex relative permittivity with Im ε ≤ 0. */
  Fresnel(Complex permittivity) {
    epsRe = permittivity.getReal();
    epsIm = permittivity.getImaginary();
  }

  /**
   * r_p and r_s as two pairs of real and imaginary part from {@code at} on, for the sine of an
   * elevation from 0 to 1.
   */
  void coefficients(double c, double[] out, int at) {
    double wRe = epsRe - 1 + c * c;
    double size = Math.sqrt(0.5 * (Math.hypot(wRe, epsIm) + Math.abs(wRe)));
    double qRe = size;
    double qIm = size == 0 ? 0 : 0.5 * epsIm / size;
    quotient(epsRe * c, epsIm * c, qRe, qIm, out, at);
    quotient(c, 0, qRe, qIm, out, at + 2);
  }

  /** (a − q)/(a + q), zero where both vanish: grazing incidence on a medium like air. */
  private static void quotient(
      double aRe, double aIm, double qRe, double qIm, double[] out, int at) {
    double nRe = aRe - qRe;
    double nIm = aIm - qIm;
    double dRe = aRe + qRe;
    double dIm = aIm + qIm;
    double norm = dRe * dRe + dIm * dIm;
    out[at] = norm == 0 ? 0 : (nRe * dRe + nIm * dIm) / norm;
    out[at + 1] = norm == 0 ? 0 : (nIm * dRe - nRe * dIm) / norm;
  }
}
