package org.spanwire.internal.halfspace;

import java.util.ArrayList;
import java.util.List;
import org.apache.commons.math3.complex.Complex;
import org.spanwire.internal.math.VectorQuadrature;

/**
 * Reflected kernels interpolated over a region of (ρ, ζ). What is interpolated is the smooth part
 * R' e^{jk0R'} g of each kernel. ρ and ζ are divided into intervals that double in length; every
 * rectangle is a polynomial patch or, where that misses the tolerance, is divided into equal
 * patches. Where all heights are the same the table is one-dimensional. The error of each patch is
 * estimated from its last Chebyshev coefficients and checked against direct quadrature between
 * nodes.
 */
public final class ReflectedKernelTable implements ReflectedKernel {

  /** Default error of a kernel relative to 1/R'. */
  public static final double DEFAULT_TOLERANCE = 1e-5;

  private static final int FINEST_LEVEL = 7;

  /**
   * Relative amount by which a distance may leave the region before it is refused: rounding of the
   * caller.
   */
  private static final double SLACK = 1e-9;

  private final double wavenumber;
  private final KernelRegion region;
  private final double tolerance;
  private final GeometricAxis rhoAxis;
  private final GeometricAxis zetaAxis;
  private final double rhoHigh;
  private final double zetaLow;
  private final double zetaHigh;
  private final double rhoInverse;
  private final double zetaInverse;
  private final int[] rows;
  private final int patchSize;
  private final int[] firstPatch;
  private final int[] levels;
  private final double[] coefficients;

  /**
   * Builds the table.
   *
   * @param wavenumber free-space wavenumber k0 in rad/m, positive
   * @param permittivity complex relative permittivity ε_r − jσ/(ωε0) of the soil
   * @param tolerance largest error of every kernel relative to 1/R', from 1e-9 to 1e-2
   * @throws ArithmeticException when the finest division does not reach the tolerance
   */
  public ReflectedKernelTable(
      double wavenumber, Complex permittivity, KernelRegion region, double tolerance) {
    if (!(tolerance >= 1e-9 && tolerance <= 1e-2)) {
      throw new IllegalArgumentException(
          "tolerance " + tolerance + " must lie between 1e-9 and 0.01");
    }
    this.wavenumber = wavenumber;
    this.region = region;
    this.tolerance = tolerance;
    SommerfeldKernel direct = new SommerfeldKernel(wavenumber, permittivity, 0.1 * tolerance);
    rhoAxis = GeometricAxis.of(0, region.rhoMax(), region.zetaMin());
    zetaAxis = GeometricAxis.of(region.zetaMin(), region.zetaMax(), region.zetaMin());
    boolean oneHeight = isOneHeight();
    rhoHigh = region.rhoMax() * (1 + SLACK);
    zetaLow = region.zetaMin() * (1 - SLACK);
    zetaHigh = region.zetaMax() * (1 + SLACK);
    rhoInverse = 1 / rhoAxis.scale();
    zetaInverse = oneHeight ? 0 : 1 / zetaAxis.scale();
    ChebyshevPatch patch = new ChebyshevPatch(pointsAlongRho(), oneHeight ? 1 : pointsAlongZeta());
    rows = patch.rows();
    patchSize = patch.size();
    int blocks = rhoAxis.intervals() * (oneHeight ? 1 : zetaAxis.intervals());
    firstPatch = new int[blocks];
    levels = new int[2 * blocks];
    List<double[]> patches = new ArrayList<>();
    PatchBuilder builder = new PatchBuilder(direct, patch);
    for (int block = 0; block < blocks; block++) {
      firstPatch[block] = patches.size();
      patches.addAll(builder.build(block));
    }
    coefficients = new double[patches.size() * patchSize];
    for (int p = 0; p < patches.size(); p++) {
      System.arraycopy(patches.get(p), 0, coefficients, p * patchSize, patchSize);
    }
  }

  /** The region that the table covers. */
  public KernelRegion region() {
    return region;
  }

  /** Size of the table in bytes. */
  public long bytes() {
    return 8L * coefficients.length;
  }

  /** Whether the change of the kernels over the range of heights is far below the tolerance. */
  private boolean isOneHeight() {
    double range = region.zetaMax() - region.zetaMin();
    return range * (wavenumber + 1 / region.zetaMin()) < 0.01 * tolerance;
  }

  /**
   * The nearest singularity, ρ = ±jζ, lies on the ellipse of parameter 4.4 around the first
   * interval.
   */
  private int pointsAlongRho() {
    return 1 + (int) Math.ceil(-Math.log(tolerance) / Math.log(4.4));
  }

  /** The singularity ζ = 0 seen from the first interval. */
  private int pointsAlongZeta() {
    double z = 1 + 2 * region.zetaMin() / zetaAxis.scale();
    return 1 + (int) Math.ceil(-Math.log(tolerance) / Math.log(z + Math.sqrt(z * z - 1)));
  }

  @Override
  public void evaluate(double rho, double zeta, double[] out, int offset) {
    interpolate(rho, zeta, false, out, offset);
    double distance = Math.sqrt(rho * rho + zeta * zeta);
    double c = Math.cos(wavenumber * distance) / distance;
    double s = Math.sin(wavenumber * distance) / distance;
    for (int i = offset; i < offset + VALUES; i += 2) {
      restore(c, s, out, i);
    }
  }

  @Override
  public void evaluateHorizontal(double rho, double zeta, double[] out, int offset) {
    interpolate(rho, zeta, true, out, offset);
    double distance = Math.sqrt(rho * rho + zeta * zeta);
    double c = Math.cos(wavenumber * distance) / distance;
    double s = Math.sin(wavenumber * distance) / distance;
    restore(c, s, out, offset + HORIZONTAL);
    restore(c, s, out, offset + SCALAR);
  }

  /** Puts the factor e^{−jk0R'}/R' = c − js back. */
  private static void restore(double c, double s, double[] out, int i) {
    double re = out[i] * c + out[i + 1] * s;
    out[i + 1] = out[i + 1] * c - out[i] * s;
    out[i] = re;
  }

  /** Finds the patch from the bits of the two coordinates and evaluates it. */
  private void interpolate(double rho, double zeta, boolean horizontal, double[] out, int offset) {
    if (!(rho >= 0 && rho <= rhoHigh && zeta >= zetaLow && zeta <= zetaHigh)) {
      throw new IllegalArgumentException(
          "horizontal distance "
              + rho
              + " m, height sum "
              + zeta
              + " m lie outside the table's "
              + region);
    }
    double px = 1 + rho * rhoInverse;
    double py = 1 + Math.max(0, (zeta - region.zetaMin()) * zetaInverse);
    int bx = Math.min(Math.getExponent(px), rhoAxis.intervals() - 1);
    int by = Math.min(Math.getExponent(py), zetaAxis.intervals() - 1);
    int block = by * rhoAxis.intervals() + bx;
    int countX = 1 << levels[2 * block];
    int countY = 1 << levels[2 * block + 1];
    double tx = (Math.scalb(px, -bx) - 1) * countX;
    double ty = (Math.scalb(py, -by) - 1) * countY;
    int ix = Math.min((int) tx, countX - 1);
    int iy = Math.min((int) ty, countY - 1);
    int at = (firstPatch[block] + iy * countX + ix) * patchSize;
    double x = 2 * (tx - ix) - 1;
    double y = 2 * (ty - iy) - 1;
    if (horizontal) {
      ChebyshevPatch.evaluateHorizontal(coefficients, at, rows, x, y, out, offset);
    } else {
      ChebyshevPatch.evaluate(coefficients, at, rows, x, y, out, offset);
    }
  }

  /** Builds the patches of one rectangle after the other. */
  private final class PatchBuilder {

    private final SommerfeldKernel direct;
    private final ChebyshevPatch patch;
    private final int nx;
    private final int ny;
    private final VectorQuadrature quadrature = new VectorQuadrature(VALUES);

    PatchBuilder(SommerfeldKernel direct, ChebyshevPatch patch) {
      this.direct = direct;
      this.patch = patch;
      nx = rows[0];
      ny = rows.length;
    }

    /** Patches of a rectangle, along ρ first; divides it until all reach the tolerance. */
    List<double[]> build(int block) {
      while (true) {
        double[] error = new double[2];
        List<double[]> patches = new ArrayList<>();
        int countX = 1 << levels[2 * block];
        int countY = 1 << levels[2 * block + 1];
        for (int p = 0; p < countX * countY && error[0] + error[1] <= tolerance; p++) {
          patches.add(buildOne(block, p % countX, p / countX, error));
        }
        if (error[0] + error[1] <= tolerance) {
          return patches;
        }
        int direction = error[0] >= error[1] ? 0 : 1;
        if (++levels[2 * block + direction] > FINEST_LEVEL) {
          throw new ArithmeticException(
              "table of kernels did not reach the tolerance " + tolerance + " over " + region);
        }
      }
    }

    private double[] buildOne(int block, int ix, int iy, double[] error) {
      double[] values = new double[nx * ny * VALUES];
      for (int j = 0; j < ny; j++) {
        for (int i = 0; i < nx; i++) {
          sample(
              block,
              ix,
              iy,
              ChebyshevPatch.node(i, nx),
              ChebyshevPatch.node(j, ny),
              values,
              (j * nx + i) * VALUES);
        }
      }
      double[] found = patch.transform(values);
      double[] powers = new double[patchSize];
      patch.store(values, powers);
      double missed = missedBetweenNodes(block, ix, iy, powers);
      if (missed > tolerance) {
        found[found[0] >= found[1] ? 0 : 1] += missed;
      }
      error[0] = Math.max(error[0], found[0]);
      error[1] = Math.max(error[1], found[1]);
      return powers;
    }

    /**
     * Largest error at a point midway between nodes near a corner, where it is largest, on one
     * diagonal.
     */
    private double missedBetweenNodes(int block, int ix, int iy, double[] powers) {
      double x = 0.5 * (ChebyshevPatch.node(0, nx) + ChebyshevPatch.node(1, nx));
      double y = ny == 1 ? 0 : -0.5 * (ChebyshevPatch.node(0, ny) + ChebyshevPatch.node(1, ny));
      double[] expected = new double[VALUES];
      double[] found = new double[VALUES];
      double worst = 0;
      for (int sign = -1; sign <= 1; sign += 2) {
        sample(block, ix, iy, sign * x, sign * y, expected, 0);
        ChebyshevPatch.evaluate(powers, 0, rows, sign * x, sign * y, found, 0);
        for (int v = 0; v < VALUES; v++) {
          worst = Math.max(worst, Math.abs(found[v] - expected[v]));
        }
      }
      return worst;
    }

    private void sample(int block, int ix, int iy, double x, double y, double[] values, int at) {
      int bx = block % rhoAxis.intervals();
      int by = block / rhoAxis.intervals();
      double rho = rhoAxis.value(bx, (ix + 0.5 * (x + 1)) / (1 << levels[2 * block]));
      double zeta =
          ny == 1
              ? region.zetaMin()
              : zetaAxis.value(by, (iy + 0.5 * (y + 1)) / (1 << levels[2 * block + 1]));
      direct.scaled(wavenumber * rho, wavenumber * zeta, values, at, quadrature);
    }
  }
}
