package org.spanwire.internal.halfspace;

/**
 * Polynomial interpolation of the kernels on a rectangle from values at Chebyshev points of the
 * first kind. The tensor of Chebyshev coefficients is cut to total degree (row j keeps {@code
 * rows[j]} coefficients), which halves the cost of a look-up, and turned into powers. Local
 * coordinates run from −1 to 1.
 */
final class ChebyshevPatch {

  private static final int VALUES = ReflectedKernel.VALUES;

  /** What follows a coefficient that is kept: coefficients fall by 4 or more each. */
  private static final double LAST_KEPT = 1.0 / 3;

  private final int nx;
  private final int ny;
  private final int[] rows;
  private final double[] cosX;
  private final double[] cosY;
  private final double[] powersX;
  private final double[] powersY;

  ChebyshevPatch(int nx, int ny) {
    this.nx = nx;
    this.ny = ny;
    rows = new int[ny];
    for (int j = 0; j < ny; j++) {
      rows[j] = (nx * (ny - j) + ny - 1) / ny;
    }
    cosX = cosines(nx);
    cosY = cosines(ny);
    powersX = powers(nx);
    powersY = powers(ny);
  }

  int[] rows() {
    return rows.clone();
  }

  /** Number of doubles of one patch. */
  int size() {
    int n = 0;
    for (int row : rows) {
      n += row;
    }
    return n * VALUES;
  }

  /** Chebyshev point i of n in −1…1. */
  static double node(int i, int n) {
    return Math.cos(Math.PI * (i + 0.5) / n);
  }

  private static double[] cosines(int n) {
    double[] c = new double[n * n];
    for (int k = 0; k < n; k++) {
      for (int i = 0; i < n; i++) {
        c[k * n + i] = (k == 0 ? 1.0 : 2.0) / n * Math.cos(Math.PI * k * (i + 0.5) / n);
      }
    }
    return c;
  }

  /** Coefficients of x^p in T_k. */
  private static double[] powers(int n) {
    double[] t = new double[n * n];
    t[0] = 1;
    if (n > 1) {
      t[n + 1] = 1;
    }
    for (int k = 2; k < n; k++) {
      for (int p = 0; p < n; p++) {
        t[k * n + p] = (p > 0 ? 2 * t[(k - 1) * n + p - 1] : 0) - t[(k - 2) * n + p];
      }
    }
    return t;
  }

  /**
   * Turns nodal values, ordered [node y][node x][value], into Chebyshev coefficients in the same
   * order and returns the size of what is left out and follows, separately for refinement along x
   * (first) and y.
   */
  double[] transform(double[] values) {
    apply(values, cosX, nx, 1, ny, nx);
    apply(values, cosY, ny, nx, nx, 1);
    double[] error = new double[2];
    for (int v = 0; v < VALUES; v++) {
      double ex = 0;
      double ey = 0;
      for (int j = 0; j < ny; j++) {
        for (int i = 0; i < nx; i++) {
          if (i >= rows[j] - 1) {
            double share = i >= rows[j] ? 1 : LAST_KEPT;
            double c = share * Math.abs(values[(j * nx + i) * VALUES + v]);
            if ((double) i / nx >= (double) j / ny) {
              ex += c;
            } else {
              ey += c;
            }
          }
        }
      }
      error[0] = Math.max(error[0], ex);
      error[1] = Math.max(error[1], ey);
    }
    return error;
  }

  /** Writes the kept part of Chebyshev coefficients as powers, row after row, to {@code target}. */
  void store(double[] coefficients, double[] target) {
    for (int j = 0; j < ny; j++) {
      for (int i = rows[j]; i < nx; i++) {
        for (int v = 0; v < VALUES; v++) {
          coefficients[(j * nx + i) * VALUES + v] = 0;
        }
      }
    }
    apply(coefficients, transposed(powersX, nx), nx, 1, ny, nx);
    apply(coefficients, transposed(powersY, ny), ny, nx, nx, 1);
    int at = 0;
    for (int j = 0; j < ny; j++) {
      System.arraycopy(coefficients, j * nx * VALUES, target, at, rows[j] * VALUES);
      at += rows[j] * VALUES;
    }
  }

  private static double[] transposed(double[] a, int n) {
    double[] t = new double[n * n];
    for (int i = 0; i < n; i++) {
      for (int j = 0; j < n; j++) {
        t[i * n + j] = a[j * n + i];
      }
    }
    return t;
  }

  /** Multiplies an n × n matrix along one direction of the array in place. */
  private static void apply(
      double[] data, double[] matrix, int n, int stride, int lines, int lineStride) {
    double[] line = new double[n];
    for (int l = 0; l < lines; l++) {
      for (int v = 0; v < VALUES; v++) {
        int base = l * lineStride * VALUES + v;
        for (int k = 0; k < n; k++) {
          double s = 0;
          for (int i = 0; i < n; i++) {
            s += matrix[k * n + i] * data[base + i * stride * VALUES];
          }
          line[k] = s;
        }
        for (int k = 0; k < n; k++) {
          data[base + k * stride * VALUES] = line[k];
        }
      }
    }
  }

  /** Nested Horner evaluation of all values of the patch whose powers begin at {@code start}. */
  static void evaluate(
      double[] c, int start, int[] rows, double x, double y, double[] out, int offset) {
    double a0 = 0;
    double a1 = 0;
    double a2 = 0;
    double a3 = 0;
    double a4 = 0;
    double a5 = 0;
    double a6 = 0;
    double a7 = 0;
    int first = start;
    for (int row : rows) {
      first += row * VALUES;
    }
    for (int j = rows.length - 1; j >= 0; j--) {
      int k = first - VALUES;
      first -= rows[j] * VALUES;
      double b0 = c[k];
      double b1 = c[k + 1];
      double b2 = c[k + 2];
      double b3 = c[k + 3];
      double b4 = c[k + 4];
      double b5 = c[k + 5];
      double b6 = c[k + 6];
      double b7 = c[k + 7];
      for (k -= VALUES; k >= first; k -= VALUES) {
        b0 = b0 * x + c[k];
        b1 = b1 * x + c[k + 1];
        b2 = b2 * x + c[k + 2];
        b3 = b3 * x + c[k + 3];
        b4 = b4 * x + c[k + 4];
        b5 = b5 * x + c[k + 5];
        b6 = b6 * x + c[k + 6];
        b7 = b7 * x + c[k + 7];
      }
      a0 = a0 * y + b0;
      a1 = a1 * y + b1;
      a2 = a2 * y + b2;
      a3 = a3 * y + b3;
      a4 = a4 * y + b4;
      a5 = a5 * y + b5;
      a6 = a6 * y + b6;
      a7 = a7 * y + b7;
    }
    out[offset] = a0;
    out[offset + 1] = a1;
    out[offset + 2] = a2;
    out[offset + 3] = a3;
    out[offset + 4] = a4;
    out[offset + 5] = a5;
    out[offset + 6] = a6;
    out[offset + 7] = a7;
  }

  /**
   * As {@link #evaluate}, of the horizontal and the scalar kernel only, which keep their positions.
   */
  static void evaluateHorizontal(
      double[] c, int start, int[] rows, double x, double y, double[] out, int offset) {
    double a0 = 0;
    double a1 = 0;
    double a4 = 0;
    double a5 = 0;
    int first = start;
    for (int row : rows) {
      first += row * VALUES;
    }
    for (int j = rows.length - 1; j >= 0; j--) {
      int k = first - VALUES;
      first -= rows[j] * VALUES;
      double b0 = c[k];
      double b1 = c[k + 1];
      double b4 = c[k + 4];
      double b5 = c[k + 5];
      for (k -= VALUES; k >= first; k -= VALUES) {
        b0 = b0 * x + c[k];
        b1 = b1 * x + c[k + 1];
        b4 = b4 * x + c[k + 4];
        b5 = b5 * x + c[k + 5];
      }
      a0 = a0 * y + b0;
      a1 = a1 * y + b1;
      a4 = a4 * y + b4;
      a5 = a5 * y + b5;
    }
    out[offset] = a0;
    out[offset + 1] = a1;
    out[offset + 4] = a4;
    out[offset + 5] = a5;
  }
}
