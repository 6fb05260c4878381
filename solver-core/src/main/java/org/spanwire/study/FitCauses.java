package org.spanwire.study;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.stream.IntStream;
import org.apache.commons.math3.complex.Complex;
import org.apache.commons.math3.fitting.leastsquares.LeastSquaresOptimizer.Optimum;
import org.spanwire.circuit.Mismatch;
import org.spanwire.design.Band;

/** What may be behind the readings: single causes, other places that fit, and how to part them. */
final class FitCauses {

  /** Times the misfit of the best fit, or of the readings' errors, that is still good enough. */
  private static final double ENOUGH = 1.5;

  private static final int MOST_OTHERS = 2;
  private static final double NEAR = 0.1;

  /** A frequency closer to a reading tells nothing new. */
  private static final double READ_ALREADY = 2e-3;

  private final FitStudy study;
  private final FitModel model;
  private final FitErrors errors;
  private final double[] nominal;
  private final double before;
  private final double enough;
  private final double[] best;
  private final List<Single> singles = new ArrayList<>();
  private final List<double[]> others;

  /** One parameter alone at its best. */
  private record Single(int parameter, double unit, FitModel.Misfit left) {}

  /**
   * Causes beside the best fit of all parameters.
   *
   * @param found places that all parameters fitted together came to, the best first
   */
  FitCauses(FitStudy study, FitModel model, List<Optimum> found, FitErrors errors) {
    this.study = study;
    this.model = model;
    this.errors = errors;
    nominal = model.nominal();
    before = model.misfit(nominal).squares();
    best = found.get(0).getPoint().toArray();
    enough = enough(model.measurement(), model.misfit(best).squares());
    FitSearch search = new FitSearch(model);
    for (int i = 0; i < model.size(); i++) {
      double unit = search.fitted(nominal, i).get(0).getPoint().getEntry(0);
      singles.add(new Single(i, unit, model.misfit(with(i, unit))));
    }
    singles.sort(Comparator.comparingDouble(each -> each.left().squares()));
    others = others(found);
  }

  /** Squares that are as good as the best ones; none where these are beyond the stated errors. */
  private static double enough(Measurement readings, double best) {
    double stated = readings.statesErrors() ? readings.numbers() : 0;
    boolean fits =
        stated == 0 || best <= FitResult.MOST_OVER_ERRORS * FitResult.MOST_OVER_ERRORS * stated;
    return fits ? ENOUGH * ENOUGH * Math.max(stated, best) : Double.NEGATIVE_INFINITY;
  }

  private double[] with(int parameter, double unit) {
    return FitModel.placed(nominal, new int[] {parameter}, unit);
  }

  /** Single causes that fit. */
  private List<double[]> fittingSingles() {
    return singles.stream()
        .filter(each -> each.left().squares() <= enough)
        .map(each -> with(each.parameter(), each.unit()))
        .toList();
  }

  /** Places that fit and are neither single causes nor within the errors of the best place. */
  private List<double[]> others(List<Optimum> found) {
    List<double[]> known = new ArrayList<>(fittingSingles());
    List<double[]> others = new ArrayList<>();
    if (known.isEmpty()) {
      known.add(best);
    }
    for (Optimum each : found) {
      double[] place = each.getPoint().toArray();
      boolean fits = each.getCost() * each.getCost() <= enough;
      if (fits && known.stream().noneMatch(other -> near(other, place))) {
        known.add(place);
        others.add(place);
      }
    }
    return others.subList(0, Math.min(MOST_OTHERS, others.size()));
  }

  /** Within a twentieth of the ranges. */
  private static boolean near(double[] a, double[] b) {
    return IntStream.range(0, a.length).allMatch(i -> Math.abs(a[i] - b[i]) < NEAR);
  }

  List<FitResult.Cause> causes() {
    return singles.stream()
        .map(
            each ->
                new FitResult.Cause(
                    model.parameter(each.parameter()).name(),
                    model.value(each.parameter(), each.unit()),
                    each.left().rms(),
                    before > 0 ? Math.max(0, 1 - each.left().squares() / before) : 0,
                    each.left().squares() <= enough,
                    model.change(each.parameter(), each.unit())))
        .toList();
  }

  /** Whether the design as it is fits. */
  boolean asDesigned() {
    return before <= enough;
  }

  List<FitResult.Candidate> others() {
    return others.stream().map(this::candidate).toList();
  }

  /** Parameters that are not as designed. */
  private FitResult.Candidate candidate(double[] units) {
    return new FitResult.Candidate(
        IntStream.range(0, units.length)
            .filter(i -> units[i] != nominal[i])
            .mapToObj(
                i -> new FitResult.Setting(model.parameter(i).name(), model.value(i, units[i])))
            .toList());
  }

  /** Places that fit, single causes first. */
  private List<double[]> candidates() {
    List<double[]> candidates = new ArrayList<>(fittingSingles());
    if (candidates.isEmpty()) {
      candidates.add(best);
    }
    candidates.addAll(others);
    return candidates;
  }

  /** Among edges and middles of the design's bands, where what is left open differs most. */
  Optional<FitResult.Reading> reading() {
    List<double[]> candidates = candidates();
    boolean alternatives = candidates.size() > 1;
    List<double[]> pair = alternatives ? candidates.subList(0, 2) : errors.ends();
    List<Double> places = new ArrayList<>();
    for (Band band : study.design().bands()) {
      places.addAll(List.of(band.lowHz(), (band.lowHz() + band.highHz()) / 2, band.highHz()));
    }
    places.removeIf(this::isRead);
    if (places.isEmpty() || pair.isEmpty()) {
      return Optional.empty();
    }
    List<Complex> first = model.reflections(pair.get(0), places);
    List<Complex> second = model.reflections(pair.get(1), places);
    return IntStream.range(0, places.size())
        .mapToObj(
            i ->
                new FitResult.Reading(
                    places.get(i),
                    alternatives,
                    candidate(pair.get(0)),
                    candidate(pair.get(1)),
                    swr(first.get(i)),
                    swr(second.get(i)),
                    difference(first.get(i), second.get(i)),
                    difference(first.get(i), second.get(i)) / error(first.get(i), second.get(i))))
        .max(Comparator.comparingDouble(FitResult.Reading::overError));
  }

  private boolean isRead(double frequencyHz) {
    return model.measurement().readings().stream()
        .anyMatch(each -> Math.abs(each.frequencyHz() - frequencyHz) < READ_ALREADY * frequencyHz);
  }

  private double difference(Complex first, Complex second) {
    return model.measurement().phase()
        ? first.subtract(second).abs()
        : Math.abs(first.abs() - second.abs());
  }

  /** Of a reading half-way: as stated, else as the readings scatter about the best fit. */
  private double error(Complex first, Complex second) {
    OptionalDouble share = model.measurement().swrError();
    double own =
        share.isPresent()
            ? Measurement.magnitudeError(share.getAsDouble(), (first.abs() + second.abs()) / 2)
            : model.misfit(best).rms();
    return Math.hypot(own, FitModel.ACCURACY);
  }

  private double swr(Complex reflection) {
    return Math.min(
        Look.LARGEST_SWR,
        Mismatch.ofReflection(reflection, model.measurement().referenceOhm()).swr());
  }
}
