package org.spanwire.internal.kernel;

import org.spanwire.internal.mesh.Piece;

/**
 * exp(−jkR)/R between two thin wires, averaged around both, for one or several wavenumbers.
 *
 * <p>The mean over a circle of radius a about an axis is 1 + (a²/4)∇_⊥² to second order, and ∇_⊥² =
 * −k² − ∂_u² on a solution of the Helmholtz equation. Worked out for both wires this is G at an
 * equivalent distance, R² = d² + a² + b² − (3/2)(a² sin²α + b² sin²β), times 1 − (k²/4)(a² sin²α +
 * b² sin²β), with α, β the angles between the line of centres and the wires. Close to a corner sin²
 * is damped to (d² sin²)/(d² + 2(a² + b²)), so that R² stays positive, and the azimuthal mean with
 * 2ab|u·u'|cos φ is kept, so that a bend which straightens out becomes the exact kernel of a
 * straight tube.
 */
final class DirectKernel implements NodeKernel {

  private double[] k;
  private double a2;
  private double b2;
  private double sum2;
  private double parallel;
  private double ax;
  private double ay;
  private double az;
  private double bx;
  private double by;
  private double bz;

  void prepare(Piece a, Piece b, double... wavenumbers) {
    k = wavenumbers;
    a2 = a.radius() * a.radius();
    b2 = b.radius() * b.radius();
    sum2 = a2 + b2;
    ax = a.ux();
    ay = a.uy();
    az = a.uz();
    bx = b.ux();
    by = b.uy();
    bz = b.uz();
    parallel = 2 * a.radius() * b.radius() * Math.min(1, Math.abs(ax * bx + ay * by + az * bz));
  }

  /** Square of the distance over which the kernel is smoothed where the wires' axes meet. */
  double smoothing2(Piece a, Piece b) {
    return Math.max(sum2 - parallel, 1e-6 * sum2);
  }

  @Override
  public int channels() {
    return k.length;
  }

  @Override
  public void evaluate(double dx, double dy, double dz, double[] out) {
    double d2 = dx * dx + dy * dy + dz * dz;
    double da = dx * ax + dy * ay + dz * az;
    double db = dx * bx + dy * by + dz * bz;
    double sines =
        (a2 * Math.max(0, d2 - da * da) + b2 * Math.max(0, d2 - db * db)) / (d2 + 2 * sum2);
    TubeKernel.evaluate(d2 + sum2 - 1.5 * sines - parallel, 2 * parallel, k, out);
    for (int c = 0; c < k.length; c++) {
      double spread = 1 - 0.25 * k[c] * k[c] * sines;
      out[2 * c] *= spread;
      out[2 * c + 1] *= spread;
    }
  }
}
