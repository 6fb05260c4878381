package org.spanwire.internal.kernel;

import org.spanwire.internal.mesh.Piece;

/**
 * exp(−jkR)/R between two wires that are not on one line, averaged around both circumferences by
 * the midpoint rule, whose error falls like (a/(d − b))^N with N points. Beyond a reach, in radii,
 * the second-order mean of {@link DirectKernel} misses less than is asked for: its error falls like
 * the fourth power, 1e-4 at 16 radii at a point. Closer than three radii, at a corner, the surfaces
 * cut into each other and the second-order kernel stands in; between three and six the two blend
 * into each other, so that the kernel is one smooth function of place whatever the mesh.
 */
final class TubePairKernel implements NodeKernel {

  /** Mean radii between which the second-order kernel gives way to the full average. */
  private static final double BLEND_FROM = 3;

  private static final double BLEND_TO = 6;

  private static final int FEWEST = 4;
  private static final int MOST = 24;

  /** The integrals' accuracy for which a reach of sixteen radii is enough. */
  private static final double ACCURACY_AT_SIXTEEN = 1e-6;

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

  private final DirectKernel secondOrder;
  private final double accuracy;
  private final double reachInRadii;
  private final double[] acrossA = new double[6];
  private final double[] acrossB = new double[6];
  private double k;
  private double radiusA;
  private double radiusB;
  private double blendFrom;
  private double blendTo;
  private boolean isBeyond;
  private int pointsA;
  private int pointsB;

  /**
   * Prepares for pairs of pieces.
   *
   * @param secondOrder must be prepared for the same pieces
   * @param accuracy wanted relative accuracy of the integrals
   */
  TubePairKernel(DirectKernel secondOrder, double accuracy) {
    this.secondOrder = secondOrder;
    this.accuracy = accuracy;
    reachInRadii = 16 * Math.max(1, Math.pow(ACCURACY_AT_SIXTEEN / accuracy, 0.25));
  }

  /** Whether two pieces at a least distance are so close that their circumferences matter. */
  boolean applies(Piece a, Piece b, double leastDistance2) {
    double reach = reachInRadii * Math.max(a.radius(), b.radius());
    return leastDistance2 < reach * reach;
  }

  void prepare(Piece a, Piece b, double wavenumber) {
    k = wavenumber;
    radiusA = a.radius();
    radiusB = b.radius();
    blendFrom = 0.5 * BLEND_FROM * (radiusA + radiusB);
    blendTo = 0.5 * BLEND_TO * (radiusA + radiusB);
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
    isBeyond = leastDistance >= reachInRadii * Math.max(radiusA, radiusB);
    if (!isBeyond) {
      double from = Math.max(leastDistance, blendFrom);
      pointsA = points(radiusA / (from - radiusB));
      pointsB = points(radiusB / (from - radiusA));
    }
  }

  @Override
  public double clearance(double distance) {
    return Math.max(0.4 * distance, distance - radiusA - radiusB);
  }

  @Override
  public void evaluate(double dx, double dy, double dz, double[] out) {
    double d = Math.sqrt(dx * dx + dy * dy + dz * dz);
    if (isBeyond || d <= blendFrom) {
      secondOrder.evaluate(dx, dy, dz, out);
    } else if (d >= blendTo) {
      average(dx, dy, dz, out);
    } else {
      secondOrder.evaluate(dx, dy, dz, out);
      double re = out[0];
      double im = out[1];
      average(dx, dy, dz, out);
      double x = (d - blendFrom) / (blendTo - blendFrom);
      double share = x * x * x * (10 + x * (6 * x - 15));
      out[0] = re + share * (out[0] - re);
      out[1] = im + share * (out[1] - im);
    }
  }

  private void average(double dx, double dy, double dz, double[] out) {
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

  private int points(double ratio) {
    int n = (int) Math.ceil(Math.log(accuracy) / Math.log(ratio));
    return Math.max(FEWEST, Math.min(MOST, n));
  }
}
