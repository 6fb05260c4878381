package org.spanwire.internal.moment;

import java.util.Arrays;
import org.spanwire.internal.basis.LocalBasis;
import org.spanwire.internal.mesh.Mesh;
import org.spanwire.internal.mesh.Piece;
import org.spanwire.unit.PhysicalConstants;

/**
 * The mixed-potential equation tested with its own basis (Harrington 1968, chapter 4; Michalski and
 * Mosig 1997), for the local functions of two pieces: Z_mn = jωμ0 ∬ f_m f_n u·G_A·u' + (1/jωε0) ∬
 * f_m' f_n' G_φ + ∫ z_s f_m f_n. Holds work space: one instance for each thread.
 */
final class MomentBlocks {

  private final Mesh mesh;
  private final double k;
  private final MomentSource moments;
  private final SeriesImpedance[] series;
  private final double[][] re;
  private final double[][] im;
  private final double[] blockRe;
  private final double[] blockIm;

  /**
   * Prepares.
   *
   * @param k wavenumber in rad/m
   * @param moments at that wavenumber
   * @param series distributed impedances of every piece
   */
  MomentBlocks(Mesh mesh, double k, MomentSource moments, SeriesImpedance[] series) {
    this.mesh = mesh;
    this.k = k;
    this.moments = moments;
    this.series = series;
    int size = (mesh.highestOrder() + 1) * (mesh.highestOrder() + 1);
    re = new double[2][size];
    im = new double[2][size];
    blockRe = new double[size];
    blockIm = new double[size];
  }

  /** Computes the block of two pieces, row by row. */
  void compute(int i, int j) {
    compute(i, j, true, true);
  }

  /**
   * The same in part.
   *
   * @param direct whether with what comes from piece to piece
   * @param reflected whether with what the ground reflects
   */
  void compute(int i, int j, boolean direct, boolean reflected) {
    clearBlock(i, j);
    if (direct) {
      direct(i, j);
    }
    if (reflected && moments.reflects()) {
      reflected(i, j);
    }
    if (i == j) {
      series(i, series[i]);
    }
  }

  /** Real parts of the block, to be read until the next one is computed. */
  double[] re() {
    return blockRe;
  }

  /** Imaginary parts likewise. */
  double[] im() {
    return blockIm;
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
}
