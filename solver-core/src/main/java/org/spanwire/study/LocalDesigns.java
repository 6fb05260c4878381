package org.spanwire.study;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.OptionalDouble;
import java.util.function.DoublePredicate;
import java.util.function.ToDoubleFunction;
import org.spanwire.Solver;

/**
 * The designs around a place, on polynomials through solutions. How flat an optimum is and where it
 * lies depend on what is not linear and on many installations at once: no matter of slopes.
 */
final class LocalDesigns {

  private static final int SOLVES = 300;
  private static final double ACCURACY = 8e-3;
  private static final double TOLERANCE = 2e-3;
  private static final int FREQUENCIES = 3;
  private static final int SCAN = 48;

  /** What an optimum is flat by. */
  static final double FLAT = 0.1;

  private final DesignVariables part;
  private final InstallationSet set;
  private final PortModel model;
  private final int threads;
  private final long seed;

  private LocalDesigns(
      DesignVariables part, InstallationSet set, PortModel model, int threads, long seed) {
    this.part = part;
    this.set = set;
    this.model = model;
    this.threads = threads;
    this.seed = seed;
  }

  static LocalDesigns of(
      DesignVariables part, InstallationSet set, Solver solver, int threads, long seed) {
    List<FrequencyRange> ranges =
        set.bands().stream().map(b -> new FrequencyRange(b.lowHz(), b.highHz())).toList();
    PortModel model =
        PortModel.of(
            new PortModel.Request(part.box(), ranges, set.decibels(), ACCURACY, SOLVES),
            solver.withTolerance(Math.max(TOLERANCE, solver.options().tolerance())),
            threads);
    return new LocalDesigns(part, set, model, threads, seed);
  }

  DesignVariables part() {
    return part;
  }

  int solves() {
    return model.solves();
  }

  double error() {
    return model.error();
  }

  /** The worst values of all goals and limits of a design. */
  double[] worst(double[] place) {
    List<Double> values = Arrays.stream(place).boxed().toList();
    return set.worst(n -> model.at(DesignVariables.joined(values, n)), FREQUENCIES);
  }

  /** Local minima, the smallest first. */
  List<MinimumSearch.Minimum> minima(ToDoubleFunction<double[]> cost, int starts) {
    int scanned = SCAN * part.all().size();
    return new MinimumSearch(part.all(), scanned, starts, seed).run(cost, threads);
  }

  /** How far each variable may move alone until the cost has risen by {@link #FLAT}. */
  List<OptimizeResult.Flatness> flatness(
      ToDoubleFunction<double[]> cost, MinimumSearch.Minimum best) {
    List<OptimizeResult.Flatness> all = new ArrayList<>();
    for (int i = 0; i < part.all().size(); i++) {
      MinimumSearch.Variable variable = part.all().get(i);
      if (variable.isDiscrete()) {
        continue;
      }
      int index = i;
      DoublePredicate flat =
          value -> {
            double[] moved = best.place().stream().mapToDouble(Double::doubleValue).toArray();
            moved[index] = value;
            return cost.applyAsDouble(moved) <= best.value() + FLAT;
          };
      double at = best.place().get(i);
      all.add(
          new OptimizeResult.Flatness(
              variable.name(), edge(flat, at, variable.low()), edge(flat, at, variable.high())));
    }
    return all;
  }

  private static OptionalDouble edge(DoublePredicate flat, double from, double to) {
    if (flat.test(to)) {
      return OptionalDouble.empty();
    }
    double inside = from;
    double outside = to;
    for (int i = 0; i < 20; i++) {
      double middle = (inside + outside) / 2;
      if (flat.test(middle)) {
        inside = middle;
      } else {
        outside = middle;
      }
    }
    return OptionalDouble.of(inside);
  }
}
