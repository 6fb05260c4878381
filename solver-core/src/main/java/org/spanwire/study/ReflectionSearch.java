package org.spanwire.study;

import java.util.ArrayList;
import java.util.List;
import java.util.function.DoubleUnaryOperator;
import org.apache.commons.math3.analysis.solvers.BrentSolver;
import org.apache.commons.math3.optim.MaxEval;
import org.apache.commons.math3.optim.nonlinear.scalar.GoalType;
import org.apache.commons.math3.optim.univariate.BrentOptimizer;
import org.apache.commons.math3.optim.univariate.SearchInterval;
import org.apache.commons.math3.optim.univariate.UnivariateObjectiveFunction;

/**
 * Extrema of |Γ|² over a range of frequencies and where it stays below a limit: a scan, then
 * Brent's method. What happens within one step of the scan is missed only if it leaves no trace at
 * its ends.
 */
final class ReflectionSearch {

  private static final double RELATIVE_ACCURACY = 1e-10;
  private static final int MOST_EVALUATIONS = 1000;

  private final double[] scan;
  private final DoubleUnaryOperator squaredMagnitude;

  /**
   * A search.
   *
   * @param scan frequencies in hertz from the low to the high end of the range, rising
   * @param squaredMagnitude |Γ|² at a frequency in hertz
   */
  ReflectionSearch(double[] scan, DoubleUnaryOperator squaredMagnitude) {
    this.scan = scan.clone();
    this.squaredMagnitude = squaredMagnitude;
  }

  /** Frequency in hertz of the smallest |Γ|; of equal ones the lowest. */
  double best() {
    return extremum(squaredMagnitude);
  }

  /** Frequency in hertz of the largest |Γ|; of equal ones the lowest. */
  double worst() {
    return extremum(f -> -squaredMagnitude.applyAsDouble(f));
  }

  private double extremum(DoubleUnaryOperator goal) {
    int at = 0;
    for (int i = 1; i < scan.length; i++) {
      if (goal.applyAsDouble(scan[i]) < goal.applyAsDouble(scan[at])) {
        at = i;
      }
    }
    return at == 0 || at == scan.length - 1 ? scan[at] : closeIn(goal, at);
  }

  private double closeIn(DoubleUnaryOperator goal, int at) {
    return new BrentOptimizer(RELATIVE_ACCURACY, RELATIVE_ACCURACY * scan[0])
        .optimize(
            new MaxEval(MOST_EVALUATIONS),
            GoalType.MINIMIZE,
            new UnivariateObjectiveFunction(goal::applyAsDouble),
            new SearchInterval(scan[at - 1], scan[at + 1], scan[at]))
        .getPoint();
  }

  /** Frequencies in hertz of the minima of |Γ| between the ends of the range, rising. */
  List<Double> minima() {
    List<Double> minima = new ArrayList<>();
    for (int i = 1; i + 1 < scan.length; i++) {
      double here = squaredMagnitude.applyAsDouble(scan[i]);
      if (here < squaredMagnitude.applyAsDouble(scan[i - 1])
          && here <= squaredMagnitude.applyAsDouble(scan[i + 1])) {
        minima.add(closeIn(squaredMagnitude, i));
      }
    }
    return minima;
  }

  /** Where |Γ| stays at or below a limit: ranges in rising order, perhaps none. */
  List<FrequencyRange> within(double limit) {
    List<FrequencyRange> ranges = new ArrayList<>();
    double square = limit * limit;
    double[] steps = scanAndMinima();
    double start = Double.NaN;
    for (int i = 0; i < steps.length; i++) {
      boolean inside = squaredMagnitude.applyAsDouble(steps[i]) <= square;
      if (inside && Double.isNaN(start)) {
        start = i == 0 ? steps[0] : crossing(square, steps[i - 1], steps[i]);
      } else if (!inside && !Double.isNaN(start)) {
        ranges.add(new FrequencyRange(start, crossing(square, steps[i - 1], steps[i])));
        start = Double.NaN;
      }
    }
    if (!Double.isNaN(start)) {
      ranges.add(new FrequencyRange(start, steps[steps.length - 1]));
    }
    return ranges;
  }

  /** A dip that is narrower than a step shows at its bottom only. */
  private double[] scanAndMinima() {
    List<Double> steps = new ArrayList<>(minima());
    for (double step : scan) {
      steps.add(step);
    }
    return steps.stream().mapToDouble(Double::doubleValue).sorted().distinct().toArray();
  }

  private double crossing(double square, double below, double above) {
    return new BrentSolver(RELATIVE_ACCURACY, RELATIVE_ACCURACY * scan[0])
        .solve(MOST_EVALUATIONS, f -> squaredMagnitude.applyAsDouble(f) - square, below, above);
  }
}
