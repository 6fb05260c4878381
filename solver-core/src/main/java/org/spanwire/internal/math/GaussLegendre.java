package org.spanwire.internal.math;

/**
 * Gauss–Legendre quadrature on [−1, 1]: exact for polynomials up to degree 2n − 1. Nodes by Newton
 * iteration on the Legendre polynomial (Abramowitz and Stegun 1964, 25.4.29), ascending. Immutable;
 * one instance per order is kept.
 */
public final class GaussLegendre {

  private static final int LARGEST_KEPT = 64;
  private static final GaussLegendre[] KEPT = new GaussLegendre[LARGEST_KEPT + 1];

  static {
    for (int n = 1; n <= LARGEST_KEPT; n++) {
      KEPT[n] = new GaussLegendre(n);
    }
  }

  private final double[] nodes;
  private final double[] weights;

  private GaussLegendre(int n) {
    nodes = new double[n];
    weights = new double[n];
    for (int i = 0; i < (n + 1) / 2; i++) {
      double x = Math.cos(Math.PI * (i + 0.75) / (n + 0.5));
      double derivative = 1;
      for (int iteration = 0; iteration < 100; iteration++) {
        double p0 = 1;
        double p1 = x;
        for (int k = 2; k <= n; k++) {
          double p2 = ((2 * k - 1) * x * p1 - (k - 1) * p0) / k;
          p0 = p1;
          p1 = p2;
        }
        derivative = n * (x * p1 - p0) / (x * x - 1);
        double step = p1 / derivative;
        x -= step;
        if (Math.abs(step) < 1e-15) {
          break;
        }
      }
      if (n == 1) {
        x = 0;
        derivative = 1;
      } else if (2 * i + 1 == n) {
        x = 0;
      }
      nodes[n - 1 - i] = x;
      nodes[i] = -x;
      double w = 2 / ((1 - x * x) * derivative * derivative);
      weights[i] = w;
      weights[n - 1 - i] = w;
    }
  }

  /** The rule with n nodes, n at least 1. Rules up to 64 nodes are shared. */
  public static GaussLegendre of(int n) {
    if (n < 1) {
      throw new IllegalArgumentException("a Gauss rule needs at least one node, got " + n);
    }
    return n <= LARGEST_KEPT ? KEPT[n] : new GaussLegendre(n);
  }

  /** Number of nodes. */
  public int size() {
    return nodes.length;
  }

  /** Node i, ascending in i. */
  public double node(int i) {
    return nodes[i];
  }

  /** Weight of node i. */
  public double weight(int i) {
    return weights[i];
  }
}
