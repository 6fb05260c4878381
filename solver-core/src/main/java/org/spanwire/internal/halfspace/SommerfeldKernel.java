package org.spanwire.internal.halfspace;

import java.util.Arrays;
import org.apache.commons.math3.complex.Complex;
import org.spanwire.internal.math.VectorQuadrature;

/**
 * Reflected kernels over homogeneous soil by direct quadrature of the Sommerfeld integrals with
 * error control. Steep directions use a {@link VerticalPath}, all others a {@link SaddlePath}; both
 * carry the scaling e^{jk0R'}, so that the cost does not grow with the distance.
 */
public final class SommerfeldKernel implements ReflectedKernel {

  /** Default error of a kernel relative to 1/R'. */
  public static final double DEFAULT_TOLERANCE = 1e-9;

  private static final double FINEST_TOLERANCE = 1e-12;

  private final double wavenumber;
  private final ReflectionSpectrum spectrum;
  private final boolean freeSpace;
  private final double tolerance;

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
    if (!(wavenumber > 0) || Double.isInfinite(wavenumber)) {
      throw new IllegalArgumentException(
          "wavenumber " + wavenumber + " rad/m must be a positive finite number");
    }
    double re = permittivity.getReal();
    double im = permittivity.getImaginary();
    if (!(re >= 1 && im <= 0) || Double.isInfinite(re) || Double.isInfinite(im)) {
      throw new IllegalArgumentException(
          "relative permittivity "
              + permittivity
              + " must have a real part of at least 1 and no positive imaginary part");
    }
    if (!(tolerance >= FINEST_TOLERANCE && tolerance <= 1e-2)) {
      throw new IllegalArgumentException(
          "tolerance " + tolerance + " must lie between " + FINEST_TOLERANCE + " and 0.01");
    }
    this.wavenumber = wavenumber;
    this.tolerance = tolerance;
    spectrum = new ReflectionSpectrum(re, im);
    freeSpace = re == 1 && im == 0;
  }

  /** Free-space wavenumber in rad/m. */
  public double wavenumber() {
    return wavenumber;
  }

  @Override
  public void evaluate(double rho, double zeta, double[] out, int offset) {
    if (!(rho >= 0 && zeta > 0) || Double.isInfinite(rho) || Double.isInfinite(zeta)) {
      throw new IllegalArgumentException(
          "horizontal distance "
              + rho
              + " m must not be negative and height sum "
              + zeta
              + " m must be positive");
    }
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
    if (freeSpace) {
      Arrays.fill(out, offset, offset + VALUES, 0);
      return;
    }
    double[] sum = new double[VALUES];
    double distance = Math.sqrt(rho * rho + zeta * zeta);
    double limit = tolerance / (8 * distance);
    double digits = 3 - Math.log(tolerance);
    double lag = 0;
    if (rho <= 2.5 * zeta && rho * rho <= 12 * zeta) {
      new VerticalPath(spectrum).add(rho, zeta, limit, digits, quadrature, sum);
      lag = rho * rho / (distance + zeta); // R' − ζ
    } else {
      new SaddlePath(spectrum).add(rho, zeta, limit, digits, quadrature, sum);
    }
    double re = distance * Math.cos(lag);
    double im = distance * Math.sin(lag);
    for (int i = 0; i < VALUES; i += 2) {
      out[offset + i] = sum[i] * re - sum[i + 1] * im;
      out[offset + i + 1] = sum[i] * im + sum[i + 1] * re;
    }
  }
}
