package org.spanwire.study;

import java.util.ArrayList;
import java.util.List;
import java.util.SplittableRandom;
import org.apache.commons.math3.distribution.NormalDistribution;
import org.apache.commons.math3.random.SobolSequenceGenerator;
import org.spanwire.design.Design;
import org.spanwire.design.Parameter;
import org.spanwire.design.Spread;
import org.spanwire.unit.Quantity;

/**
 * Values of the parameters that carry a spread, as installations have them: the Sobol sequence with
 * a digital shift drawn from the seed (P. L'Ecuyer and C. Lemieux, Management Science 46, 1214,
 * 2000). A normal spread is cut off at four sigma, every spread at the parameter's limits.
 */
final class SpreadSample {

  private static final double MOST_SIGMAS = 4;
  private static final int BITS = 52;

  private final List<Source> sources;

  /** Where the values of one parameter come from. */
  private record Source(Parameter parameter, double low, double high) {

    static Source of(Parameter parameter) {
      double nominal = parameter.value().value();
      double reach =
          parameter.spread().orElseThrow() instanceof Spread.Normal normal
              ? MOST_SIGMAS * normal.sigma().value()
              : unit(parameter);
      return new Source(
          parameter,
          parameter.nearestAllowed(nominal - reach),
          parameter.nearestAllowed(nominal + reach));
    }

    double at(double share) {
      double value;
      if (parameter.spread().orElseThrow() instanceof Spread.Normal normal) {
        NormalDistribution law =
            new NormalDistribution(null, parameter.value().value(), normal.sigma().value());
        double from = law.cumulativeProbability(low);
        double to = law.cumulativeProbability(high);
        value = law.inverseCumulativeProbability(from + share * (to - from));
      } else {
        value = low + share * (high - low);
      }
      return Math.max(low, Math.min(high, value));
    }
  }

  /** The parameters of a design whose spread is not zero. */
  SpreadSample(Design design) {
    sources =
        design.parameters().values().stream()
            .filter(parameter -> parameter.spread().isPresent() && unit(parameter) > 0)
            .map(Source::of)
            .toList();
  }

  /** The half-width or the sigma of a parameter's spread. */
  static double unit(Parameter parameter) {
    Spread spread = parameter.spread().orElseThrow();
    return spread instanceof Spread.Normal normal
        ? normal.sigma().value()
        : ((Spread.Uniform) spread).halfWidth().value();
  }

  List<Parameter> parameters() {
    return sources.stream().map(Source::parameter).toList();
  }

  /** The ranges that the values lie in. */
  List<ParameterSample.Range> ranges() {
    List<ParameterSample.Range> ranges = new ArrayList<>();
    for (Source source : sources) {
      Quantity nominal = source.parameter.value();
      ranges.add(
          new ParameterSample.Range(
              source.parameter.name(),
              new Quantity(source.low, nominal.dimension()),
              new Quantity(source.high, nominal.dimension())));
    }
    return ranges;
  }

  double[] nominal() {
    return sources.stream().mapToDouble(source -> source.parameter.value().value()).toArray();
  }

  /** The value of one parameter that a share of the installations stays below. */
  double quantile(int parameter, double share) {
    return sources.get(parameter).at(share);
  }

  /** Values in SI units, one row per installation; a longer sample begins with the shorter one. */
  List<double[]> rows(int count, long seed) {
    SplittableRandom random = new SplittableRandom(seed);
    long[] shifts = sources.stream().mapToLong(s -> random.nextLong() >>> (64 - BITS)).toArray();
    SobolSequenceGenerator sequence = new SobolSequenceGenerator(sources.size());
    List<double[]> rows = new ArrayList<>();
    for (int n = 0; n < count; n++) {
      double[] row = sequence.nextVector();
      for (int i = 0; i < row.length; i++) {
        long digits = (long) Math.scalb(row[i], BITS) ^ shifts[i];
        row[i] = sources.get(i).at(Math.scalb(digits + 0.5, -BITS));
      }
      rows.add(row);
    }
    return rows;
  }
}
