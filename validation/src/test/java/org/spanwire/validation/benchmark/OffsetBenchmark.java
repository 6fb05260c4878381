package org.spanwire.validation.benchmark;

import java.util.List;
import java.util.concurrent.TimeUnit;
import java.util.stream.IntStream;
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
import org.spanwire.medium.Materials;
import org.spanwire.medium.Soils;
import org.spanwire.result.InputImpedance;

/** A thousand places of the feed of a 40 m wire over soil against one; tables at hand. */
@State(Scope.Benchmark)
@BenchmarkMode(Mode.SampleTime)
@OutputTimeUnit(TimeUnit.MILLISECONDS)
public class OffsetBenchmark {

  @Param({"7.1e6", "14.2e6", "28.5e6"})
  double frequencyHz;

  private final Solver solver = new Solver();
  private Antenna antenna;
  private List<Position> places;

  /** A wire at 10 m, and 1,001 places from 2 % to 98 % of it. */
  @Setup
  public void hang() {
    antenna =
        Antenna.builder()
            .wire(
                "radiator",
                Conductor.bare(Materials.COPPER, 1e-3),
                new Point(0, 0, 10),
                new Point(40, 0, 10))
            .feed("main", "radiator", Position.fraction(1.0 / 3))
            .ground(Soils.find("medium-dry").orElseThrow())
            .build();
    places =
        IntStream.rangeClosed(0, 1000)
            .mapToObj(i -> Position.fraction(0.02 + 0.96 * i / 1000))
            .toList();
  }

  /** One place. */
  @Benchmark
  public Solution one() {
    return solver.solve(antenna, frequencyHz);
  }

  /** All of them. */
  @Benchmark
  public List<InputImpedance> all() {
    return solver.solveAlong(antenna, places, frequencyHz);
  }
}
