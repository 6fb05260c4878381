package org.spanwire.internal.moment;

import org.ejml.data.ZMatrixRMaj;
import org.spanwire.internal.basis.Unknowns;
import org.spanwire.internal.mesh.Mesh;

/**
 * The impedance matrix of {@link MomentBlocks}. Only pairs i ≤ j of pieces are integrated, so that
 * the matrix is symmetric to the last bit.
 */
final class MomentMatrix {

  private final Mesh mesh;
  private final Unknowns unknowns;
  private final MomentBlocks blocks;
  private final ZMatrixRMaj matrix;

  private MomentMatrix(Unknowns unknowns, MomentBlocks blocks) {
    this.unknowns = unknowns;
    this.mesh = unknowns.mesh();
    this.blocks = blocks;
    matrix = new ZMatrixRMaj(unknowns.count(), unknowns.count());
  }

  /**
   * Fills the matrix.
   *
   * @param k wavenumber in rad/m
   * @param moments at that wavenumber
   * @param series distributed impedances of every piece
   */
  static ZMatrixRMaj fill(
      Unknowns unknowns, double k, MomentSource moments, SeriesImpedance[] series) {
    MomentMatrix fill =
        new MomentMatrix(unknowns, new MomentBlocks(unknowns.mesh(), k, moments, series));
    int n = fill.mesh.size();
    for (int i = 0; i < n; i++) {
      for (int j = i; j < n; j++) {
        fill.blocks.compute(i, j);
        fill.scatter(i, j);
      }
    }
    return fill.matrix;
  }

  private void scatter(int i, int j) {
    int pi = mesh.order()[i];
    int pj = mesh.order()[j];
    double[] blockRe = blocks.re();
    double[] blockIm = blocks.im();
    int index = 0;
    for (int f = 0; f <= pi; f++) {
      int[] rows = unknowns.targets(i, f);
      int rowSign = unknowns.sign(i, f);
      for (int g = 0; g <= pj; g++, index++) {
        int sign = rowSign * unknowns.sign(j, g);
        double re = sign * blockRe[index];
        double im = sign * blockIm[index];
        if (i == j && f != g) {
          int mirrored = g * (pj + 1) + f;
          re = 0.5 * sign * (blockRe[index] + blockRe[mirrored]);
          im = 0.5 * sign * (blockIm[index] + blockIm[mirrored]);
        }
        for (int row : rows) {
          for (int column : unknowns.targets(j, g)) {
            add(row, column, re, im);
            if (i != j) {
              add(column, row, re, im);
            }
          }
        }
      }
    }
  }

  private void add(int row, int column, double re, double im) {
    int at = 2 * (row * matrix.numCols + column);
    matrix.data[at] += re;
    matrix.data[at + 1] += im;
  }
}
