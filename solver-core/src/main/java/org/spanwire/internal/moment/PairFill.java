package org.spanwire.internal.moment;

import java.util.Arrays;
import java.util.List;
import org.spanwire.internal.halfspace.ReflectedKernel;
import org.spanwire.internal.kernel.PairMoments;
import org.spanwire.internal.mesh.Mesh;
import org.spanwire.internal.mesh.Piece;

/**
 * Integrates the moments between the pieces of a mesh, at several wavenumbers in one go: places,
 * distances and polynomials serve all of them. Holds work space: one instance for each thread.
 */
final class PairFill {

  private final Mesh mesh;
  private final PairMoments moments;
  private final double[][] firstWavenumbers;

  /** The largest of the first wavenumbers, by their number. */
  private final double[] largest;

  /**
   * Prepares.
   *
   * @param wavenumbers in rad/m
   * @param accuracy wanted relative accuracy of the integrals
   */
  PairFill(Mesh mesh, double[] wavenumbers, double accuracy) {
    this.mesh = mesh;
    moments = new PairMoments(mesh.highestOrder(), accuracy);
    firstWavenumbers = new double[wavenumbers.length + 1][];
    largest = new double[wavenumbers.length + 1];
    for (int n = 0; n <= wavenumbers.length; n++) {
      firstWavenumbers[n] = Arrays.copyOf(wavenumbers, n);
      largest[n] = n == 0 ? 0 : Math.max(largest[n - 1], wavenumbers[n - 1]);
    }
  }

  /** Moments of exp(−jkR)/R at the first wavenumbers. */
  void direct(int i, int j, int first, double[][] re, double[][] im) {
    moments.direct(
        mesh.pieces().get(i),
        mesh.order()[i],
        mesh.pieces().get(j),
        mesh.order()[j],
        firstWavenumbers[first],
        re,
        im);
  }

  /**
   * Moments of the kernels that perfect ground reflects at the first wavenumbers, u·G_A·u' and G_φ
   * in turn: charge and level current reversed, upright current kept.
   */
  void image(int i, int j, int first, double[][] re, double[][] im) {
    Piece a = mesh.pieces().get(i);
    Piece b = mesh.pieces().get(j).image();
    double[][] halfRe = everySecond(re, first);
    double[][] halfIm = everySecond(im, first);
    moments.direct(a, mesh.order()[i], b, mesh.order()[j], firstWavenumbers[first], halfRe, halfIm);
    double cosine = a.ux() * b.ux() + a.uy() * b.uy() + a.uz() * b.uz();
    int size = (mesh.order()[i] + 1) * (mesh.order()[j] + 1);
    for (int c = 0; c < first; c++) {
      for (int n = 0; n < size; n++) {
        re[2 * c][n] = -cosine * re[2 * c + 1][n];
        im[2 * c][n] = -cosine * im[2 * c + 1][n];
        re[2 * c + 1][n] = -re[2 * c + 1][n];
        im[2 * c + 1][n] = -im[2 * c + 1][n];
      }
    }
  }

  private static double[][] everySecond(double[][] rows, int count) {
    double[][] picked = new double[count][];
    for (int c = 0; c < count; c++) {
      picked[c] = rows[2 * c + 1];
    }
    return picked;
  }

  /** The same over soil, with a kernel for each wavenumber. */
  void soil(int i, int j, List<ReflectedKernel> kernels, double[][] re, double[][] im) {
    Piece a = mesh.pieces().get(i);
    Piece b = mesh.pieces().get(j);
    moments.reflected(
        a,
        mesh.order()[i],
        b,
        mesh.order()[j],
        new SoilNodeKernel(kernels, a, b),
        largest[kernels.size()],
        re,
        im);
  }
}
