package org.spanwire.study;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.Comparator;
import java.util.List;
import java.util.Map;
import java.util.concurrent.Callable;
import java.util.concurrent.ConcurrentHashMap;
import java.util.function.ToDoubleFunction;
import java.util.stream.IntStream;
import java.util.stream.LongStream;
import org.spanwire.Solver;
import org.spanwire.design.Design;
import org.spanwire.design.DesignException;
import org.spanwire.geometry.GeometryException;
import org.spanwire.unit.Quantity;

/** One run of an {@link OptimizeStudy}: scan, local searches, solutions of what they found. */
final class OptimizeRun {

  private static final int SCAN_SOLVES = 1200;
  private static final int FEWEST_SCANNED = 24;
  private static final int MOST_SCANNED = 240;
  private static final double SCAN_TOLERANCE = 1e-2;
  private static final int SCAN_FREQUENCIES = 2;

  private static final int STARTS = 2;
  private static final int MOVES = 3;

  private static final int FREQUENCIES = 5;
  private static final int FRONT = 7;

  /** Local models that the front may add to those of the best designs. */
  private static final int FRONT_MODELS = 4;

  private static final double AT_BOUND = 1e-3;

  private final OptimizeStudy study;
  private final Design design;
  private final Solver solver;
  private final int threads;
  private final OptimizeCost cost;
  private final InstallationSet set;
  private final DesignVariables variables;
  private final ParameterBox whole;
  private final SolvedLooks exact;
  private final Map<List<Double>, double[]> scanned = new ConcurrentHashMap<>();
  private final List<LocalDesigns> models = new ArrayList<>();
  private long solves;

  OptimizeRun(OptimizeStudy study, Solver solver, int threads) {
    this.study = study;
    this.solver = solver;
    this.threads = threads;
    design = study.design();
    cost = new OptimizeCost(study.goals(), study.limits());
    set = InstallationSet.of(design.bands(), study.over(), cost.all());
    variables = DesignVariables.of(design, study.vary(), study.choices(), study.over());
    whole = variables.box();
    exact = looks(design.feedLine().isPresent(), solver.options().tolerance());
  }

  private SolvedLooks looks(boolean route, double tolerance) {
    // The design as it is may lie outside what is varied, and is solved as well.
    return new SolvedLooks(
        whole.reaching(variables.nominal()),
        new PortNumbers(route, set.decibels()),
        solver.withTolerance(tolerance),
        design.bands().get(0).lowHz());
  }

  OptimizeResult result() {
    List<MinimumSearch.Minimum> scan = new ArrayList<>();
    List<MinimumSearch.Minimum> starts = scan(scan);
    List<OptimizeResult.Candidate> candidates = new ArrayList<>();
    List<List<Double>> places = new ArrayList<>();
    for (MinimumSearch.Minimum start : starts) {
      for (Found found : refined(start.place())) {
        if (places.stream().noneMatch(other -> variables.isSame(other, found.place))) {
          places.add(found.place);
          candidates.add(candidate(found.place, found.flatness));
        }
      }
    }
    candidates.sort(Comparator.comparingDouble(OptimizeResult.Candidate::cost));
    OptimizeResult.Candidate nominal = candidate(variables.nominal(), List.of());
    List<OptimizeResult.Candidate> front = cost.tradesOff() ? front(scan) : List.of();
    return new OptimizeResult(
        cost.wanted(),
        nominal,
        candidates,
        front,
        scan.size(),
        solves + exact.solves() + models.stream().mapToLong(LocalDesigns::solves).sum(),
        models.stream().mapToDouble(LocalDesigns::error).max().orElse(0));
  }

  /** Judges places all over the ranges and gives the best of those that are best around. */
  private List<MinimumSearch.Minimum> scan(List<MinimumSearch.Minimum> into) {
    SolvedLooks coarse =
        looks(cost.needsChoke(), Math.max(SCAN_TOLERANCE, solver.options().tolerance()));
    long each = study.over().count() * design.bands().size() * SCAN_FREQUENCIES;
    int count = (int) Math.max(FEWEST_SCANNED, Math.min(MOST_SCANNED, SCAN_SOLVES / each));
    MinimumSearch search = new MinimumSearch(variables.all(), count, STARTS, study.seed());
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
    if (into.stream().allMatch(one -> one.value() >= OptimizeCost.IMPOSSIBLE)) {
      // Says what is wrong.
      whole.with(whole.middle());
      throw new IllegalArgumentException("no place of the scan can be modelled; narrow the ranges");
    }
    return best.stream()
        .filter(one -> one.value() < OptimizeCost.IMPOSSIBLE)
        .sorted(Comparator.comparingDouble(MinimumSearch.Minimum::value))
        .limit(STARTS)
        .toList();
  }

  private MinimumSearch.Minimum judged(SolvedLooks looks, double[] place) {
    List<Double> at = Arrays.stream(place).boxed().toList();
    double value;
    try {
      looks.solve(installations(at), set.frequencies(SCAN_FREQUENCIES), 1);
      double[] worst = set.worst(n -> looks.at(DesignVariables.joined(at, n)), SCAN_FREQUENCIES);
      scanned.put(at, worst);
      value = cost.of(worst);
    } catch (GeometryException | DesignException e) {
      // Such a place is no candidate; if all are like it, the scan says so.
      value = OptimizeCost.IMPOSSIBLE;
    }
    return new MinimumSearch.Minimum(at, value);
  }

  private record Found(List<Double> place, List<OptimizeResult.Flatness> flatness) {}

  /** Searches around a place, moving on while the best lies at the edge of what was looked at. */
  private List<Found> refined(List<Double> start) {
    List<Double> centre = start;
    for (int move = 0; ; move++) {
      LocalDesigns local = model(centre);
      ToDoubleFunction<double[]> value = place -> cost.of(local.worst(place));
      List<MinimumSearch.Minimum> found = local.minima(value, STARTS);
      MinimumSearch.Minimum best = found.get(0);
      if (move + 1 < MOVES && local.part().isAtEdge(best.place(), variables)) {
        centre = best.place();
        continue;
      }
      return found.stream()
          .filter(each -> each.value() <= best.value() + LocalDesigns.FLAT)
          .limit(STARTS)
          .map(each -> new Found(each.place(), local.flatness(value, each)))
          .toList();
    }
  }

  private LocalDesigns model(List<Double> centre) {
    LocalDesigns local =
        LocalDesigns.of(variables.around(centre), set, solver, threads, study.seed());
    models.add(local);
    return local;
  }

  /** Solves a place. */
  private OptimizeResult.Candidate candidate(
      List<Double> place, List<OptimizeResult.Flatness> flatness) {
    exact.solve(installations(place), set.frequencies(FREQUENCIES), threads);
    InstallationSet.Looks looks = n -> exact.at(DesignVariables.joined(place, n));
    double[] worst = set.worst(looks, FREQUENCIES);
    double value = cost.of(worst);
    return new OptimizeResult.Candidate(
        settings(place),
        value,
        IntStream.range(0, study.goals().size()).mapToObj(i -> worst[i]).toList(),
        value < OptimizeCost.INFEASIBLE,
        set.binding(looks, FREQUENCIES),
        set.byBand(looks, FREQUENCIES),
        flatness);
  }

  /** A design with the values of all installations. */
  private List<double[]> installations(List<Double> place) {
    return LongStream.range(0, study.over().count())
        .mapToObj(n -> study.over().at(n).stream().map(Quantity::value).toList())
        .map(installation -> DesignVariables.joined(place, installation))
        .toList();
  }

  private List<OptimizeResult.Setting> settings(List<Double> place) {
    List<OptimizeResult.Setting> settings = new ArrayList<>();
    for (int i = 0; i < place.size(); i++) {
      MinimumSearch.Variable each = variables.all().get(i);
      double margin = AT_BOUND * (each.high() - each.low());
      boolean bound =
          !each.isDiscrete()
              && (place.get(i) <= each.low() + margin || place.get(i) >= each.high() - margin);
      settings.add(
          new OptimizeResult.Setting(
              each.name(), variables.quantity(each.name(), place.get(i)), bound));
    }
    return settings;
  }

  /**
   * Designs that no other is better than in all goals. From those of the scan, thinned out, each is
   * made better in all goals alike as far as that goes, on the local model that holds it; what was
   * found and what it came from are solved, and the front of all of these is kept.
   */
  private List<OptimizeResult.Candidate> front(List<MinimumSearch.Minimum> scan) {
    List<MinimumSearch.Minimum> feasible =
        scan.stream().filter(one -> one.value() < OptimizeCost.INFEASIBLE).toList();
    TradeOff tradeOff = new TradeOff(cost.wanted(), FRONT);
    List<MinimumSearch.Minimum> coarse = tradeOff.of(feasible, one -> scanned.get(one.place()));
    List<List<Double>> found = new ArrayList<>();
    double[] scales = scales(coarse);
    int mostModels = models.size() + FRONT_MODELS;
    for (MinimumSearch.Minimum one : coarse) {
      LocalDesigns local =
          models.stream()
              .filter(model -> model.part().holds(one.place(), variables))
              .findFirst()
              .orElse(null);
      if (local == null && models.size() < mostModels) {
        local = model(one.place());
      }
      if (local != null) {
        found.add(improved(local, one.place(), scales));
      }
    }
    coarse.forEach(one -> found.add(one.place()));
    List<List<Double>> places = new ArrayList<>();
    List<OptimizeResult.Candidate> solved = new ArrayList<>();
    for (List<Double> place : found) {
      if (places.stream().noneMatch(other -> variables.isSame(other, place))) {
        places.add(place);
        solved.add(candidate(place, List.of()));
      }
    }
    solved.removeIf(one -> !one.feasible());
    return tradeOff.of(
        solved, one -> one.values().stream().mapToDouble(Double::doubleValue).toArray());
  }

  private List<Double> improved(LocalDesigns local, List<Double> place, double[] scales) {
    double[] reference = local.worst(place.stream().mapToDouble(Double::doubleValue).toArray());
    return local
        .minima(moved -> cost.behind(local.worst(moved), reference, scales), 1)
        .get(0)
        .place();
  }

  /** What each goal differs by along a front; 1 if it does not. */
  private double[] scales(List<MinimumSearch.Minimum> front) {
    double[] scales = new double[study.goals().size()];
    for (int i = 0; i < scales.length; i++) {
      int goal = i;
      double low = front.stream().mapToDouble(p -> scanned.get(p.place())[goal]).min().orElse(0);
      double high = front.stream().mapToDouble(p -> scanned.get(p.place())[goal]).max().orElse(0);
      scales[i] = high > low ? high - low : 1;
    }
    return scales;
  }
}
