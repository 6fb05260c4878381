package org.spanwire.internal.moment;

import org.spanwire.internal.halfspace.ReflectedKernel;
import org.spanwire.internal.kernel.NodeKernel;
import org.spanwire.internal.mesh.Piece;

/**
 * Reflected kernels over soil between two pieces as two channels: u·G_A·u' and G_φ. The source is
 * given by its image, so the height difference to it is ζ = z + z'.
 */
final class SoilNodeKernel implements NodeKernel {

  private final ReflectedKernel reflected;
  private final double[] value = new double[8];
  private double ax;
  private double ay;
  private double az;
  private double bx;
  private double by;
  private double bz;
  private double horizontal;
  private double vertical;

  SoilNodeKernel(ReflectedKernel reflected) {
    this.reflected = reflected;
  }

  void prepare(Piece a, Piece b) {
    ax = a.ux();
    ay = a.uy();
    az = a.uz();
    bx = b.ux();
    by = b.uy();
    bz = b.uz();
    horizontal = ax * bx + ay * by;
    vertical = az * bz;
  }

  @Override
  public void evaluate(double dx, double dy, double dz, double[] out) {
    double rho = Math.sqrt(dx * dx + dy * dy);
    reflected.evaluate(rho, dz, value, 0);
    double cross = 0;
    if (rho > 0 && (az != 0 || bz != 0)) {
      cross = (az * (bx * dx + by * dy) - bz * (ax * dx + ay * dy)) / rho;
    }
    out[0] = horizontal * value[0] + vertical * value[2] + cross * value[6];
    out[1] = horizontal * value[1] + vertical * value[3] + cross * value[7];
    out[2] = value[4];
    out[3] = value[5];
  }
}
