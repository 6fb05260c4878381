package org.spanwire.study;

import java.util.ArrayList;
import java.util.Collections;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Objects;
import java.util.concurrent.ConcurrentSkipListMap;
import org.apache.commons.math3.complex.Complex;
import org.spanwire.Solution;
import org.spanwire.Solver;
import org.spanwire.circuit.Mismatch;
import org.spanwire.circuit.NPort;
import org.spanwire.result.Direction;
import org.spanwire.result.Warning;

/**
 * What an installation shows at the planes of its feed chain over a range of frequencies. Immutable
 * and safe for use by several threads.
 *
 * <p>The terminals of the antenna, the feed line's outside among them where the design has its
 * route, are interpolated as {@link FrequencyResponse} interpolates port matrices; the feed chain,
 * which costs nothing to compute, is computed at every frequency asked for. With several feeds it
 * is the first one whose planes are seen, all driven as stated.
 */
public final class InstallationResponse {

  /** Least error that can be wanted. */
  public static final double LEAST_ACCURACY = 1e-5;

  /** Largest error that can be wanted. */
  public static final double MOST_ACCURACY = 0.05;

  /** Name of the warning that the wanted accuracy was not reached. */
  public static final String UNSETTLED = "response-unsettled";

  private final Installation installation;
  private final RangeFit fit;
  private final ResponseScan scan;
  private final Map<String, Double> gaps;
  private final double impedanceError;
  private final List<Warning> warnings;

  /** What is kept of a solution. */
  private record Solved(List<SolvedFeed> feeds, List<Warning> warnings) {}

  private InstallationResponse(
      Installation installation, RangeFit fit, List<Solved> solutions, double accuracy) {
    this.installation = installation;
    this.fit = fit;
    this.scan = fit.scan();
    Map<String, Double> widths = new LinkedHashMap<>();
    solutions.get(0).feeds().forEach(feed -> widths.put(feed.name(), feed.gapMetres()));
    this.gaps = Collections.unmodifiableMap(widths);
    this.impedanceError =
        solutions.stream()
            .flatMap(each -> each.feeds().stream())
            .mapToDouble(SolvedFeed::relativeError)
            .max()
            .orElseThrow();
    List<Warning> doubts = new ArrayList<>(installation.warnings());
    if (Math.max(reflectionError(), gainError()) > accuracy) {
      doubts.add(unsettled());
    }
    solutions.forEach(each -> doubts.addAll(each.warnings()));
    this.warnings = doubts.stream().distinct().toList();
  }

  private Warning unsettled() {
    return new Warning(
        UNSETTLED,
        String.format(
            Locale.ROOT,
            "after %d solutions from %.4f MHz to %.4f MHz the response is known to %.2g only; take"
                + " a narrower range or a larger tolerance",
            solvedFrequencies().size(),
            range().lowHz() * 1e-6,
            range().highHz() * 1e-6,
            Math.max(reflectionError(), gainError())));
  }

  /**
   * Solves an installation over a range.
   *
   * @param watched its watch and its limit of memory are used, its tolerance is not
   * @param range frequencies in hertz, the high end above the low one
   * @param accuracy wanted error of the reflection coefficients and gains, 1e-5 to 0.05; see {@link
   *     #reflectionError} and {@link #gainError}
   * @param directions where the gain is wanted, perhaps none
   * @param threads number of threads; the result does not depend on it
   * @throws org.spanwire.circuit.CircuitException if a stage has no parameters somewhere in the
   *     range
   * @throws org.spanwire.geometry.GeometryException if the antenna cannot be modelled as given
   * @throws org.spanwire.ToleranceException if the solver cannot reach a tenth of the accuracy
   */
  public static InstallationResponse of(
      Installation installation,
      Solver watched,
      FrequencyRange range,
      double accuracy,
      List<Direction> directions,
      int threads) {
    Objects.requireNonNull(installation, "installation");
    Objects.requireNonNull(watched, "watched");
    Objects.requireNonNull(directions, "directions");
    double tolerance = RangeFit.tolerance(range, accuracy);
    Solver solver = watched.withTolerance(tolerance);
    ConcurrentSkipListMap<Double, Solved> solutions = new ConcurrentSkipListMap<>();
    RangeFit fit =
        RangeFit.of(
            range,
            directions,
            f -> {
              FeedLineCircuit.Solved at = installation.solveWithPorts(solver, f);
              Solution solution = at.operation().solution();
              solutions.put(f, new Solved(at.operation().feeds(), solution.warnings()));
              return new RangeFit.Sample(
                  RangeFit.upper(at.terminals().scattering()), solution::gainDbi);
            },
            new AdaptiveFit.Group(
                tolerance, (f, found, predicted) -> apart(installation, f, found, predicted)),
            new AdaptiveFit.Goal(accuracy, RangeFit.MOST_SOLVES),
            threads);
    return new InstallationResponse(installation, fit, List.copyOf(solutions.values()), accuracy);
  }

  private static NPort terminals(Installation installation, Complex[] upper) {
    return NPort.ofScattering(
        RangeFit.symmetric(upper),
        installation.hasFeedLine()
            ? DrivenChain.CIRCUIT_REFERENCE
            : Installation.ONE_PORT_REFERENCE);
  }

  /** The largest distance of reflection coefficients at any plane. */
  private static double apart(
      Installation installation, double frequencyHz, Complex[] found, Complex[] predicted) {
    List<PlaneMismatch> right = installation.planes(frequencyHz, terminals(installation, found));
    List<PlaneMismatch> wrong =
        installation.planes(frequencyHz, terminals(installation, predicted));
    double apart = 0;
    for (int i = 0; i < right.size(); i++) {
      Complex difference =
          right.get(i).mismatch().reflection().subtract(wrong.get(i).mismatch().reflection());
      apart = Math.max(apart, difference.abs());
    }
    return apart;
  }

  /** The range in hertz. */
  public FrequencyRange range() {
    return fit.range();
  }

  /** Frequencies in hertz that were solved, rising. */
  public List<Double> solvedFrequencies() {
    return fit.solvedFrequencies();
  }

  /**
   * Error of a reflection coefficient at any plane: the largest error of the last predictions at
   * frequencies not yet solved, which were chosen where the interpolant was least certain, plus the
   * tolerance of the solver. Above the wanted accuracy if that could not be reached.
   */
  public double reflectionError() {
    return fit.portError();
  }

  /**
   * Error of the gains as ratios, relative to the root of the sum of their squares over all
   * directions, measured as {@link #reflectionError} is; 0 without directions.
   */
  public double gainError() {
    return fit.gainError();
  }

  /** Largest estimated relative error of an impedance that was solved for. */
  public double impedanceError() {
    return impedanceError;
  }

  /** Gap widths in metres that were used, by feed. */
  public Map<String, Double> gaps() {
    return gaps;
  }

  /** Named doubts about the installation and the solutions made, each once. */
  public List<Warning> warnings() {
    return warnings;
  }

  /**
   * What is seen at every plane of the chain.
   *
   * @param frequencyHz frequency in hertz within the range
   */
  public List<PlaneMismatch> planes(double frequencyHz) {
    return installation.planes(frequencyHz, terminals(installation, fit.ports(frequencyHz)));
  }

  /**
   * What is seen at a plane.
   *
   * @param frequencyHz frequency in hertz within the range
   * @throws IllegalArgumentException if the chain has no such plane
   */
  public Mismatch at(Plane plane, double frequencyHz) {
    return planes(frequencyHz).stream()
        .filter(each -> each.plane() == plane)
        .map(PlaneMismatch::mismatch)
        .findFirst()
        .orElseThrow(() -> new IllegalArgumentException("the chain has no plane " + plane.label()));
  }

  /**
   * Gain in dBi, over the power that the antenna accepts, in one of the directions asked for; −∞
   * where nothing is radiated, or so little beside the other directions that the fit does not tell
   * it from nothing.
   *
   * @param frequencyHz frequency in hertz within the range
   * @throws IllegalArgumentException for a direction that was not asked for
   */
  public double gainDbi(Direction direction, double frequencyHz) {
    return fit.gainDbi(direction, frequencyHz);
  }

  /** Where the reactance at a plane is zero, rising in frequency, by root finding. */
  public List<FrequencyResponse.Resonance> resonances(Plane plane) {
    return scan.resonances(f -> at(plane, f).impedance());
  }

  /**
   * Where the SWR at a plane stays at or below a limit: the bandwidths, by root finding.
   *
   * @param maximumSwr limit, at least 1
   */
  public List<FrequencyRange> within(Plane plane, double maximumSwr) {
    return search(plane).within((maximumSwr - 1) / (maximumSwr + 1));
  }

  /** The minima of the SWR at a plane between the ends of the range, rising in frequency. */
  public List<SwrAt> bestMatches(Plane plane) {
    return search(plane).minima().stream().map(f -> new SwrAt(f, at(plane, f).swr())).toList();
  }

  private ReflectionSearch search(Plane plane) {
    return scan.search(f -> at(plane, f).reflection());
  }
}
