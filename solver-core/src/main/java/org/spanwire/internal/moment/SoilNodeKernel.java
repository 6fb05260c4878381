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
  private final double[] value = new double[ReflectedKernel.VALUES];
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
    if (az == 0 && bz == 0) {
      reflected.evaluateHorizontal(rho, dz, value, 0);
      out[0] = horizontal * value[ReflectedKernel.HORIZONTAL];
      out[1] = horizontal * value[ReflectedKernel.HORIZONTAL + 1];
    } else {
      reflected.evaluate(rho, dz, value, 0);
      double cross = rho > 0 ? (az * (bx * dx + by * dy) - bz * (ax * dx + ay * dy)) / rho : 0;
      for (int part = 0; part < 2; part++) {
        out[part] =
            horizontal * value[ReflectedKernel.HORIZONTAL + part]
                + vertical * value[ReflectedKernel.VERTICAL + part]
                + cross * value[ReflectedKernel.CROSS + part];
      }
    }
    out[2] = value[ReflectedKernel.SCALAR];
    out[3] = value[ReflectedKernel.SCALAR + 1];
  }
}
