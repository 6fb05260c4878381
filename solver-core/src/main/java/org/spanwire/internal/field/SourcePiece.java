package org.spanwire.internal.field;

import org.spanwire.internal.mesh.Piece;

/**
 * A piece with its current I(s) and the derivatives dI/ds and d²I/ds² as Legendre coefficients, A,
 * A/m and A/m².
 */
record SourcePiece(Piece piece, double[][] re, double[][] im) {

  /** The current times a real factor. */
  static SourcePiece of(Piece piece, double[] re, double[] im, double factor) {
    return new SourcePiece(
        piece, derivatives(re, piece.length(), factor), derivatives(im, piece.length(), factor));
  }

  private static double[][] derivatives(double[] c, double length, double factor) {
    double[] value = new double[c.length];
    for (int n = 0; n < c.length; n++) {
      value[n] = factor * c[n];
    }
    double[] first = derivative(value, length);
    return new double[][] {value, first, derivative(first, length)};
  }

  /** dP_n/dt = Σ (2m + 1) P_m over m = n − 1, n − 3, … (DLMF 18.9.19 summed), t = 2s/h − 1. */
  private static double[] derivative(double[] c, double length) {
    double[] d = new double[c.length];
    for (int m = c.length - 2; m >= 0; m--) {
      double next = m + 2 < c.length ? d[m + 2] / (2 * m + 5) : 0;
      d[m] = (2 * m + 1) * (next + 2 / length * c[m + 1]);
    }
    return d;
  }

  int terms() {
    return re[0].length;
  }

  /** Value of a derivative (0, 1 or 2) at an end, t = ±1, real part. */
  double endRe(int derivative, int side) {
    return end(re[derivative], side);
  }

  /** Value of a derivative (0, 1 or 2) at an end, t = ±1, imaginary part. */
  double endIm(int derivative, int side) {
    return end(im[derivative], side);
  }

  private static double end(double[] c, int side) {
    double sum = 0;
    for (int n = 0; n < c.length; n++) {
      sum += side > 0 || n % 2 == 0 ? c[n] : -c[n];
    }
    return sum;
  }
}
