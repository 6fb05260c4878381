package org.spanwire.internal.kernel;

import java.util.Arrays;
import org.spanwire.internal.math.GaussLegendre;
import org.spanwire.internal.math.LegendrePolynomials;
import org.spanwire.internal.mesh.Piece;

/**
 * Moments of the exact tube kernel between two pieces of one straight line. The kernel depends on
 * the axial distance u = s' − s only, so the double integral becomes ∫ g(|u|) W_ij(u) du with W_ij
 * the correlation of the two polynomials, exact by a Gauss rule. Between the places where an end of
 * one piece passes one of the other, W_ij is a polynomial of degree i + j + 1: there Gauss nodes of
 * that degree whose weights give the kernel's own Legendre moments, ∫ g P_m du, integrate g W_ij
 * exactly (product integration; Davis and Rabinowitz, Methods of Numerical Integration, 2nd ed.
 * 1984, section 2.5.6). Only those moments are graded geometrically toward the logarithmic
 * singularity at u = 0.
 */
final class CoaxialMoments {

  /**
   * Offset from one axis, over the smaller radius, below which two pieces count as being on one
   * line.
   */
  private static final double SAME_AXIS = 1e-6;

  /**
   * u = ε x^6 turns the logarithm at 0 into x^5 ln x, which 16 Gauss nodes integrate to 1e-14. A
   * factor u^m more takes 3m more nodes.
   */
  private static final int POWER = 6;

  private static final int POWER_NODES = 16;

  /** Length over radius below which the correlation's high degrees reach into the logarithm. */
  private static final double STUBBY = 8;

  private static final double PANEL_RATIO = 3;

  /**
   * The logarithmic panel is kept to this share of the interval, where the correlation polynomial
   * of any order is close to a cubic: its high powers would be lost on x^6.
   */
  private static final double LOG_SHARE = 0.03;

  private final double[] pa;
  private final double[] pb;
  private final double[] weights;
  private final double[] legendre;
  private double[] value = new double[2];
  private double[][] moments;
  private final double[][][] weightings;
  private final double[] breaks = new double[5];

  CoaxialMoments(int largestOrder) {
    pa = new double[largestOrder + 1];
    pb = new double[largestOrder + 1];
    weights = new double[pa.length * pb.length];
    legendre = new double[2 * largestOrder + 2];
    moments = new double[2][legendre.length];
    weightings = new double[legendre.length + 1][][];
  }

  static boolean coaxial(Piece a, Piece b) {
    double limit = SAME_AXIS * Math.min(a.radius(), b.radius());
    return offset2(a, b.x(), b.y(), b.z()) < limit * limit
        && offset2(a, b.x(1), b.y(1), b.z(1)) < limit * limit;
  }

  private static double offset2(Piece a, double x, double y, double z) {
    double dx = x - a.x();
    double dy = y - a.y();
    double dz = z - a.z();
    double along = dx * a.ux() + dy * a.uy() + dz * a.uz();
    double ox = dx - along * a.ux();
    double oy = dy - along * a.uy();
    double oz = dz - along * a.uz();
    return ox * ox + oy * oy + oz * oz;
  }

  /**
   * Computes the moments for every wavenumber, or returns false if the pieces are so far apart that
   * the general rule does better.
   */
  boolean compute(
      Piece a, int orderA, Piece b, int orderB, double[] k, double[][] re, double[][] im) {
    double ha = a.length();
    double hb = b.length();
    boolean reversed = a.ux() * b.ux() + a.uy() * b.uy() + a.uz() * b.uz() < 0;
    double start = (b.x() - a.x()) * a.ux() + (b.y() - a.y()) * a.uy() + (b.z() - a.z()) * a.uz();
    if (reversed) {
      start -= hb;
    }
    double gap = Math.max(start - ha, -(start + hb));
    if (gap > Math.max(Math.min(ha, hb), 4 * (a.radius() + b.radius()))) {
      return false;
    }
    if (Math.abs(gap) < 1e-9 * Math.min(ha, hb)) {
      start += start > 0 ? -gap : gap;
    }
    int size = (orderA + 1) * (orderB + 1);
    for (int c = 0; c < k.length; c++) {
      Arrays.fill(re[c], 0, size, 0);
      Arrays.fill(im[c], 0, size, 0);
    }
    if (value.length < 2 * k.length) {
      value = new double[2 * k.length];
      moments = new double[2 * k.length][legendre.length];
    }
    Correlation pair =
        new Correlation(ha, hb, start, orderA, orderB, a.radius(), b.radius(), k, re, im);
    if (pair.isOnePiece()) {
      graded(pair, 0, ha, 1);
      for (int c = 0; c < k.length; c++) {
        addMirrored(orderA, re[c]);
        addMirrored(orderA, im[c]);
      }
    } else {
      integrate(pair);
    }
    for (int c = 0; c < k.length; c++) {
      if (reversed) {
        negateOddDegrees(orderA, orderB, re[c]);
        negateOddDegrees(orderA, orderB, im[c]);
      }
    }
    return true;
  }

  /** Adds what u < 0 contributes on one piece: W_ij(−u) = W_ji(u) = (−1)^(i+j) W_ij(u). */
  private static void addMirrored(int order, double[] values) {
    for (int i = 0; i <= order; i++) {
      for (int j = 0; j <= order; j++) {
        values[i * (order + 1) + j] *= (i + j) % 2 == 0 ? 2 : 0;
      }
    }
  }

  private static void negateOddDegrees(int orderA, int orderB, double[] values) {
    for (int i = 0; i <= orderA; i++) {
      for (int j = 1; j <= orderB; j += 2) {
        values[i * (orderB + 1) + j] = -values[i * (orderB + 1) + j];
      }
    }
  }

  private record Correlation(
      double ha,
      double hb,
      double start,
      int orderA,
      int orderB,
      double radiusA,
      double radiusB,
      double[] k,
      double[][] re,
      double[][] im) {

    boolean isOnePiece() {
      return start == 0 && ha == hb && orderA == orderB;
    }

    /** Nodes of a Gauss rule that hold all polynomials of the correlation's degree. */
    int nodes() {
      return orderA + orderB + 2;
    }
  }

  private void integrate(Correlation p) {
    breaks[0] = p.start - p.ha;
    breaks[1] = p.start;
    breaks[2] = p.start + p.hb - p.ha;
    breaks[3] = p.start + p.hb;
    breaks[4] = Math.max(breaks[0], Math.min(breaks[3], 0));
    Arrays.sort(breaks);
    double tiny = 1e-13 * (p.ha + p.hb);
    for (int i = 0; i < 4; i++) {
      double lo = breaks[i];
      double hi = breaks[i + 1];
      if (hi - lo > tiny) {
        if (lo >= -tiny) {
          graded(p, Math.max(0, lo), hi, 1);
        } else {
          graded(p, Math.max(0, -hi), -lo, -1);
        }
      }
    }
  }

  /** Integrates |u| from near to far on the side of the sign. */
  private void graded(Correlation p, double near, double far, int sign) {
    double scale = 0.5 * (p.radiusA + p.radiusB);
    boolean touches = near < 0.01 * scale;
    if (!touches && panelEnd(near, far) == far) {
      GaussLegendre rule = GaussLegendre.of(panelNodes(p));
      for (int i = 0; i < rule.size(); i++) {
        double u = near + 0.5 * (1 + rule.node(i)) * (far - near);
        evaluate(p, u);
        add(p, sign * u, 0.5 * (far - near) * rule.weight(i), value);
      }
      return;
    }
    for (int c = 0; c < 2 * p.k.length; c++) {
      Arrays.fill(moments[c], 0, p.nodes(), 0);
    }
    double from = near;
    if (touches) {
      from = near + Math.min(scale, LOG_SHARE * (far - near));
      logarithmic(p, near, from, far);
    }
    panels(p, near, from, far);
    condensed(p, near, far, sign);
  }

  private static double panelEnd(double from, double far) {
    double to = PANEL_RATIO * from;
    return to > 0.7 * far ? far : to;
  }

  private static int panelNodes(Correlation p) {
    return Math.max(10, (p.orderA + p.orderB + 1) / 2 + 7);
  }

  private void logarithmic(Correlation p, double near, double to, double far) {
    boolean stubby = Math.min(p.ha, p.hb) < STUBBY * (to - near);
    GaussLegendre rule =
        GaussLegendre.of(stubby ? POWER_NODES + 3 * (p.orderA + p.orderB) : POWER_NODES);
    for (int i = 0; i < rule.size(); i++) {
      double x = 0.5 * (1 + rule.node(i));
      double power = Math.pow(x, POWER - 1);
      double u = near + (to - near) * power * x;
      addMoments(p, u, 0.5 * rule.weight(i) * POWER * power * (to - near), near, far);
    }
  }

  private void panels(Correlation p, double near, double first, double far) {
    GaussLegendre rule = GaussLegendre.of(panelNodes(p));
    double from = first;
    while (from < far) {
      double to = panelEnd(from, far);
      for (int i = 0; i < rule.size(); i++) {
        double u = from + 0.5 * (1 + rule.node(i)) * (to - from);
        addMoments(p, u, 0.5 * (to - from) * rule.weight(i), near, far);
      }
      from = to;
    }
  }

  /** The kernel of all wavenumbers at u. */
  private void evaluate(Correlation p, double u) {
    double difference = p.radiusA - p.radiusB;
    TubeKernel.evaluate(u * u + difference * difference, 4 * p.radiusA * p.radiusB, p.k, value);
  }

  /** Adds the kernel at u to its moments ∫ g P_m du from near to far. */
  private void addMoments(Correlation p, double u, double weight, double near, double far) {
    evaluate(p, u);
    int count = p.nodes();
    LegendrePolynomials.fill(2 * (u - near) / (far - near) - 1, count - 1, weight, legendre, 0);
    for (int c = 0; c < 2 * p.k.length; c++) {
      double[] sum = moments[c];
      double g = value[c];
      for (int m = 0; m < count; m++) {
        sum[m] += g * legendre[m];
      }
    }
  }

  /** Integrates with the Gauss nodes between near and far whose weights hold the moments. */
  private void condensed(Correlation p, double near, double far, int sign) {
    int count = p.nodes();
    GaussLegendre rule = GaussLegendre.of(count);
    double[][] weighting = weighting(count);
    for (int q = 0; q < count; q++) {
      for (int c = 0; c < 2 * p.k.length; c++) {
        double sum = 0;
        for (int m = 0; m < count; m++) {
          sum += weighting[q][m] * moments[c][m];
        }
        value[c] = sum;
      }
      double u = near + 0.5 * (1 + rule.node(q)) * (far - near);
      add(p, sign * u, 1, value);
    }
  }

  /** What every moment adds to the weight of every node: w_q (m + 1/2) P_m(t_q). */
  private double[][] weighting(int count) {
    if (weightings[count] == null) {
      GaussLegendre rule = GaussLegendre.of(count);
      weightings[count] = new double[count][count];
      for (int q = 0; q < count; q++) {
        double[] row = weightings[count][q];
        LegendrePolynomials.fill(rule.node(q), count - 1, rule.weight(q), row, 0);
        for (int m = 0; m < count; m++) {
          row[m] *= m + 0.5;
        }
      }
    }
    return weightings[count];
  }

  /** Adds W_ij at u times a weight and a value for every wavenumber. */
  private void add(Correlation p, double u, double weight, double[] values) {
    double from = Math.max(0, p.start - u);
    double to = Math.min(p.ha, p.start + p.hb - u);
    if (!(to > from)) {
      return;
    }
    correlate(p, u, weight, from, to);
    int size = (p.orderA + 1) * (p.orderB + 1);
    for (int c = 0; c < p.k.length; c++) {
      double gr = values[2 * c];
      double gi = values[2 * c + 1];
      double[] re = p.re[c];
      double[] im = p.im[c];
      for (int i = 0; i < size; i++) {
        re[i] += gr * weights[i];
        im[i] += gi * weights[i];
      }
    }
  }

  /** All W_ij at u, from the stretch of the first piece where both are. */
  private void correlate(Correlation p, double u, double weight, double from, double to) {
    Arrays.fill(weights, 0, (p.orderA + 1) * (p.orderB + 1), 0);
    int inner = (p.orderA + p.orderB) / 2 + 1;
    GaussLegendre rule = GaussLegendre.of(inner);
    for (int q = 0; q < inner; q++) {
      double s = from + 0.5 * (1 + rule.node(q)) * (to - from);
      double w = 0.5 * (to - from) * rule.weight(q) * weight;
      LegendrePolynomials.fill(2 * s / p.ha - 1, p.orderA, w, pa, 0);
      LegendrePolynomials.fill(2 * (s + u - p.start) / p.hb - 1, p.orderB, 1, pb, 0);
      int index = 0;
      for (int i = 0; i <= p.orderA; i++) {
        for (int j = 0; j <= p.orderB; j++, index++) {
          weights[index] += pa[i] * pb[j];
        }
      }
    }
  }
}
