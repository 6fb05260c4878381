package org.spanwire.internal.moment;

import java.util.ArrayList;
import java.util.List;
import org.spanwire.internal.halfspace.KernelRegion;
import org.spanwire.internal.halfspace.ReflectedKernel;
import org.spanwire.internal.halfspace.SommerfeldKernel;
import org.spanwire.medium.Ground;
import org.spanwire.medium.Soil;
import org.spanwire.unit.PhysicalConstants;

/**
 * What the moments of reflected kernels look like as functions of frequency and lift, at a few
 * distances at the rim of those that occur: R'_c exp(jkR'_c) times the kernel, with R'_c the
 * distance of the centre of one piece from the image of the other's, which differs from R' by up to
 * a piece's length.
 *
 * @param region distances without a lift
 * @param length of the longest piece in metres
 * @param tolerance wanted error relative to 1/R'
 */
record ReflectionProbe(Ground ground, KernelRegion region, double length, double tolerance) {

  /** Horizontal distances over the largest. */
  private static final double[] ALONG = {0, 0.3, 1};

  /** Share of the wanted error that the kernels' own may have. */
  private static final double QUADRATURE_SHARE = 0.03;

  /** Values of size about 1 at a frequency in hertz and a lift in metres. */
  double[] at(double frequencyHz, double lift) {
    double k = PhysicalConstants.wavenumber(frequencyHz);
    ReflectedKernel kernel = kernel(k, frequencyHz);
    List<Double> values = new ArrayList<>();
    for (double zeta : new double[] {region.zetaMin(), region.zetaMax()}) {
      for (double along : ALONG) {
        double rho = along * region.rhoMax();
        double[] found = new double[ReflectedKernel.VALUES];
        kernel.evaluate(rho, zeta + 2 * lift, found, 0);
        add(found, k, rho + length, zeta, lift, values, Math.hypot(rho, zeta));
        add(found, k, rho, zeta + length, lift, values, Math.hypot(rho, zeta));
        add(found, k, Math.max(0, rho - length), zeta, lift, values, Math.hypot(rho, zeta));
      }
      if (region.zetaMin() == region.zetaMax()) {
        break;
      }
    }
    return values.stream().mapToDouble(Double::doubleValue).toArray();
  }

  private ReflectedKernel kernel(double k, double frequencyHz) {
    if (ground instanceof Soil soil) {
      return new SommerfeldKernel(
          k, soil.complexPermittivity(frequencyHz), QUADRATURE_SHARE * tolerance);
    }
    return (rho, zeta, out, offset) -> {
      double distance = Math.hypot(rho, zeta);
      out[offset] = Math.cos(k * distance) / distance;
      out[offset + 1] = -Math.sin(k * distance) / distance;
    };
  }

  private void add(
      double[] found,
      double k,
      double rho,
      double zeta,
      double lift,
      List<Double> values,
      double unlifted) {
    double centre = Math.hypot(rho, zeta + 2 * lift);
    double size = centre * Math.min(1, unlifted / Math.hypot(rho, zeta));
    double c = Math.cos(k * centre) * size;
    double s = Math.sin(k * centre) * size;
    for (int v = 0; v < found.length; v += 2) {
      values.add(found[v] * c - found[v + 1] * s);
      values.add(found[v] * s + found[v + 1] * c);
    }
  }
}
