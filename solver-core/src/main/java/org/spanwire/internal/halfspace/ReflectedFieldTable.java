package org.spanwire.internal.halfspace;

import java.util.Map;
import java.util.concurrent.ConcurrentHashMap;
import org.apache.commons.math3.complex.Complex;
import org.spanwire.internal.math.ChebyshevGrid;
import org.spanwire.internal.math.VectorQuadrature;

/**
 * The kernels and derivatives of {@link ReflectedFieldKernel} by interpolation, for fields at very
 * many points. What is interpolated is their smooth part, without the factor e^{−jk0R'}/R' and the
 * growth of derivatives toward the image, on rectangles of (ρ, ζ) that are made when first looked
 * into: twice as long as they begin far from the singularity R' = 0, and never longer than half a
 * wavelength. The order of each rectangle is raised until the interpolant meets direct quadrature
 * between its nodes. A rectangle depends on its place alone, so the values do not depend on who
 * asks first. Safe for use by several threads.
 */
public final class ReflectedFieldTable {

  private static final int VALUES = ReflectedFieldKernel.VALUES;
  private static final int LOWEST_ORDER = 6;
  private static final int HIGHEST_ORDER = 26;

  private final double tolerance;
  private final double longest;
  private final ReflectedFieldKernel direct;
  private final Map<Long, Rectangle> rectangles = new ConcurrentHashMap<>();

  private record Rectangle(
      double rho, double rhoLength, double zeta, double zetaLength, Grid grid) {

    void evaluate(double atRho, double atZeta, double[] out) {
      grid.values.interpolate(
          2 * (atRho - rho) / rhoLength - 1, 2 * (atZeta - zeta) / zetaLength - 1, grid.data, out);
    }
  }

  private record Grid(ChebyshevGrid values, double[] data) {}

  /** An interval of one coordinate. */
  private record Interval(int index, double start, double length) {}

  /**
   * @param wavenumber free-space wavenumber k0 in rad/m, positive
   * @param permittivity complex relative permittivity ε_r − jσ/(ωε0) of the soil
   * @param tolerance wanted error of kernels relative to 1/R' and of derivatives relative to (k0 +
   *     1/R')/R', from 1e-8 to 1e-2
   */
  public ReflectedFieldTable(double wavenumber, Complex permittivity, double tolerance) {
    if (!(tolerance >= 1e-8 && tolerance <= 1e-2)) {
      throw new IllegalArgumentException(
          "tolerance " + tolerance + " must lie between 1e-8 and 0.01");
    }
    this.tolerance = tolerance;
    longest = Math.PI / wavenumber;
    direct = new ReflectedFieldKernel(wavenumber, permittivity, 0.1 * tolerance);
  }

  /** As {@link ReflectedFieldKernel#evaluate}. */
  public void evaluate(double rho, double zeta, double[] out) {
    SommerfeldQuadrature.check(rho, zeta);
    Interval height = height(zeta);
    Interval distance = distance(rho, height.start);
    long key = ((long) height.index << 32) + distance.index;
    Rectangle rectangle = rectangles.get(key);
    if (rectangle == null) {
      rectangle = rectangles.computeIfAbsent(key, k -> build(distance, height));
    }
    rectangle.evaluate(rho, zeta, out);
    direct.restore(rho, zeta, out);
  }

  /** From a power of two to the next, cut into equal parts where that is too long. */
  private Interval height(double zeta) {
    int exponent = Math.getExponent(zeta);
    double start = Math.scalb(1.0, exponent);
    int parts = (int) Math.max(1, Math.ceil(start / longest));
    int part = Math.min(parts - 1, (int) ((zeta - start) / start * parts));
    double length = start / parts;
    return new Interval((exponent << 16) + part, start + part * length, length);
  }

  /** Twice as long from one to the next, beginning with the least height, then all alike. */
  private Interval distance(double rho, double first) {
    double step = Math.min(first, longest);
    int doublings = Math.getExponent(longest / step);
    double even = step * (Math.scalb(1.0, doublings) - 1);
    double widest = Math.scalb(step, doublings);
    if (rho >= even) {
      int index = (int) ((rho - even) / widest);
      return new Interval(doublings + index, even + index * widest, widest);
    }
    int index = Math.getExponent(1 + rho / step);
    return new Interval(index, step * (Math.scalb(1.0, index) - 1), Math.scalb(step, index));
  }

  private Rectangle build(Interval distance, Interval height) {
    VectorQuadrature quadrature = new VectorQuadrature(VALUES);
    for (int order = LOWEST_ORDER; order <= HIGHEST_ORDER; order += 4) {
      ChebyshevGrid values = new ChebyshevGrid(order, order, VALUES);
      double[] data =
          values.sample(
              (x, y, out) ->
                  direct.scaled(
                      distance.start + 0.5 * (x + 1) * distance.length,
                      height.start + 0.5 * (y + 1) * height.length,
                      out,
                      quadrature));
      Rectangle rectangle =
          new Rectangle(
              distance.start, distance.length, height.start, height.length, new Grid(values, data));
      if (missed(rectangle, order, quadrature) <= tolerance) {
        return rectangle;
      }
    }
    throw new ArithmeticException(
        "table of field kernels did not reach the tolerance "
            + tolerance
            + " at a distance of "
            + distance.start
            + " m and a height sum of "
            + height.start
            + " m");
  }

  /** Largest error midway between nodes near the four corners, where it is largest. */
  private double missed(Rectangle r, int order, VectorQuadrature quadrature) {
    double near = 0.5 * (ChebyshevGrid.node(0, order) + ChebyshevGrid.node(1, order));
    double[] expected = new double[VALUES];
    double[] found = new double[VALUES];
    double worst = 0;
    for (int corner = 0; corner < 4; corner++) {
      double rho = r.rho + 0.5 * (1 + (corner % 2 == 0 ? -near : near)) * r.rhoLength;
      double zeta = r.zeta + 0.5 * (1 + (corner < 2 ? -near : near)) * r.zetaLength;
      direct.scaled(rho, zeta, expected, quadrature);
      r.evaluate(rho, zeta, found);
      for (int v = 0; v < VALUES; v++) {
        worst = Math.max(worst, Math.abs(found[v] - expected[v]));
      }
    }
    return worst;
  }
}
