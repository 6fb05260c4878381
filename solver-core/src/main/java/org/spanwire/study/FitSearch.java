package org.spanwire.study;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.Comparator;
import java.util.List;
import java.util.Optional;
import java.util.concurrent.Callable;
import org.apache.commons.math3.exception.MathIllegalStateException;
import org.apache.commons.math3.fitting.leastsquares.LeastSquaresBuilder;
import org.apache.commons.math3.fitting.leastsquares.LeastSquaresOptimizer.Optimum;
import org.apache.commons.math3.fitting.leastsquares.LevenbergMarquardtOptimizer;
import org.apache.commons.math3.random.SobolSequenceGenerator;

/**
 * Least squares (Levenberg–Marquardt) from several starts.
 *
 * @param model what is fitted
 */
record FitSearch(FitModel model) {

  private static final int STARTS = 16;
  private static final double INSIDE = 0.9;
  private static final int MOST_EVALUATIONS = 500;
  private static final int MOST_ITERATIONS = 200;

  /**
   * Where the free parameters fit, the best place first; several starts may have found one place.
   *
   * @param base units of all parameters; those that are not free stay
   */
  List<Optimum> fitted(double[] base, int... free) {
    List<double[]> starts = new ArrayList<>();
    starts.add(Arrays.stream(free).mapToDouble(j -> base[j]).toArray());
    SobolSequenceGenerator sobol = new SobolSequenceGenerator(free.length);
    sobol.nextVector();
    for (int n = 0; n < STARTS; n++) {
      starts.add(
          Arrays.stream(sobol.nextVector()).map(share -> INSIDE * (2 * share - 1)).toArray());
    }
    List<Callable<Optional<Optimum>>> tasks = new ArrayList<>();
    starts.forEach(start -> tasks.add(() -> fittedFrom(start, base, free)));
    try (Workers workers = new Workers(model.threads())) {
      List<Optimum> found =
          workers.run(tasks).stream()
              .flatMap(Optional::stream)
              .sorted(Comparator.comparingDouble(Optimum::getCost))
              .toList();
      if (found.isEmpty()) {
        throw new IllegalArgumentException("no start of the fit came to an end; narrow the ranges");
      }
      return found;
    }
  }

  private Optional<Optimum> fittedFrom(double[] start, double[] base, int[] free) {
    try {
      return Optional.of(
          new LevenbergMarquardtOptimizer()
              .optimize(
                  new LeastSquaresBuilder()
                      .model(at -> model.linearised(base, free, at))
                      .start(start)
                      .target(new double[model.measurement().numbers()])
                      .parameterValidator(at -> at.map(u -> Math.max(-1, Math.min(1, u))))
                      .maxEvaluations(MOST_EVALUATIONS)
                      .maxIterations(MOST_ITERATIONS)
                      .build()));
    } catch (MathIllegalStateException e) {
      // This start led nowhere; another may.
      return Optional.empty();
    }
  }
}
