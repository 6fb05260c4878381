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
import org.spanwire.geometry.Point;
import org.spanwire.geometry.Position;
import org.spanwire.medium.Conductor;
import org.spanwire.medium.Ground;
import org.spanwire.medium.Materials;
import org.spanwire.medium.Soil;

/** Time of one frequency of an off-centre-fed wire, from the antenna to its input impedance. */
@State(Scope.Benchmark)
@BenchmarkMode(Mode.AverageTime)
@OutputTimeUnit(TimeUnit.MILLISECONDS)
public class SolveBenchmark {

  /** What lies below the wire. */
  public enum Below {
    FREE_SPACE,
    PERFECT_GROUND,
    SOIL
  }

  @Param Below below;

  @Param({"3.65e6", "28.5e6"})
  double frequencyHz;

  private Antenna antenna;

  /** A wire of 41 m at 11 m. */
  @Setup
  public void hang() {
    Ground ground =
        switch (below) {
          case FREE_SPACE -> Ground.freeSpace();
          case PERFECT_GROUND -> Ground.perfect();
          case SOIL -> Soil.of(13, 0.005);
        };
    antenna =
        Antenna.builder()
            .wire(
                "radiator",
                Conductor.bare(Materials.COPPER, 1e-3),
                new Point(0, 0, 11),
                new Point(41, 0, 11))
            .feed("main", "radiator", Position.fraction(0.36))
            .ground(ground)
            .build();
  }

  /** A fresh solver each time, so that nothing prepared earlier is counted as free. */
  @Benchmark
  public Solution solve() {
    return new Solver().solve(antenna, frequencyHz);
  }
}
