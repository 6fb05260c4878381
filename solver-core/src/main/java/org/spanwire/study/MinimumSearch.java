package org.spanwire.study;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.Comparator;
import java.util.List;
import java.util.concurrent.Callable;
import java.util.function.ToDoubleFunction;
import java.util.stream.IntStream;
import org.apache.commons.math3.optim.InitialGuess;
import org.apache.commons.math3.optim.MaxEval;
import org.apache.commons.math3.optim.PointValuePair;
import org.apache.commons.math3.optim.SimpleBounds;
import org.apache.commons.math3.optim.nonlinear.scalar.GoalType;
import org.apache.commons.math3.optim.nonlinear.scalar.ObjectiveFunction;
import org.apache.commons.math3.optim.nonlinear.scalar.noderiv.CMAESOptimizer;
import org.apache.commons.math3.optim.univariate.BrentOptimizer;
import org.apache.commons.math3.optim.univariate.SearchInterval;
import org.apache.commons.math3.optim.univariate.UnivariateObjectiveFunction;
import org.apache.commons.math3.random.MersenneTwister;
import org.apache.commons.math3.random.SobolSequenceGenerator;

/**
 * Finds the smallest values of a function of bounded and of discrete variables, and all places that
 * share them: a scan of every combination of the discrete values, then a local search from every
 * promising place of it. The function may have kinks, as a worst case over several bands does.
 *
 * <p>Local search: Brent's method for one bounded variable, else covariance matrix adaptation (N.
 * Hansen and A. Ostermeier, Evolutionary Computation 9, 159, 2001). The same seed finds the same
 * bits, whatever the number of threads.
 *
 * @param variables at least one
 * @param scanned number of places scanned per combination of the discrete values, at least 8
 * @param starts number of local searches per combination, at least 1
 * @param seed of the local searches
 */
public record MinimumSearch(List<Variable> variables, int scanned, int starts, long seed) {

  private static final double ACCURACY = 1e-7;

  /** Two minima closer than this share of every range are one. */
  private static final double APART = 0.01;

  private static final double SIGMA = 0.06;
  private static final int EVALUATIONS_PER_VARIABLE = 150;

  /**
   * A variable.
   *
   * @param name its name
   * @param low smallest value
   * @param high largest value
   * @param values the values that it may take; empty for all between low and high
   */
  public record Variable(String name, double low, double high, List<Double> values) {

    /** Checks the order. */
    public Variable {
      values = List.copyOf(values);
      if (!(low <= high)) {
        throw new IllegalArgumentException(name + ": " + low + " to " + high + " is no range");
      }
    }

    /** Any value of a range. */
    public static Variable between(String name, double low, double high) {
      return new Variable(name, low, high, List.of());
    }

    /** One of several values. */
    public static Variable oneOf(String name, List<Double> values) {
      double low = values.stream().mapToDouble(Double::doubleValue).min().orElseThrow();
      double high = values.stream().mapToDouble(Double::doubleValue).max().orElseThrow();
      return new Variable(name, low, high, values);
    }

    boolean isDiscrete() {
      return !values.isEmpty();
    }

    private double apart(double a, double b) {
      return isDiscrete() ? (a == b ? 0 : 1) : Math.abs(a - b) / Math.max(high - low, 1e-300);
    }
  }

  /**
   * A local minimum.
   *
   * @param place value of every variable, in their order
   * @param value of the function there
   */
  public record Minimum(List<Double> place, double value) {

    /** Takes a copy. */
    public Minimum {
      place = List.copyOf(place);
    }
  }

  /** Takes a copy. */
  public MinimumSearch {
    variables = List.copyOf(variables);
    if (variables.isEmpty() || scanned < 8 || starts < 1) {
      throw new IllegalArgumentException(
          "a search needs a variable, a scan of at least 8 places and a start");
    }
  }

  /**
   * Searches on several threads.
   *
   * @param function finite everywhere in the bounds; called by several threads at once
   * @return the distinct minima found, the smallest first; of equal ones the order of their places
   */
  public List<Minimum> run(ToDoubleFunction<double[]> function, int threads) {
    try (Workers workers = new Workers(threads)) {
      List<Callable<List<Minimum>>> scans = new ArrayList<>();
      for (List<double[]> scan : scans()) {
        scans.add(() -> promising(scan.stream().map(each -> minimum(function, each)).toList()));
      }
      List<Callable<Minimum>> searches = new ArrayList<>();
      workers
          .run(scans)
          .forEach(found -> found.forEach(start -> searches.add(() -> local(function, start))));
      return distinct(workers.run(searches));
    }
  }

  /** The places to scan, one list for every combination of the discrete values. */
  List<List<double[]>> scans() {
    return combinations().stream().map(this::scan).toList();
  }

  private List<Integer> free() {
    return IntStream.range(0, variables.size())
        .filter(i -> !variables.get(i).isDiscrete())
        .boxed()
        .toList();
  }

  /** Every combination of the discrete values; bounded variables in their middle. */
  private List<double[]> combinations() {
    List<double[]> all = new ArrayList<>();
    all.add(variables.stream().mapToDouble(v -> (v.low() + v.high()) / 2).toArray());
    for (int i = 0; i < variables.size(); i++) {
      if (variables.get(i).isDiscrete()) {
        List<double[]> more = new ArrayList<>();
        for (double[] each : all) {
          for (double value : variables.get(i).values()) {
            double[] copy = each.clone();
            copy[i] = value;
            more.add(copy);
          }
        }
        all = more;
      }
    }
    return all;
  }

  /** The places of a scan that are better than those around them, the best first. */
  List<Minimum> promising(List<Minimum> scan) {
    int free = free().size();
    int neighbours = free == 1 ? 2 : 2 * free + 2;
    return scan.stream()
        .filter(each -> isBestOf(nearest(scan, each, neighbours), each))
        .sorted(Comparator.comparingDouble(Minimum::value))
        .limit(starts)
        .toList();
  }

  private static boolean isBestOf(List<Minimum> around, Minimum one) {
    return around.stream().allMatch(other -> one.value() <= other.value());
  }

  private List<double[]> scan(double[] fixed) {
    List<Integer> free = free();
    if (free.isEmpty()) {
      return List.of(fixed);
    }
    SobolSequenceGenerator sequence = new SobolSequenceGenerator(free.size());
    List<double[]> places = new ArrayList<>();
    for (int n = 0; n < scanned; n++) {
      double[] share =
          free.size() == 1 ? new double[] {(double) n / (scanned - 1)} : sequence.nextVector();
      double[] place = fixed.clone();
      for (int k = 0; k < share.length; k++) {
        Variable variable = variables.get(free.get(k));
        place[free.get(k)] = variable.low() * (1 - share[k]) + variable.high() * share[k];
      }
      places.add(place);
    }
    return places;
  }

  private List<Minimum> nearest(List<Minimum> scan, Minimum one, int count) {
    return scan.stream()
        .filter(other -> other != one)
        .sorted(Comparator.comparingDouble(other -> distance(one, other)))
        .limit(count)
        .toList();
  }

  private double distance(Minimum one, Minimum other) {
    double sum = 0;
    for (int i = 0; i < variables.size(); i++) {
      double apart = variables.get(i).apart(one.place().get(i), other.place().get(i));
      sum += apart * apart;
    }
    return Math.sqrt(sum);
  }

  private static Minimum minimum(ToDoubleFunction<double[]> function, double[] place) {
    return new Minimum(
        Arrays.stream(place).boxed().toList(), function.applyAsDouble(place.clone()));
  }

  private Minimum local(ToDoubleFunction<double[]> function, Minimum start) {
    List<Integer> free = free();
    if (free.isEmpty()) {
      return start;
    }
    Minimum found = free.size() == 1 ? brent(function, start) : adapted(function, start);
    return found.value() <= start.value() ? found : start;
  }

  /** Within one step of the scan to either side. */
  private Minimum brent(ToDoubleFunction<double[]> function, Minimum start) {
    int i = free().get(0);
    Variable variable = variables.get(i);
    double step = (variable.high() - variable.low()) / (scanned - 1);
    double middle = start.place().get(i);
    double low = Math.max(variable.low(), middle - step);
    double high = Math.min(variable.high(), middle + step);
    if (!(high > low)) {
      return start;
    }
    double[] place = start.place().stream().mapToDouble(Double::doubleValue).toArray();
    double at =
        new BrentOptimizer(ACCURACY, ACCURACY * (high - low))
            .optimize(
                new MaxEval(1000),
                GoalType.MINIMIZE,
                new UnivariateObjectiveFunction(
                    x -> {
                      double[] moved = place.clone();
                      moved[i] = x;
                      return function.applyAsDouble(moved);
                    }),
                new SearchInterval(low, high, Math.max(low, Math.min(high, middle))))
            .getPoint();
    double[] moved = place.clone();
    moved[i] = at;
    return minimum(function, moved);
  }

  private Minimum adapted(ToDoubleFunction<double[]> function, Minimum start) {
    List<Integer> free = free();
    int n = free.size();
    double[] guess = new double[n];
    double[] sigma = new double[n];
    double[] low = new double[n];
    double[] high = new double[n];
    for (int k = 0; k < n; k++) {
      Variable variable = variables.get(free.get(k));
      double width = Math.max(variable.high() - variable.low(), 1e-300);
      guess[k] = (start.place().get(free.get(k)) - variable.low()) / width;
      guess[k] = Math.max(0, Math.min(1, guess[k]));
      sigma[k] = SIGMA;
      high[k] = 1;
    }
    int population = 4 + (int) (3 * Math.log(n));
    CMAESOptimizer optimizer =
        new CMAESOptimizer(
            EVALUATIONS_PER_VARIABLE * n / population,
            Double.NEGATIVE_INFINITY,
            true,
            0,
            0,
            new MersenneTwister(seed),
            false,
            (iteration, previous, current) ->
                Math.abs(previous.getValue() - current.getValue()) < ACCURACY && iteration > 30);
    PointValuePair best =
        optimizer.optimize(
            new MaxEval(10 * EVALUATIONS_PER_VARIABLE * n),
            GoalType.MINIMIZE,
            new ObjectiveFunction(shares -> function.applyAsDouble(at(start, shares))),
            new InitialGuess(guess),
            new SimpleBounds(low, high),
            new CMAESOptimizer.Sigma(sigma),
            new CMAESOptimizer.PopulationSize(population));
    return minimum(function, at(start, best.getPoint()));
  }

  private double[] at(Minimum start, double[] shares) {
    double[] place = start.place().stream().mapToDouble(Double::doubleValue).toArray();
    List<Integer> free = free();
    for (int k = 0; k < shares.length; k++) {
      Variable variable = variables.get(free.get(k));
      double share = Math.max(0, Math.min(1, shares[k]));
      place[free.get(k)] = variable.low() * (1 - share) + variable.high() * share;
    }
    return place;
  }

  private List<Minimum> distinct(List<Minimum> found) {
    List<Minimum> sorted =
        found.stream().sorted(Comparator.comparingDouble(Minimum::value)).toList();
    List<Minimum> kept = new ArrayList<>();
    for (Minimum each : sorted) {
      if (kept.stream().allMatch(other -> isApart(each, other))) {
        kept.add(each);
      }
    }
    return kept;
  }

  private boolean isApart(Minimum one, Minimum other) {
    return IntStream.range(0, variables.size())
        .anyMatch(i -> variables.get(i).apart(one.place().get(i), other.place().get(i)) > APART);
  }
}
