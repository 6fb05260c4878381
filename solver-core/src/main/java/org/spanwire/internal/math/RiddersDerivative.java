package org.spanwire.internal.math;

import java.util.ArrayList;
import java.util.List;
import java.util.function.DoubleFunction;

/**
 * Derivatives by central differences of ever smaller steps, extrapolated to none (C. J. F. Ridders,
 * Advances in Engineering Software 4, 75, 1982). The error is what the last extrapolation changed:
 * a step too large shows in it as much as one so small that rounding rules.
 *
 * @param values the derivatives
 * @param error largest error of any of them
 */
public record RiddersDerivative(double[] values, double error) {

  private static final double SMALLER = 2;
  private static final int MOST_STEPS = 5;

  /**
   * Differentiates several functions at once.
   *
   * @param difference (f(h) − f(−h)) / 2h for a step h
   * @param step first step, a quarter of the scale on which the functions vary or less
   * @param tolerance error over the largest derivative at which to stop
   * @param least error at which to stop however small the derivatives are
   */
  public static RiddersDerivative of(
      DoubleFunction<double[]> difference, double step, double tolerance, double least) {
    List<double[]> last = List.of(difference.apply(step));
    RiddersDerivative best = new RiddersDerivative(last.get(0), Double.POSITIVE_INFINITY);
    for (int n = 1; n < MOST_STEPS; n++) {
      List<double[]> row = new ArrayList<>();
      row.add(difference.apply(step / Math.pow(SMALLER, n)));
      double power = 1;
      for (int m = 1; m <= n; m++) {
        power *= SMALLER * SMALLER;
        row.add(extrapolated(last.get(m - 1), row.get(m - 1), power));
        double error =
            Math.max(apart(row.get(m), row.get(m - 1)), apart(row.get(m), last.get(m - 1)));
        if (error < best.error) {
          best = new RiddersDerivative(row.get(m), error);
        }
      }
      if (best.error <= Math.max(least, tolerance * largest(best.values))
          || apart(row.get(n), last.get(n - 1)) > 2 * best.error) {
        break;
      }
      last = row;
    }
    return best;
  }

  private static double[] extrapolated(double[] wide, double[] narrow, double power) {
    double[] values = new double[wide.length];
    for (int i = 0; i < values.length; i++) {
      values[i] = narrow[i] + (narrow[i] - wide[i]) / (power - 1);
    }
    return values;
  }

  private static double apart(double[] a, double[] b) {
    double largest = 0;
    for (int i = 0; i < a.length; i++) {
      largest = Math.max(largest, Math.abs(a[i] - b[i]));
    }
    return largest;
  }

  private static double largest(double[] values) {
    return apart(values, new double[values.length]);
  }
}
