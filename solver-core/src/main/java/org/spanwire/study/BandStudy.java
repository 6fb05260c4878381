package org.spanwire.study;

import java.util.ArrayList;
import java.util.Collection;
import java.util.Comparator;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.concurrent.Callable;
import java.util.stream.Collectors;
import org.spanwire.Solution;
import org.spanwire.Solver;
import org.spanwire.circuit.Mismatch;
import org.spanwire.design.Band;
import org.spanwire.geometry.Fitting;
import org.spanwire.practice.Ratings;
import org.spanwire.result.GainSample;
import org.spanwire.result.Warning;

/**
 * Judges an antenna over whole bands: solves at Chebyshev points of each band, adds points where
 * the interpolated reflection coefficient is not yet good enough, and solves once more at the best
 * match and at a worst match between points.
 *
 * @param installation with at least one feed, the first of which is judged
 * @param elevationsDegrees elevations to give the gain at
 * @param points number of frequencies per band to begin with, at least 3
 */
public record BandStudy(Installation installation, List<Double> elevationsDegrees, int points) {

  /** Name of the warning that the curve between the solved frequencies is doubtful. */
  public static final String INTERPOLATION_WARNING = "band-interpolation";

  /**
   * Largest error of |Γ| accepted between points: moves an SWR of 2 by 0.009, one of 10 by 0.12.
   */
  private static final double REFLECTION_ERROR = 2e-3;

  private static final int MOST_POINTS = 200;

  /** Takes copies. */
  public BandStudy {
    elevationsDegrees = List.copyOf(elevationsDegrees);
  }

  /**
   * Runs the study on several threads.
   *
   * @param bands the bands, in the order of the results
   * @param threads number of threads; the results do not depend on it
   */
  public List<BandResponse> run(Solver solver, List<Band> bands, int threads) {
    List<BandSamples> samples = bands.stream().map(band -> new BandSamples(band, points)).toList();
    double accepted = Math.max(REFLECTION_ERROR, 2 * solver.options().tolerance());
    List<Double> first = samples.stream().flatMap(band -> band.missing().stream()).toList();
    InstallationFamily family = new InstallationFamily(installation, solver, first, threads);
    try (Workers workers = new Workers(threads)) {
      solveMissing(family, workers, samples);
      List<BandSamples> coarse = coarse(samples, accepted);
      while (!coarse.isEmpty()) {
        coarse.forEach(BandSamples::refine);
        solveMissing(family, workers, coarse);
        coarse = coarse(coarse, accepted);
      }
      List<Callable<BandResponse>> tasks = new ArrayList<>();
      samples.forEach(band -> tasks.add(() -> judge(family, band, accepted)));
      return workers.run(tasks);
    }
  }

  private static List<BandSamples> coarse(Collection<BandSamples> bands, double accepted) {
    return bands.stream()
        .filter(band -> band.error() > accepted && 2 * band.count() - 1 <= MOST_POINTS)
        .toList();
  }

  /** Solves all bands' missing frequencies in one go, so that no thread waits for a band to end. */
  private void solveMissing(
      InstallationFamily family, Workers workers, Collection<BandSamples> bands) {
    List<Callable<BandSamples.Sample>> tasks = new ArrayList<>();
    for (BandSamples band : bands) {
      for (double frequency : band.missing()) {
        tasks.add(() -> sample(family.at(frequency)));
      }
    }
    List<BandSamples.Sample> solved = workers.run(tasks);
    int next = 0;
    for (BandSamples band : bands) {
      int count = band.missing().size();
      band.fill(solved.subList(next, next + count));
      next += count;
    }
  }

  private String feed() {
    return installation.antenna().feeds().get(0).name();
  }

  private BandSamples.Sample sample(Operation operation) {
    return new BandSamples.Sample(
        operation.feed(feed()), heat(operation), operation.solution().warnings());
  }

  private List<HeatAt> heat(Operation operation) {
    double frequency = operation.solution().frequencyHz();
    List<HeatAt> heat = new ArrayList<>();
    operation
        .chain()
        .ifPresent(
            chain ->
                chain
                    .losses()
                    .forEach(loss -> heat.add(new HeatAt(loss.name(), loss.watts(), frequency))));
    fittingHeat(operation).forEach(heat::add);
    operation
        .commonMode()
        .ifPresent(mode -> heat.add(new HeatAt(Ledger.CHOKE, mode.topWatts(), frequency)));
    return heat;
  }

  /**
   * Heat of the design's fittings, such as traps, while the antenna takes what the chain delivers.
   */
  private List<HeatAt> fittingHeat(Operation operation) {
    List<Fitting> fittings = installation.antenna().fittings();
    if (fittings.isEmpty() || operation.chain().isEmpty()) {
      return List.of();
    }
    Solution solution = operation.solution();
    Ratings ratings =
        new Ratings(solution.antenna(), solution, installation.deliveredWatts(operation));
    return fittings.stream()
        .map(
            fitting ->
                new HeatAt(
                    fitting.name(), ratings.fittingWatts(fitting.name()), solution.frequencyHz()))
        .toList();
  }

  private BandResponse judge(InstallationFamily family, BandSamples band, double accepted) {
    ReflectionCurve curve = band.curve(Plane.TRANSMITTER);
    Operation best = family.at(curve.search().best());
    List<Operation> extra = new ArrayList<>(List.of(best));
    if (!band.range().isEdge(curve.search().worst())) {
      extra.add(family.at(curve.search().worst()));
    }
    SolvedFeed bestFeed = best.feed(feed());
    Solution solution = best.solution();
    double missed =
        bestFeed
            .at(Plane.TRANSMITTER)
            .reflection()
            .subtract(curve.at(solution.frequencyHz()))
            .abs();
    double interpolationError = Math.max(missed, band.error());
    List<GainSample> gains = new ArrayList<>();
    elevationsDegrees.forEach(elevation -> gains.add(solution.gainAtElevation(elevation)));
    return new BandResponse(
        band.name(),
        band.range(),
        band.planes().stream().map(plane -> response(band, plane, extra)).toList(),
        bestFeed,
        gaps(best),
        solution.peakGain(),
        gains,
        solution.radiationEfficiency(),
        largestHeat(band, extra),
        band.count(),
        largestError(band, bestFeed),
        interpolationError,
        warnings(band, solution, interpolationError, accepted));
  }

  /**
   * SWR at a plane: extremes over the frequencies solved and, within the error of interpolation,
   * those of the curve.
   */
  private PlaneResponse response(BandSamples band, Plane plane, List<Operation> extra) {
    ReflectionCurve curve = band.curve(plane);
    double reference = band.referenceOhm(plane);
    FrequencyRange range = band.range();
    List<SwrAt> candidates = new ArrayList<>(band.swr(plane));
    for (Operation operation : extra) {
      candidates.add(
          new SwrAt(operation.solution().frequencyHz(), operation.feed(feed()).at(plane).swr()));
    }
    if (plane != Plane.TRANSMITTER) {
      for (double frequency : List.of(curve.search().best(), curve.search().worst())) {
        candidates.add(new SwrAt(frequency, swrOn(curve, frequency, reference)));
      }
    }
    Comparator<SwrAt> bySwr = Comparator.comparingDouble(SwrAt::swr);
    return new PlaneResponse(
        plane,
        reference,
        swrOn(curve, range.lowHz(), reference),
        swrOn(curve, range.middleHz(), reference),
        swrOn(curve, range.highHz(), reference),
        candidates.stream().max(bySwr).orElseThrow(),
        candidates.stream().min(bySwr).orElseThrow(),
        curve.search().within(1.0 / 3));
  }

  /** The largest heat of each part, in the order of the chain. */
  private List<HeatAt> largestHeat(BandSamples band, List<Operation> extra) {
    Map<String, HeatAt> largest = new LinkedHashMap<>();
    List<HeatAt> all = new ArrayList<>();
    band.all().forEach(sample -> all.addAll(sample.heat()));
    extra.forEach(operation -> all.addAll(heat(operation)));
    all.forEach(each -> largest.merge(each.part(), each, (a, b) -> b.watts() > a.watts() ? b : a));
    return List.copyOf(largest.values());
  }

  private static List<Warning> warnings(
      BandSamples band, Solution best, double interpolationError, double accepted) {
    List<Warning> all = new ArrayList<>(best.warnings());
    band.all().forEach(sample -> all.addAll(sample.warnings()));
    if (interpolationError > accepted) {
      all.add(interpolationWarning(band.name(), interpolationError, accepted));
    }
    Map<String, Warning> firstOfEach = new LinkedHashMap<>();
    all.forEach(warning -> firstOfEach.putIfAbsent(warning.name(), warning));
    return List.copyOf(firstOfEach.values());
  }

  private static double swrOn(ReflectionCurve curve, double frequencyHz, double referenceOhm) {
    return Mismatch.ofReflection(curve.at(frequencyHz), referenceOhm).swr();
  }

  private static Map<String, Double> gaps(Operation operation) {
    return operation.feeds().stream()
        .collect(Collectors.toMap(SolvedFeed::name, SolvedFeed::gapMetres));
  }

  private static double largestError(BandSamples band, SolvedFeed best) {
    double largest = best.relativeError();
    for (BandSamples.Sample sample : band.all()) {
      largest = Math.max(largest, sample.feed().relativeError());
    }
    return largest;
  }

  private static Warning interpolationWarning(String band, double error, double accepted) {
    return new Warning(
        INTERPOLATION_WARNING,
        String.format(
            Locale.ROOT,
            "band %s: the reflection coefficient between the solved frequencies is uncertain by"
                + " %.2g, limit %.2g: an SWR extremum may be missed; ask for more --points",
            band,
            error,
            accepted));
  }
}
