package org.spanwire.internal.linear;

import java.util.concurrent.TimeUnit;
import org.bytedeco.javacpp.DoublePointer;
import org.bytedeco.javacpp.IntPointer;
import org.bytedeco.openblas.global.openblas;
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

/**
 * The yardstick of {@link FactorisationBenchmark}: LAPACK through OpenBLAS on the same matrix with
 * one thread, as a general matrix (zgetrf, zgetrs) and as a symmetric one (zsytrf).
 */
@State(Scope.Benchmark)
@BenchmarkMode(Mode.AverageTime)
@OutputTimeUnit(TimeUnit.MICROSECONDS)
@Warmup(iterations = 3, time = 1)
@Measurement(iterations = 5, time = 1)
public class LapackFactorisationBenchmark {

  @Param({"100", "300", "1000", "3000"})
  int size;

  private double[] matrix;
  private DoublePointer work;
  private DoublePointer factors;
  private IntPointer pivots;
  private IntPointer workPivots;

  /** Makes the matrix and its factors. */
  @Setup
  public void prepare() {
    openblas.blas_set_num_threads(1);
    ZMatrixRMaj made = SymmetricMatrix.random(size);
    matrix = made.data.clone();
    work = new DoublePointer(matrix.length);
    factors = new DoublePointer(matrix);
    pivots = new IntPointer(size);
    workPivots = new IntPointer(size);
    check(
        openblas.LAPACKE_zgetrf(openblas.LAPACK_COL_MAJOR, size, size, factors, size, pivots));
  }

  private static void check(int info) {
    if (info != 0) {
      throw new IllegalStateException("LAPACK returned " + info);
    }
  }

  /** Copy and factorisation with pivoting, the symmetry not used. */
  @Benchmark
  public DoublePointer factorGeneral() {
    work.put(matrix, 0, matrix.length);
    check(
        openblas.LAPACKE_zgetrf(openblas.LAPACK_COL_MAJOR, size, size, work, size, workPivots));
    return work;
  }

  /** Copy and factorisation with symmetric pivoting. */
  @Benchmark
  public DoublePointer factorSymmetric() {
    work.put(matrix, 0, matrix.length);
    check(
        openblas.LAPACKE_zsytrf(
            openblas.LAPACK_COL_MAJOR, (byte) 'L', size, work, size, workPivots));
    return work;
  }

  /** Solution for one right-hand side, without refinement. */
  @Benchmark
  public double solve() {
    try (DoublePointer right = new DoublePointer(2L * size)) {
      right.put(new double[2 * size], 0, 2 * size);
      right.put(size, 1);
      check(
          openblas.LAPACKE_zgetrs(
              openblas.LAPACK_COL_MAJOR, (byte) 'N', size, 1, factors, size, pivots, right, size));
      return right.get(0);
    }
  }
}
