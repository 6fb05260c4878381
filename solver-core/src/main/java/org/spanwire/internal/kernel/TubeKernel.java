package org.spanwire.internal.kernel;

import java.util.Arrays;
import org.spanwire.internal.math.EllipticIntegrals;
import org.spanwire.internal.math.GaussLegendre;

/**
 * Mean over an azimuth φ of exp(−jkR)/R with R² = c + s·sin²(φ/2): the kernel between two rings
 * whose planes are parallel and whose centres lie on one axis, c = u² + (a − b)², s = 4ab for radii
 * a, b and axial distance u. This is the exact kernel of a straight tube with a current that does
 * not depend on azimuth (Schelkunoff 1952; Bruno and Haslam, SIAM J. Sci. Comput. 29, 2007).
 *
 * <p>Close by, the terms 1/R and R of the power series in kR are averaged in closed form,
 * (2/π)K/R_max and (2/π)E·R_max, and the smooth rest by a Gauss rule. Away, the midpoint rule in φ
 * converges like (s/4c)^(2N). Both are good to 1e-12 of |1/R|, plus close by 1e-10 (kR_max)⁴, which
 * counts for radii above a fortieth of the wavelength, and away (k s/8R)² from the turning phase.
 */
public final class TubeKernel {

  private static final double[] SIN2_REST = new double[12];
  private static final double[] WEIGHT_REST = new double[12];
  private static final double[][] SIN2_MIDPOINT = new double[5][];

  static {
    GaussLegendre rule = GaussLegendre.of(12);
    for (int i = 0; i < 12; i++) {
      double sine = Math.sin(0.25 * Math.PI * (1 + rule.node(i)));
      SIN2_REST[i] = sine * sine;
      WEIGHT_REST[i] = 0.5 * rule.weight(i);
    }
    for (int level = 0; level < SIN2_MIDPOINT.length; level++) {
      int n = 1 << level;
      SIN2_MIDPOINT[level] = new double[n];
      for (int i = 0; i < n; i++) {
        double sine = Math.sin(0.5 * Math.PI * (i + 0.5) / n);
        SIN2_MIDPOINT[level][i] = sine * sine;
      }
    }
  }

  private TubeKernel() {}

  /**
   * Writes the mean of exp(−jkR)/R, in 1/m, for every wavenumber into out, real and imaginary parts
   * in turn.
   *
   * @param closest2 smallest R² in m², positive
   * @param span2 largest R² less the smallest, in m², not negative
   * @param k wavenumbers in rad/m
   */
  public static void evaluate(double closest2, double span2, double[] k, double[] out) {
    double mean = closest2 + 0.5 * span2;
    double ratio = 0.25 * span2 / mean;
    if (ratio < 1e-7) {
      double r = Math.sqrt(mean);
      double inverse = 1 / r;
      for (int c = 0; c < k.length; c++) {
        out[2 * c] = Math.cos(k[c] * r) * inverse;
        out[2 * c + 1] = -Math.sin(k[c] * r) * inverse;
      }
    } else if (ratio < 3e-4) {
      midpoint(closest2, span2, k, SIN2_MIDPOINT[1], out);
    } else if (ratio < 1.5e-2) {
      midpoint(closest2, span2, k, SIN2_MIDPOINT[2], out);
    } else if (ratio < 0.11) {
      midpoint(closest2, span2, k, SIN2_MIDPOINT[3], out);
    } else {
      near(closest2, span2, k, out);
    }
  }

  private static void midpoint(
      double closest2, double span2, double[] k, double[] sin2, double[] out) {
    Arrays.fill(out, 0, 2 * k.length, 0);
    for (double value : sin2) {
      double r = Math.sqrt(closest2 + span2 * value);
      double inverse = 1 / (r * sin2.length);
      for (int c = 0; c < k.length; c++) {
        out[2 * c] += Math.cos(k[c] * r) * inverse;
        out[2 * c + 1] -= Math.sin(k[c] * r) * inverse;
      }
    }
  }

  private static void near(double closest2, double span2, double[] k, double[] out) {
    double largest2 = closest2 + span2;
    double largest = Math.sqrt(largest2);
    double m1 = closest2 / largest2;
    double inverse = 2 / Math.PI * EllipticIntegrals.firstKind(m1) / largest;
    double distance = 2 / Math.PI * EllipticIntegrals.secondKind(m1) * largest;
    for (int c = 0; c < k.length; c++) {
      out[2 * c] = inverse - 0.5 * k[c] * k[c] * distance;
      out[2 * c + 1] = -k[c];
    }
    for (int i = 0; i < SIN2_REST.length; i++) {
      double r = Math.sqrt(closest2 + span2 * SIN2_REST[i]);
      for (int c = 0; c < k.length; c++) {
        addRest(k[c], k[c] * r, WEIGHT_REST[i], out, 2 * c);
      }
    }
  }

  /** Adds what the series leaves of k exp(−jx)/x after its terms in 1/x, 1 and x. */
  private static void addRest(double k, double x, double weight, double[] out, int offset) {
    double x2 = x * x;
    double cosineRest;
    double sineRest;
    if (x < 0.5) {
      cosineRest = x * x2 / 24 * (1 - x2 / 30 * (1 - x2 / 56 * (1 - x2 / 90 * (1 - x2 / 132))));
      sineRest = x2 / 6 * (1 - x2 / 20 * (1 - x2 / 42 * (1 - x2 / 72 * (1 - x2 / 110))));
    } else {
      cosineRest = (Math.cos(x) - 1 + 0.5 * x2) / x;
      sineRest = 1 - Math.sin(x) / x;
    }
    out[offset] += weight * k * cosineRest;
    out[offset + 1] += weight * k * sineRest;
  }
}
