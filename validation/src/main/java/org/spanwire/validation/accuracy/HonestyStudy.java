package org.spanwire.validation.accuracy;

import java.util.ArrayList;
import java.util.List;
import java.util.concurrent.atomic.AtomicInteger;
import java.util.stream.IntStream;
import org.spanwire.Solution;
import org.spanwire.Solver;
import org.spanwire.SolverOptions;
import org.spanwire.ToleranceException;
import org.spanwire.geometry.Feed;
import org.spanwire.geometry.GeometryException;

/**
 * Whether the error that the solver states is true: random structures solved at the default
 * tolerance and at 1e-4, and again at the tightest in reach. Structures that the geometry check
 * refuses are passed over. The result does not depend on the number of threads.
 *
 * @param seed seed of the structures
 * @param structures number of structures solved
 * @param refused number of structures refused before them
 * @param cases every feed of every structure at every tolerance
 * @param outOfReach descriptions of what did not reach its tolerance
 */
record HonestyStudy(
    long seed, int structures, int refused, List<HonestyCase> cases, List<String> outOfReach) {

  /** The tolerances that are tried. */
  static final double[] TOLERANCES = {SolverOptions.DEFAULT_TOLERANCE, 1e-4};

  private static final double REFERENCE_TOLERANCE = 1e-7;

  /** Kernels over soil are tabulated to 10⁻⁸ of the tightest run's tolerance: minutes each. */
  private static final double REFERENCE_TOLERANCE_OVER_SOIL = 1e-5;

  HonestyStudy {
    cases = List.copyOf(cases);
    outOfReach = List.copyOf(outOfReach);
  }

  /** Runs the study. */
  static HonestyStudy run(long seed, int structures) {
    List<RandomStructure> accepted = new ArrayList<>();
    int number = 0;
    while (accepted.size() < structures) {
      RandomStructure candidate = RandomStructure.of(seed, number++);
      if (isAccepted(candidate)) {
        accepted.add(candidate);
      }
    }
    AtomicInteger done = new AtomicInteger();
    List<Result> results =
        IntStream.range(0, structures)
            .parallel()
            .mapToObj(i -> solve(accepted.get(i), done, structures))
            .toList();
    return new HonestyStudy(
        seed,
        structures,
        number - structures,
        results.stream().flatMap(r -> r.cases.stream()).toList(),
        results.stream().flatMap(r -> r.outOfReach.stream()).toList());
  }

  private static boolean isAccepted(RandomStructure candidate) {
    try {
      new Solver().check(candidate.antenna(), candidate.frequencyHz());
      return true;
    } catch (GeometryException e) {
      return false;
    }
  }

  private record Result(List<HonestyCase> cases, List<String> outOfReach) {}

  private static Result solve(RandomStructure structure, AtomicInteger done, int all) {
    List<HonestyCase> cases = new ArrayList<>();
    List<String> outOfReach = new ArrayList<>();
    double tightest =
        structure.below() == RandomStructure.Below.SOIL
            ? REFERENCE_TOLERANCE_OVER_SOIL
            : REFERENCE_TOLERANCE;
    try {
      Solution reference =
          TightestSolution.of(structure.antenna(), structure.frequencyHz(), tightest);
      for (double tolerance : TOLERANCES) {
        Solution tested = HonestyCase.solve(structure, tolerance);
        if (tested == null) {
          outOfReach.add("structure " + structure.number() + " at tolerance " + tolerance);
          continue;
        }
        for (Feed feed : structure.antenna().feeds()) {
          cases.add(HonestyCase.of(structure, feed.name(), tolerance, tested, reference));
        }
      }
    } catch (ToleranceException e) {
      outOfReach.add("structure " + structure.number() + ": " + e.getMessage());
    }
    if (done.incrementAndGet() % 50 == 0) {
      System.err.println(done.get() + " of " + all + " structures");
    }
    return new Result(cases, outOfReach);
  }
}
