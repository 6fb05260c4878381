package org.spanwire.internal.field;

import org.spanwire.internal.math.EllipticIntegrals;
import org.spanwire.internal.math.GaussLegendre;

/**
 * Mean of exp(−jkR)/R around a ring of radius a on the axis of a wire, with its derivatives, R² =
 * u² + ρ² + a² + b² − 2aρ cosφ for an observer at axial distance u and distance ρ from the axis; b
 * smooths the kernel of line currents. Away from the ring the midpoint rule in φ converges like
 * (aρ/R²)^(2N). Close by, 1/R³, 1/R and R of the power series in kR are averaged in closed form by
 * complete elliptic integrals, with ρ − a cosφ = (ρ² − a² − u² − b² + R²)/(2ρ), and the smooth rest
 * by a Gauss rule.
 */
final class RingKernel {

  /** Position of the kernel in the output; real and imaginary part. */
  static final int VALUE = 0;

  /** Position of the derivative with respect to ρ. */
  static final int ACROSS = 2;

  /** Position of the derivative with respect to u. */
  static final int ALONG = 4;

  private static final double[] LARGEST_RATIO = {1e-6, 3e-4, 1.5e-2, 0.11};
  private static final double[][] COSINES = new double[LARGEST_RATIO.length][];
  private static final int REST = 12;
  private static final double[] REST_COSINES = new double[REST];
  private static final double[] REST_WEIGHTS = new double[REST];

  static {
    for (int level = 0; level < COSINES.length; level++) {
      int n = 1 << level;
      COSINES[level] = new double[n];
      for (int i = 0; i < n; i++) {
        COSINES[level][i] = Math.cos(Math.PI * (i + 0.5) / n);
      }
    }
    GaussLegendre rule = GaussLegendre.of(REST);
    for (int i = 0; i < REST; i++) {
      REST_COSINES[i] = Math.cos(0.5 * Math.PI * (1 + rule.node(i)));
      REST_WEIGHTS[i] = 0.5 * rule.weight(i);
    }
  }

  private final double k;
  private final double radius;
  private final double smoothing2;

  /**
   * @param k wavenumber in rad/m
   * @param radius radius a of the ring in metres, 0 for a line
   * @param smoothing2 b² in m²
   */
  RingKernel(double k, double radius, double smoothing2) {
    this.k = k;
    this.radius = radius;
    this.smoothing2 = smoothing2;
  }

  double radius() {
    return radius;
  }

  double smoothing2() {
    return smoothing2;
  }

  /** Writes kernel (1/m) and derivatives (1/m²). */
  void evaluate(double u, double rho, double[] out) {
    double mean = u * u + rho * rho + radius * radius + smoothing2;
    double ratio = radius * rho / mean;
    for (int level = 0; level < COSINES.length; level++) {
      if (ratio < LARGEST_RATIO[level]) {
        midpoint(u, rho, mean, COSINES[level], out);
        return;
      }
    }
    near(u, rho, mean, out);
  }

  private void midpoint(double u, double rho, double mean, double[] cosines, double[] out) {
    double re = 0;
    double im = 0;
    double slopeRe = 0;
    double slopeIm = 0;
    double acrossRe = 0;
    double acrossIm = 0;
    for (double cosine : cosines) {
      double r2 = mean - 2 * radius * rho * cosine;
      double r = Math.sqrt(r2);
      double x = k * r;
      double c = Math.cos(x) / r;
      double s = Math.sin(x) / r;
      re += c;
      im -= s;
      // G'/R = −(1 + jx) e^{−jx}/R³
      double hRe = -(c + x * s) / r2;
      double hIm = (s - x * c) / r2;
      slopeRe += hRe;
      slopeIm += hIm;
      double distance = rho - radius * cosine;
      acrossRe += hRe * distance;
      acrossIm += hIm * distance;
    }
    double share = 1.0 / cosines.length;
    out[VALUE] = re * share;
    out[VALUE + 1] = im * share;
    out[ACROSS] = acrossRe * share;
    out[ACROSS + 1] = acrossIm * share;
    out[ALONG] = u * slopeRe * share;
    out[ALONG + 1] = u * slopeIm * share;
  }

  private void near(double u, double rho, double mean, double[] out) {
    double gap = rho - radius;
    double least2 = u * u + gap * gap + smoothing2;
    double largest2 = u * u + (rho + radius) * (rho + radius) + smoothing2;
    double largest = Math.sqrt(largest2);
    double m1 = least2 / largest2;
    double first = EllipticIntegrals.firstKind(m1);
    double second = EllipticIntegrals.secondKind(m1);
    double twoOverPi = 2 / Math.PI;
    double inverse = twoOverPi * first / largest;
    double inverseCube = twoOverPi * second / (largest * least2);
    double distance = twoOverPi * second * largest;
    double offset = gap * (rho + radius) - u * u - smoothing2;
    double half = 0.5 * k * k;
    double re = inverse - half * distance;
    double im = -k;
    double acrossRe =
        -(offset * inverseCube + inverse + half * (offset * inverse + distance)) / (2 * rho);
    double acrossIm = 0;
    double slopeRe = -inverseCube - half * inverse;
    double slopeIm = 0;
    for (int i = 0; i < REST; i++) {
      double x = k * Math.sqrt(mean - 2 * radius * rho * REST_COSINES[i]);
      double weight = REST_WEIGHTS[i];
      re += weight * k * cosineRest(x);
      im += weight * k * sineRest(x);
      double hRe = weight * k * k * k * slopeRestReal(x);
      double hIm = weight * k * k * k * slopeRestImaginary(x);
      slopeRe += hRe;
      slopeIm += hIm;
      double across = rho - radius * REST_COSINES[i];
      acrossRe += across * hRe;
      acrossIm += across * hIm;
    }
    out[VALUE] = re;
    out[VALUE + 1] = im;
    out[ACROSS] = acrossRe;
    out[ACROSS + 1] = acrossIm;
    out[ALONG] = u * slopeRe;
    out[ALONG + 1] = u * slopeIm;
  }

  /** (cos x − 1 + x²/2)/x. */
  private static double cosineRest(double x) {
    double x2 = x * x;
    return x < 0.5
        ? x * x2 / 24 * (1 - x2 / 30 * (1 - x2 / 56 * (1 - x2 / 90 * (1 - x2 / 132))))
        : (Math.cos(x) - 1 + 0.5 * x2) / x;
  }

  /** 1 − sin x/x. */
  private static double sineRest(double x) {
    double x2 = x * x;
    return x < 0.5
        ? x2 / 6 * (1 - x2 / 20 * (1 - x2 / 42 * (1 - x2 / 72 * (1 - x2 / 110))))
        : 1 - Math.sin(x) / x;
  }

  /** (1 + x²/2 − cos x − x sin x)/x³. */
  private static double slopeRestReal(double x) {
    double x2 = x * x;
    return x < 0.5
        ? x * (1.0 / 8 - x2 * (1.0 / 144 - x2 * (1.0 / 5760 - x2 * (1.0 / 403200))))
        : (1 + 0.5 * x2 - Math.cos(x) - x * Math.sin(x)) / (x * x2);
  }

  /** (sin x − x cos x)/x³. */
  private static double slopeRestImaginary(double x) {
    double x2 = x * x;
    return x < 0.5
        ? 1.0 / 3 - x2 * (1.0 / 30 - x2 * (1.0 / 840 - x2 * (1.0 / 45360 - x2 / 3991680)))
        : (Math.sin(x) - x * Math.cos(x)) / (x * x2);
  }
}
