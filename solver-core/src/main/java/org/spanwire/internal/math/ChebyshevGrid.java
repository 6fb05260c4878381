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
  private final Nodes alongX;
  private final Nodes alongY;

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
    alongX = new Nodes(nx);
    alongY = new Nodes(ny);
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
    double[] weightsX = alongX.cardinal(x);
    double[] weightsY = alongY.cardinal(y);
    for (int v = 0; v < values; v++) {
      out[v] = 0;
    }
    int at = 0;
    for (int j = 0; j < ny; j++) {
      for (int i = 0; i < nx; i++) {
        double weight = weightsX[i] * weightsY[j];
        for (int v = 0; v < values; v++) {
          out[v] += weight * data[at++];
        }
      }
    }
  }

  /** The nodes of one variable, with their barycentric weights. */
  private static final class Nodes {

    private final double[] places;
    private final double[] barycentric;

    Nodes(int n) {
      places = new double[n];
      barycentric = new double[n];
      for (int i = 0; i < n; i++) {
        places[i] = node(i, n);
        barycentric[i] = (i % 2 == 0 ? 1 : -1) * Math.sin(Math.PI * (i + 0.5) / n);
      }
    }

    /** What each node's value counts at a place. */
    double[] cardinal(double x) {
      double[] weights = new double[places.length];
      double sum = 0;
      for (int i = 0; i < weights.length; i++) {
        double away = x - places[i];
        if (away == 0) {
          double[] only = new double[weights.length];
          only[i] = 1;
          return only;
        }
        weights[i] = barycentric[i] / away;
        sum += weights[i];
      }
      for (int i = 0; i < weights.length; i++) {
        weights[i] /= sum;
      }
      return weights;
    }
  }
}
