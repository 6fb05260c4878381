package org.spanwire.validation.benchmark;

import java.util.concurrent.TimeUnit;
import org.openjdk.jmh.annotations.Benchmark;
import org.openjdk.jmh.annotations.BenchmarkMode;
import org.openjdk.jmh.annotations.Measurement;
import org.openjdk.jmh.annotations.Mode;
import org.openjdk.jmh.annotations.OutputTimeUnit;
import org.openjdk.jmh.annotations.Param;
import org.openjdk.jmh.annotations.Scope;
import org.openjdk.jmh.annotations.Setup;
import org.openjdk.jmh.annotations.State;
import org.openjdk.jmh.annotations.Warmup;
import org.spanwire.Antenna;
import org.spanwire.Solution;
import org.spanwire.Solver;
import org.spanwire.geometry.Point;
import org.spanwire.geometry.Position;
import org.spanwire.medium.Conductor;
import org.spanwire.medium.Ground;
import org.spanwire.medium.Materials;
import org.spanwire.medium.Soil;

/**
 * What soil costs over perfect ground: a wire of 41 m at 7.1 MHz, level at 11 m or as an inverted V
 * with its ends at 4 m. Warm: the tables of the soil are there. Cold: a fresh solver, tables
 * included.
 */
@State(Scope.Benchmark)
@BenchmarkMode(Mode.SampleTime)
@OutputTimeUnit(TimeUnit.MILLISECONDS)
@Warmup(iterations = 3, time = 2)
@Measurement(iterations = 5, time = 2)
public class SoilCostBenchmark {

  private static final double FREQUENCY_HZ = 7.1e6;

  /** How the wire hangs. */
  public enum Shape {
    LEVEL,
    INVERTED_V
  }

  /** What lies below it. */
  public enum Below {
    PERFECT_GROUND,
    SOIL
  }

  @Param Shape shape;

  @Param Below below;

  private final Solver warm = new Solver();
  private Antenna antenna;

  /** Hangs the wire and fills the tables. */
  @Setup
  public void hang() {
    Point[] path =
        switch (shape) {
          case LEVEL -> new Point[] {new Point(-20.5, 0, 11), new Point(20.5, 0, 11)};
          case INVERTED_V ->
              new Point[] {new Point(-19.2, 0, 4), new Point(0, 0, 11.2), new Point(19.2, 0, 4)};
        };
    antenna =
        Antenna.builder()
            .wire("radiator", Conductor.bare(Materials.COPPER, 1e-3), path)
            .feed("main", "radiator", Position.fraction(0.36))
            .ground(below == Below.SOIL ? Soil.of(13, 0.005) : Ground.perfect())
            .build();
    warm.solve(antenna, FREQUENCY_HZ);
  }

  /** Tables at hand. */
  @Benchmark
  public Solution warm() {
    return warm.solve(antenna, FREQUENCY_HZ);
  }

  /** Tables made anew. */
  @Benchmark
  public Solution cold() {
    return new Solver().solve(antenna, FREQUENCY_HZ);
  }
}
