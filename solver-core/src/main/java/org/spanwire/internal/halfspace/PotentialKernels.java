package org.spanwire.internal.halfspace;

/** The four kernels of the potentials, in the order of {@link ReflectedKernel}. */
final class PotentialKernels implements KernelSet {

  @Override
  public int size() {
    return ReflectedKernel.VALUES;
  }

  @Override
  public void write(
      double sr,
      double si,
      double wr,
      double wi,
      double mr,
      double mi,
      double[] factors,
      double[] bessel,
      double rho,
      double[] values) {
    double br = mr * bessel[0] - mi * bessel[1];
    double bi = mr * bessel[1] + mi * bessel[0];
    for (int i = 0; i < 6; i += 2) {
      values[i] = factors[i] * br - factors[i + 1] * bi;
      values[i + 1] = factors[i] * bi + factors[i + 1] * br;
    }
    // j w s M
    double xr = -(sr * wi + si * wr);
    double xi = sr * wr - si * wi;
    br = mr * xr - mi * xi;
    bi = mr * xi + mi * xr;
    double yr = br * bessel[2] - bi * bessel[3];
    double yi = br * bessel[3] + bi * bessel[2];
    values[6] = factors[6] * yr - factors[7] * yi;
    values[7] = factors[6] * yi + factors[7] * yr;
  }
}
