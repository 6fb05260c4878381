package org.spanwire.internal.kernel;

import java.util.Arrays;
import org.spanwire.internal.math.GaussLegendre;
import org.spanwire.internal.math.LegendrePolynomials;
import org.spanwire.internal.mesh.Piece;

/**
 * Moments by Gauss rules on both pieces, each piece halved until the rule reaches the wanted
 * accuracy. On a stretch of length h at distance δ the kernel is analytic inside the Bernstein
 * ellipse of ρ = y + √(1 + y²), y = 2δ/h, so that n nodes leave an error of about ρ^(p − 2n) for a
 * polynomial of degree p (Trefethen, SIAM Review 50, 2008, theorem 4.5). Its phase exp(−jks) grows
 * on that ellipse by exp(kh(ρ − 1/ρ)/4), which far away sets the limit: ρ = 4 ln(1/ε)/kh is close
 * to the best ellipse for an accuracy ε. Pieces are no longer than a wavelength.
 */
final class TensorMoments {

  /**
   * Share of the bound's digits that is asked for: the bound takes a pole at the closest point, the
   * kernel has a branch point there and most nodes are farther away. Random pairs still come out
   * better than the accuracy asked for.
   */
  private static final double BOUND_SHARE = 0.8;

  private static final int MOST_NODES = 20;
  private static final int DEEPEST = 40;

  private final double digits;
  private final double[] rowA;
  private final double[] rowB;
  private double[][] sumRe = new double[0][];
  private double[][] sumIm = new double[0][];
  private double[] value = new double[0];

  private Piece a;
  private Piece b;
  private int orderA;
  private int orderB;
  private NodeKernel kernel;
  private int channels;
  private double smoothing2;
  private double wavenumber;
  private double[][] re;
  private double[][] im;

  TensorMoments(int largestOrder, double accuracy) {
    digits = -BOUND_SHARE * Math.log(accuracy);
    rowA = new double[largestOrder + 1];
    rowB = new double[MOST_NODES * (largestOrder + 1)];
  }

  /** Moments of every channel of a kernel; k is the largest wavenumber. */
  void compute(
      Piece first,
      int firstOrder,
      Piece second,
      int secondOrder,
      NodeKernel nodeKernel,
      double smoothedOver2,
      double k,
      double[][] outRe,
      double[][] outIm) {
    a = first;
    b = second;
    orderA = firstOrder;
    orderB = secondOrder;
    kernel = nodeKernel;
    smoothing2 = smoothedOver2;
    wavenumber = k;
    re = outRe;
    im = outIm;
    channels = kernel.channels();
    if (value.length < 2 * channels) {
      value = new double[2 * channels];
      sumRe = new double[channels][rowA.length];
      sumIm = new double[channels][rowA.length];
    }
    int size = (orderA + 1) * (orderB + 1);
    for (int c = 0; c < channels; c++) {
      Arrays.fill(re[c], 0, size, 0);
      Arrays.fill(im[c], 0, size, 0);
    }
    divide(-1, 1, -1, 1, 0);
  }

  private void divide(double a0, double a1, double b0, double b1, int depth) {
    double ha = 0.5 * (a1 - a0) * a.length();
    double hb = 0.5 * (b1 - b0) * b.length();
    double distance = Math.sqrt(PieceDistance.squared(a, a0, a1, b, b0, b1) + smoothing2);
    double clear = kernel.clearance(distance);
    int na = nodes(orderA, ha, clear);
    int nb = nodes(orderB, hb, clear);
    if ((na <= MOST_NODES && nb <= MOST_NODES) || depth >= DEEPEST) {
      kernel.enter(distance);
      product(a0, a1, Math.min(na, MOST_NODES), b0, b1, Math.min(nb, MOST_NODES));
    } else if (ha >= hb) {
      double middle = 0.5 * (a0 + a1);
      divide(a0, middle, b0, b1, depth + 1);
      divide(middle, a1, b0, b1, depth + 1);
    } else {
      double middle = 0.5 * (b0 + b1);
      divide(a0, a1, b0, middle, depth + 1);
      divide(a0, a1, middle, b1, depth + 1);
    }
  }

  private int nodes(int order, double h, double distance) {
    double y = 2 * distance / h;
    double rho = y + Math.sqrt(1 + y * y);
    double bySingularity = 1 / Math.log(rho);
    double byPhase = 2 / Math.log(4 * digits / (wavenumber * h));
    return (int) Math.ceil(0.5 * (order + 2 + digits * Math.max(bySingularity, byPhase)));
  }

  private void product(double a0, double a1, int na, double b0, double b1, int nb) {
    GaussLegendre ruleA = GaussLegendre.of(na);
    GaussLegendre ruleB = GaussLegendre.of(nb);
    int widthB = orderB + 1;
    for (int q = 0; q < nb; q++) {
      double t = b0 + 0.5 * (1 + ruleB.node(q)) * (b1 - b0);
      LegendrePolynomials.fill(
          t, orderB, 0.25 * (b1 - b0) * b.length() * ruleB.weight(q), rowB, q * widthB);
    }
    for (int p = 0; p < na; p++) {
      double t = a0 + 0.5 * (1 + ruleA.node(p)) * (a1 - a0);
      sumOverB(t, b0, b1, nb, ruleB);
      LegendrePolynomials.fill(t, orderA, 0.25 * (a1 - a0) * a.length() * ruleA.weight(p), rowA, 0);
      for (int c = 0; c < channels; c++) {
        accumulate(re[c], im[c], sumRe[c], sumIm[c]);
      }
    }
  }

  private void sumOverB(double t, double b0, double b1, int nb, GaussLegendre ruleB) {
    int widthB = orderB + 1;
    double x = a.x(t);
    double y = a.y(t);
    double z = a.z(t);
    for (int c = 0; c < channels; c++) {
      Arrays.fill(sumRe[c], 0, widthB, 0);
      Arrays.fill(sumIm[c], 0, widthB, 0);
    }
    for (int q = 0; q < nb; q++) {
      double s = b0 + 0.5 * (1 + ruleB.node(q)) * (b1 - b0);
      kernel.evaluate(x - b.x(s), y - b.y(s), z - b.z(s), value);
      int offset = q * widthB;
      for (int c = 0; c < channels; c++) {
        add(value[2 * c], offset, widthB, sumRe[c]);
        add(value[2 * c + 1], offset, widthB, sumIm[c]);
      }
    }
  }

  private void add(double factor, int offset, int widthB, double[] sum) {
    for (int j = 0; j < widthB; j++) {
      sum[j] += factor * rowB[offset + j];
    }
  }

  private void accumulate(double[] toRe, double[] toIm, double[] fromRe, double[] fromIm) {
    int index = 0;
    for (int i = 0; i <= orderA; i++) {
      double factor = rowA[i];
      for (int j = 0; j <= orderB; j++, index++) {
        toRe[index] += factor * fromRe[j];
        toIm[index] += factor * fromIm[j];
      }
    }
  }
}
