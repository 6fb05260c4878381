package org.spanwire.internal.kernel;

import org.spanwire.internal.mesh.Piece;

/**
 * exp(−jkR)/R between two wires that pass close by without touching, averaged around both
 * circumferences by the midpoint rule, whose error falls like (a/(d − b))^N with N points. Beyond
 * {@link #REACH} radii the second-order mean of {@link DirectKernel} is as good: there the two
 * differ by less than 1e-4 at a point and 2e-5 once integrated along parallel wires.
 */
final class TubePairKernel implements NodeKernel {

  /** Distance in radii within which the full average is taken. */
  static final double REACH = 16;

  /** Distance in mean radii below which surfaces nearly touch and no average converges. */
  private static final double CLOSEST = 3;

  private static final int FEWEST = 4;
  private static final int MOST = 24;

  /** Relative error of the average. */
  private static final double ACCURACY = 1e-6;

  private static final double[][] COSINE = new double[MOST + 1][];
  private static final double[][] SINE = new double[MOST + 1][];

  static {
    for (int n = FEWEST; n <= MOST; n++) {
      COSINE[n] = new double[n];
      SINE[n] = new double[n];
      for (int i = 0; i < n; i++) {
        double angle = 2 * Math.PI * (i + 0.5) / n;
        COSINE[n][i] = Math.cos(angle);
        SINE[n][i] = Math.sin(angle);
      }
    }
  }

  private final DirectKernel beyond;
  private final double[] acrossA = new double[6];
  private final double[] acrossB = new double[6];
  private double k;
  private double radiusA;
  private double radiusB;
  private double reach;
  private boolean isBeyond;
  private int pointsA;
  private int pointsB;

  TubePairKernel(DirectKernel beyond) {
    this.beyond = beyond;
  }

  /** Whether two pieces at a least distance are neighbours of this kind. */
  static boolean applies(Piece a, Piece b, double leastDistance2) {
    double closest = 0.5 * CLOSEST * (a.radius() + b.radius());
    double reach = REACH * Math.max(a.radius(), b.radius());
    return leastDistance2 >= closest * closest && leastDistance2 < reach * reach;
  }

  /** The second-order kernel must have been prepared for the same pieces. */
  void prepare(Piece a, Piece b, double wavenumber) {
    k = wavenumber;
    radiusA = a.radius();
    radiusB = b.radius();
    reach = REACH * Math.max(radiusA, radiusB);
    frame(a, acrossA);
    frame(b, acrossB);
  }

  /** Two unit vectors across a piece. */
  private static void frame(Piece p, double[] across) {
    double x = Math.abs(p.ux()) < 0.6 ? 1 : 0;
    double y = 1 - x;
    double along = x * p.ux() + y * p.uy();
    double ex = x - along * p.ux();
    double ey = y - along * p.uy();
    double ez = -along * p.uz();
    double size = Math.sqrt(ex * ex + ey * ey + ez * ez);
    across[0] = ex / size;
    across[1] = ey / size;
    across[2] = ez / size;
    across[3] = p.uy() * across[2] - p.uz() * across[1];
    across[4] = p.uz() * across[0] - p.ux() * across[2];
    across[5] = p.ux() * across[1] - p.uy() * across[0];
  }

  @Override
  public void enter(double leastDistance) {
    isBeyond = leastDistance >= reach;
    if (!isBeyond) {
      pointsA = points(radiusA / (leastDistance - radiusB));
      pointsB = points(radiusB / (leastDistance - radiusA));
    }
  }

  @Override
  public double girth() {
    return radiusA + radiusB;
  }

  @Override
  public void evaluate(double dx, double dy, double dz, double[] out) {
    if (isBeyond) {
      beyond.evaluate(dx, dy, dz, out);
      return;
    }
    double re = 0;
    double im = 0;
    for (int i = 0; i < pointsA; i++) {
      double ca = radiusA * COSINE[pointsA][i];
      double sa = radiusA * SINE[pointsA][i];
      double px = dx + ca * acrossA[0] + sa * acrossA[3];
      double py = dy + ca * acrossA[1] + sa * acrossA[4];
      double pz = dz + ca * acrossA[2] + sa * acrossA[5];
      for (int j = 0; j < pointsB; j++) {
        double cb = radiusB * COSINE[pointsB][j];
        double sb = radiusB * SINE[pointsB][j];
        double qx = px - cb * acrossB[0] - sb * acrossB[3];
        double qy = py - cb * acrossB[1] - sb * acrossB[4];
        double qz = pz - cb * acrossB[2] - sb * acrossB[5];
        double r = Math.sqrt(qx * qx + qy * qy + qz * qz);
        re += Math.cos(k * r) / r;
        im -= Math.sin(k * r) / r;
      }
    }
    out[0] = re / (pointsA * pointsB);
    out[1] = im / (pointsA * pointsB);
  }

  private static int points(double ratio) {
    int n = (int) Math.ceil(Math.log(ACCURACY) / Math.log(ratio));
    return Math.max(FEWEST, Math.min(MOST, n));
  }
}
