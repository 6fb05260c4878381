package org.spanwire.internal.halfspace;

import java.util.Arrays;
import org.apache.commons.math3.complex.Complex;
import org.spanwire.internal.math.VectorQuadrature;

/**
 * Sommerfeld integrals of a set of kernels by direct quadrature with error control. Steep
 * directions use a {@link VerticalPath}, all others a {@link SaddlePath}; both carry the scaling
 * e^{jk0R'}, so that the cost does not grow with the distance. Immutable.
 */
final class SommerfeldQuadrature {

  private static final double FINEST_TOLERANCE = 1e-12;

  private final ReflectionSpectrum spectrum;
  private final boolean freeSpace;
  private final double tolerance;

  /** Checks wavenumber (rad/m), permittivity and tolerance. */
  SommerfeldQuadrature(double wavenumber, Complex permittivity, double tolerance) {
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
    this.tolerance = tolerance;
    spectrum = new ReflectionSpectrum(re, im);
    freeSpace = re == 1 && im == 0;
  }

  /** Refuses arguments outside the half-space. */
  static void check(double rho, double zeta) {
    if (!(rho >= 0 && zeta > 0) || Double.isInfinite(rho) || Double.isInfinite(zeta)) {
      throw new IllegalArgumentException(
          "horizontal distance "
              + rho
              + " m must not be negative and height sum "
              + zeta
              + " m must be positive");
    }
  }

  boolean isFreeSpace() {
    return freeSpace;
  }

  /** Kernels times R' e^{jk0R'}, for arguments in units of 1/k0. */
  void scaled(
      KernelSet kernels,
      double rho,
      double zeta,
      double[] out,
      int offset,
      VectorQuadrature quadrature) {
    int size = kernels.size();
    if (freeSpace) {
      Arrays.fill(out, offset, offset + size, 0);
      return;
    }
    double[] sum = new double[size];
    double distance = Math.sqrt(rho * rho + zeta * zeta);
    double limit = tolerance / (8 * distance);
    double digits = 3 - Math.log(tolerance);
    double lag = 0;
    if (rho <= 2.5 * zeta && rho * rho <= 12 * zeta) {
      new VerticalPath(spectrum, kernels).add(rho, zeta, limit, digits, quadrature, sum);
      lag = rho * rho / (distance + zeta); // R' − ζ
    } else {
      new SaddlePath(spectrum, kernels).add(rho, zeta, limit, digits, quadrature, sum);
    }
    double re = distance * Math.cos(lag);
    double im = distance * Math.sin(lag);
    for (int i = 0; i < size; i += 2) {
      out[offset + i] = sum[i] * re - sum[i + 1] * im;
      out[offset + i + 1] = sum[i] * im + sum[i + 1] * re;
    }
  }
}
