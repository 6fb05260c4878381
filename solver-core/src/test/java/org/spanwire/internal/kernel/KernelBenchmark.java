package org.spanwire.internal.kernel;

import java.util.SplittableRandom;
import java.util.concurrent.TimeUnit;
import org.openjdk.jmh.annotations.Benchmark;
import org.openjdk.jmh.annotations.BenchmarkMode;
import org.openjdk.jmh.annotations.Measurement;
import org.openjdk.jmh.annotations.Mode;
import org.openjdk.jmh.annotations.OperationsPerInvocation;
import org.openjdk.jmh.annotations.OutputTimeUnit;
import org.openjdk.jmh.annotations.Scope;
import org.openjdk.jmh.annotations.Setup;
import org.openjdk.jmh.annotations.State;
import org.openjdk.jmh.annotations.Warmup;

/**
 * One evaluation of the free-space kernel between two wires of 1e-4 λ radius at several distances,
 * against the yardstick of one complex exponential and one division.
 */
@State(Scope.Benchmark)
@BenchmarkMode(Mode.AverageTime)
@OutputTimeUnit(TimeUnit.NANOSECONDS)
@Warmup(iterations = 3, time = 1)
@Measurement(iterations = 7, time = 1)
public class KernelBenchmark {

  private static final int COUNT = 1024;
  private static final double RADIUS = 1e-4;
  private static final double SPAN2 = 4 * RADIUS * RADIUS;
  private static final double WAVENUMBER = 2 * Math.PI;

  private final double[] fractions = new double[COUNT];
  private final double[] wavenumbers = {WAVENUMBER};
  private final double[] out = new double[2];

  /** Random places within each range of distances. */
  @Setup
  public void place() {
    SplittableRandom random = new SplittableRandom(1);
    for (int i = 0; i < COUNT; i++) {
      fractions[i] = random.nextDouble();
    }
  }

  /** R and exp(−jkR)/R from R²: what no kernel can do without. */
  @Benchmark
  @OperationsPerInvocation(COUNT)
  public double yardstick() {
    double sum = 0;
    for (double t : fractions) {
      double r = 0.5 * (1 + t);
      double inverse = 1 / r;
      sum += Math.cos(WAVENUMBER * r) * inverse + Math.sin(WAVENUMBER * r) * inverse;
    }
    return sum;
  }

  private double tube(double from, double to) {
    double sum = 0;
    for (double t : fractions) {
      double u = RADIUS * (from + t * (to - from));
      TubeKernel.evaluate(u * u, SPAN2, wavenumbers, out);
      sum += out[0] + out[1];
    }
    return sum;
  }

  /** Within two radii: elliptic integrals and a rule for the rest. */
  @Benchmark
  @OperationsPerInvocation(COUNT)
  public double tubeWithinTwoRadii() {
    return tube(0.01, 2);
  }

  /** Four to eight radii: a midpoint rule of eight or four. */
  @Benchmark
  @OperationsPerInvocation(COUNT)
  public double tubeAtFourToEightRadii() {
    return tube(4, 8);
  }

  /** Thousands of radii: one exponential. */
  @Benchmark
  @OperationsPerInvocation(COUNT)
  public double tubeFarAway() {
    return tube(5000, 10_000);
  }
}
