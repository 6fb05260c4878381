package org.spanwire.internal.math;

import java.util.Arrays;

/**
 * Nodes of polynomial interpolation that are picked from a finite set of points, each one where the
 * product of the distances to those before is largest (Leja points; L. N. Trefethen, Approximation
 * Theory and Approximation Practice, SIAM 2013, chapter 15). They suit a set of any shape, such as
 * a few short intervals far apart, and every beginning of the sequence is a good set of nodes too.
 * Immutable.
 */
public final class LejaNodes {

  private final double[] points;
  private final int[] indices;
  private final double[] nodes;
  private final double[] largestProduct;
  private final double scale;

  /**
   * Orders points, beginning with the last.
   *
   * @param points rising, at least one
   * @param most largest number of nodes
   */
  public LejaNodes(double[] points, int most) {
    this(points, new int[] {points.length - 1}, most);
  }

  /**
   * Orders points.
   *
   * @param points rising, at least one
   * @param first indices of the points to begin with, at least one
   * @param most largest number of nodes
   */
  public LejaNodes(double[] points, int[] first, int most) {
    this.points = points.clone();
    int count = Math.min(most, points.length);
    indices = new int[count];
    nodes = new double[count];
    largestProduct = new double[count + 1];
    // A quarter of its length is an interval's capacity: products of ratios to it stay near 1.
    scale = points.length == 1 ? 1 : 0.25 * (points[points.length - 1] - points[0]);
    double[] product = new double[points.length];
    Arrays.fill(product, 1);
    largestProduct[0] = 1;
    int next = first[0];
    for (int m = 0; m < count; m++) {
      indices[m] = next;
      nodes[m] = points[next];
      for (int p = 0; p < points.length; p++) {
        product[p] *= Math.abs(points[p] - nodes[m]) / scale;
      }
      next = 0;
      for (int p = 1; p < points.length; p++) {
        if (product[p] > product[next]) {
          next = p;
        }
      }
      largestProduct[m + 1] = product[next];
      next = m + 1 < first.length ? first[m + 1] : next;
    }
  }

  /** The lowest point. */
  public double lowest() {
    return points[0];
  }

  /** The highest point. */
  public double highest() {
    return points[points.length - 1];
  }

  /** Number of nodes. */
  public int count() {
    return nodes.length;
  }

  /** A node, in the order in which they were picked. */
  public double node(int i) {
    return nodes[i];
  }

  /** Index of a node among the points. */
  public int index(int i) {
    return indices[i];
  }

  /** Whether the first nodes are all points there are: then nothing is interpolated. */
  public boolean isAll(int first) {
    return first == points.length;
  }

  /**
   * Whether interpolation through the first nodes is as good at x as it is at the points: whether
   * the product of its distances from the nodes is at most twice what it is at one of them.
   */
  public boolean covers(int first, double x) {
    double product = 1;
    for (int i = 0; i < first; i++) {
      product *= Math.abs(x - nodes[i]) / scale;
    }
    return product <= 2 * largestProduct[first];
  }

  /**
   * Weights of the values at the first nodes in the polynomial through them, at x (J.-P. Berrut and
   * L. N. Trefethen, SIAM Review 46, 501, 2004, equation 4.2).
   */
  public double[] weights(int first, double x) {
    double[] weights = new double[first];
    double sum = 0;
    for (int i = 0; i < first; i++) {
      if (x == nodes[i]) {
        Arrays.fill(weights, 0);
        weights[i] = 1;
        return weights;
      }
      double inverse = (x - nodes[i]) / scale;
      for (int j = 0; j < first; j++) {
        if (j != i) {
          inverse *= (nodes[i] - nodes[j]) / scale;
        }
      }
      weights[i] = 1 / inverse;
      sum += weights[i];
    }
    for (int i = 0; i < first; i++) {
      weights[i] /= sum;
    }
    return weights;
  }
}
