package org.spanwire.internal.moment;

import java.util.Arrays;
import java.util.List;
import java.util.concurrent.TimeUnit;
import org.ejml.data.ZMatrixRMaj;
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
import org.spanwire.internal.basis.Unknowns;
import org.spanwire.internal.mesh.Mesh;
import org.spanwire.internal.mesh.MeshDensity;
import org.spanwire.internal.mesh.Mesher;
import org.spanwire.internal.mesh.Port;
import org.spanwire.medium.Conductor;
import org.spanwire.medium.Ground;
import org.spanwire.medium.Soil;
import org.spanwire.unit.PhysicalConstants;

/**
 * Filling the impedance matrix of a wire of 4 λ fed off centre. The number of unknowns N is
 * printed; a matrix has N(N + 1)/2 different pairs. Over soil the table of kernels is built before.
 */
@State(Scope.Benchmark)
@BenchmarkMode(Mode.AverageTime)
@OutputTimeUnit(TimeUnit.MICROSECONDS)
@Warmup(iterations = 3, time = 1)
@Measurement(iterations = 7, time = 1)
public class MatrixFillBenchmark {

  private static final double FREQUENCY_HZ = 30e6;
  private static final double ACCURACY = 1e-6;

  /** What lies below the wire, a quarter wave above it. */
  public enum Below {
    FREE_SPACE,
    PERFECT_GROUND,
    SOIL
  }

  @Param Below below;

  private Unknowns unknowns;
  private SeriesImpedance[] series;
  private Ground ground;
  private final SoilKernels tables = new SoilKernels();

  /** Cuts the wire. */
  @Setup
  public void cut() {
    double wavelength = PhysicalConstants.wavelength(FREQUENCY_HZ);
    double height = 0.25 * wavelength;
    Conductor conductor = Conductor.perfect(1e-4 * wavelength);
    Wire wire =
        Wire.of("wire", conductor, new Point(0, 0, height), new Point(4 * wavelength, 0, height));
    Soil soil = Soil.of(13, 0.005);
    ground =
        switch (below) {
          case FREE_SPACE -> Ground.freeSpace();
          case PERFECT_GROUND -> Ground.perfect();
          case SOIL -> soil;
        };
    Mesh mesh =
        Mesher.mesh(
            List.of(wire),
            List.of(Port.of(Feed.of("main", "wire", Position.fraction(0.15)))),
            ground,
            FREQUENCY_HZ,
            MeshDensity.level(0));
    unknowns = new Unknowns(mesh);
    series = new SeriesImpedance[mesh.size()];
    Arrays.fill(series, SeriesImpedance.of(conductor, FREQUENCY_HZ));
    moments();
    System.out.println("# unknowns: " + unknowns.count());
  }

  /** The whole matrix. */
  @Benchmark
  public ZMatrixRMaj fill() {
    return MomentMatrix.fill(
        unknowns, PhysicalConstants.wavenumber(FREQUENCY_HZ), moments(), series);
  }

  private MomentSource moments() {
    return ComputedMoments.of(unknowns.mesh(), ground, FREQUENCY_HZ, ACCURACY, tables);
  }
}
