package org.spanwire.study;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.Collections;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Objects;
import java.util.Optional;
import java.util.concurrent.ConcurrentSkipListMap;
import org.apache.commons.math3.complex.Complex;
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

  /** Name of the warning that the wanted accuracy was not reached. */
  public static final String UNSETTLED = "response-unsettled";

  private final Installation installation;
  private final FrequencyRange range;
  private final double[] solved;
  private final RationalFit terminals;
  private final double error;
  private final Optional<GainFit> gains;
  private final ResponseScan scan;
  private final Map<String, Double> gaps;
  private final double impedanceError;
  private final List<Warning> warnings;

  /** What is kept of a solution. */
  private record Solved(List<SolvedFeed> feeds, List<Warning> warnings) {}

  private InstallationResponse(
      Installation installation,
      FrequencyRange range,
      List<Direction> directions,
      AdaptiveFit.Outcome outcome,
      List<Solved> solutions,
      double accuracy) {
    this.installation = installation;
    this.range = range;
    this.solved = outcome.places();
    this.terminals = outcome.fits().get(0);
    this.error = outcome.errors()[0];
    this.gains =
        directions.isEmpty()
            ? Optional.empty()
            : Optional.of(new GainFit(directions, outcome.fits().get(1), outcome.errors()[1]));
    this.scan = new ResponseScan(solved);
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
    if (Math.max(error, gainError()) > accuracy) {
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
            solved.length,
            range.lowHz() * 1e-6,
            range.highHz() * 1e-6,
            Math.max(error, gainError())));
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
    FrequencyResponse.checkRange(range, accuracy);
    double tolerance = FrequencyResponse.SOLVER_SHARE * accuracy;
    Solver solver = watched.withTolerance(tolerance);
    List<AdaptiveFit.Group> groups = new ArrayList<>();
    groups.add(
        new AdaptiveFit.Group(
            tolerance, (f, found, predicted) -> apart(installation, f, found, predicted)));
    if (!directions.isEmpty()) {
      groups.add(GainFit.group(tolerance));
    }
    ConcurrentSkipListMap<Double, Solved> solutions = new ConcurrentSkipListMap<>();
    AdaptiveFit adaptive =
        new AdaptiveFit(
            range,
            f -> {
              FeedLineCircuit.Solved at = installation.solveWithPorts(solver, f);
              Operation operation = at.operation();
              solutions.put(f, new Solved(operation.feeds(), operation.solution().warnings()));
              return sample(at, directions);
            },
            groups,
            new AdaptiveFit.Goal(accuracy, FrequencyResponse.MOST_SOLVES));
    try (Workers workers = new Workers(threads)) {
      AdaptiveFit.Outcome outcome = adaptive.run(workers);
      return new InstallationResponse(
          installation, range, directions, outcome, List.copyOf(solutions.values()), accuracy);
    }
  }

  private static Complex[][] sample(FeedLineCircuit.Solved solved, List<Direction> directions) {
    Complex[] terminals = flat(solved.terminals());
    return directions.isEmpty()
        ? new Complex[][] {terminals}
        : new Complex[][] {
          terminals, GainFit.sample(directions, solved.operation().solution()::gainDbi)
        };
  }

  /** Scattering parameters of the upper triangle, row by row: the matrix is symmetric. */
  private static Complex[] flat(NPort terminals) {
    List<Complex> flat = new ArrayList<>();
    for (int i = 1; i <= terminals.ports(); i++) {
      for (int j = i; j <= terminals.ports(); j++) {
        flat.add(terminals.s(i, j));
      }
    }
    return flat.toArray(Complex[]::new);
  }

  private static NPort terminals(Installation installation, Complex[] flat) {
    int ports = installation.hasFeedLine() ? 3 : 1;
    Complex[][] s = new Complex[ports][ports];
    int next = 0;
    for (int i = 0; i < ports; i++) {
      for (int j = i; j < ports; j++) {
        s[i][j] = flat[next];
        s[j][i] = flat[next++];
      }
    }
    return NPort.ofScattering(
        s,
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
    return range;
  }

  /** Frequencies in hertz that were solved, rising. */
  public List<Double> solvedFrequencies() {
    return Arrays.stream(solved).boxed().toList();
  }

  /**
   * Error of a reflection coefficient at any plane: the largest error of the last predictions at
   * frequencies not yet solved, which were chosen where the interpolant was least certain, plus the
   * tolerance of the solver. Above the wanted accuracy if that could not be reached.
   */
  public double reflectionError() {
    return error;
  }

  /**
   * Error of the gains as ratios, relative to the root of the sum of their squares over all
   * directions, measured as {@link #reflectionError} is; 0 without directions.
   */
  public double gainError() {
    return gains.map(GainFit::error).orElse(0.0);
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
    range.check(frequencyHz);
    return installation.planes(frequencyHz, terminals(installation, terminals.at(frequencyHz)));
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
   * where nothing is radiated.
   *
   * @param frequencyHz frequency in hertz within the range
   * @throws IllegalArgumentException for a direction that was not asked for
   */
  public double gainDbi(Direction direction, double frequencyHz) {
    range.check(frequencyHz);
    return gains
        .orElseThrow(
            () -> new IllegalArgumentException(direction + " is none of the directions asked for"))
        .gainDbi(direction, frequencyHz);
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
