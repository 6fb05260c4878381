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
import org.apache.commons.math3.complex.Complex;
import org.spanwire.Antenna;
import org.spanwire.Solution;
import org.spanwire.Solver;
import org.spanwire.circuit.Mismatch;
import org.spanwire.design.Band;
import org.spanwire.geometry.Feed;
import org.spanwire.result.GainSample;
import org.spanwire.result.Warning;

/**
 * Judges an antenna over whole bands: solves at Chebyshev points of each band, adds points where
 * the interpolated reflection coefficient is not yet good enough, and solves once more at the best
 * match and at a worst match between points.
 *
 * @param antenna antenna with at least one feed
 * @param feed name of the feed judged
 * @param referenceOhm reference impedance at the feedpoint in ohms
 * @param elevationsDegrees elevations to give the gain at
 * @param points number of frequencies per band to begin with, at least 3
 */
public record BandStudy(
    Antenna antenna, String feed, double referenceOhm, List<Double> elevationsDegrees, int points) {

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
    List<BandSamples> samples =
        bands.stream().map(band -> new BandSamples(band, referenceOhm, points)).toList();
    double accepted = Math.max(REFLECTION_ERROR, 2 * solver.options().tolerance());
    try (Workers workers = new Workers(threads)) {
      solveMissing(solver, workers, samples);
      List<BandSamples> coarse = coarse(samples, accepted);
      while (!coarse.isEmpty()) {
        coarse.forEach(BandSamples::refine);
        solveMissing(solver, workers, coarse);
        coarse = coarse(coarse, accepted);
      }
      List<Callable<BandResponse>> tasks = new ArrayList<>();
      samples.forEach(band -> tasks.add(() -> judge(solver, band, accepted)));
      return workers.run(tasks);
    }
  }

  private static List<BandSamples> coarse(Collection<BandSamples> bands, double accepted) {
    return bands.stream()
        .filter(band -> band.curve().error() > accepted && 2 * band.count() - 1 <= MOST_POINTS)
        .toList();
  }

  /** Solves all bands' missing frequencies in one go, so that no thread waits for a band to end. */
  private void solveMissing(Solver solver, Workers workers, Collection<BandSamples> bands) {
    List<Callable<BandSamples.Sample>> tasks = new ArrayList<>();
    for (BandSamples band : bands) {
      for (double frequency : band.missing()) {
        tasks.add(() -> sample(solver.solve(antenna, frequency)));
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

  private BandSamples.Sample sample(Solution solution) {
    return new BandSamples.Sample(SolvedFeed.of(solution, feed), solution.warnings());
  }

  private BandResponse judge(Solver solver, BandSamples band, double accepted) {
    ReflectionCurve curve = band.curve();
    FrequencyRange range = band.range();
    Solution best = solver.solve(antenna, curve.bestFrequency());
    SolvedFeed bestFeed = SolvedFeed.of(best, feed);
    SwrAt worst = worst(solver, band, curve.worstFrequency());
    double missed =
        mismatch(bestFeed.impedance()).reflection().subtract(curve.at(best.frequencyHz())).abs();
    double interpolationError = Math.max(missed, curve.error());
    List<GainSample> gains = new ArrayList<>();
    elevationsDegrees.forEach(elevation -> gains.add(best.gainAtElevation(elevation)));
    return new BandResponse(
        band.name(),
        range,
        swrOn(curve, range.lowHz()),
        swrOn(curve, range.middleHz()),
        swrOn(curve, range.highHz()),
        worst,
        new SwrAt(best.frequencyHz(), mismatch(bestFeed.impedance()).swr()),
        curve.within(1.0 / 3),
        bestFeed,
        gaps(best),
        best.peakGain(),
        gains,
        best.radiationEfficiency(),
        band.count(),
        largestError(band, bestFeed),
        interpolationError,
        warnings(band, best, interpolationError, accepted));
  }

  /**
   * The largest SWR of the solved frequencies and, where the curve is worst between the edges, of
   * that frequency.
   */
  private SwrAt worst(Solver solver, BandSamples band, double curveWorstHz) {
    List<SwrAt> candidates = new ArrayList<>(band.swr());
    if (!band.range().isEdge(curveWorstHz)) {
      Complex impedance = solver.solve(antenna, curveWorstHz).impedance(feed);
      candidates.add(new SwrAt(curveWorstHz, mismatch(impedance).swr()));
    }
    return candidates.stream().max(Comparator.comparingDouble(SwrAt::swr)).orElseThrow();
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

  private Mismatch mismatch(Complex impedance) {
    return Mismatch.of(impedance, referenceOhm);
  }

  private double swrOn(ReflectionCurve curve, double frequencyHz) {
    return Mismatch.ofReflection(curve.at(frequencyHz), referenceOhm).swr();
  }

  private Map<String, Double> gaps(Solution solution) {
    return antenna.feeds().stream()
        .collect(Collectors.toMap(Feed::name, f -> solution.gap(f.name())));
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
            "band %s: the reflection coefficient between the solved frequencies is uncertain by %.2g, limit %.2g: "
                + "an SWR extremum may be missed; ask for more --points",
            band,
            error,
            accepted));
  }
}
