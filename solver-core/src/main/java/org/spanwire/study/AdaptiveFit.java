package org.spanwire.study;

import java.util.ArrayList;
import java.util.List;
import java.util.TreeMap;
import java.util.concurrent.Callable;
import java.util.function.DoubleFunction;
import org.apache.commons.math3.complex.Complex;

/**
 * Samples a function where rational fits are least certain, until new samples confirm what the fits
 * without them said.
 *
 * <p>Where they are least certain: where the fits with all and with one support point less differ
 * most between the samples. Every new sample is first held against the fits made without it, so the
 * stated errors come from values the fits had not seen, at the places where they were least
 * certain. New samples come in batches of fixed size, so that the places do not depend on the
 * number of threads.
 */
final class AdaptiveFit {

  private static final int FIRST_SAMPLES = 17;
  private static final int BATCH = 4;
  private static final int CONFIRMATIONS = 3;

  /** Support points that are chosen anew when samples are added; the others are kept. */
  private static final int REVISED_SUPPORTS = 2;

  private static final int SCAN_PER_GAP = 24;

  private final FrequencyRange range;
  private final DoubleFunction<Complex[][]> function;
  private final List<Group> groups;
  private final Goal goal;
  private final TreeMap<Double, Complex[][]> samples = new TreeMap<>();

  /**
   * When to stop.
   *
   * @param accuracy wanted error of every group
   * @param mostSamples number of samples to give up at
   */
  record Goal(double accuracy, int mostSamples) {}

  /** How far apart two values of a group are. */
  @FunctionalInterface
  interface Distance {
    double between(double place, Complex[] found, Complex[] predicted);
  }

  /**
   * Quantities that share their poles, and so a fit.
   *
   * @param noise relative error of the samples, below the accuracy
   * @param distance what the error of the group is counted in
   */
  record Group(double noise, Distance distance) {

    /** With the error relative to the norm of all quantities of the group. */
    static Group relative(double noise) {
      return new Group(
          noise, (place, found, predicted) -> RationalFit.relativeDistance(found, predicted));
    }
  }

  /**
   * An adaptive fit.
   *
   * @param function one array for each group
   */
  AdaptiveFit(
      FrequencyRange range, DoubleFunction<Complex[][]> function, List<Group> groups, Goal goal) {
    this.range = range;
    this.function = function;
    this.groups = List.copyOf(groups);
    this.goal = goal;
  }

  /**
   * What came out.
   *
   * @param fits the fit of each group to all samples
   * @param places where the function was sampled, rising
   * @param errors of each group the largest error of the last predictions, plus that of the samples
   */
  record Outcome(List<RationalFit> fits, double[] places, double[] errors) {}

  Outcome run(Workers workers) {
    List<Double> first = new ArrayList<>();
    for (double frequency : ReflectionCurve.frequencies(range, FIRST_SAMPLES)) {
      first.add(frequency);
    }
    sample(workers, first);
    List<RationalFit> fits = new ArrayList<>();
    for (int group = 0; group < groups.size(); group++) {
      fits.add(fit(group, List.of(), samples.size() / 2));
    }
    int confirmed = 0;
    double[] unseen = new double[groups.size()];
    while (true) {
      List<Double> next = next(fits);
      List<RationalFit> before = List.copyOf(fits);
      sample(workers, next);
      boolean confirms = true;
      for (int group = 0; group < groups.size(); group++) {
        double missed = missed(group, before.get(group), next);
        confirms &= missed <= goal.accuracy() / 2;
        unseen[group] = confirmed > 0 ? Math.max(unseen[group], missed) : missed;
        List<Double> kept = withoutLast(before.get(group), REVISED_SUPPORTS);
        fits.set(group, fit(group, kept, samples.size() / 2));
      }
      confirmed = confirms ? confirmed + 1 : 0;
      if (confirmed == CONFIRMATIONS || samples.size() + BATCH > goal.mostSamples()) {
        for (int group = 0; group < groups.size(); group++) {
          unseen[group] += groups.get(group).noise();
        }
        return new Outcome(fits, places(), unseen);
      }
    }
  }

  private double missed(int group, RationalFit fit, List<Double> places) {
    return places.stream()
        .mapToDouble(
            place ->
                groups
                    .get(group)
                    .distance()
                    .between(place, samples.get(place)[group], fit.at(place)))
        .max()
        .orElseThrow();
  }

  private void sample(Workers workers, List<Double> places) {
    List<Callable<Complex[][]>> tasks = new ArrayList<>();
    for (double place : places) {
      tasks.add(() -> function.apply(place));
    }
    List<Complex[][]> found = workers.run(tasks);
    for (int i = 0; i < places.size(); i++) {
      samples.put(places.get(i), found.get(i));
    }
  }

  private double[] places() {
    return samples.keySet().stream().mapToDouble(Double::doubleValue).toArray();
  }

  private RationalFit fit(int group, List<Double> begin, int most) {
    Complex[][] values =
        samples.values().stream().map(each -> each[group]).toArray(Complex[][]::new);
    return RationalFit.of(
        new RationalFit.Samples(places(), values), begin, groups.get(group).noise(), most);
  }

  private static List<Double> withoutLast(RationalFit fit, int count) {
    List<Double> supports = fit.supports();
    return supports.subList(0, Math.max(0, supports.size() - count));
  }

  /** The largest doubts, one per gap between samples at most, and the middle of the widest gap. */
  private List<Double> next(List<RationalFit> fits) {
    List<RationalFit> lower = new ArrayList<>();
    for (int group = 0; group < fits.size(); group++) {
      List<Double> fewer = withoutLast(fits.get(group), 1);
      lower.add(fit(group, fewer, fewer.size()));
    }
    double[] places = places();
    record Doubt(double place, double size, double width) {}
    List<Doubt> doubts = new ArrayList<>();
    for (int gap = 0; gap + 1 < places.length; gap++) {
      double width = places[gap + 1] - places[gap];
      Doubt largest = new Doubt(places[gap] + width / 2, -1, width);
      for (int i = 1; i < SCAN_PER_GAP; i++) {
        double place = places[gap] + width * i / SCAN_PER_GAP;
        double size = doubt(place, fits, lower);
        if (size > largest.size()) {
          largest = new Doubt(place, size, width);
        }
      }
      doubts.add(largest);
    }
    doubts.sort((a, b) -> Double.compare(b.size(), a.size()));
    List<Double> next = new ArrayList<>();
    doubts.subList(0, BATCH - 1).forEach(d -> next.add(d.place()));
    doubts.subList(BATCH - 1, doubts.size()).stream()
        .max((a, b) -> Double.compare(a.width(), b.width()))
        .ifPresent(widest -> next.add(widest.place()));
    return next;
  }

  private static double doubt(double place, List<RationalFit> fits, List<RationalFit> lower) {
    double largest = 0;
    for (int group = 0; group < fits.size(); group++) {
      largest =
          Math.max(
              largest,
              RationalFit.relativeDistance(fits.get(group).at(place), lower.get(group).at(place)));
    }
    return largest;
  }
}
