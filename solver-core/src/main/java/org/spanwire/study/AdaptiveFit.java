package org.spanwire.study;

import java.util.ArrayList;
import java.util.List;
import java.util.TreeMap;
import java.util.concurrent.Callable;
import java.util.function.DoubleFunction;
import org.apache.commons.math3.complex.Complex;

/**
 * Samples a function where a rational fit is least certain, until new samples confirm what the fit
 * without them said.
 *
 * <p>Where it is least certain: where the fits with all and with one support point less differ most
 * between the samples. Every new sample is first held against the fit made without it, so the
 * stated error comes from values the fit had not seen, at the places where it was least certain.
 * New samples come in batches of fixed size, so that the places do not depend on the number of
 * threads.
 */
final class AdaptiveFit {

  private static final int FIRST_SAMPLES = 17;
  private static final int BATCH = 4;
  private static final int CONFIRMATIONS = 3;

  /** Support points that are chosen anew when samples are added; the others are kept. */
  private static final int REVISED_SUPPORTS = 2;

  private static final int SCAN_PER_GAP = 24;

  private final FrequencyRange range;
  private final DoubleFunction<Complex[]> function;
  private final Goal goal;
  private final TreeMap<Double, Complex[]> samples = new TreeMap<>();

  /**
   * When to stop.
   *
   * @param accuracy wanted relative error
   * @param noise relative error of the samples, below the accuracy
   * @param mostSamples number of samples to give up at
   */
  record Goal(double accuracy, double noise, int mostSamples) {}

  AdaptiveFit(FrequencyRange range, DoubleFunction<Complex[]> function, Goal goal) {
    this.range = range;
    this.function = function;
    this.goal = goal;
  }

  /**
   * What came out.
   *
   * @param fit the fit to all samples
   * @param places where the function was sampled, rising
   * @param error largest relative error of the last predictions, plus that of the samples
   */
  record Outcome(RationalFit fit, double[] places, double error) {}

  Outcome run(Workers workers) {
    List<Double> first = new ArrayList<>();
    for (double frequency : ReflectionCurve.frequencies(range, FIRST_SAMPLES)) {
      first.add(frequency);
    }
    sample(workers, first);
    RationalFit fit = fit(List.of(), samples.size() / 2);
    int confirmed = 0;
    double unseen = 0;
    while (true) {
      List<Double> next = next(fit);
      List<Complex[]> predicted = next.stream().map(fit::at).toList();
      sample(workers, next);
      fit = fit(withoutLast(fit, REVISED_SUPPORTS), samples.size() / 2);
      double missed = missed(next, predicted);
      boolean confirms = missed <= goal.accuracy() / 2;
      confirmed = confirms ? confirmed + 1 : 0;
      unseen = confirmed > 1 ? Math.max(unseen, missed) : missed;
      if (confirmed == CONFIRMATIONS || samples.size() + BATCH > goal.mostSamples()) {
        return new Outcome(fit, places(), unseen + goal.noise());
      }
    }
  }

  private double missed(List<Double> places, List<Complex[]> predicted) {
    double missed = 0;
    for (int i = 0; i < places.size(); i++) {
      Complex[] found = samples.get(places.get(i));
      missed = Math.max(missed, RationalFit.relativeDistance(found, predicted.get(i)));
    }
    return missed;
  }

  private void sample(Workers workers, List<Double> places) {
    List<Callable<Complex[]>> tasks = new ArrayList<>();
    for (double place : places) {
      tasks.add(() -> function.apply(place));
    }
    List<Complex[]> found = workers.run(tasks);
    for (int i = 0; i < places.size(); i++) {
      samples.put(places.get(i), found.get(i));
    }
  }

  private double[] places() {
    return samples.keySet().stream().mapToDouble(Double::doubleValue).toArray();
  }

  private RationalFit fit(List<Double> begin, int most) {
    return RationalFit.of(
        new RationalFit.Samples(places(), samples.values().toArray(Complex[][]::new)),
        begin,
        goal.noise(),
        most);
  }

  private static List<Double> withoutLast(RationalFit fit, int count) {
    List<Double> supports = fit.supports();
    return supports.subList(0, Math.max(0, supports.size() - count));
  }

  /** The largest doubts, one per gap between samples at most, and the middle of the widest gap. */
  private List<Double> next(RationalFit fit) {
    List<Double> fewer = withoutLast(fit, 1);
    RationalFit lower = fit(fewer, fewer.size());
    double[] places = places();
    record Doubt(double place, double size, double width) {}
    List<Doubt> doubts = new ArrayList<>();
    for (int gap = 0; gap + 1 < places.length; gap++) {
      double width = places[gap + 1] - places[gap];
      Doubt largest = new Doubt(places[gap] + width / 2, -1, width);
      for (int i = 1; i < SCAN_PER_GAP; i++) {
        double place = places[gap] + width * i / SCAN_PER_GAP;
        double size = RationalFit.relativeDistance(fit.at(place), lower.at(place));
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
}
