package org.spanwire.internal.halfspace;

import java.util.Arrays;
import org.apache.commons.math3.complex.Complex;
import org.spanwire.internal.math.VectorQuadrature;

/**
 * The reflected kernels of {@link ReflectedKernel} together with the derivatives that electric and
 * magnetic fields need, by direct quadrature of the Sommerfeld integrals with error control at any
 * distance along the surface. Kernels are in 1/m, derivatives in 1/m²; ρ is the horizontal
 * distance, ζ = z + z' the sum of the heights. Immutable and safe for use by several threads.
 */
public final class ReflectedFieldKernel {

  /** Number of doubles that {@link #evaluate} writes. */
  public static final int VALUES = 18;

  /** Position of the kernel K_h of the horizontal vector potential; the imaginary part follows. */
  public static final int HORIZONTAL = 0;

  /** Position of the kernel K_v of the vertical vector potential. */
  public static final int VERTICAL = 2;

  /** Position of C/ρ, C the cross kernel. */
  public static final int CROSS_OVER_RHO = 4;

  /** Position of ∂C/∂ρ + C/ρ. */
  public static final int CROSS_SUM = 6;

  /** Position of ∂K_φ/∂ζ, K_φ the kernel of the scalar potential. */
  public static final int SCALAR_ZETA = 8;

  /** Position of ∂K_φ/∂ρ. */
  public static final int SCALAR_RHO = 10;

  /** Position of ∂K_h/∂ζ. */
  public static final int HORIZONTAL_ZETA = 12;

  /** Position of ∂K_h/∂ρ. */
  public static final int HORIZONTAL_RHO = 14;

  /** Position of ∂K_v/∂ρ + ∂C/∂ζ. */
  public static final int CURL = 16;

  private final double wavenumber;
  private final SommerfeldQuadrature quadrature;

  /**
   * @param wavenumber free-space wavenumber k0 in rad/m, positive
   * @param permittivity complex relative permittivity ε_r − jσ/(ωε0) of the soil
   * @param tolerance wanted error of kernels relative to 1/R' and of derivatives relative to (k0 +
   *     1/R')/R', from 1e-12 to 1e-2
   */
  public ReflectedFieldKernel(double wavenumber, Complex permittivity, double tolerance) {
    this.wavenumber = wavenumber;
    quadrature = new SommerfeldQuadrature(wavenumber, permittivity, tolerance);
  }

  /**
   * Writes kernels and derivatives, real and imaginary parts in turn.
   *
   * @param rho horizontal distance ρ in metres, not negative
   * @param zeta sum ζ of the heights in metres, positive
   * @param out receives {@value #VALUES} values
   */
  public void evaluate(double rho, double zeta, double[] out) {
    SommerfeldQuadrature.check(rho, zeta);
    scaled(rho, zeta, out, new VectorQuadrature(VALUES));
    restore(rho, zeta, out);
  }

  /** The smooth part: what {@link #restore} makes kernels and derivatives of. */
  void scaled(double rho, double zeta, double[] out, VectorQuadrature workSpace) {
    if (quadrature.isFreeSpace()) {
      Arrays.fill(out, 0, VALUES, 0);
      return;
    }
    FieldKernels kernels = new FieldKernels();
    kernels.prepare(wavenumber * Math.sqrt(rho * rho + zeta * zeta));
    quadrature.scaled(kernels, wavenumber * rho, wavenumber * zeta, out, 0, workSpace);
  }

  /** Puts e^{−jk0R'}/R' and the growth of derivatives toward the image into the smooth part. */
  void restore(double rho, double zeta, double[] out) {
    double distance = Math.sqrt(rho * rho + zeta * zeta);
    double c = Math.cos(wavenumber * distance) / distance;
    double s = Math.sin(wavenumber * distance) / distance;
    double growth = wavenumber / FieldKernels.slope(wavenumber * distance);
    for (int i = 0; i < VALUES; i += 2) {
      double unit = i < CROSS_OVER_RHO ? 1 : growth;
      double re = out[i] * c + out[i + 1] * s;
      double im = out[i + 1] * c - out[i] * s;
      out[i] = unit * re;
      out[i + 1] = unit * im;
    }
  }
}
