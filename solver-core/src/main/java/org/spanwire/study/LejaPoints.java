package org.spanwire.study;

import java.util.Arrays;

/**
 * A sequence of points on [−1, 1] of which every first part is good for interpolation: each point
 * lies where the product of its distances from the earlier ones is largest (F. Leja, Ann. Polon.
 * Math. 4, 8, 1957), to the step of a fine scan.
 */
final class LejaPoints {

  private static final int SCAN = 8000;

  private final double[] points;
  private final double[] scales;

  /** The first points of the sequence 0, 1, −1, … */
  LejaPoints(int count) {
    double[] scan = new double[SCAN + 1];
    double[] product = new double[SCAN + 1];
    Arrays.fill(product, 1);
    for (int i = 0; i <= SCAN; i++) {
      // Odd about the middle, closer towards the ends.
      scan[i] = Math.sin(Math.PI / 2 * (2.0 * i - SCAN) / SCAN);
    }
    points = new double[count];
    int next = SCAN / 2;
    for (int k = 0; k < count; k++) {
      points[k] = scan[next];
      for (int i = 0; i <= SCAN; i++) {
        product[i] *= 2 * Math.abs(scan[i] - points[k]);
      }
      next = k == 0 ? SCAN : k == 1 ? 0 : largest(product);
    }
    scales = new double[count];
    for (int k = 0; k < count; k++) {
      scales[k] = 1;
      for (int i = 0; i < k; i++) {
        scales[k] *= points[k] - points[i];
      }
    }
  }

  private static int largest(double[] values) {
    int at = 0;
    for (int i = 1; i < values.length; i++) {
      if (values[i] > values[at]) {
        at = i;
      }
    }
    return at;
  }

  double at(int index) {
    return points[index];
  }

  /**
   * Newton's basis: polynomial k is 1 at point k and 0 at all earlier points.
   *
   * @return polynomials 0 to the degree, at x
   */
  double[] basis(double x, int degree) {
    double[] values = new double[degree + 1];
    double product = 1;
    for (int k = 0; k <= degree; k++) {
      values[k] = product / scales[k];
      product *= x - points[k];
    }
    return values;
  }
}
