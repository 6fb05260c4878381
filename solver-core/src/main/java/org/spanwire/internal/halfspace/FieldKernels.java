package org.spanwire.internal.halfspace;

/**
 * What the fields need besides potentials: the kernels and their derivatives, in the order of
 * {@link ReflectedFieldKernel}. Derivatives of J0(sρ) by DLMF 10.6.3, of the cross kernel by J1'(x)
 * = J0(x) − J1(x)/x. Holds the state of one evaluation.
 */
final class FieldKernels implements KernelSet {

  /** Derivatives are larger than kernels close by; this factor makes both about equal. */
  private double slope = 1;

  /** Sets the distance R' from the image. */
  void prepare(double distance) {
    slope = slope(distance);
  }

  /** The equalising factor at a distance R'. */
  static double slope(double distance) {
    return distance / (1 + distance);
  }

  @Override
  public int size() {
    return ReflectedFieldKernel.VALUES;
  }

  @Override
  public void write(
      double sr,
      double si,
      double wr,
      double wi,
      double mr,
      double mi,
      double[] f,
      double[] bessel,
      double rho,
      double[] values) {
    double ar = mr * bessel[0] - mi * bessel[1];
    double ai = mr * bessel[1] + mi * bessel[0];
    times(f[0], f[1], ar, ai, values, ReflectedFieldKernel.HORIZONTAL);
    times(f[2], f[3], ar, ai, values, ReflectedFieldKernel.VERTICAL);
    ar *= slope;
    ai *= slope;
    // ∂/∂ζ: times −jw.
    double zr = ar * wi + ai * wr;
    double zi = ai * wi - ar * wr;
    times(f[4], f[5], zr, zi, values, ReflectedFieldKernel.SCALAR_ZETA);
    times(f[0], f[1], zr, zi, values, ReflectedFieldKernel.HORIZONTAL_ZETA);
    // jw s² D J0, the negative of the last factor times s².
    double s2r = sr * sr - si * si;
    double s2i = 2 * sr * si;
    double xr = -(zr * s2r - zi * s2i);
    double xi = -(zr * s2i + zi * s2r);
    times(f[6], f[7], xr, xi, values, ReflectedFieldKernel.CROSS_SUM);
    // ∂/∂ρ: −s J1.
    double br = slope * (mr * bessel[2] - mi * bessel[3]);
    double bi = slope * (mr * bessel[3] + mi * bessel[2]);
    double dr = -(sr * br - si * bi);
    double di = -(sr * bi + si * br);
    times(f[4], f[5], dr, di, values, ReflectedFieldKernel.SCALAR_RHO);
    times(f[0], f[1], dr, di, values, ReflectedFieldKernel.HORIZONTAL_RHO);
    // ∂/∂ρ of −Γe + w² D and ∂/∂ζ of the cross kernel leave s Γe J1, Γe = (Γe − D) + D.
    times(f[4] + f[6], f[5] + f[7], -dr, -di, values, ReflectedFieldKernel.CURL);
    // jw s D J1/ρ, with J1(sρ)/ρ → s/2 on the axis.
    double qr = rho > 0 ? -dr / rho : slope * 0.5 * (mr * s2r - mi * s2i);
    double qi = rho > 0 ? -di / rho : slope * 0.5 * (mr * s2i + mi * s2r);
    times(
        f[6],
        f[7],
        -(qr * wi + qi * wr),
        qr * wr - qi * wi,
        values,
        ReflectedFieldKernel.CROSS_OVER_RHO);
  }

  private static void times(
      double ar, double ai, double br, double bi, double[] values, int position) {
    values[position] = ar * br - ai * bi;
    values[position + 1] = ar * bi + ai * br;
  }
}
