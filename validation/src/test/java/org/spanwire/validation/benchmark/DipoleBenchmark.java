package org.spanwire.validation.benchmark;

import java.util.concurrent.TimeUnit;
import org.openjdk.jmh.annotations.Benchmark;
import org.openjdk.jmh.annotations.BenchmarkMode;
import org.openjdk.jmh.annotations.Mode;
import org.openjdk.jmh.annotations.OutputTimeUnit;
import org.openjdk.jmh.annotations.Param;
import org.openjdk.jmh.annotations.Scope;
import org.openjdk.jmh.annotations.Setup;
import org.openjdk.jmh.annotations.State;
import org.spanwire.Antenna;
import org.spanwire.Solution;
import org.spanwire.Solver;
import org.spanwire.SolverOptions;
import org.spanwire.geometry.Point;
import org.spanwire.geometry.Position;
import org.spanwire.medium.Conductor;
import org.spanwire.result.Direction;
import org.spanwire.result.PeakGain;

/**
 * Times of a half-wave dipole in free space against the tolerance asked for, and of its far field.
 */
@State(Scope.Benchmark)
@BenchmarkMode(Mode.AverageTime)
@OutputTimeUnit(TimeUnit.MICROSECONDS)
public class DipoleBenchmark {

  private static final double FREQUENCY_HZ = 7.1e6;

  @Param({"1e-3", "1e-4", "1e-6"})
  double tolerance;

  private Solver solver;
  private Antenna antenna;
  private Solution solution;

  /** A wire of 20.10 m and 2 mm diameter. */
  @Setup
  public void hang() {
    solver = new Solver(SolverOptions.defaults().withTolerance(tolerance));
    antenna =
        Antenna.builder()
            .wire("dipole", Conductor.perfect(1e-3), new Point(0, 0, 0), new Point(20.1, 0, 0))
            .feed("feed", "dipole", Position.fraction(0.5))
            .build();
    solution = solver.solve(antenna, FREQUENCY_HZ);
  }

  @Benchmark
  public Solution solve() {
    return solver.solve(antenna, FREQUENCY_HZ);
  }

  /** Gain in one direction of a solution at hand. */
  @Benchmark
  public double gain() {
    return solution.gainDbi(new Direction(35, 70));
  }

  /** Search for the largest gain of a solution at hand. */
  @Benchmark
  public PeakGain peakGain() {
    return solution.peakGain();
  }
}
