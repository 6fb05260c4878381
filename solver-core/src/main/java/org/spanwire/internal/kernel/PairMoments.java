package org.spanwire.internal.kernel;

import org.spanwire.internal.mesh.Piece;

/**
 * Moments of a Green's function between two pieces of wire, M_ij = ∬ P_i(t) P_j(t') g ds ds', row
 * by row in i, as real and imaginary parts. Holds work space: one instance for each thread.
 */
public final class PairMoments {

  private final CoaxialMoments coaxial;
  private final TensorMoments tensor;
  private final DirectKernel direct = new DirectKernel();
  private final TubePairKernel neighbours;

  /**
   * Prepares work space.
   *
   * @param largestOrder highest Legendre degree that will be asked for
   * @param accuracy wanted relative accuracy of the integrals
   */
  public PairMoments(int largestOrder, double accuracy) {
    coaxial = new CoaxialMoments(largestOrder);
    tensor = new TensorMoments(largestOrder, accuracy);
    neighbours = new TubePairKernel(direct, accuracy);
  }

  /**
   * Moments of exp(−jkR)/R in free space, averaged around the wires.
   *
   * @param a first piece, degrees 0 to pa
   * @param b second piece, degrees 0 to pb
   * @param k wavenumbers in rad/m
   * @param re (pa + 1)(pb + 1) values for each wavenumber, overwritten
   * @param im the same for imaginary parts
   */
  public void direct(Piece a, int pa, Piece b, int pb, double[] k, double[][] re, double[][] im) {
    boolean oneLine = CoaxialMoments.coaxial(a, b);
    if (oneLine && coaxial.compute(a, pa, b, pb, k, re, im)) {
      return;
    }
    double largest = k[0];
    for (double each : k) {
      largest = Math.max(largest, each);
    }
    direct.prepare(a, b, k);
    double smoothing2 = direct.smoothing2(a, b);
    if (!oneLine && neighbours.applies(a, b, PieceDistance.squared(a, -1, 1, b, -1, 1))) {
      neighbours.prepare(a, b, k);
      tensor.compute(a, pa, b, pb, neighbours, smoothing2, largest, re, im);
    } else {
      tensor.compute(a, pa, b, pb, direct, smoothing2, largest, re, im);
    }
  }

  /**
   * Moments of kernels that are smooth but for an image of piece b in the plane z = 0.
   *
   * @param kernel evaluates all channels
   * @param k largest wavenumber in rad/m
   * @param re (pa + 1)(pb + 1) values for each channel, overwritten
   * @param im the same for imaginary parts
   */
  public void reflected(
      Piece a, int pa, Piece b, int pb, NodeKernel kernel, double k, double[][] re, double[][] im) {
    tensor.compute(a, pa, b.image(), pb, kernel, 0, k, re, im);
  }
}
