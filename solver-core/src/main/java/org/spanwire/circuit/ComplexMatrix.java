package org.spanwire.circuit;

import java.util.Arrays;
import org.apache.commons.math3.complex.Complex;
import org.apache.commons.math3.linear.Array2DRowRealMatrix;
import org.apache.commons.math3.linear.EigenDecomposition;

/** A small immutable complex matrix: the few operations that networks of some ports need. */
final class ComplexMatrix {

  /** Pivots below this share of the largest entry count as zero: some ten units of rounding. */
  private static final double RANK_TOLERANCE = 2e-15;

  /**
   * Right-hand sides left over by a pivot of zero may be this large against the whole. In a passive
   * network a mode that the pivot tolerance takes for lossless can couple to the ports by no more
   * than the square root of that tolerance.
   */
  private static final double CONSISTENCY_TOLERANCE = 1e-7;

  private final int rows;
  private final int columns;
  private final double[] re;
  private final double[] im;

  private ComplexMatrix(int rows, int columns) {
    this.rows = rows;
    this.columns = columns;
    re = new double[rows * columns];
    im = new double[rows * columns];
  }

  /** Entry of a matrix, both indices from 0. */
  @FunctionalInterface
  interface Entries {
    Complex at(int row, int column);
  }

  static ComplexMatrix of(int rows, int columns, Entries entries) {
    ComplexMatrix result = new ComplexMatrix(rows, columns);
    for (int i = 0; i < rows; i++) {
      for (int j = 0; j < columns; j++) {
        Complex value = entries.at(i, j);
        result.re[i * columns + j] = value.getReal();
        result.im[i * columns + j] = value.getImaginary();
      }
    }
    return result;
  }

  static ComplexMatrix of(Complex[][] values) {
    int columns = values.length == 0 ? 0 : values[0].length;
    for (Complex[] row : values) {
      if (row.length != columns) {
        throw new IllegalArgumentException(
            "matrix has rows of " + columns + " and " + row.length + " entries");
      }
    }
    return of(values.length, columns, (i, j) -> values[i][j]);
  }

  static ComplexMatrix identity(int size) {
    return of(size, size, (i, j) -> i == j ? Complex.ONE : Complex.ZERO);
  }

  int rows() {
    return rows;
  }

  int columns() {
    return columns;
  }

  Complex at(int row, int column) {
    return new Complex(re[row * columns + column], im[row * columns + column]);
  }

  Complex[][] toArray() {
    Complex[][] result = new Complex[rows][columns];
    for (int i = 0; i < rows; i++) {
      for (int j = 0; j < columns; j++) {
        result[i][j] = at(i, j);
      }
    }
    return result;
  }

  /** Rows and columns chosen by index, in that order. */
  ComplexMatrix part(int[] rowIndices, int[] columnIndices) {
    return of(
        rowIndices.length, columnIndices.length, (i, j) -> at(rowIndices[i], columnIndices[j]));
  }

  ComplexMatrix plus(ComplexMatrix other) {
    return combine(other, 1);
  }

  ComplexMatrix minus(ComplexMatrix other) {
    return combine(other, -1);
  }

  private ComplexMatrix combine(ComplexMatrix other, double factor) {
    ComplexMatrix result = new ComplexMatrix(rows, columns);
    for (int i = 0; i < re.length; i++) {
      result.re[i] = re[i] + factor * other.re[i];
      result.im[i] = im[i] + factor * other.im[i];
    }
    return result;
  }

  ComplexMatrix times(ComplexMatrix other) {
    ComplexMatrix result = new ComplexMatrix(rows, other.columns);
    for (int i = 0; i < rows; i++) {
      for (int j = 0; j < other.columns; j++) {
        double sumRe = 0;
        double sumIm = 0;
        for (int k = 0; k < columns; k++) {
          int a = i * columns + k;
          int b = k * other.columns + j;
          sumRe += re[a] * other.re[b] - im[a] * other.im[b];
          sumIm += re[a] * other.im[b] + im[a] * other.re[b];
        }
        result.re[i * other.columns + j] = sumRe;
        result.im[i * other.columns + j] = sumIm;
      }
    }
    return result;
  }

  ComplexMatrix conjugateTranspose() {
    return of(columns, rows, (i, j) -> at(j, i).conjugate());
  }

  ComplexMatrix transpose() {
    return of(columns, rows, (i, j) -> at(j, i));
  }

  double largestMagnitude() {
    double largest = 0;
    for (int i = 0; i < re.length; i++) {
      largest = Math.max(largest, Math.hypot(re[i], im[i]));
    }
    return largest;
  }

  boolean isFinite() {
    for (int i = 0; i < re.length; i++) {
      if (!Double.isFinite(re[i]) || !Double.isFinite(im[i])) {
        return false;
      }
    }
    return true;
  }

  /** Largest eigenvalue of a Hermitian matrix H = A + jB, found as that of [[A, −B], [B, A]]. */
  double largestHermitianEigenvalue() {
    Array2DRowRealMatrix real = new Array2DRowRealMatrix(2 * rows, 2 * rows);
    for (int i = 0; i < rows; i++) {
      for (int j = 0; j <= i; j++) {
        double a = re[i * rows + j];
        double b = i == j ? 0 : im[i * rows + j];
        real.setEntry(i, j, a);
        real.setEntry(j, i, a);
        real.setEntry(rows + i, rows + j, a);
        real.setEntry(rows + j, rows + i, a);
        real.setEntry(rows + i, j, b);
        real.setEntry(rows + j, i, -b);
        real.setEntry(j, rows + i, b);
        real.setEntry(i, rows + j, -b);
      }
    }
    double largest = Double.NEGATIVE_INFINITY;
    for (double value : new EigenDecomposition(real).getRealEigenvalues()) {
      largest = Math.max(largest, value);
    }
    return largest;
  }

  /**
   * Inverse.
   *
   * @throws ArithmeticException if the matrix is singular
   */
  ComplexMatrix inverse() {
    return solve(identity(rows));
  }

  /**
   * X with this · X = right.
   *
   * @throws ArithmeticException if the matrix is singular
   */
  ComplexMatrix solve(ComplexMatrix right) {
    return new Elimination(this, right, true).solution(0);
  }

  /**
   * X with this · X = right for equations whose rows may be in different units; a singular matrix
   * is allowed as long as an X exists, and unknowns left free are zero.
   *
   * @throws ArithmeticException if there is no solution
   */
  ComplexMatrix solveConsistent(ComplexMatrix right) {
    return new Elimination(this, right, true).solution(CONSISTENCY_TOLERANCE);
  }

  /**
   * The same for equations between waves, where 1 is the scale of all that is not zero and a row
   * may be rounding alone.
   *
   * @throws ArithmeticException if there is no solution
   */
  ComplexMatrix solveWaves(ComplexMatrix right) {
    return new Elimination(this, right, false).solution(CONSISTENCY_TOLERANCE);
  }

  /** Gauss elimination with full pivoting, which shows the rank. */
  private static final class Elimination {
    private final Complex[][] a;
    private final Complex[][] b;
    private final int size;
    private final int[] unknown;
    private final double rightScale;
    private int rank;

    Elimination(ComplexMatrix matrix, ComplexMatrix right, boolean scaled) {
      size = matrix.rows;
      if (matrix.columns != size || right.rows != size) {
        throw new IllegalArgumentException(
            "cannot solve %d by %d equations for %d rows"
                .formatted(size, matrix.columns, right.rows));
      }
      if (!matrix.isFinite() || !right.isFinite()) {
        throw new ArithmeticException("matrix holds a value that is not finite");
      }
      a = matrix.toArray();
      b = right.toArray();
      unknown = new int[size];
      for (int i = 0; i < size; i++) {
        unknown[i] = i;
      }
      if (scaled) {
        scaleRows();
      }
      double floor = scaled ? 0 : 1;
      rightScale = Math.max(floor, ComplexMatrix.of(b).largestMagnitude());
      double smallest = RANK_TOLERANCE * Math.max(floor, ComplexMatrix.of(a).largestMagnitude());
      while (rank < size && pivot(smallest)) {
        eliminate();
        rank++;
      }
    }

    /** Brings every row near 1 by a power of two, so that ohms and siemens can be compared. */
    private void scaleRows() {
      for (int i = 0; i < size; i++) {
        double largest = 0;
        for (Complex entry : a[i]) {
          largest = Math.max(largest, entry.abs());
        }
        if (largest > 0) {
          double factor = Math.scalb(1.0, -Math.getExponent(largest));
          for (Complex[] row : new Complex[][] {a[i], b[i]}) {
            Arrays.setAll(row, j -> row[j].multiply(factor));
          }
        }
      }
    }

    private boolean pivot(double smallest) {
      int row = rank;
      int column = rank;
      double largest = -1;
      for (int i = rank; i < size; i++) {
        for (int j = rank; j < size; j++) {
          double magnitude = a[i][j].abs();
          if (magnitude > largest) {
            largest = magnitude;
            row = i;
            column = j;
          }
        }
      }
      if (!(largest > smallest)) {
        return false;
      }
      swap(a, rank, row);
      swap(b, rank, row);
      for (Complex[] line : a) {
        Complex kept = line[rank];
        line[rank] = line[column];
        line[column] = kept;
      }
      int kept = unknown[rank];
      unknown[rank] = unknown[column];
      unknown[column] = kept;
      return true;
    }

    private static void swap(Complex[][] lines, int i, int j) {
      Complex[] kept = lines[i];
      lines[i] = lines[j];
      lines[j] = kept;
    }

    private void eliminate() {
      for (int i = rank + 1; i < size; i++) {
        Complex factor = a[i][rank].divide(a[rank][rank]);
        if (factor.equals(Complex.ZERO)) {
          continue;
        }
        subtract(a[i], factor, a[rank], rank);
        subtract(b[i], factor, b[rank], 0);
      }
    }

    private static void subtract(Complex[] from, Complex factor, Complex[] line, int start) {
      for (int j = start; j < from.length; j++) {
        from[j] = from[j].subtract(factor.multiply(line[j]));
      }
    }

    ComplexMatrix solution(double tolerance) {
      for (int i = rank; i < size; i++) {
        for (Complex left : b[i]) {
          if (tolerance == 0 || left.abs() > tolerance * rightScale) {
            throw new ArithmeticException(
                "matrix of size " + size + " is singular, its rank is " + rank);
          }
        }
      }
      int width = size == 0 ? 0 : b[0].length;
      Complex[][] x = new Complex[size][width];
      for (int i = size - 1; i >= 0; i--) {
        for (int j = 0; j < width; j++) {
          x[unknown[i]][j] = i < rank ? back(x, i, j) : Complex.ZERO;
        }
      }
      return ComplexMatrix.of(size, width, (i, j) -> x[i][j]);
    }

    private Complex back(Complex[][] x, int row, int column) {
      Complex sum = b[row][column];
      for (int k = row + 1; k < rank; k++) {
        sum = sum.subtract(a[row][k].multiply(x[unknown[k]][column]));
      }
      return sum.divide(a[row][row]);
    }
  }
}
