package org.spanwire.internal.halfspace;

import org.apache.commons.math3.complex.Complex;
import org.spanwire.internal.math.VectorQuadrature;

/**
 * Reflected kernels over homogeneous soil by direct quadrature of the Sommerfeld integrals with
 * error control ({@link SommerfeldQuadrature}).
 */
public final class SommerfeldKernel implements ReflectedKernel {

  /** Default error of a kernel relative to 1/R'. */
  public static final double DEFAULT_TOLERANCE = 1e-9;

  private final double wavenumber;
  private final SommerfeldQuadrature integrals;

  /** With {@link #DEFAULT_TOLERANCE}. */
  public SommerfeldKernel(double wavenumber, Complex permittivity) {
    this(wavenumber, permittivity, DEFAULT_TOLERANCE);
  }

  /**
   * @param wavenumber free-space wavenumber k0 in rad/m, positive
   * @param permittivity complex relative permittivity ε_r − jσ/(ωε0) of the soil, real part at
   *     least 1, imaginary part not positive
   * @param tolerance wanted error of every kernel relative to 1/R', from 1e-12 to 1e-2
   */
  public SommerfeldKernel(double wavenumber, Complex permittivity, double tolerance) {
    this.wavenumber = wavenumber;
    integrals = new SommerfeldQuadrature(wavenumber, permittivity, tolerance);
  }

  /** Free-space wavenumber in rad/m. */
  public double wavenumber() {
    return wavenumber;
  }

  @Override
  public void evaluate(double rho, double zeta, double[] out, int offset) {
    SommerfeldQuadrature.check(rho, zeta);
    scaled(wavenumber * rho, wavenumber * zeta, out, offset, new VectorQuadrature(VALUES));
    double distance = Math.sqrt(rho * rho + zeta * zeta);
    double c = Math.cos(wavenumber * distance) / distance;
    double s = Math.sin(wavenumber * distance) / distance;
    for (int i = offset; i < offset + VALUES; i += 2) {
      double re = out[i] * c + out[i + 1] * s;
      out[i + 1] = out[i + 1] * c - out[i] * s;
      out[i] = re;
    }
  }

  /** Kernels times R' e^{jk0R'}, dimensionless, for arguments in units of 1/k0. */
  void scaled(double rho, double zeta, double[] out, int offset, VectorQuadrature quadrature) {
    integrals.scaled(new PotentialKernels(), rho, zeta, out, offset, quadrature);
  }
}
