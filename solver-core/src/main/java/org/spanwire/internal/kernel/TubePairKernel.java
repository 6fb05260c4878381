package org.spanwire.internal.kernel;

import java.util.Arrays;
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

  /** First term left out of the series in the radii's phase. */
  private static final double SERIES_ACCURACY = 1e-13;

  private static final int MOST_TERMS = 24;

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
  private double[] k;
  private double radiusA;
  private double radiusB;
  private double blendFrom;
  private double blendTo;
  private boolean isBeyond;
  private int pointsA;
  private int pointsB;
  private int terms;
  private double[] secondOrderOut = new double[0];
  private final double[] aroundA = new double[3 * MOST];
  private final double[] aroundB = new double[3 * MOST];
  private final double[] offset2 = new double[MOST * MOST];
  private final double[] powers = new double[MOST_TERMS];

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

  void prepare(Piece a, Piece b, double... wavenumbers) {
    k = wavenumbers;
    if (secondOrderOut.length < 2 * k.length) {
      secondOrderOut = new double[2 * k.length];
    }
    double phase = Arrays.stream(k).max().orElseThrow() * (a.radius() + b.radius());
    terms = 1;
    for (double next = phase; next > SERIES_ACCURACY && terms < MOST_TERMS; next *= phase / terms) {
      terms++;
    }
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
  public int channels() {
    return k.length;
  }

  @Override
  public void enter(double leastDistance) {
    isBeyond = leastDistance >= reachInRadii * Math.max(radiusA, radiusB);
    if (!isBeyond) {
      double from = Math.max(leastDistance, blendFrom);
      pointsA = points(radiusA / (from - radiusB));
      pointsB = points(radiusB / (from - radiusA));
      ring(radiusA, pointsA, acrossA, aroundA);
      ring(radiusB, pointsB, acrossB, aroundB);
      for (int i = 0; i < pointsA; i++) {
        for (int j = 0; j < pointsB; j++) {
          double x = aroundA[3 * i] - aroundB[3 * j];
          double y = aroundA[3 * i + 1] - aroundB[3 * j + 1];
          double z = aroundA[3 * i + 2] - aroundB[3 * j + 2];
          offset2[i * MOST + j] = x * x + y * y + z * z;
        }
      }
    }
  }

  /** Points around a wire, from its axis. */
  private static void ring(double radius, int points, double[] across, double[] around) {
    for (int i = 0; i < points; i++) {
      double c = radius * COSINE[points][i];
      double s = radius * SINE[points][i];
      for (int x = 0; x < 3; x++) {
        around[3 * i + x] = c * across[x] + s * across[3 + x];
      }
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
      average(dx, dy, dz, d, out);
    } else {
      secondOrder.evaluate(dx, dy, dz, secondOrderOut);
      average(dx, dy, dz, d, out);
      double x = (d - blendFrom) / (blendTo - blendFrom);
      double share = x * x * x * (10 + x * (6 * x - 15));
      for (int c = 0; c < 2 * k.length; c++) {
        out[c] = secondOrderOut[c] + share * (out[c] - secondOrderOut[c]);
      }
    }
  }

  /** Σ (−jk)ⁿ/n! ⟨(r − d)ⁿ/r⟩ times exp(−jkd), where the wires' radii are small in phase. */
  private void average(double dx, double dy, double dz, double d, double[] out) {
    Arrays.fill(powers, 0, terms, 0);
    double along = d * d;
    for (int i = 0; i < pointsA; i++) {
      double atA = along + 2 * dot(dx, dy, dz, aroundA, i);
      for (int j = 0; j < pointsB; j++) {
        double r = Math.sqrt(atA - 2 * dot(dx, dy, dz, aroundB, j) + offset2[i * MOST + j]);
        double term = 1 / r;
        double beyond = r - d;
        for (int n = 0; n < terms; n++) {
          powers[n] += term;
          term *= beyond;
        }
      }
    }
    double share = 1.0 / (pointsA * pointsB);
    for (int c = 0; c < k.length; c++) {
      sumSeries(k[c], d, share, out, 2 * c);
    }
  }

  private void sumSeries(double wavenumber, double d, double share, double[] out, int offset) {
    double re = 0;
    double im = 0;
    for (int n = terms - 1; n >= 0; n--) {
      // (re + j im) (−jk)/(n + 1) + powers[n]
      double scaled = wavenumber / (n + 1);
      double next = powers[n] + im * scaled;
      im = -re * scaled;
      re = next;
    }
    double cosine = Math.cos(wavenumber * d) * share;
    double sine = Math.sin(wavenumber * d) * share;
    out[offset] = re * cosine + im * sine;
    out[offset + 1] = im * cosine - re * sine;
  }

  private static double dot(double dx, double dy, double dz, double[] around, int i) {
    return dx * around[3 * i] + dy * around[3 * i + 1] + dz * around[3 * i + 2];
  }

  private int points(double ratio) {
    int n = (int) Math.ceil(Math.log(accuracy) / Math.log(ratio));
    return Math.max(FEWEST, Math.min(MOST, n));
  }
}
