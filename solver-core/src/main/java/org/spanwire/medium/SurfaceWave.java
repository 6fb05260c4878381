package org.spanwire.medium;

import org.apache.commons.math3.complex.Complex;
import org.spanwire.internal.math.FaddeevaFunction;
import org.spanwire.unit.PhysicalConstants;

/**
 * The wave along the surface of flat soil in Sommerfeld's approximation for large distances: the
 * field of a short vertical antenna at the surface over that over perfect ground (Sommerfeld 1926;
 * Norton, Proc. IRE 24, 1367, 1936). Good to some hundredths of a decibel beyond some twenty
 * wavelengths; nearer, and for any height, near fields are exact. Curvature of the earth matters
 * beyond about 80 km divided by the cube root of the frequency in megahertz.
 */
public final class SurfaceWave {

  /** Beyond this size of p the asymptotic series is exact to rounding. */
  private static final double FAR = 50;

  private SurfaceWave() {}

  /**
   * Attenuation F(p) = 1 − j√(πp) e^{−p} erfc(j√p).
   *
   * @param p numerical distance, −π &lt; arg p ≤ 0 over soil
   */
  public static Complex attenuation(Complex p) {
    if (p.abs() > FAR && p.getImaginary() <= 0 || p.getReal() > FAR) {
      return series(p);
    }
    // e^{−p} erfc(j√p) = w(−√p)
    Complex root = p.sqrt();
    return Complex.ONE.subtract(
        FaddeevaFunction.value(root.negate())
            .multiply(root)
            .multiply(new Complex(0, Math.sqrt(Math.PI))));
  }

  /** −Σ (2m − 1)!!/(2p)^m, m = 1, 2, … (DLMF 7.12.1). */
  private static Complex series(Complex p) {
    Complex step = p.multiply(2).reciprocal();
    Complex term = Complex.ONE;
    Complex sum = Complex.ZERO;
    for (int m = 1; m < FAR; m++) {
      Complex next = term.multiply(step).multiply(2 * m - 1);
      if (next.abs() >= term.abs()) {
        break;
      }
      term = next;
      sum = sum.subtract(term);
    }
    return sum;
  }

  /**
   * Numerical distance p = −j(k0d/2)(ε − 1)/ε² for vertical polarisation at grazing.
   *
   * @param soil the soil
   * @param frequencyHz frequency in hertz, positive
   * @param distance distance d along the surface in metres, positive
   */
  public static Complex numericalDistance(Soil soil, double frequencyHz, double distance) {
    Complex permittivity = soil.complexPermittivity(frequencyHz);
    double half = 0.5 * PhysicalConstants.wavenumber(frequencyHz) * distance;
    return permittivity
        .subtract(1)
        .divide(permittivity.multiply(permittivity))
        .multiply(new Complex(0, -half));
  }

  /**
   * Vertical field strength at the surface in V/m.
   *
   * @param cymomotiveForce field over perfect ground times distance, in volts (ITU-R P.341); 300 V
   *     for 1 kW radiated by a short vertical
   */
  public static double fieldStrength(
      Soil soil, double frequencyHz, double distance, double cymomotiveForce) {
    Complex p = numericalDistance(soil, frequencyHz, distance);
    return cymomotiveForce / distance * attenuation(p).abs();
  }
}
