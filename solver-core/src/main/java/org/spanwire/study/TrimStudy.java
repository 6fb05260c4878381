package org.spanwire.study;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;
import org.spanwire.Antenna;
import org.spanwire.Solution;
import org.spanwire.SolutionFamily;
import org.spanwire.Solver;
import org.spanwire.circuit.Mismatch;
import org.spanwire.design.Band;
import org.spanwire.geometry.Feed;
import org.spanwire.practice.Trim;

/**
 * How far the frequency of best match moves as wire is taken off: a central difference between the
 * antenna with 0.5 % of the wire added and taken off.
 *
 * @param antenna the antenna
 * @param feed the feed whose wire is trimmed
 * @param referenceOhm reference impedance of SWR at the feedpoint in ohms
 */
public record TrimStudy(Antenna antenna, Feed feed, double referenceOhm) {

  /** Share of the wire taken off and added: large against the solver's error, small for a slope. */
  private static final double STEP = 0.005;

  /** A best match this far outside a band still belongs to it. */
  private static final double NEAR = 0.05;

  /** Half the range, over the frequency, in which the moved match is looked for. */
  private static final double MOVED = 0.015;

  private static final int POINTS = 9;
  private static final int MOST_POINTS = 129;
  private static final double REFLECTION_ERROR = 1e-3;

  /**
   * Runs the study on several threads; the results do not depend on their number.
   *
   * @throws IllegalArgumentException if the wire has no free end
   */
  public List<TrimRow> run(Solver solver, List<Band> bands, int threads) {
    Trim trim = Trim.of(antenna, feed);
    double length = antenna.wire(feed.wire()).orElseThrow().length();
    Antenna shorter = trim.apply(antenna, STEP * length);
    Antenna longer = trim.apply(antenna, -STEP * length);
    List<TrimRow> rows = new ArrayList<>();
    for (Band band : bands) {
      OptionalDouble best =
          bestMatch(
              solver, threads, antenna, band.lowHz() * (1 - NEAR), band.highHz() * (1 + NEAR));
      rows.add(new TrimRow(band.name(), effect(solver, threads, best, shorter, longer, length)));
    }
    return rows;
  }

  private Optional<TrimRow.Effect> effect(
      Solver solver,
      int threads,
      OptionalDouble best,
      Antenna shorter,
      Antenna longer,
      double length) {
    if (best.isEmpty()) {
      return Optional.empty();
    }
    double at = best.getAsDouble();
    OptionalDouble up = bestMatch(solver, threads, shorter, at * (1 - MOVED), at * (1 + MOVED));
    OptionalDouble down = bestMatch(solver, threads, longer, at * (1 - MOVED), at * (1 + MOVED));
    if (up.isEmpty() || down.isEmpty()) {
      return Optional.empty();
    }
    double slope = (up.getAsDouble() - down.getAsDouble()) / (2 * STEP * length);
    return Optional.of(new TrimRow.Effect(at, slope));
  }

  /** Frequency of the smallest reflection strictly inside a range, if it has one there. */
  private OptionalDouble bestMatch(
      Solver solver, int threads, Antenna trimmed, double lowHz, double highHz) {
    FrequencyRange range = new FrequencyRange(lowHz, highHz);
    BandSamples samples = new BandSamples(new Band("trim", lowHz, highHz), POINTS);
    double[] first = samples.missing().stream().mapToDouble(Double::doubleValue).toArray();
    SolutionFamily family = solver.family(trimmed, first, new double[1], threads);
    solve(family, samples);
    while (samples.error() > REFLECTION_ERROR && 2 * samples.count() - 1 <= MOST_POINTS) {
      samples.refine();
      solve(family, samples);
    }
    double best = samples.curve(Plane.FEEDPOINT).search().best();
    return range.isEdge(best) ? OptionalDouble.empty() : OptionalDouble.of(best);
  }

  private void solve(SolutionFamily family, BandSamples samples) {
    samples.fill(
        samples.missing().stream().map(frequency -> sample(family.at(frequency))).toList());
  }

  private BandSamples.Sample sample(Solution solution) {
    Mismatch mismatch = Mismatch.of(solution.impedance(feed.name()), referenceOhm);
    List<PlaneMismatch> planes = List.of(new PlaneMismatch(Plane.FEEDPOINT, mismatch));
    return new BandSamples.Sample(
        SolvedFeed.of(solution, feed.name(), planes), List.of(), List.of());
  }
}
