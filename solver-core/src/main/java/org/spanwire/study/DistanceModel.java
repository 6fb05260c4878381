package org.spanwire.study;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.concurrent.Callable;
import java.util.stream.IntStream;
import org.apache.commons.math3.random.SobolSequenceGenerator;
import org.spanwire.Solver;
import org.spanwire.design.ExposureLimit;
import org.spanwire.design.ExposureRules;
import org.spanwire.design.Requirement;
import org.spanwire.practice.ExposureMap;
import org.spanwire.practice.ExposureSurvey;

/**
 * How far people must keep away on a band, over ranges of a design's parameters: polynomials
 * through surveys, one for each frequency, floor and limit, of which the largest value counts.
 * Unlike their maximum each of them is smooth. Immutable once built.
 */
final class DistanceModel {

  /** Wanted error over the distance that is required, and in metres where that is small. */
  private static final double SHARE = 0.02;

  private static final double SMALLEST = 0.02;

  private static final int CHECKS = 8;
  private static final int ROUNDS = 3;
  private static final double TIGHTER = 0.3;
  private static final int MOST_PLACES = 80;

  private final ParameterBox box;
  private final ExposureRules rules;
  private final List<Double> frequencies;
  private final Solver solver;
  private final SparseInterpolant interpolant;
  private int places;
  private double error;

  private DistanceModel(
      ParameterBox box, Requirement.MaximumExposureDistance requirement, Solver solver) {
    this.box = box;
    this.solver = solver;
    rules = box.base().exposureRules().orElse(ExposureRules.STRICT);
    frequencies = RatedFrequencies.of(requirement.scope().band());
    interpolant = new SparseInterpolant(box.size());
  }

  /**
   * Builds the model on several threads; it does not depend on their number.
   *
   * @param box at least one parameter
   */
  static DistanceModel of(
      ParameterBox box,
      Requirement.MaximumExposureDistance requirement,
      Solver solver,
      int threads) {
    DistanceModel model = new DistanceModel(box, requirement, solver);
    double wanted = Math.max(SMALLEST, SHARE * requirement.maximumMetres());
    SobolSequenceGenerator unseen = new SobolSequenceGenerator(box.size());
    unseen.nextVector();
    try (Workers workers = new Workers(threads)) {
      double tolerance = wanted;
      for (int round = 0; round < ROUNDS; round++) {
        model.grow(tolerance, workers);
        model.check(unseen, workers);
        if (model.error <= wanted || model.places >= MOST_PLACES) {
          break;
        }
        tolerance *= TIGHTER;
      }
    }
    return model;
  }

  private void grow(double tolerance, Workers workers) {
    interpolant.grow(tolerance);
    for (List<double[]> wanted = interpolant.wanted();
        !wanted.isEmpty() && places < MOST_PLACES;
        wanted = interpolant.wanted()) {
      interpolant.take(surveyed(wanted, workers));
      if (interpolant.wanted().isEmpty()) {
        interpolant.grow(tolerance);
      }
    }
  }

  /** Against surveys that the polynomials have not seen. */
  private void check(SobolSequenceGenerator unseen, Workers workers) {
    List<double[]> points = new ArrayList<>();
    for (int i = 0; i < CHECKS; i++) {
      points.add(Arrays.stream(unseen.nextVector()).map(share -> 2 * share - 1).toArray());
    }
    List<double[]> found = surveyed(points, workers);
    error = 0;
    for (int i = 0; i < CHECKS; i++) {
      double modelled = largest(interpolant.at(points.get(i)));
      error = Math.max(error, Math.abs(modelled - largest(found.get(i))));
    }
  }

  private List<double[]> surveyed(List<double[]> points, Workers workers) {
    List<Callable<double[]>> tasks = new ArrayList<>();
    for (double[] point : points) {
      Installation installation =
          Installation.of(
              box.with(
                  IntStream.range(0, point.length)
                      .mapToDouble(i -> box.value(i, point[i]))
                      .toArray()));
      for (double frequency : frequencies) {
        tasks.add(() -> distances(installation, frequency));
      }
    }
    places += points.size();
    List<double[]> found = workers.run(tasks);
    int each = frequencies.size();
    return IntStream.range(0, points.size())
        .mapToObj(
            i ->
                found.subList(i * each, (i + 1) * each).stream()
                    .flatMapToDouble(Arrays::stream)
                    .toArray())
        .toList();
  }

  private double[] distances(Installation installation, double frequencyHz) {
    Operation operation = installation.solve(solver, frequencyHz);
    ExposureMap map = new ExposureMap(operation.solution(), installation.tunedWatts(operation));
    List<ExposureLimit> limits =
        rules.limits().stream().filter(limit -> limit.covers(frequencyHz)).toList();
    return rules.floors().stream()
        .map(floor -> map.survey(limits, rules.duty(), floor))
        .flatMap(survey -> limits.stream().map(limit -> distance(survey, limit)))
        .mapToDouble(Double::doubleValue)
        .toArray();
  }

  private static double distance(ExposureSurvey survey, ExposureLimit limit) {
    return survey.keepOut(limit, 0).distance();
  }

  private static double largest(double[] distances) {
    return Arrays.stream(distances).max().orElse(0);
  }

  /**
   * The distance in metres.
   *
   * @param values parameters in SI units, in the order of the box
   */
  double at(double... values) {
    double[] units =
        IntStream.range(0, values.length).mapToDouble(i -> box.unit(i, values[i])).toArray();
    return Math.max(0, largest(interpolant.at(units)));
  }

  /** Largest error in metres against surveys that the model had not seen. */
  double error() {
    return error;
  }

  int solves() {
    return places * frequencies.size();
  }
}
