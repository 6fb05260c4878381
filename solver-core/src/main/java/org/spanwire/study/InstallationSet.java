package org.spanwire.study;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.function.ToDoubleFunction;
import org.spanwire.Solution;
import org.spanwire.design.Band;

/**
 * The worst of goals over the bands of a design and over a set of installations.
 *
 * @param bands the bands
 * @param over the installations
 * @param goals all goals that are looked at
 * @param numbers of each goal its ratio in decibels, −1 for none
 */
record InstallationSet(
    List<Band> bands, ParameterGrid over, List<Goal> goals, List<Integer> numbers) {

  /** Costs within this of the worst share it. */
  private static final double SHARED = 0.01;

  static InstallationSet of(List<Band> bands, ParameterGrid over, List<Goal> goals) {
    List<Integer> numbers = new ArrayList<>();
    int next = 0;
    for (Goal goal : goals) {
      numbers.add(goal.measure() == Goal.Measure.GAIN ? next++ : -1);
    }
    return new InstallationSet(bands, over, goals, numbers);
  }

  /** The ratios in decibels that the goals look at, by their numbers. */
  List<ToDoubleFunction<Solution>> decibels() {
    return goals.stream()
        .filter(goal -> goal.measure() == Goal.Measure.GAIN)
        .map(Goal::decibels)
        .toList();
  }

  /** The frequencies in hertz of all bands, so many in each. */
  List<Double> frequencies(int count) {
    return bands.stream()
        .flatMap(band -> Arrays.stream(frequencies(band, count)).boxed())
        .distinct()
        .toList();
  }

  /** One of the installations, for the values of the varied parameters. */
  @FunctionalInterface
  interface Looks {
    Look at(List<Double> installation);
  }

  private List<Double> installation(long index) {
    return over.at(index).stream().map(quantity -> quantity.value()).toList();
  }

  static double[] frequencies(Band band, int count) {
    return ReflectionCurve.frequencies(new FrequencyRange(band.lowHz(), band.highHz()), count);
  }

  /** The worst value of every goal. */
  double[] worst(Looks looks, int frequencies) {
    double[] worst = new double[goals.size()];
    Arrays.fill(worst, Double.NEGATIVE_INFINITY);
    for (long n = 0; n < over.count(); n++) {
      Look look = looks.at(installation(n));
      for (int band = 0; band < bands.size(); band++) {
        for (double f : frequencies(bands.get(band), frequencies)) {
          for (int g = 0; g < worst.length; g++) {
            Goal goal = goals.get(g);
            worst[g] = Math.max(worst[g], goal.cost(goal.value(look, band, f, numbers.get(g))));
          }
        }
      }
    }
    for (int g = 0; g < worst.length; g++) {
      worst[g] = goals.get(g).cost(worst[g]);
    }
    return worst;
  }

  /** The first goal's worst in every band. */
  List<OptimizeResult.BandValue> byBand(Looks looks, int frequencies) {
    List<OptimizeResult.BandValue> values = new ArrayList<>();
    for (Band band : bands) {
      double cost = Double.NEGATIVE_INFINITY;
      for (long n = 0; n < over.count(); n++) {
        cost = Math.max(cost, cost(looks.at(installation(n)), band, frequencies).cost());
      }
      values.add(new OptimizeResult.BandValue(band.name(), goals.get(0).cost(cost)));
    }
    return values;
  }

  private record At(double cost, double frequencyHz) {}

  private At cost(Look look, Band band, int frequencies) {
    At worst = new At(Double.NEGATIVE_INFINITY, band.lowHz());
    for (double f : frequencies(band, frequencies)) {
      Goal goal = goals.get(0);
      double cost = goal.cost(goal.value(look, bands.indexOf(band), f, numbers.get(0)));
      worst = cost > worst.cost ? new At(cost, f) : worst;
    }
    return worst;
  }

  /** Where the first goal is at its worst. */
  List<OptimizeResult.Binding> binding(Looks looks, int frequencies) {
    List<OptimizeResult.Binding> all = new ArrayList<>();
    List<Double> costs = new ArrayList<>();
    for (long n = 0; n < over.count(); n++) {
      Look look = looks.at(installation(n));
      for (Band band : bands) {
        At worst = cost(look, band, frequencies);
        costs.add(worst.cost);
        all.add(new OptimizeResult.Binding(band.name(), worst.frequencyHz, settings(n)));
      }
    }
    double largest = costs.stream().mapToDouble(Double::doubleValue).max().orElseThrow();
    List<OptimizeResult.Binding> binding = new ArrayList<>();
    for (int i = 0; i < all.size(); i++) {
      if (costs.get(i) >= largest - SHARED) {
        binding.add(all.get(i));
      }
    }
    return binding;
  }

  private List<OptimizeResult.Setting> settings(long installation) {
    List<OptimizeResult.Setting> settings = new ArrayList<>();
    for (int i = 0; i < over.axes().size(); i++) {
      settings.add(
          new OptimizeResult.Setting(
              over.parameters().get(i), over.at(installation).get(i), false));
    }
    return settings;
  }
}
