package org.spanwire.internal.halfspace;

/** The limit of infinite conductivity: one image, no cross term. */
public final class PerfectGroundKernel implements ReflectedKernel {

  private final double wavenumber;

  /** For a free-space wavenumber k0 in rad/m, positive. */
  public PerfectGroundKernel(double wavenumber) {
    if (!(wavenumber > 0) || Double.isInfinite(wavenumber)) {
      throw new IllegalArgumentException(
          "wavenumber " + wavenumber + " rad/m must be a positive finite number");
    }
    this.wavenumber = wavenumber;
  }

  @Override
  public void evaluate(double rho, double zeta, double[] out, int offset) {
    evaluateHorizontal(rho, zeta, out, offset);
    out[offset + VERTICAL] = -out[offset + HORIZONTAL];
    out[offset + VERTICAL + 1] = -out[offset + HORIZONTAL + 1];
    out[offset + CROSS] = 0;
    out[offset + CROSS + 1] = 0;
  }

  @Override
  public void evaluateHorizontal(double rho, double zeta, double[] out, int offset) {
    double distance = Math.sqrt(rho * rho + zeta * zeta);
    if (!(distance > 0)) {
      throw new IllegalArgumentException(
          "distance from the image "
              + distance
              + " m must be positive (rho "
              + rho
              + " m, zeta "
              + zeta
              + " m)");
    }
    double re = -Math.cos(wavenumber * distance) / distance;
    double im = Math.sin(wavenumber * distance) / distance;
    out[offset + HORIZONTAL] = re;
    out[offset + HORIZONTAL + 1] = im;
    out[offset + SCALAR] = re;
    out[offset + SCALAR + 1] = im;
  }
}
