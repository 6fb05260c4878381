package org.spanwire.internal.halfspace;

import java.util.SplittableRandom;
import java.util.concurrent.TimeUnit;
import org.apache.commons.math3.complex.Complex;
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
 * A look-up of all four kernels over soil, against four complex polynomials of the same two degrees
 * by Horner's scheme, and against direct quadrature.
 */
@State(Scope.Benchmark)
@BenchmarkMode(Mode.AverageTime)
@OutputTimeUnit(TimeUnit.NANOSECONDS)
@Warmup(iterations = 3, time = 1)
@Measurement(iterations = 7, time = 1)
public class KernelTableBenchmark {

  private static final int COUNT = 1024;

  /**
   * Points along ρ and ζ that a table of tolerance 1e-5 uses for heights within a factor of four.
   */
  private static final int POINTS = 9;

  private static final double WAVENUMBER = 2 * Math.PI;

  private final double[] rho = new double[COUNT];
  private final double[] zeta = new double[COUNT];
  private final double[] out = new double[ReflectedKernel.VALUES];
  private final double[] coefficients = new double[ReflectedKernel.VALUES * POINTS * POINTS];
  private ReflectedKernelTable table;
  private SommerfeldKernel direct;

  /** Builds the table for heights of 0.1 λ to 0.4 λ and distances up to 4 λ. */
  @Setup
  public void build() {
    Complex permittivity = new Complex(13, -3);
    table = new ReflectedKernelTable(WAVENUMBER, permittivity, new KernelRegion(4, 0.2, 0.8), 1e-5);
    direct = new SommerfeldKernel(WAVENUMBER, permittivity, 1e-5);
    SplittableRandom random = new SplittableRandom(2);
    for (int i = 0; i < COUNT; i++) {
      rho[i] = 4 * random.nextDouble();
      zeta[i] = 0.2 + 0.6 * random.nextDouble();
    }
    for (int i = 0; i < coefficients.length; i++) {
      coefficients[i] = random.nextDouble();
    }
  }

  /** Four complex polynomials in two variables. */
  @Benchmark
  @OperationsPerInvocation(COUNT)
  public double yardstick() {
    double sum = 0;
    for (int n = 0; n < COUNT; n++) {
      double x = 0.25 * rho[n];
      double y = zeta[n];
      int at = 0;
      for (int v = 0; v < ReflectedKernel.VALUES; v++) {
        double outer = 0;
        for (int j = 0; j < POINTS; j++) {
          double inner = 0;
          for (int i = 0; i < POINTS; i++) {
            inner = inner * x + coefficients[at++];
          }
          outer = outer * y + inner;
        }
        sum += outer;
      }
    }
    return sum;
  }

  /** The table, patch search and phase factor included. */
  @Benchmark
  @OperationsPerInvocation(COUNT)
  public double lookUp() {
    double sum = 0;
    for (int n = 0; n < COUNT; n++) {
      table.evaluate(rho[n], zeta[n], out, 0);
      sum += out[0] + out[5];
    }
    return sum;
  }

  /** Quadrature of the Sommerfeld integrals at the table's tolerance. */
  @Benchmark
  @OperationsPerInvocation(COUNT)
  public double quadrature() {
    double sum = 0;
    for (int n = 0; n < COUNT; n++) {
      direct.evaluate(rho[n], zeta[n], out, 0);
      sum += out[0] + out[5];
    }
    return sum;
  }
}
