package org.spanwire;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.concurrent.Callable;
import java.util.function.ToDoubleFunction;
import org.spanwire.internal.math.Parallel;
import org.spanwire.internal.moment.MomentFamily;

/**
 * An antenna solved at many frequencies and at several heights: one mesh serves all of them, or as
 * many as the wanted tolerance needs, and the moments that its matrix is made of are integrated at
 * few frequencies and heights and interpolated between. Every solution equals that of {@link
 * Solver#solve} within the tolerance, and states its error, that of the interpolation included.
 * Immutable and safe for use by several threads.
 */
public final class SolutionFamily {

  private final Solver solver;
  private final Antenna antenna;
  private final double[] lifts;
  private final ToDoubleFunction<Solution> relativeError;
  private final List<MomentFamily> levels = new ArrayList<>();
  private final Map<Place, SolvedAntenna> solved = new HashMap<>();

  /** A frequency in hertz and a lift in metres. */
  private record Place(double frequencyHz, double lift) {}

  private SolutionFamily(
      Solver solver, Antenna antenna, double[] lifts, ToDoubleFunction<Solution> relativeError) {
    this.relativeError = relativeError;
    this.solver = solver;
    this.antenna = antenna;
    this.lifts = lifts;
  }

  static SolutionFamily of(
      Solver solver,
      Antenna antenna,
      double[] frequenciesHz,
      double[] lifts,
      int threads,
      ToDoubleFunction<Solution> relativeError) {
    SolutionFamily family =
        new SolutionFamily(
            solver, antenna, Arrays.stream(lifts).sorted().distinct().toArray(), relativeError);
    double[] frequencies = Arrays.stream(frequenciesHz).sorted().distinct().toArray();
    solver.check(antenna.lifted(family.lifts[0]), frequencies[0]);
    family.fill(frequencies, threads);
    return family;
  }

  /** Goes to finer meshes with the places where the error is too large. */
  private void fill(double[] frequencies, int threads) {
    List<Place> left = new ArrayList<>();
    for (double frequency : frequencies) {
      for (double lift : lifts) {
        left.add(new Place(frequency, lift));
      }
    }
    for (int level = solver.firstLevel(); !left.isEmpty(); level++) {
      List<MomentFamily> meshes = new ArrayList<>();
      double[] lifted = left.stream().mapToDouble(Place::lift).sorted().distinct().toArray();
      families(
          left.stream().mapToDouble(Place::frequencyHz).distinct().toArray(),
          lifted,
          level,
          threads,
          meshes);
      levels.addAll(meshes);
      left = solve(meshes, left, level, threads);
    }
  }

  /** One mesh if it can be, else one for each side of the widest gap between frequencies. */
  private void families(
      double[] frequencies, double[] lifted, int level, int threads, List<MomentFamily> to) {
    Optional<MomentFamily> coarser =
        levels.stream()
            .filter(known -> known.covers(frequencies[0], lifted[0]))
            .reduce((first, last) -> last);
    Optional<MomentFamily> one =
        solver.moments(antenna, frequencies, lifted, level, coarser, threads);
    if (one.isPresent()) {
      to.add(one.get());
    } else if (frequencies.length > 1) {
      int cut = 1;
      for (int i = 2; i < frequencies.length; i++) {
        if (frequencies[i] / frequencies[i - 1] > frequencies[cut] / frequencies[cut - 1]) {
          cut = i;
        }
      }
      families(Arrays.copyOfRange(frequencies, 0, cut), lifted, level, threads, to);
      families(
          Arrays.copyOfRange(frequencies, cut, frequencies.length), lifted, level, threads, to);
    }
  }

  /** Keeps what is good enough and returns the rest. */
  private List<Place> solve(List<MomentFamily> meshes, List<Place> places, int level, int threads) {
    List<Callable<Judged>> tasks = new ArrayList<>();
    places.forEach(p -> tasks.add(() -> judge(solve(meshes, p.frequencyHz, p.lift, level))));
    List<Judged> found = Parallel.run(threads, tasks);
    List<Place> coarse = new ArrayList<>();
    for (int i = 0; i < places.size(); i++) {
      SolvedAntenna solution = found.get(i).solution;
      if (solver.isGoodEnough(solution, found.get(i).relativeError, level)) {
        solved.put(places.get(i), solution);
      } else {
        coarse.add(places.get(i));
      }
    }
    return coarse;
  }

  private record Judged(SolvedAntenna solution, double relativeError) {}

  private Judged judge(SolvedAntenna solution) {
    return new Judged(solution, relativeError.applyAsDouble(solution));
  }

  private SolvedAntenna solve(
      List<MomentFamily> meshes, double frequencyHz, double lift, int level) {
    for (MomentFamily moments : meshes) {
      if (moments.covers(frequencyHz, lift)) {
        return solver.solved(antenna, moments, frequencyHz, lift);
      }
    }
    return solver.solved(antenna.lifted(lift), frequencyHz, level);
  }

  /**
   * The solution at a frequency, the antenna at its own height.
   *
   * @param frequencyHz frequency in hertz; those that were asked for are at hand, others among them
   *     cost a factorisation, all others a solution of their own
   * @throws ToleranceException if the wanted tolerance could not be reached
   */
  public Solution at(double frequencyHz) {
    return at(frequencyHz, 0);
  }

  /**
   * The solution at a frequency with all wires farther up.
   *
   * @param frequencyHz frequency in hertz, as at {@link #at(double)}
   * @param lift metres, in the same way
   * @throws ToleranceException if the wanted tolerance could not be reached
   */
  public Solution at(double frequencyHz, double lift) {
    SolvedAntenna known = solved.get(new Place(frequencyHz, lift));
    if (known != null) {
      return known;
    }
    for (MomentFamily moments : levels) {
      if (moments.covers(frequencyHz, lift)) {
        SolvedAntenna found = solver.solved(antenna, moments, frequencyHz, lift);
        if (solver.isGoodEnough(found, relativeError.applyAsDouble(found))) {
          return found;
        }
      }
    }
    return solver.solve(antenna.lifted(lift), frequencyHz);
  }

  /** Number of frequencies and heights at which moments were integrated, over all meshes. */
  public int fills() {
    return levels.stream()
        .mapToInt(moments -> moments.frequencyNodes() * Math.max(1, moments.heightNodes()))
        .sum();
  }
}
