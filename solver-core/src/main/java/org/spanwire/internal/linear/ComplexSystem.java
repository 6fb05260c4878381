package org.spanwire.internal.linear;

import org.ejml.data.ZMatrixRMaj;
import org.ejml.dense.row.factory.LinearSolverFactory_ZDRM;
import org.ejml.interfaces.linsol.LinearSolverDense;

/**
 * A dense complex system A x = b, factored once and solved for many right-hand sides. A is scaled
 * symmetrically to a unit diagonal before it is factored, since entries may span many decades.
 */
public final class ComplexSystem {

  private final int size;
  private final double[] scale;
  private final LinearSolverDense<ZMatrixRMaj> solver;

  /**
   * Factors a square matrix, which is overwritten.
   *
   * @throws ArithmeticException if the matrix is singular or holds a value that is not finite
   */
  public ComplexSystem(ZMatrixRMaj matrix) {
    size = matrix.numRows;
    scale = new double[size];
    double[] data = matrix.data;
    for (int i = 0; i < size; i++) {
      int at = 2 * (i * size + i);
      double magnitude = Math.hypot(data[at], data[at + 1]);
      if (!(magnitude > 0) || Double.isInfinite(magnitude)) {
        throw new ArithmeticException("diagonal entry " + i + " of " + size + " is " + magnitude);
      }
      scale[i] = 1 / Math.sqrt(magnitude);
    }
    for (int i = 0; i < size; i++) {
      int at = 2 * i * size;
      for (int j = 0; j < size; j++, at += 2) {
        double factor = scale[i] * scale[j];
        data[at] *= factor;
        data[at + 1] *= factor;
      }
    }
    solver = LinearSolverFactory_ZDRM.lu(size);
    if (!solver.setA(matrix)) {
      throw new ArithmeticException("matrix of size " + size + " is singular");
    }
  }

  /** Number of equations. */
  public int size() {
    return size;
  }

  /**
   * Solves for one right-hand side, in place.
   *
   * @param re real parts of b on entry, of x on return
   * @param im imaginary parts
   */
  public void solve(double[] re, double[] im) {
    ZMatrixRMaj b = new ZMatrixRMaj(size, 1);
    ZMatrixRMaj x = new ZMatrixRMaj(size, 1);
    for (int i = 0; i < size; i++) {
      b.data[2 * i] = re[i] * scale[i];
      b.data[2 * i + 1] = im[i] * scale[i];
    }
    synchronized (solver) {
      solver.solve(b, x);
    }
    for (int i = 0; i < size; i++) {
      re[i] = x.data[2 * i] * scale[i];
      im[i] = x.data[2 * i + 1] * scale[i];
    }
  }
}
