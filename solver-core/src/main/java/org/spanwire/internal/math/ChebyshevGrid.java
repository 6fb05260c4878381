package org.spanwire.internal.math;

/**
 * Interpolation of several functions of two variables from their values at Chebyshev points of the
 * first kind in [−1, 1]², by Lagrange's formula in barycentric form (Berrut and Trefethen, SIAM
 * Review 46, 2004, equation 5.3). Immutable.
 */
public final class ChebyshevGrid {

  private final int nx;
  private final int ny;
  private final int values;

  /** Functions to sample. */
  @FunctionalInterface
  public interface Functions {
    /** Writes the functions' values at a point. */
    void at(double x, double y, double[] out);
  }

  /**
   * @param nx number of nodes along x
   * @param ny number of nodes along y
   * @param values number of functions
   */
  public ChebyshevGrid(int nx, int ny, int values) {
    this.nx = nx;
    this.ny = ny;
    this.values = values;
  }

  /** Chebyshev point i of n, from near 1 down to near −1. */
  public static double node(int i, int n) {
    return Math.cos(Math.PI * (i + 0.5) / n);
  }

  /** Values at all nodes, x innermost, the functions of a node together. */
  public double[] sample(Functions functions) {
    double[] data = new double[nx * ny * values];
    double[] at = new double[values];
    for (int j = 0; j < ny; j++) {
      for (int i = 0; i < nx; i++) {
        functions.at(node(i, nx), node(j, ny), at);
        System.arraycopy(at, 0, data, (j * nx + i) * values, values);
      }
    }
    return data;
  }

  /** Writes the interpolated values of all functions at a point. */
  public void interpolate(double x, double y, double[] data, double[] out) {
    double[] alongX = cardinal(x, nx);
    double[] alongY = cardinal(y, ny);
    for (int v = 0; v < values; v++) {
      out[v] = 0;
    }
    int at = 0;
    for (int j = 0; j < ny; j++) {
      for (int i = 0; i < nx; i++) {
        double weight = alongX[i] * alongY[j];
        for (int v = 0; v < values; v++) {
          out[v] += weight * data[at++];
        }
      }
    }
  }

  /** What each node's value counts at a place. */
  private static double[] cardinal(double x, int n) {
    double[] weights = new double[n];
    double sum = 0;
    for (int i = 0; i < n; i++) {
      double angle = Math.PI * (i + 0.5) / n;
      double away = x - Math.cos(angle);
      if (away == 0) {
        double[] only = new double[n];
        only[i] = 1;
        return only;
      }
      weights[i] = (i % 2 == 0 ? 1 : -1) * Math.sin(angle) / away;
      sum += weights[i];
    }
    for (int i = 0; i < n; i++) {
      weights[i] /= sum;
    }
    return weights;
  }
}
