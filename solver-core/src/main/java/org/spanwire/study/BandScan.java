package org.spanwire.study;

import java.util.ArrayList;
import java.util.List;
import java.util.concurrent.Callable;
import java.util.function.DoubleFunction;
import org.apache.commons.math3.complex.Complex;

/**
 * An installation solved at Chebyshev points of a band until what gauges read there is smooth
 * enough between them.
 */
final class BandScan {

  private static final int FEWEST_POINTS = 5;
  private static final int MOST_POINTS = 129;

  private final FrequencyRange range;
  private final List<Operation> operations;

  private BandScan(FrequencyRange range, List<Operation> operations) {
    this.range = range;
    this.operations = operations;
  }

  /**
   * Solves a band.
   *
   * @param solve solves at a frequency in hertz
   * @param accepted error of the curves between the points, over 1 for reflection coefficients and
   *     over the largest value for the rest
   */
  static BandScan of(
      FrequencyRange range,
      DoubleFunction<Operation> solve,
      List<Gauge> gauges,
      double accepted,
      Workers workers) {
    List<Operation> operations = new ArrayList<>();
    for (int count = FEWEST_POINTS; ; count = 2 * count - 1) {
      double[] frequencies = ReflectionCurve.frequencies(range, count);
      boolean first = operations.isEmpty();
      List<Callable<Operation>> tasks = new ArrayList<>();
      for (int i = first ? 0 : 1; i < count; i += first ? 1 : 2) {
        double frequency = frequencies[i];
        tasks.add(() -> solve.apply(frequency));
      }
      List<Operation> solved = workers.run(tasks);
      operations = first ? solved : interleave(operations, solved);
      BandScan scan = new BandScan(range, operations);
      if (2 * count - 1 > MOST_POINTS
          || gauges.stream().allMatch(gauge -> scan.error(gauge) <= accepted)) {
        return scan;
      }
    }
  }

  private static List<Operation> interleave(List<Operation> even, List<Operation> odd) {
    List<Operation> all = new ArrayList<>();
    for (int i = 0; i < odd.size(); i++) {
      all.add(even.get(i));
      all.add(odd.get(i));
    }
    all.add(even.get(odd.size()));
    return all;
  }

  /** What was solved, rising in frequency. */
  List<Operation> operations() {
    return List.copyOf(operations);
  }

  /** What a gauge reads over the band. */
  ReflectionCurve curve(Gauge gauge) {
    return new ReflectionCurve(
        range, operations.stream().map(gauge.reading()).toArray(Complex[]::new));
  }

  private double error(Gauge gauge) {
    return curve(gauge).error() / scale(gauge);
  }

  private double scale(Gauge gauge) {
    double largest =
        operations.stream().mapToDouble(each -> gauge.reading().apply(each).abs()).max().orElse(0);
    return gauge.isReflection() || largest == 0 ? 1 : largest;
  }

  /** The largest error of the magnitude read, by the errors of the impedances solved for. */
  double solverError(Gauge gauge) {
    return operations.stream().mapToDouble(gauge.error()::apply).max().orElseThrow();
  }
}
