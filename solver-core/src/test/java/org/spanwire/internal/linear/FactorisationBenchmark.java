package org.spanwire.internal.linear;

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

/** Factorisation of a dense complex symmetric system, and the solution for one right-hand side. */
@State(Scope.Benchmark)
@BenchmarkMode(Mode.AverageTime)
@OutputTimeUnit(TimeUnit.MICROSECONDS)
@Warmup(iterations = 3, time = 1)
@Measurement(iterations = 5, time = 1)
public class FactorisationBenchmark {

  @Param({"100", "300", "1000", "3000"})
  int size;

  private ZMatrixRMaj matrix;
  private ComplexSystem system;

  /** Makes the matrix. */
  @Setup
  public void prepare() {
    matrix = SymmetricMatrix.random(size);
    system = new ComplexSystem(matrix.copy());
  }

  /** Copy, scaling and factorisation. */
  @Benchmark
  public ComplexSystem factor() {
    return new ComplexSystem(matrix.copy());
  }

  /** Solution, one refinement and its check included. */
  @Benchmark
  public double[] solve() {
    double[] re = new double[size];
    double[] im = new double[size];
    re[size / 2] = 1;
    system.solve(re, im);
    return re;
  }
}
