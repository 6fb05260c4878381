package org.spanwire.study;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.Map;
import java.util.OptionalDouble;
import java.util.concurrent.Callable;
import java.util.concurrent.ConcurrentHashMap;
import java.util.function.DoublePredicate;
import java.util.function.ToDoubleFunction;
import java.util.stream.IntStream;
import org.spanwire.Solution;
import org.spanwire.Solver;
import org.spanwire.design.Design;
import org.spanwire.design.DesignException;
import org.spanwire.geometry.GeometryException;
import org.spanwire.unit.Quantity;

/**
 * Makes a design good at its worst over bands and over a set of installations: a scan of the whole
 * range by coarse solutions, then from its best places local searches on polynomials through
 * solutions, whose error is stated, and at the end solutions of what they found.
 *
 * <p>Where no goal or limit asks for the choke, the scan leaves out the outside of the feed line,
 * as a perfect choke would; the local searches do not.
 *
 * @param design with at least one band
 * @param vary ranges of parameters
 * @param choices parameters that take one of several values
 * @param over the installations that the worst case is taken over; a grid of one place for the
 *     design as it stands
 * @param goals what is wanted, at least one
 * @param limits what must be kept
 * @param seed of the local searches
 */
public record OptimizeStudy(
    Design design,
    List<ParameterSample.Range> vary,
    List<ParameterGrid.Axis> choices,
    ParameterGrid over,
    List<Weighted> goals,
    List<Limit> limits,
    long seed) {

  private static final int SCAN_SOLVES = 1200;
  private static final int FEWEST_SCANNED = 24;
  private static final int MOST_SCANNED = 240;
  private static final double SCAN_TOLERANCE = 1e-2;
  private static final int SCAN_FREQUENCIES = 2;

  private static final int STARTS = 2;
  private static final int MOVES = 3;
  private static final int LOCAL_SOLVES = 300;
  private static final double LOCAL_ACCURACY = 8e-3;
  private static final int LOCAL_FREQUENCIES = 3;
  private static final int LOCAL_SCAN = 48;

  private static final int FREQUENCIES = 5;
  private static final int FRONT = 7;
  private static final double FLAT = 0.1;
  private static final double AT_BOUND = 1e-3;

  /** Cost of a design that breaks a limit or cannot be built, above that of any that can. */
  private static final double INFEASIBLE = 1e6;

  /**
   * A goal with its part in the cost.
   *
   * @param weight positive; empty if it is a goal of its own beside the others
   */
  public record Weighted(Goal goal, OptionalDouble weight) {}

  /** The worst value that a quantity may have. */
  public record Limit(Goal goal, double value) {}

  /** Takes copies and checks what can be checked without solving. */
  public OptimizeStudy {
    vary = List.copyOf(vary);
    choices = List.copyOf(choices);
    goals = List.copyOf(goals);
    limits = List.copyOf(limits);
    if (vary.isEmpty() && choices.isEmpty()) {
      throw new IllegalArgumentException("nothing to vary; name a parameter and its range");
    }
    if (goals.isEmpty()) {
      throw new IllegalArgumentException("no goal; name one such as worst-swr");
    }
    if (design.bands().isEmpty()) {
      throw new IllegalArgumentException(
          "names no bands; add bands: {plan: iaru-region-1, use: [40 m, 20 m]}");
    }
    if (design.feedLine().isEmpty()
        && all(goals, limits).stream().anyMatch(g -> g.measure() == Goal.Measure.CHOKE_WATTS)) {
      throw new IllegalArgumentException(
          "heat of the choke needs the line's route; add feed-line: {path: …, conductor: …}");
    }
  }

  private static List<Goal> all(List<Weighted> goals, List<Limit> limits) {
    List<Goal> all = new ArrayList<>();
    goals.forEach(each -> all.add(each.goal()));
    limits.forEach(each -> all.add(each.goal()));
    return all;
  }

  /**
   * Runs the study on several threads; the result does not depend on their number.
   *
   * @throws DesignException if no place of the scan can be built
   */
  public OptimizeResult run(Solver solver, int threads) {
    return new Run(solver, threads).result();
  }

  /** Values of varied parameters in SI units, ranges first, then choices. */
  private record Place(List<Double> values) {

    double[] with(List<Double> installation) {
      return IntStream.range(0, values.size() + installation.size())
          .mapToDouble(i -> i < values.size() ? values.get(i) : installation.get(i - values.size()))
          .toArray();
    }
  }

  private final class Run {
    private final Solver solver;
    private final int threads;
    private final InstallationSet set;
    private final ParameterBox whole;
    private final List<MinimumSearch.Variable> variables;
    private final SolvedLooks exact;
    private final Map<List<Double>, double[]> scanned = new ConcurrentHashMap<>();
    private long solves;
    private double modelError;

    Run(Solver solver, int threads) {
      this.solver = solver;
      this.threads = threads;
      set = InstallationSet.of(design.bands(), over, all(goals, limits));
      variables = new ArrayList<>();
      vary.forEach(range -> variables.add(variable(range)));
      choices.forEach(axis -> variables.add(choice(axis)));
      whole = box(variables);
      exact = looks(design.feedLine().isPresent(), solver.options().tolerance());
    }

    private MinimumSearch.Variable variable(ParameterSample.Range range) {
      double from = range.from().value();
      double to = range.to().value();
      return MinimumSearch.Variable.between(
          range.parameter(), Math.min(from, to), Math.max(from, to));
    }

    private MinimumSearch.Variable choice(ParameterGrid.Axis axis) {
      return MinimumSearch.Variable.oneOf(
          axis.parameter(), axis.values().stream().map(Quantity::value).toList());
    }

    private Quantity quantity(String parameter, double value) {
      return new Quantity(value, design.parameters().get(parameter).value().dimension());
    }

    /** The variables' ranges, then those of the installations. */
    private ParameterBox box(List<MinimumSearch.Variable> ranges) {
      List<ParameterSample.Range> all = new ArrayList<>();
      for (MinimumSearch.Variable each : ranges) {
        all.add(
            new ParameterSample.Range(
                each.name(),
                quantity(each.name(), each.low()),
                quantity(each.name(), each.high())));
      }
      for (ParameterGrid.Axis axis : over.axes()) {
        Comparator<Quantity> byValue = Comparator.comparingDouble(Quantity::value);
        all.add(
            new ParameterSample.Range(
                axis.parameter(),
                axis.values().stream().min(byValue).orElseThrow(),
                axis.values().stream().max(byValue).orElseThrow()));
      }
      return new ParameterBox(design, all);
    }

    private List<ToDoubleFunction<Solution>> decibels() {
      return set.goals().stream()
          .filter(goal -> goal.measure() == Goal.Measure.GAIN)
          .map(Goal::decibels)
          .toList();
    }

    private SolvedLooks looks(boolean route, double tolerance) {
      return new SolvedLooks(
          whole,
          new PortNumbers(route, decibels()),
          solver.withTolerance(tolerance),
          design.bands().get(0).lowHz());
    }

    private double cost(double[] worst) {
      double broken = 0;
      for (int i = 0; i < limits.size(); i++) {
        Goal goal = limits.get(i).goal();
        double excess = goal.cost(worst[goals.size() + i]) - goal.cost(limits.get(i).value());
        broken += Math.max(0, excess);
      }
      if (broken > 0) {
        return INFEASIBLE + broken;
      }
      double sum = 0;
      for (int i = 0; i < goals.size(); i++) {
        boolean first = i == 0 && goals.get(i).weight().isEmpty();
        double weight = first ? 1 : goals.get(i).weight().orElse(0);
        sum += weight * goals.get(i).goal().cost(worst[i]);
      }
      return sum;
    }

    OptimizeResult result() {
      List<MinimumSearch.Minimum> scan = new ArrayList<>();
      List<MinimumSearch.Minimum> starts = scan(scan);
      List<OptimizeResult.Candidate> candidates = new ArrayList<>();
      for (MinimumSearch.Minimum start : starts) {
        for (OptimizeResult.Candidate found : refined(start)) {
          if (candidates.stream().noneMatch(other -> same(other, found))) {
            candidates.add(found);
          }
        }
      }
      candidates.sort(Comparator.comparingDouble(OptimizeResult.Candidate::cost));
      OptimizeResult.Candidate nominal = nominal();
      List<OptimizeResult.Candidate> front = isFront() ? front(scan) : List.of();
      return new OptimizeResult(
          goals.stream().map(Weighted::goal).toList(),
          nominal,
          candidates,
          front,
          scan.size(),
          solves + exact.solves(),
          modelError);
    }

    private boolean isFront() {
      return goals.size() > 1 && goals.stream().allMatch(each -> each.weight().isEmpty());
    }

    private boolean same(OptimizeResult.Candidate a, OptimizeResult.Candidate b) {
      for (int i = 0; i < variables.size(); i++) {
        double width = variables.get(i).high() - variables.get(i).low();
        double apart =
            a.parameters().get(i).value().value() - b.parameters().get(i).value().value();
        if (Math.abs(apart) > 0.01 * width) {
          return false;
        }
      }
      return true;
    }

    /** Judges places all over the ranges and gives the best of those that are best around. */
    private List<MinimumSearch.Minimum> scan(List<MinimumSearch.Minimum> into) {
      boolean choke = set.goals().stream().anyMatch(g -> g.measure() == Goal.Measure.CHOKE_WATTS);
      SolvedLooks coarse = looks(choke, Math.max(SCAN_TOLERANCE, solver.options().tolerance()));
      long each = over.count() * design.bands().size() * SCAN_FREQUENCIES;
      int count = (int) Math.max(FEWEST_SCANNED, Math.min(MOST_SCANNED, SCAN_SOLVES / each));
      MinimumSearch search = new MinimumSearch(variables, count, STARTS, seed);
      List<MinimumSearch.Minimum> best = new ArrayList<>();
      try (Workers workers = new Workers(threads)) {
        for (List<double[]> places : search.scans()) {
          List<Callable<MinimumSearch.Minimum>> tasks = new ArrayList<>();
          places.forEach(place -> tasks.add(() -> judged(coarse, place)));
          List<MinimumSearch.Minimum> judged = workers.run(tasks);
          into.addAll(judged);
          best.addAll(search.promising(judged));
        }
      }
      solves += coarse.solves();
      if (into.stream().allMatch(one -> one.value() >= 2 * INFEASIBLE)) {
        // Says what is wrong.
        whole.with(whole.middle());
        throw new IllegalArgumentException(
            "no place of the scan can be modelled; narrow the ranges");
      }
      return best.stream()
          .filter(one -> one.value() < 2 * INFEASIBLE)
          .sorted(Comparator.comparingDouble(MinimumSearch.Minimum::value))
          .limit(STARTS)
          .toList();
    }

    private MinimumSearch.Minimum judged(SolvedLooks looks, double[] place) {
      Place at = new Place(IntStream.range(0, place.length).mapToObj(i -> place[i]).toList());
      double cost;
      try {
        double[] worst = set.worst(n -> looks.at(at.with(n)), SCAN_FREQUENCIES);
        scanned.put(at.values(), worst);
        cost = cost(worst);
      } catch (GeometryException | DesignException e) {
        // Such a place is no candidate; if all are like it, the scan says so.
        cost = 2 * INFEASIBLE;
      }
      return new MinimumSearch.Minimum(at.values(), cost);
    }

    /** Searches around a place, moving on while the best lies at the edge of what was looked at. */
    private List<OptimizeResult.Candidate> refined(MinimumSearch.Minimum start) {
      List<Double> centre = start.place();
      for (int move = 0; ; move++) {
        List<MinimumSearch.Variable> around = around(centre);
        PortModel model = model(around);
        MinimumSearch search = new MinimumSearch(around, LOCAL_SCAN * around.size(), 2, seed);
        ToDoubleFunction<double[]> cost = place -> cost(worst(model, place));
        List<MinimumSearch.Minimum> found = search.run(cost, threads);
        double best = found.get(0).value();
        if (move + 1 < MOVES && atEdge(found.get(0), around)) {
          centre = found.get(0).place();
          continue;
        }
        return found.stream()
            .filter(each -> each.value() <= best + FLAT)
            .limit(STARTS)
            .map(each -> candidate(each.place(), flatness(cost, each, around)))
            .toList();
      }
    }

    private double[] worst(PortModel model, double[] place) {
      Place at = new Place(IntStream.range(0, place.length).mapToObj(i -> place[i]).toList());
      return set.worst(n -> model.at(at.with(n)), LOCAL_FREQUENCIES);
    }

    private PortModel model(List<MinimumSearch.Variable> around) {
      List<FrequencyRange> ranges =
          design.bands().stream().map(b -> new FrequencyRange(b.lowHz(), b.highHz())).toList();
      PortModel model =
          PortModel.of(
              new PortModel.Request(box(around), ranges, decibels(), LOCAL_ACCURACY, LOCAL_SOLVES),
              solver.withTolerance(Math.max(2e-3, solver.options().tolerance())),
              threads);
      solves += model.solves();
      modelError = Math.max(modelError, model.error());
      return model;
    }

    /** A part of every range around a place; choices that move the antenna stay as they are. */
    private List<MinimumSearch.Variable> around(List<Double> centre) {
      List<Integer> moving = whole.ofAntenna(design.bands().get(0).lowHz());
      long free = variables.stream().filter(each -> !each.isDiscrete()).count();
      double share = Math.min(0.25, 0.7 * Math.pow(FEWEST_SCANNED, -1.0 / Math.max(1, free)));
      List<MinimumSearch.Variable> around = new ArrayList<>();
      for (int i = 0; i < variables.size(); i++) {
        MinimumSearch.Variable each = variables.get(i);
        if (each.isDiscrete()) {
          around.add(
              moving.contains(i)
                  ? MinimumSearch.Variable.oneOf(each.name(), List.of(centre.get(i)))
                  : each);
          continue;
        }
        double reach = (moving.contains(i) ? share : 1) * (each.high() - each.low());
        around.add(
            MinimumSearch.Variable.between(
                each.name(),
                Math.max(each.low(), centre.get(i) - reach),
                Math.min(each.high(), centre.get(i) + reach)));
      }
      return around;
    }

    /** Whether a place lies at an edge of a part that is no edge of the whole. */
    private boolean atEdge(MinimumSearch.Minimum found, List<MinimumSearch.Variable> part) {
      for (int i = 0; i < part.size(); i++) {
        double at = found.place().get(i);
        double margin = 0.02 * (part.get(i).high() - part.get(i).low());
        boolean low =
            at <= part.get(i).low() + margin && part.get(i).low() > variables.get(i).low();
        boolean high =
            at >= part.get(i).high() - margin && part.get(i).high() < variables.get(i).high();
        if (!part.get(i).isDiscrete() && (low || high)) {
          return true;
        }
      }
      return false;
    }

    private List<OptimizeResult.Flatness> flatness(
        ToDoubleFunction<double[]> cost,
        MinimumSearch.Minimum best,
        List<MinimumSearch.Variable> part) {
      List<OptimizeResult.Flatness> all = new ArrayList<>();
      for (int i = 0; i < part.size(); i++) {
        if (part.get(i).isDiscrete()) {
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
                part.get(i).name(),
                edge(flat, at, part.get(i).low()),
                edge(flat, at, part.get(i).high())));
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

    private OptimizeResult.Candidate nominal() {
      List<Double> values =
          variables.stream()
              .map(each -> design.parameters().get(each.name()).value().value())
              .toList();
      return candidate(values, List.of());
    }

    /** Solves a place. */
    private OptimizeResult.Candidate candidate(
        List<Double> place, List<OptimizeResult.Flatness> flatness) {
      Place at = new Place(place);
      solveAhead(at);
      InstallationSet.Looks looks = n -> exact.at(at.with(n));
      double[] worst = set.worst(looks, FREQUENCIES);
      double cost = cost(worst);
      List<OptimizeResult.Setting> settings = new ArrayList<>();
      for (int i = 0; i < place.size(); i++) {
        MinimumSearch.Variable each = variables.get(i);
        double margin = AT_BOUND * (each.high() - each.low());
        boolean bound =
            !each.isDiscrete()
                && (place.get(i) <= each.low() + margin || place.get(i) >= each.high() - margin);
        settings.add(
            new OptimizeResult.Setting(each.name(), quantity(each.name(), place.get(i)), bound));
      }
      return new OptimizeResult.Candidate(
          settings,
          cost,
          IntStream.range(0, goals.size()).mapToObj(i -> worst[i]).toList(),
          cost < INFEASIBLE,
          set.binding(looks, FREQUENCIES),
          set.byBand(looks, FREQUENCIES),
          flatness);
    }

    /** Solves on all threads what {@link #candidate} will look at. */
    private void solveAhead(Place at) {
      List<Callable<Double>> tasks = new ArrayList<>();
      for (long n = 0; n < over.count(); n++) {
        List<Double> installation = over.at(n).stream().map(Quantity::value).toList();
        Look look = exact.at(at.with(installation));
        for (int band = 0; band < design.bands().size(); band++) {
          int index = band;
          for (double f : InstallationSet.frequencies(design.bands().get(band), FREQUENCIES)) {
            tasks.add(() -> look.swr(index, f, Plane.TRANSMITTER));
          }
        }
      }
      try (Workers workers = new Workers(threads)) {
        workers.run(tasks);
      }
    }

    /**
     * The designs of the scan that no other is better than in all goals, thinned out and solved.
     */
    private List<OptimizeResult.Candidate> front(List<MinimumSearch.Minimum> scan) {
      List<MinimumSearch.Minimum> feasible =
          scan.stream().filter(one -> one.value() < INFEASIBLE).toList();
      return new TradeOff(goals.stream().map(Weighted::goal).toList(), FRONT)
          .of(feasible, one -> scanned.get(one.place())).stream()
              .map(one -> candidate(one.place(), List.of()))
              .toList();
    }
  }
}
