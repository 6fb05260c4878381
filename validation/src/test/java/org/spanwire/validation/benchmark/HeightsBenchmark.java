package org.spanwire.validation.benchmark;

import java.util.concurrent.TimeUnit;
import java.util.stream.IntStream;
import org.apache.commons.math3.complex.Complex;
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
import org.spanwire.SolutionFamily;
import org.spanwire.Solver;
import org.spanwire.geometry.Point;
import org.spanwire.geometry.Position;
import org.spanwire.medium.Conductor;
import org.spanwire.medium.Materials;
import org.spanwire.medium.Soil;

/** Forty heights of an off-centre-fed wire and of an inverted V over soil against one height. */
@State(Scope.Benchmark)
@BenchmarkMode(Mode.AverageTime)
@OutputTimeUnit(TimeUnit.MILLISECONDS)
public class HeightsBenchmark {

  private static final double FREQUENCY_HZ = 14.1e6;
  private static final double[] LIFTS = IntStream.range(0, 40).mapToDouble(i -> 0.25 * i).toArray();

  /** What hangs there, its lowest point at 5 m. */
  public enum Shape {
    LEVEL,
    INVERTED_V
  }

  @Param Shape shape;

  private Antenna antenna;

  /** A wire of 40 m. */
  @Setup
  public void hang() {
    Point[] path =
        shape == Shape.LEVEL
            ? new Point[] {new Point(0, 0, 5), new Point(40, 0, 5)}
            : new Point[] {new Point(-16, 0, 5), new Point(0, 0, 17), new Point(16, 0, 5)};
    antenna =
        Antenna.builder()
            .wire("radiator", Conductor.bare(Materials.COPPER, 1e-3), path)
            .feed("main", "radiator", Position.fraction(0.36))
            .ground(Soil.of(13, 0.005))
            .build();
  }

  /** A fresh solver each time, so that nothing prepared earlier is counted as free. */
  @Benchmark
  public Solution oneHeight() {
    return new Solver().solve(antenna, FREQUENCY_HZ);
  }

  /** Likewise. */
  @Benchmark
  public Complex fortyHeights() {
    SolutionFamily family = new Solver().family(antenna, new double[] {FREQUENCY_HZ}, LIFTS, 1);
    Complex sum = Complex.ZERO;
    for (double lift : LIFTS) {
      sum = sum.add(family.at(FREQUENCY_HZ, lift).impedance());
    }
    return sum;
  }

  /** One after the other. */
  @Benchmark
  public Complex fortyHeightsOneByOne() {
    Solver solver = new Solver();
    Complex sum = Complex.ZERO;
    for (double lift : LIFTS) {
      sum = sum.add(solver.solve(antenna.lifted(lift), FREQUENCY_HZ).impedance());
    }
    return sum;
  }
}
