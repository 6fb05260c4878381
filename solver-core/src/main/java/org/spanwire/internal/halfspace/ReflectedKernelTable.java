package org.spanwire.internal.halfspace;

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

  private static final int MOST_DIVISIONS = 128;

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
  private final PatchBuilder builder;

  /** Rectangles that were built; written under a lock, read without. */
  private final Block[] blocks;

  /**
   * Patches of a rectangle, along ρ first.
   *
   * @param countX number of patches along ρ
   * @param countY number along ζ
   */
  private record Block(int countX, int countY, double[] coefficients) {}

  /**
   * Prepares the table. Its rectangles are built when they are first needed: those of {@link
   * #cover} at once.
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
    builder = new PatchBuilder(direct, patch);
    blocks = new Block[rhoAxis.intervals() * (oneHeight ? 1 : zetaAxis.intervals())];
  }

  /** The region that the table covers. */
  public KernelRegion region() {
    return region;
  }

  /**
   * Builds all rectangles that a range of distances touches. What lies outside the region is left
   * out.
   */
  public void cover(double rhoFrom, double rhoTo, double zetaFrom, double zetaTo) {
    int lastX = interval(rhoTo * rhoInverse, rhoAxis);
    int lastY = interval((zetaTo - region.zetaMin()) * zetaInverse, zetaAxis);
    for (int by = interval((zetaFrom - region.zetaMin()) * zetaInverse, zetaAxis);
        by <= lastY;
        by++) {
      for (int bx = interval(rhoFrom * rhoInverse, rhoAxis); bx <= lastX; bx++) {
        block(by * rhoAxis.intervals() + bx);
      }
    }
  }

  private static int interval(double ratio, GeometricAxis axis) {
    return Math.min(Math.getExponent(1 + Math.max(0, ratio)), axis.intervals() - 1);
  }

  private Block block(int index) {
    Block known = blocks[index];
    if (known == null) {
      synchronized (blocks) {
        known = blocks[index];
        if (known == null) {
          known = builder.build(index);
          blocks[index] = known;
        }
      }
    }
    return known;
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
    Block block = block(by * rhoAxis.intervals() + bx);
    double tx = (Math.scalb(px, -bx) - 1) * block.countX;
    double ty = (Math.scalb(py, -by) - 1) * block.countY;
    int ix = Math.min((int) tx, block.countX - 1);
    int iy = Math.min((int) ty, block.countY - 1);
    int at = (iy * block.countX + ix) * patchSize;
    double x = 2 * (tx - ix) - 1;
    double y = 2 * (ty - iy) - 1;
    if (horizontal) {
      ChebyshevPatch.evaluateHorizontal(block.coefficients, at, rows, x, y, out, offset);
    } else {
      ChebyshevPatch.evaluate(block.coefficients, at, rows, x, y, out, offset);
    }
  }

  /** One patch of a divided rectangle. */
  private record Cell(int block, int countX, int countY, int ix, int iy) {}

  /** Builds the patches of one rectangle after the other. Not thread-safe. */
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

    /** Divides a rectangle until all its patches reach the tolerance. */
    Block build(int block) {
      int[] counts = {1, 1};
      while (true) {
        double[] error = new double[2];
        int count = counts[0] * counts[1];
        double[] coefficients = new double[count * patchSize];
        for (int p = 0; p < count && error[0] + error[1] <= tolerance; p++) {
          double[] powers =
              buildOne(new Cell(block, counts[0], counts[1], p % counts[0], p / counts[0]), error);
          System.arraycopy(powers, 0, coefficients, p * patchSize, patchSize);
        }
        if (error[0] + error[1] <= tolerance) {
          return new Block(counts[0], counts[1], coefficients);
        }
        int direction = error[0] >= error[1] ? 0 : 1;
        counts[direction] *= 2;
        if (counts[direction] > MOST_DIVISIONS) {
          throw new ArithmeticException(
              "table of kernels did not reach the tolerance " + tolerance + " over " + region);
        }
      }
    }

    private double[] buildOne(Cell cell, double[] error) {
      double[] values = new double[nx * ny * VALUES];
      for (int j = 0; j < ny; j++) {
        for (int i = 0; i < nx; i++) {
          sample(
              cell,
              ChebyshevPatch.node(i, nx),
              ChebyshevPatch.node(j, ny),
              values,
              (j * nx + i) * VALUES);
        }
      }
      double[] found = patch.transform(values);
      double[] powers = new double[patchSize];
      patch.store(values, powers);
      double missed = missedBetweenNodes(cell, powers);
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
    private double missedBetweenNodes(Cell cell, double[] powers) {
      double x = 0.5 * (ChebyshevPatch.node(0, nx) + ChebyshevPatch.node(1, nx));
      double y = ny == 1 ? 0 : -0.5 * (ChebyshevPatch.node(0, ny) + ChebyshevPatch.node(1, ny));
      double[] expected = new double[VALUES];
      double[] found = new double[VALUES];
      double worst = 0;
      for (int sign = -1; sign <= 1; sign += 2) {
        sample(cell, sign * x, sign * y, expected, 0);
        ChebyshevPatch.evaluate(powers, 0, rows, sign * x, sign * y, found, 0);
        for (int v = 0; v < VALUES; v++) {
          worst = Math.max(worst, Math.abs(found[v] - expected[v]));
        }
      }
      return worst;
    }

    private void sample(Cell cell, double x, double y, double[] values, int at) {
      int bx = cell.block % rhoAxis.intervals();
      int by = cell.block / rhoAxis.intervals();
      double rho = rhoAxis.value(bx, (cell.ix + 0.5 * (x + 1)) / cell.countX);
      double zeta =
          ny == 1 ? region.zetaMin() : zetaAxis.value(by, (cell.iy + 0.5 * (y + 1)) / cell.countY);
      direct.scaled(wavenumber * rho, wavenumber * zeta, values, at, quadrature);
    }
  }
}
