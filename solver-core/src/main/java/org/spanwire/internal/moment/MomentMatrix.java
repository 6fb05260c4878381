package org.spanwire.internal.moment;

import java.util.Arrays;
import org.ejml.data.ZMatrixRMaj;
import org.spanwire.internal.basis.LocalBasis;
import org.spanwire.internal.basis.Unknowns;
import org.spanwire.internal.mesh.Mesh;
import org.spanwire.internal.mesh.Piece;
import org.spanwire.unit.PhysicalConstants;

/**
 * The impedance matrix of the mixed-potential equation tested with its own basis (Harrington 1968,
 * chapter 4; Michalski and Mosig 1997): Z_mn = jωμ0 ∬ f_m f_n u·G_A·u' + (1/jωε0) ∬ f_m' f_n' G_φ +
 * ∫ z_s f_m f_n. Only pairs i ≤ j of pieces are integrated, so that the matrix is symmetric to the
 * last bit.
 */
final class MomentMatrix {

  private final Mesh mesh;
  private final Unknowns unknowns;
  private final double k;
  private final MomentSource moments;
  private final double[][] re;
  private final double[][] im;
  private final double[] blockRe;
  private final double[] blockIm;
  private final ZMatrixRMaj matrix;

  private MomentMatrix(Unknowns unknowns, double k, MomentSource moments) {
    this.unknowns = unknowns;
    this.mesh = unknowns.mesh();
    this.k = k;
    this.moments = moments;
    int size = (mesh.highestOrder() + 1) * (mesh.highestOrder() + 1);
    re = new double[2][size];
    im = new double[2][size];
    blockRe = new double[size];
    blockIm = new double[size];
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
    MomentMatrix fill = new MomentMatrix(unknowns, k, moments);
    int n = fill.mesh.size();
    for (int i = 0; i < n; i++) {
      for (int j = i; j < n; j++) {
        fill.clearBlock(i, j);
        fill.direct(i, j);
        if (moments.reflects()) {
          fill.reflected(i, j);
        }
        if (i == j) {
          fill.series(i, series[i]);
        }
        fill.scatter(i, j);
      }
    }
    return fill.matrix;
  }

  private void clearBlock(int i, int j) {
    int size = (mesh.order()[i] + 1) * (mesh.order()[j] + 1);
    Arrays.fill(blockRe, 0, size, 0);
    Arrays.fill(blockIm, 0, size, 0);
  }

  private void direct(int i, int j) {
    Piece a = mesh.pieces().get(i);
    Piece b = mesh.pieces().get(j);
    moments.direct(i, j, re[0], im[0]);
    double cosine = a.ux() * b.ux() + a.uy() * b.uy() + a.uz() * b.uz();
    addVector(i, j, cosine, re[0], im[0]);
    addScalar(i, j, re[0], im[0]);
  }

  private void reflected(int i, int j) {
    moments.reflected(i, j, re, im);
    addVector(i, j, 1, re[0], im[0]);
    addScalar(i, j, re[1], im[1]);
  }

  /** Adds jωμ0/4π times the moments of local functions. */
  private void addVector(int i, int j, double factor, double[] momentsRe, double[] momentsIm) {
    double scale = factor * k * PhysicalConstants.IMPEDANCE_OF_FREE_SPACE / (4 * Math.PI);
    int pi = mesh.order()[i];
    int pj = mesh.order()[j];
    int width = pj + 1;
    int index = 0;
    for (int f = 0; f <= pi; f++) {
      int lowRow = LocalBasis.low(f) * width;
      int highRow = LocalBasis.high(f) * width;
      double lowF = LocalBasis.lowFactor(f);
      double highF = LocalBasis.highFactor(f);
      for (int g = 0; g <= pj; g++, index++) {
        int low = LocalBasis.low(g);
        int high = LocalBasis.high(g);
        double lowG = LocalBasis.lowFactor(g);
        double highG = LocalBasis.highFactor(g);
        double sumRe =
            lowF * (lowG * momentsRe[lowRow + low] + highG * momentsRe[lowRow + high])
                + highF * (lowG * momentsRe[highRow + low] + highG * momentsRe[highRow + high]);
        double sumIm =
            lowF * (lowG * momentsIm[lowRow + low] + highG * momentsIm[lowRow + high])
                + highF * (lowG * momentsIm[highRow + low] + highG * momentsIm[highRow + high]);
        blockRe[index] -= scale * sumIm;
        blockIm[index] += scale * sumRe;
      }
    }
  }

  /** Adds 1/(jωε0 4π) times the moments of derivatives. */
  private void addScalar(int i, int j, double[] momentsRe, double[] momentsIm) {
    double scale =
        PhysicalConstants.IMPEDANCE_OF_FREE_SPACE
            / (4 * Math.PI * k)
            * 4
            / (mesh.pieces().get(i).length() * mesh.pieces().get(j).length());
    int pi = mesh.order()[i];
    int pj = mesh.order()[j];
    int width = pj + 1;
    int index = 0;
    for (int f = 0; f <= pi; f++) {
      double rowFactor = scale * LocalBasis.derivativeFactor(f);
      int row = LocalBasis.derivativeDegree(f) * width;
      for (int g = 0; g <= pj; g++, index++) {
        double weight = rowFactor * LocalBasis.derivativeFactor(g);
        int at = row + LocalBasis.derivativeDegree(g);
        blockRe[index] += weight * momentsIm[at];
        blockIm[index] -= weight * momentsRe[at];
      }
    }
  }

  private void series(int i, SeriesImpedance z) {
    int p = mesh.order()[i];
    double h = mesh.pieces().get(i).length();
    int index = 0;
    for (int f = 0; f <= p; f++) {
      for (int g = 0; g <= p; g++, index++) {
        double along = 0.5 * h * SeriesImpedance.product(f, g);
        double across = 2 / h * SeriesImpedance.derivativeProduct(f, g);
        blockRe[index] += z.currentRe() * along + z.chargeRe() * across;
        blockIm[index] += z.currentIm() * along + z.chargeIm() * across;
      }
    }
  }

  private void scatter(int i, int j) {
    int pi = mesh.order()[i];
    int pj = mesh.order()[j];
    double[] data = matrix.data;
    int size = matrix.numCols;
    int index = 0;
    for (int f = 0; f <= pi; f++) {
      for (int g = 0; g <= pj; g++, index++) {
        int sign = unknowns.sign(i, f) * unknowns.sign(j, g);
        double re = sign * blockRe[index];
        double im = sign * blockIm[index];
        if (i == j && f != g) {
          int mirrored = g * (pj + 1) + f;
          re = 0.5 * sign * (blockRe[index] + blockRe[mirrored]);
          im = 0.5 * sign * (blockIm[index] + blockIm[mirrored]);
        }
        for (int row : unknowns.targets(i, f)) {
          for (int column : unknowns.targets(j, g)) {
            int at = 2 * (row * size + column);
            data[at] += re;
            data[at + 1] += im;
            if (i != j) {
              at = 2 * (column * size + row);
              data[at] += re;
              data[at + 1] += im;
            }
          }
        }
      }
    }
  }
}
