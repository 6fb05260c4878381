package org.spanwire.validation.accuracy;

import java.util.ArrayList;
import java.util.List;
import java.util.concurrent.Callable;
import java.util.concurrent.ExecutionException;
import java.util.concurrent.ExecutorService;
import java.util.concurrent.Executors;
import java.util.concurrent.Future;
import java.util.concurrent.TimeUnit;
import org.apache.commons.math3.complex.Complex;
import org.spanwire.Antenna;
import org.spanwire.Solution;
import org.spanwire.Solver;
import org.spanwire.SolverOptions;
import org.spanwire.geometry.Point;
import org.spanwire.geometry.Position;
import org.spanwire.medium.Conductor;
import org.spanwire.medium.Ground;
import org.spanwire.medium.Materials;
import org.spanwire.medium.PerfectGround;
import org.spanwire.medium.Soil;
import org.spanwire.result.Direction;

/**
 * One solver in the hands of eight threads: every solution must have the bits of the same problem
 * solved alone.
 */
public final class ThreadSoak {

  private static final int THREADS = 8;
  private static final int PROBLEMS = 24;
  private static final double TOLERANCE = 0.01;

  private ThreadSoak() {}

  /** What came of a run: solutions made, and those that were not the same. */
  record Outcome(long solutions, List<String> differences) {}

  /**
   * Runs for a minute and exits with 1 if a solution differs.
   *
   * @param arguments number of seconds, 60 without
   */
  public static void main(String[] arguments) throws Exception {
    long seconds = arguments.length > 0 ? Long.parseLong(arguments[0]) : 60;
    Outcome outcome = run(TimeUnit.SECONDS.toNanos(seconds));
    System.out.println(outcome.solutions + " solutions by " + THREADS + " threads");
    outcome.differences.forEach(System.out::println);
    System.exit(outcome.differences.isEmpty() ? 0 : 1);
  }

  /** Runs for a time in nanoseconds, every problem at least once. */
  static Outcome run(long nanoseconds) throws InterruptedException, ExecutionException {
    Solver solver = new Solver(new SolverOptions(TOLERANCE));
    List<List<Double>> alone = new ArrayList<>();
    for (int i = 0; i < PROBLEMS; i++) {
      // A fresh solver for each: nothing is shared.
      alone.add(solve(new Solver(new SolverOptions(TOLERANCE)), i));
    }
    long end = System.nanoTime() + nanoseconds;
    ExecutorService threads = Executors.newFixedThreadPool(THREADS);
    List<String> differences = new ArrayList<>();
    long solutions = 0;
    try {
      do {
        List<Callable<List<Double>>> tasks = new ArrayList<>();
        for (int i = 0; i < PROBLEMS; i++) {
          int problem = i;
          tasks.add(() -> solve(solver, problem));
        }
        List<Future<List<Double>>> together = threads.invokeAll(tasks);
        for (int i = 0; i < PROBLEMS; i++) {
          List<Double> got = together.get(i).get();
          solutions++;
          if (!got.equals(alone.get(i))) {
            differences.add("problem " + i + ": " + got + " instead of " + alone.get(i));
          }
        }
      } while (System.nanoTime() < end);
    } finally {
      threads.shutdownNow();
    }
    return new Outcome(solutions, differences);
  }

  /** A wire of its own length, height and frequency, over soil of its own or perfect ground. */
  private static List<Double> solve(Solver solver, int problem) {
    Ground ground =
        problem % 3 == 0
            ? PerfectGround.INSTANCE
            : Soil.of(4 + problem % 5, 1e-3 * (1 + problem % 2));
    Antenna antenna =
        Antenna.builder()
            .wire(
                "wire",
                Conductor.bare(Materials.COPPER, 1e-3),
                new Point(0, 0, 5 + problem % 4),
                new Point(15 + problem, 3, 9))
            .feed("main", "wire", Position.fraction(0.3))
            .ground(ground)
            .build();
    Solution solution = solver.solve(antenna, 1e6 * (3 + problem % 7));
    Complex z = solution.impedance();
    return List.of(
        z.getReal(),
        z.getImaginary(),
        solution.gainDbi(new Direction(30, 40)),
        solution.radiationEfficiency());
  }
}
