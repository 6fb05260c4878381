package org.spanwire.internal.moment;

import java.util.List;
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
import org.spanwire.geometry.Feed;
import org.spanwire.geometry.Point;
import org.spanwire.geometry.Position;
import org.spanwire.geometry.Wire;
import org.spanwire.internal.halfspace.ReflectedKernel;
import org.spanwire.internal.mesh.Mesh;
import org.spanwire.internal.mesh.MeshDensity;
import org.spanwire.internal.mesh.Mesher;
import org.spanwire.internal.mesh.Port;
import org.spanwire.medium.Conductor;
import org.spanwire.medium.Soil;

/**
 * Making the tables of the reflected kernels for a wire of 41 m at 7.1 MHz, level at 11 m or as an
 * inverted V with its ends at 4 m, at the tolerance of a default solution.
 */
@State(Scope.Benchmark)
@BenchmarkMode(Mode.SampleTime)
@OutputTimeUnit(TimeUnit.MILLISECONDS)
@Warmup(iterations = 3, time = 2)
@Measurement(iterations = 5, time = 2)
public class ColdTableBenchmark {

  private static final double FREQUENCY_HZ = 7.1e6;
  private static final double TOLERANCE = 1e-5;
  private static final Soil SOIL = Soil.of(13, 0.005);

  /** How the wire hangs. */
  public enum Shape {
    LEVEL,
    INVERTED_V
  }

  @Param Shape shape;

  private Mesh mesh;

  /** Cuts the wire. */
  @Setup
  public void cut() {
    Conductor conductor = Conductor.perfect(1e-3);
    Wire wire =
        switch (shape) {
          case LEVEL ->
              Wire.of("radiator", conductor, new Point(-20.5, 0, 11), new Point(20.5, 0, 11));
          case INVERTED_V ->
              Wire.of(
                  "radiator",
                  conductor,
                  new Point(-19.2, 0, 4),
                  new Point(0, 0, 11.2),
                  new Point(19.2, 0, 4));
        };
    mesh =
        Mesher.mesh(
            List.of(wire),
            List.of(Port.of(Feed.of("main", "radiator", Position.fraction(0.36)))),
            SOIL,
            FREQUENCY_HZ,
            MeshDensity.level(0));
  }

  /** The tables of one solution. */
  @Benchmark
  public ReflectedKernel table() {
    return new SoilKernels().kernel(SOIL, FREQUENCY_HZ, mesh, TOLERANCE);
  }
}
