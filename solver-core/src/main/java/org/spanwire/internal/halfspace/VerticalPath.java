package org.spanwire.internal.halfspace;

import org.spanwire.internal.math.BesselFunctions;
import org.spanwire.internal.math.VectorQuadrature;

/**
 * The kernels by a straight path in the plane of w = k_z0/k0, w = 1 − jt, t = 0…∞ (lengths in units
 * of 1/k0): K[f] = e^{−jζ} ∫ f J0(sρ) e^{−ζt} dt, C = e^{−jζ} ∫ jw s D J1(sρ) e^{−ζt} dt, s = √(t²
 * + 2jt). Branch point and pole of f lie in Re w ≤ 0, a unit away at least. J0(sρ) e^{−ζt} grows at
 * most to exp(min(ρ, ρ²/4ζ)), and the number of its oscillations like ρ/ζ: for steep directions.
 */
final class VerticalPath implements VectorQuadrature.Integrand {

  private static final double ROOT_HALF = Math.sqrt(0.5);

  private final ReflectionSpectrum spectrum;
  private final KernelSet kernels;
  private final ComplexRoot root = new ComplexRoot();
  private final double[] factors = new double[8];
  private final double[] bessel = new double[8];
  private double rho;
  private double zeta;

  VerticalPath(ReflectionSpectrum spectrum, KernelSet kernels) {
    this.spectrum = spectrum;
    this.kernels = kernels;
  }

  /**
   * Adds the kernels times e^{jζ} to {@code sum}; {@code digits} is −ln of the wanted relative
   * error.
   */
  void add(
      double rho,
      double zeta,
      double limit,
      double digits,
      VectorQuadrature quadrature,
      double[] sum) {
    this.rho = rho;
    this.zeta = zeta;
    // |J| ≤ exp(ρ Im s), and Im s ≤ 1 as well as Im s ≤ √t.
    double rootOfEnd = (rho + Math.sqrt(rho * rho + 4 * zeta * digits)) / (2 * zeta);
    double end = Math.min((digits + rho) / zeta, rootOfEnd * rootOfEnd);
    double a = 0;
    double b = Math.min(1, 4 / zeta);
    while (a < end) {
      b = Math.min(b, end);
      quadrature.add(this, a, b, limit, sum);
      a = b;
      b = 2 * a;
    }
  }

  @Override
  public void evaluate(double t, double[] values) {
    double s2r = t * t;
    double s2i = 2 * t;
    root.principal(s2r, s2i);
    double sr = root.re;
    double si = root.im;
    root.around(spectrum.epsRe - s2r, spectrum.epsIm - s2i, ROOT_HALF, -ROOT_HALF);
    spectrum.at(1, -t, root.re, root.im, factors);
    BesselFunctions.besselJ(rho * sr, rho * si, bessel);
    double decay = Math.exp(-zeta * t);
    kernels.write(sr, si, 1, -t, decay, 0, factors, bessel, rho, values);
  }
}
