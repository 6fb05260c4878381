package org.spanwire.internal.math;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.PriorityQueue;
import java.util.function.DoubleUnaryOperator;

/**
 * Globally adaptive Gauss–Kronrod quadrature with 7 and 15 nodes: the interval with the largest
 * error is halved until the sum of the errors is small enough. Nodes and weights from QUADPACK
 * (Piessens, de Doncker-Kapenga, Überhuber and Kahaner 1983). The end points of the intervals are
 * never evaluated.
 */
public final class AdaptiveQuadrature {

  private static final double[] NODES = {
    0.991455371120812639206854697526329,
    0.949107912342758524526189684047851,
    0.864864423359769072789712788640926,
    0.741531185599394439863864773280788,
    0.586087235467691130294144691258380,
    0.405845151377397166906606412076961,
    0.207784955007898467600689403773245
  };
  private static final double[] KRONROD = {
    0.022935322010529224963732008058970,
    0.063092092629978553290700663189204,
    0.104790010322250183839876322541518,
    0.140653259715525918745189590510238,
    0.169004726639267902826583426598550,
    0.190350578064785409913256402421014,
    0.204432940075298892414161999234649,
    0.209482141084727828012999174891714
  };
  private static final double[] GAUSS = {
    0.129484966168869693270611432679082,
    0.279705391489276667901467771423780,
    0.381830050505118944950369775488975,
    0.417959183673469387755102040816327
  };
  private static final int MOST_INTERVALS = 2000;

  private record Interval(double from, double to, double value, double error) {}

  /**
   * An integral with its error.
   *
   * @param value the integral
   * @param error estimate of its absolute error, as a rule far above the true one
   */
  public record Integral(double value, double error) {}

  private AdaptiveQuadrature() {}

  /**
   * ∫ f over consecutive intervals.
   *
   * @param f integrand, smooth inside each interval
   * @param edges ascending ends of the intervals to start from, at least two
   * @param relativeTolerance wanted error relative to the integral; the result's own error tells
   *     whether it was reached
   */
  public static Integral integrate(
      DoubleUnaryOperator f, double[] edges, double relativeTolerance) {
    PriorityQueue<Interval> queue =
        new PriorityQueue<>(
            Comparator.comparingDouble(Interval::error)
                .reversed()
                .thenComparingDouble(Interval::from));
    for (int i = 0; i + 1 < edges.length; i++) {
      queue.add(rule(f, edges[i], edges[i + 1]));
    }
    double value = queue.stream().mapToDouble(Interval::value).sum();
    double error = queue.stream().mapToDouble(Interval::error).sum();
    while (error > relativeTolerance * Math.abs(value) && queue.size() < MOST_INTERVALS) {
      Interval worst = queue.remove();
      double middle = 0.5 * (worst.from + worst.to);
      Interval left = rule(f, worst.from, middle);
      Interval right = rule(f, middle, worst.to);
      queue.add(left);
      queue.add(right);
      value += left.value + right.value - worst.value;
      error += left.error + right.error - worst.error;
    }
    return total(new ArrayList<>(queue));
  }

  private static Integral total(List<Interval> intervals) {
    intervals.sort(Comparator.comparingDouble(Interval::from));
    double value = 0;
    double error = 0;
    for (Interval interval : intervals) {
      value += interval.value;
      error += interval.error;
    }
    return new Integral(value, error);
  }

  private static Interval rule(DoubleUnaryOperator f, double from, double to) {
    double centre = 0.5 * (from + to);
    double half = 0.5 * (to - from);
    double middle = f.applyAsDouble(centre);
    double kronrod = KRONROD[7] * middle;
    double gauss = GAUSS[3] * middle;
    for (int i = 0; i < 7; i++) {
      double pair =
          f.applyAsDouble(centre - half * NODES[i]) + f.applyAsDouble(centre + half * NODES[i]);
      kronrod += KRONROD[i] * pair;
      if (i % 2 == 1) {
        gauss += GAUSS[i / 2] * pair;
      }
    }
    return new Interval(from, to, kronrod * half, Math.abs(kronrod - gauss) * half);
  }
}
