package org.spanwire.internal.field;

import java.util.concurrent.TimeUnit;
import org.apache.commons.math3.complex.Complex;
import org.openjdk.jmh.annotations.Benchmark;
import org.openjdk.jmh.annotations.BenchmarkMode;
import org.openjdk.jmh.annotations.Measurement;
import org.openjdk.jmh.annotations.Mode;
import org.openjdk.jmh.annotations.OutputTimeUnit;
import org.openjdk.jmh.annotations.Scope;
import org.openjdk.jmh.annotations.Setup;
import org.openjdk.jmh.annotations.State;
import org.openjdk.jmh.annotations.Warmup;
import org.spanwire.medium.Soil;
import org.spanwire.result.Direction;
import org.spanwire.unit.PhysicalConstants;

/**
 * Far field of a current on 100 pieces over soil in one direction, both rays, against one complex
 * exponential and one division for each piece and ray; and the integral over the sky.
 */
@State(Scope.Benchmark)
@BenchmarkMode(Mode.AverageTime)
@OutputTimeUnit(TimeUnit.MICROSECONDS)
@Warmup(iterations = 3, time = 1)
@Measurement(iterations = 7, time = 1)
public class FarFieldBenchmark {

  private static final int PIECES = 100;

  private FarField field;
  private double elevation;

  /** A standing wave on a wire of 10 m, at a wavelength of 1 m. */
  @Setup
  public void prepare() {
    field =
        new FarField(
            new PrescribedCurrent()
                .wire(
                    new double[] {0, 0, 3},
                    new double[] {10, 0, 4},
                    PIECES,
                    s -> new Complex(Math.sin(2 * Math.PI * s)))
                .expansion(),
            PhysicalConstants.SPEED_OF_LIGHT,
            Soil.of(13, 0.005));
  }

  /** What a sum over pieces cannot do without. */
  @Benchmark
  public double yardstick() {
    elevation = (elevation + 1) % 90;
    double sum = 0;
    for (int i = 0; i < 2 * PIECES; i++) {
      double phase = 0.3 * i * (1 + elevation);
      double inverse = 1 / (1 + phase);
      sum += Math.cos(phase) * inverse + Math.sin(phase) * inverse;
    }
    return sum;
  }

  /** Radiation intensity in one direction. */
  @Benchmark
  public double direction() {
    elevation = (elevation + 1) % 90;
    return field.intensity(new Direction(elevation, 30));
  }

  /** Power radiated into the sky, to 1e-7. */
  @Benchmark
  public double radiatedPower() {
    return RadiatedPower.of(field, 1e-7).watts();
  }
}
