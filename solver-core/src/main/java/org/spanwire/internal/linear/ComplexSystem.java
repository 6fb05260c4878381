package org.spanwire.internal.linear;

import java.util.Arrays;
import org.ejml.data.ZMatrixRMaj;
import org.ejml.dense.row.factory.LinearSolverFactory_ZDRM;
import org.ejml.interfaces.linsol.LinearSolverDense;

/**
 * A dense complex symmetric system A x = b, factored once and solved for many right-hand sides, for
 * A itself and for its leading blocks. A is scaled symmetrically to a unit diagonal, since entries
 * may span many decades.
 *
 * <p>A factorisation without pivoting is tried first and its solutions refined once against the
 * kept matrix. Should a residual still exceed 1e-10 of what the terms of the equations amount to,
 * EJML's pivoting LU takes over. Safe for use by several threads.
 */
public final class ComplexSystem {

  private static final double RESIDUAL = 1e-10;

  /** The inverse is used without refinement, for results to 1e-6 at best. */
  private static final double ROOT_RESIDUAL = 1e-9;

  /**
   * Growth of a solution against its right-hand side above which the matrix counts as singular:
   * EJML does not say so.
   */
  private static final double LARGEST_CONDITION = 1e14;

  private final int size;
  private final double[] scale;
  private final ZMatrixRMaj matrix;
  private final SymmetricFactors factors;

  /**
   * Factors a symmetric matrix, which is scaled in place and kept.
   *
   * @throws ArithmeticException if a diagonal entry is zero or not finite
   */
  public ComplexSystem(ZMatrixRMaj matrix) {
    this.matrix = matrix;
    size = matrix.numRows;
    scale = new double[size];
    scaleToUnitDiagonal();
    double[][] re = new double[size][size];
    double[][] im = new double[size][size];
    for (int i = 0; i < size; i++) {
      int at = 2 * (i * size + i);
      for (int j = i; j < size; j++, at += 2) {
        re[i][j] = matrix.data[at];
        im[i][j] = matrix.data[at + 1];
      }
    }
    factors = new SymmetricFactors(re, im);
  }

  private void scaleToUnitDiagonal() {
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
   * @throws ArithmeticException if the matrix is singular
   */
  public void solve(double[] re, double[] im) {
    solveLeading(size, re, im);
  }

  /**
   * Solves with the leading block of A for one right-hand side, in place.
   *
   * @param leading size of the block, 1 to the number of equations
   * @param re real parts of b on entry, of x on return; entries beyond the block are left alone
   * @param im imaginary parts
   * @throws ArithmeticException if the block is singular
   */
  public void solveLeading(int leading, double[] re, double[] im) {
    double[] bRe = new double[leading];
    double[] bIm = new double[leading];
    for (int i = 0; i < leading; i++) {
      bRe[i] = re[i] * scale[i];
      bIm[i] = im[i] * scale[i];
    }
    double[] xRe = bRe.clone();
    double[] xIm = bIm.clone();
    factors.solve(leading, xRe, xIm);
    double[] rRe = new double[leading];
    double[] rIm = new double[leading];
    residual(leading, bRe, bIm, xRe, xIm, rRe, rIm);
    factors.solve(leading, rRe, rIm);
    for (int i = 0; i < leading; i++) {
      xRe[i] += rRe[i];
      xIm[i] += rIm[i];
    }
    if (!isSolved(residual(leading, bRe, bIm, xRe, xIm, rRe, rIm), bRe, bIm, xRe, xIm)) {
      solveWithPivoting(leading, bRe, bIm, xRe, xIm);
      double left = residual(leading, bRe, bIm, xRe, xIm, rRe, rIm);
      double size = norm(xRe, xIm);
      if (!isSolved(left, bRe, bIm, xRe, xIm) || size > LARGEST_CONDITION * norm(bRe, bIm)) {
        throw new ArithmeticException("matrix of size " + leading + " is singular");
      }
    }
    for (int i = 0; i < leading; i++) {
      re[i] = xRe[i] * scale[i];
      im[i] = xIm[i] * scale[i];
    }
  }

  /**
   * The inverse as the product of a triangular matrix and its transpose.
   *
   * @throws ArithmeticException if the factorisation without pivoting is too inaccurate for it
   */
  public InverseRoot inverseRoot() {
    double[][][] root = factors.inverseRoot();
    double[] bRe = new double[size];
    double[] bIm = new double[size];
    Arrays.fill(bRe, 1);
    double[] xRe = new double[size];
    double[] xIm = new double[size];
    applyInverse(root, bRe, xRe, xIm);
    double[] rest = new double[size];
    double left = residual(size, bRe, bIm, xRe, xIm, rest, rest.clone());
    if (!(left <= ROOT_RESIDUAL * (norm(xRe, xIm) + norm(bRe, bIm)))) {
      throw new ArithmeticException("matrix of size " + size + " needs pivoting to be inverted");
    }
    for (int i = 0; i < size; i++) {
      for (int j = i; j < size; j++) {
        root[0][i][j] *= scale[i];
        root[1][i][j] *= scale[i];
      }
    }
    return new InverseRoot(root[0], root[1]);
  }

  /** x = W Wᵀ b for real b. */
  private void applyInverse(double[][][] root, double[] b, double[] xRe, double[] xIm) {
    double[] tRe = new double[size];
    double[] tIm = new double[size];
    for (int i = 0; i < size; i++) {
      for (int j = i; j < size; j++) {
        tRe[j] += root[0][i][j] * b[i];
        tIm[j] += root[1][i][j] * b[i];
      }
    }
    for (int i = 0; i < size; i++) {
      for (int j = i; j < size; j++) {
        xRe[i] += root[0][i][j] * tRe[j] - root[1][i][j] * tIm[j];
        xIm[i] += root[0][i][j] * tIm[j] + root[1][i][j] * tRe[j];
      }
    }
  }

  /** Whether a residual is small against what rounding leaves, ‖A‖‖x‖ + ‖b‖ with ‖A‖ at least 1. */
  private static boolean isSolved(
      double residual, double[] bRe, double[] bIm, double[] xRe, double[] xIm) {
    return residual <= RESIDUAL * (norm(xRe, xIm) + norm(bRe, bIm));
  }

  /** Writes b − A x and returns its norm. */
  private double residual(
      int leading,
      double[] bRe,
      double[] bIm,
      double[] xRe,
      double[] xIm,
      double[] rRe,
      double[] rIm) {
    for (int i = 0; i < leading; i++) {
      double sumRe = bRe[i];
      double sumIm = bIm[i];
      int at = 2 * i * size;
      for (int j = 0; j < leading; j++, at += 2) {
        double a = matrix.data[at];
        double b = matrix.data[at + 1];
        sumRe -= a * xRe[j] - b * xIm[j];
        sumIm -= a * xIm[j] + b * xRe[j];
      }
      rRe[i] = sumRe;
      rIm[i] = sumIm;
    }
    return norm(rRe, rIm);
  }

  private static double norm(double[] re, double[] im) {
    double sum = 0;
    for (int i = 0; i < re.length; i++) {
      sum += re[i] * re[i] + im[i] * im[i];
    }
    return Math.sqrt(sum);
  }

  private void solveWithPivoting(
      int leading, double[] bRe, double[] bIm, double[] xRe, double[] xIm) {
    ZMatrixRMaj block = new ZMatrixRMaj(leading, leading);
    for (int i = 0; i < leading; i++) {
      System.arraycopy(matrix.data, 2 * i * size, block.data, 2 * i * leading, 2 * leading);
    }
    LinearSolverDense<ZMatrixRMaj> solver = LinearSolverFactory_ZDRM.lu(leading);
    if (!solver.setA(block)) {
      throw new ArithmeticException("matrix of size " + leading + " is singular");
    }
    ZMatrixRMaj b = new ZMatrixRMaj(leading, 1);
    ZMatrixRMaj x = new ZMatrixRMaj(leading, 1);
    for (int i = 0; i < leading; i++) {
      b.data[2 * i] = bRe[i];
      b.data[2 * i + 1] = bIm[i];
    }
    solver.solve(b, x);
    for (int i = 0; i < leading; i++) {
      xRe[i] = x.data[2 * i];
      xIm[i] = x.data[2 * i + 1];
    }
  }
}
