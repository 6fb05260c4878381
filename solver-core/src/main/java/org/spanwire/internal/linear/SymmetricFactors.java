package org.spanwire.internal.linear;

import org.apache.commons.math3.complex.Complex;

/**
 * A = Uᵀ D U of a complex symmetric matrix without pivoting, by blocks of rows so that a block
 * stays in the cache. Row i holds D_ii at i and U_ij beyond. The factors of a leading block of A
 * are the leading part of the factors of A, so that one factorisation solves both. Stability is not
 * guaranteed: the caller checks residuals.
 */
final class SymmetricFactors {

  private static final int BLOCK = 48;
  private static final int TILE = 256;

  private final int n;
  private final double[][] re;
  private final double[][] im;

  /**
   * Factors a matrix in place.
   *
   * @param re real parts, row i of length n, entries from the diagonal on; overwritten
   * @param im imaginary parts
   */
  SymmetricFactors(double[][] re, double[][] im) {
    this.n = re.length;
    this.re = re;
    this.im = im;
    double[][] unitRe = new double[Math.min(BLOCK, n)][n];
    double[][] unitIm = new double[Math.min(BLOCK, n)][n];
    for (int k = 0; k < n; k += BLOCK) {
      int end = Math.min(k + BLOCK, n);
      eliminateInside(k, end, unitRe, unitIm);
      updateBeyond(k, end, unitRe, unitIm);
      for (int p = k; p < end; p++) {
        System.arraycopy(unitRe[p - k], p + 1, re[p], p + 1, n - p - 1);
        System.arraycopy(unitIm[p - k], p + 1, im[p], p + 1, n - p - 1);
      }
    }
  }

  private void eliminateInside(int k, int end, double[][] unitRe, double[][] unitIm) {
    for (int p = k; p < end; p++) {
      double a = re[p][p];
      double b = im[p][p];
      double square = a * a + b * b;
      double inverseRe = a / square;
      double inverseIm = -b / square;
      double[] rowRe = re[p];
      double[] rowIm = im[p];
      double[] toRe = unitRe[p - k];
      double[] toIm = unitIm[p - k];
      for (int j = p + 1; j < n; j++) {
        toRe[j] = rowRe[j] * inverseRe - rowIm[j] * inverseIm;
        toIm[j] = rowRe[j] * inverseIm + rowIm[j] * inverseRe;
      }
      for (int i = p + 1; i < end; i++) {
        subtract(re[i], im[i], rowRe, rowIm, toRe[i], toIm[i], i, n);
      }
    }
  }

  private void updateBeyond(int k, int end, double[][] unitRe, double[][] unitIm) {
    for (int from = end; from < n; from += TILE) {
      int to = Math.min(from + TILE, n);
      for (int i = end; i < to; i++) {
        int start = Math.max(i, from);
        for (int p = k; p < end; p++) {
          subtract(re[i], im[i], re[p], im[p], unitRe[p - k][i], unitIm[p - k][i], start, to);
        }
      }
    }
  }

  /** c −= (a + jb) x on a stretch. */
  private static void subtract(
      double[] cRe,
      double[] cIm,
      double[] xRe,
      double[] xIm,
      double a,
      double b,
      int from,
      int to) {
    for (int j = from; j < to; j++) {
      cRe[j] = cRe[j] - a * xRe[j] + b * xIm[j];
      cIm[j] = cIm[j] - a * xIm[j] - b * xRe[j];
    }
  }

  /** Solves with the leading block of a size, in place; entries beyond it are left alone. */
  void solve(int size, double[] bRe, double[] bIm) {
    for (int p = 0; p < size; p++) {
      subtract(bRe, bIm, re[p], im[p], bRe[p], bIm[p], p + 1, size);
    }
    for (int p = 0; p < size; p++) {
      double a = re[p][p];
      double b = im[p][p];
      double square = a * a + b * b;
      double real = (bRe[p] * a + bIm[p] * b) / square;
      bIm[p] = (bIm[p] * a - bRe[p] * b) / square;
      bRe[p] = real;
    }
    for (int p = size - 1; p >= 0; p--) {
      double sumRe = 0;
      double sumIm = 0;
      for (int j = p + 1; j < size; j++) {
        sumRe += re[p][j] * bRe[j] - im[p][j] * bIm[j];
        sumIm += re[p][j] * bIm[j] + im[p][j] * bRe[j];
      }
      bRe[p] -= sumRe;
      bIm[p] -= sumIm;
    }
  }

  /**
   * U⁻¹ D^(−1/2), so that A⁻¹ is it times its transpose. Rows of full length with zeros before the
   * diagonal, real parts first.
   */
  double[][][] inverseRoot() {
    double[][] rootRe = new double[n][n];
    double[][] rootIm = new double[n][n];
    for (int i = n - 1; i >= 0; i--) {
      rootRe[i][i] = 1;
      for (int j = i + 1; j < n; j++) {
        subtract(rootRe[i], rootIm[i], rootRe[j], rootIm[j], re[i][j], im[i][j], j, n);
      }
    }
    for (int j = 0; j < n; j++) {
      Complex factor = new Complex(re[j][j], im[j][j]).sqrt().reciprocal();
      double a = factor.getReal();
      double b = factor.getImaginary();
      for (int i = 0; i <= j; i++) {
        double real = rootRe[i][j] * a - rootIm[i][j] * b;
        rootIm[i][j] = rootRe[i][j] * b + rootIm[i][j] * a;
        rootRe[i][j] = real;
      }
    }
    return new double[][][] {rootRe, rootIm};
  }
}
