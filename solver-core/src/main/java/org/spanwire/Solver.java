package org.spanwire;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.Locale;
import java.util.Objects;
import java.util.Optional;
import java.util.concurrent.CancellationException;
import java.util.function.ToDoubleFunction;
import java.util.stream.IntStream;
import org.spanwire.geometry.GeometryException;
import org.spanwire.geometry.Position;
import org.spanwire.internal.mesh.Mesh;
import org.spanwire.internal.mesh.MeshDensity;
import org.spanwire.internal.mesh.Mesher;
import org.spanwire.internal.mesh.Port;
import org.spanwire.internal.moment.MomentFamily;
import org.spanwire.internal.moment.PortSolution;
import org.spanwire.internal.moment.SoilKernels;
import org.spanwire.result.InputImpedance;

/**
 * Solves antennas by a Galerkin method of moments: mixed-potential equation, exact kernel of a
 * straight tube, polynomial currents on pieces that the solver chooses itself, full Sommerfeld
 * integrals over soil. Immutable and safe for use by several threads.
 */
public final class Solver {

  /** Integrals are asked to be this much better than the result. */
  private static final double INTEGRAL_SHARE = 1e-3;

  /**
   * Bytes per square of the number of unknowns: the matrix, its factors, and as much again while it
   * is filled.
   */
  private static final long BYTES_PER_ENTRY = 48;

  /** Accuracy of interpolated integrals over that of single ones. */
  static final double INTERPOLATED = 2;

  /** Memory that the moments of a family may take at most. */
  private static final long MOST_FAMILY_BYTES = 1L << 29;

  private final SolverOptions options;
  private final Watch watch;
  private final SoilKernels soilKernels = new SoilKernels();

  /** A solver with default options. */
  public Solver() {
    this(SolverOptions.defaults());
  }

  /** A solver with options. */
  public Solver(SolverOptions options) {
    this(options, Watch.NONE);
  }

  /** A solver with options that is watched and may be called off. */
  public Solver(SolverOptions options, Watch watch) {
    this.options = Objects.requireNonNull(options, "options");
    this.watch = Objects.requireNonNull(watch, "watch");
  }

  /** A solver with another tolerance, watched like this one. */
  public Solver withTolerance(double relative) {
    return new Solver(options.withTolerance(relative), watch);
  }

  /** The options of this solver. */
  public SolverOptions options() {
    return options;
  }

  /**
   * Checks the geometry of an antenna at a frequency in hertz as {@link #solve} would, without
   * solving.
   *
   * @throws GeometryException if the antenna cannot be modelled as given
   */
  public void check(Antenna antenna, double frequencyHz) {
    mesh(Objects.requireNonNull(antenna, "antenna"), frequencyHz, 0);
  }

  /**
   * Solves an antenna at one frequency, with meshes finer from step to step until the estimated
   * error of the feeds' impedances is below the wanted tolerance.
   *
   * @param antenna at least one wire and one feed
   * @param frequencyHz frequency in hertz, positive
   * @throws GeometryException if the antenna cannot be modelled as given
   * @throws ToleranceException if the wanted tolerance could not be reached
   * @throws MemoryException if the solution would not fit into the memory allowed
   * @throws CancellationException if the watch calls it off
   */
  public Solution solve(Antenna antenna, double frequencyHz) {
    return solve(antenna, frequencyHz, s -> ((SolvedAntenna) s).relativeError());
  }

  /**
   * The same with a judge of one's own, for antennas that are not driven as stated.
   *
   * @param relativeError error of a solution that is to be below the wanted tolerance, from what
   *     the solution states of its own
   */
  public Solution solve(
      Antenna antenna, double frequencyHz, ToDoubleFunction<Solution> relativeError) {
    requireFeed(antenna);
    for (int level = firstLevel(); ; level++) {
      SolvedAntenna solved = solved(antenna, frequencyHz, level);
      if (isGoodEnough(solved, relativeError.applyAsDouble(solved), level)) {
        return solved;
      }
    }
  }

  /**
   * Solves an antenna at many frequencies, much faster than one by one: see {@link SolutionFamily}.
   *
   * @param antenna at least one wire and one feed
   * @param frequenciesHz frequencies in hertz, positive, at least one
   * @return one solution for each frequency, in that order
   * @throws IllegalArgumentException without a frequency
   * @throws GeometryException if the antenna cannot be modelled as given
   * @throws ToleranceException if the wanted tolerance could not be reached
   * @throws MemoryException if a solution would not fit into the memory allowed
   * @throws CancellationException if the watch calls it off
   */
  public List<Solution> solveAll(Antenna antenna, double... frequenciesHz) {
    SolutionFamily family = family(antenna, frequenciesHz, new double[1], 1);
    return Arrays.stream(frequenciesHz).mapToObj(family::at).toList();
  }

  /**
   * Prepares for solving an antenna at many frequencies and heights.
   *
   * @param antenna at least one wire and one feed
   * @param frequenciesHz frequencies in hertz, positive, at least one
   * @param lifts metres by which all wires are farther up than the antenna has them, negative for
   *     down, at least one; {0} to leave them where they are
   * @param threads number of threads; the results do not depend on it
   * @throws IllegalArgumentException without a frequency, a lift or a thread
   * @throws GeometryException if the antenna cannot be modelled as given
   * @throws ToleranceException if the wanted tolerance could not be reached
   * @throws MemoryException if a solution would not fit into the memory allowed
   * @throws CancellationException if the watch calls it off or the calling thread is interrupted
   */
  public SolutionFamily family(
      Antenna antenna, double[] frequenciesHz, double[] lifts, int threads) {
    return family(antenna, frequenciesHz, lifts, threads, s -> ((SolvedAntenna) s).relativeError());
  }

  /**
   * The same with a judge of one's own, for antennas that are not driven as stated.
   *
   * @param relativeError error of a solution that is to be below the wanted tolerance, from what
   *     the solution states of its own; called by several threads
   */
  public SolutionFamily family(
      Antenna antenna,
      double[] frequenciesHz,
      double[] lifts,
      int threads,
      ToDoubleFunction<Solution> relativeError) {
    requireFeed(antenna);
    Objects.requireNonNull(frequenciesHz, "frequenciesHz");
    Objects.requireNonNull(lifts, "lifts");
    if (frequenciesHz.length == 0 || lifts.length == 0 || threads < 1) {
      throw new IllegalArgumentException(
          frequenciesHz.length
              + " frequencies, "
              + lifts.length
              + " lifts and "
              + threads
              + " threads are too few; give at least one of each");
    }
    return SolutionFamily.of(this, antenna, frequenciesHz, lifts, threads, relativeError);
  }

  private static void requireFeed(Antenna antenna) {
    Objects.requireNonNull(antenna, "antenna");
    if (antenna.feeds().isEmpty()) {
      throw new GeometryException(
          GeometryException.Subject.ANTENNA, "", "the antenna has no feed; add at least one");
    }
  }

  /** The coarsest mesh that has a fair chance of the wanted tolerance. */
  int firstLevel() {
    return MeshDensity.levelFor(options.tolerance());
  }

  /**
   * The moments of an antenna on one mesh, if one can serve all frequencies.
   *
   * @param coarser moments on a coarser mesh, if there are any
   */
  Optional<MomentFamily> moments(
      Antenna antenna,
      double[] frequenciesHz,
      double[] lifts,
      int level,
      Optional<MomentFamily> coarser,
      int threads) {
    goOn();
    Mesh mesh = mesh(antenna, frequenciesHz[frequenciesHz.length - 1], level);
    checkMemory(mesh);
    long mostBytes = familyBytes();
    return coarser.isPresent()
        ? coarser.get().finer(mesh, frequenciesHz, lifts, soilKernels, mostBytes, threads)
        : MomentFamily.of(
            mesh,
            antenna.ground(),
            frequenciesHz,
            lifts,
            accuracy(),
            soilKernels,
            mostBytes,
            threads);
  }

  /** Solves on the mesh of a level, whatever the error. */
  SolvedAntenna solved(Antenna antenna, double frequencyHz, int level) {
    goOn();
    Mesh mesh = mesh(antenna, frequencyHz, level);
    checkMemory(mesh);
    return new SolvedAntenna(
        antenna,
        frequencyHz,
        PortSolution.solve(mesh, antenna.ground(), frequencyHz, accuracy(), soilKernels),
        accuracy(),
        soilKernels,
        ThinWireLimits.warnings(antenna, frequencyHz));
  }

  /** Solves from moments at hand, whatever the error. */
  SolvedAntenna solved(Antenna antenna, MomentFamily moments, double frequencyHz, double lift) {
    goOn();
    Antenna lifted = antenna.lifted(lift);
    return new SolvedAntenna(
        lifted,
        frequencyHz,
        moments.solve(frequencyHz, lift),
        INTERPOLATED * accuracy(),
        soilKernels,
        ThinWireLimits.warnings(lifted, frequencyHz));
  }

  /** Whether a solution reaches the wanted tolerance: then the watch is told of it. */
  boolean isGoodEnough(SolvedAntenna solved, double relativeError) {
    boolean reaches = relativeError <= options.tolerance();
    if (reaches) {
      watch.solved(solved.frequencyHz(), solved.unknowns());
    }
    return reaches;
  }

  /** The same, but refuses where no finer mesh is left. */
  boolean isGoodEnough(SolvedAntenna solved, double relativeError, int level) {
    if (isGoodEnough(solved, relativeError)) {
      return true;
    }
    if (level < MeshDensity.FINEST_LEVEL) {
      return false;
    }
    throw new ToleranceException(
        String.format(
            Locale.ROOT,
            "relative error %.2g of the feed impedance at %.6g MHz is above the wanted tolerance %.2g;"
                + " ask for a larger tolerance",
            relativeError,
            solved.frequencyHz() * 1e-6,
            options.tolerance()),
        solved.frequencyHz(),
        options.tolerance(),
        relativeError);
  }

  void goOn() {
    if (watch.cancelled()) {
      throw new CancellationException("called off by the watch");
    }
  }

  void checkMemory(Mesh mesh) {
    int unknowns = IntStream.of(mesh.order()).sum();
    long needed = BYTES_PER_ENTRY * unknowns * unknowns;
    if (needed > options.memoryBytes()) {
      throw new MemoryException(unknowns, needed, options.memoryBytes());
    }
  }

  /** Relative accuracy that is asked of integrals. */
  double accuracy() {
    return Math.min(1e-6, INTEGRAL_SHARE * options.tolerance());
  }

  SoilKernels soilKernels() {
    return soilKernels;
  }

  /** Memory that the moments of a family may take. */
  long familyBytes() {
    return Math.min(MOST_FAMILY_BYTES, options.memoryBytes() / 2);
  }

  /**
   * Prepares an antenna whose only feed will be put at many places along its wire: see {@link
   * MovingFeed}.
   *
   * @param antenna with one feed; where along its wire that lies is ignored
   * @param places at least one
   * @param frequenciesHz all frequencies in hertz that will be solved; best within a quarter of
   *     each other, as one mesh is made for the highest
   * @param lifts metres by which all wires will be farther up than the antenna has them, negative
   *     for down; {0} to leave them where they are
   * @param threads number of threads that prepare; the results do not depend on it
   * @throws GeometryException if the antenna cannot be modelled as given or has not exactly one
   *     feed
   * @throws MemoryException if a solution would not fit into the memory allowed
   * @throws CancellationException if the watch calls it off
   */
  public MovingFeed movingFeed(
      Antenna antenna, List<Position> places, double[] frequenciesHz, double[] lifts, int threads) {
    Objects.requireNonNull(antenna, "antenna");
    Objects.requireNonNull(places, "places");
    Objects.requireNonNull(frequenciesHz, "frequenciesHz");
    Objects.requireNonNull(lifts, "lifts");
    if (antenna.feeds().size() != 1) {
      throw new GeometryException(
          GeometryException.Subject.ANTENNA,
          "",
          "a feed that moves must be the only one; the antenna has "
              + antenna.feeds().size()
              + " feeds");
    }
    return MovingFeed.of(this, antenna, places, frequenciesHz, lifts, threads);
  }

  /**
   * Input impedances of an antenna with its only feed at many places along its wire: from one
   * factorisation wherever that reaches the wanted tolerance, solved on their own elsewhere, as
   * next to ends and bends.
   *
   * @param antenna with one feed; where along its wire that lies is ignored
   * @param places at least one
   * @param frequencyHz frequency in hertz, positive
   * @return one for each place, in their order
   * @throws GeometryException if the antenna cannot be modelled as given, or not with its feed at
   *     one of the places
   * @throws ToleranceException if the wanted tolerance could not be reached
   */
  public List<InputImpedance> solveAlong(
      Antenna antenna, List<Position> places, double frequencyHz) {
    List<Optional<InputImpedance>> shared =
        movingFeed(antenna, places, new double[] {frequencyHz}, new double[1], 1)
            .solve(frequencyHz, 0);
    List<InputImpedance> all = new ArrayList<>();
    for (int i = 0; i < places.size(); i++) {
      Position place = places.get(i);
      all.add(
          shared
              .get(i)
              .orElseGet(
                  () -> {
                    Solution alone = solve(antenna.withFeedAt(place), frequencyHz);
                    String feed = antenna.feeds().get(0).name();
                    return new InputImpedance(alone.impedance(), alone.impedanceErrorOhm(feed));
                  }));
    }
    return all;
  }

  private static Mesh mesh(Antenna antenna, double frequencyHz, int level) {
    return Mesher.mesh(
        antenna.wires(),
        Port.of(antenna.feeds(), antenna.fittings()),
        antenna.ground(),
        frequencyHz,
        MeshDensity.level(level));
  }
}
