package org.spanwire.internal.moment;

import java.util.List;
import org.spanwire.internal.halfspace.ReflectedKernel;
import org.spanwire.internal.kernel.NodeKernel;
import org.spanwire.internal.mesh.Piece;

/**
 * Reflected kernels over soil between two pieces as two channels for each of several wavenumbers:
 * u·G_A·u' and G_φ. The source is given by its image, so the height difference to it is ζ = z + z'.
 */
final class SoilNodeKernel implements NodeKernel {

  private final List<ReflectedKernel> kernels;
  private final double[] value = new double[ReflectedKernel.VALUES];
  private final double ax;
  private final double ay;
  private final double az;
  private final double bx;
  private final double by;
  private final double bz;
  private final double horizontal;
  private final double vertical;

  SoilNodeKernel(List<ReflectedKernel> kernels, Piece a, Piece b) {
    this.kernels = kernels;
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
  public int channels() {
    return 2 * kernels.size();
  }

  @Override
  public void evaluate(double dx, double dy, double dz, double[] out) {
    double rho = Math.sqrt(dx * dx + dy * dy);
    boolean level = az == 0 && bz == 0;
    double cross = rho > 0 ? (az * (bx * dx + by * dy) - bz * (ax * dx + ay * dy)) / rho : 0;
    for (int c = 0; c < kernels.size(); c++) {
      if (level) {
        kernels.get(c).evaluateHorizontal(rho, dz, value, 0);
      } else {
        kernels.get(c).evaluate(rho, dz, value, 0);
      }
      for (int part = 0; part < 2; part++) {
        double vector = horizontal * value[ReflectedKernel.HORIZONTAL + part];
        if (!level) {
          vector +=
              vertical * value[ReflectedKernel.VERTICAL + part]
                  + cross * value[ReflectedKernel.CROSS + part];
        }
        out[4 * c + part] = vector;
        out[4 * c + 2 + part] = value[ReflectedKernel.SCALAR + part];
      }
    }
  }
}
