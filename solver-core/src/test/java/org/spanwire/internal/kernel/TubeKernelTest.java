package org.spanwire.internal.kernel;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.util.Random;
import org.apache.commons.math3.analysis.integration.gauss.GaussIntegrator;
import org.apache.commons.math3.analysis.integration.gauss.GaussIntegratorFactory;
import org.junit.jupiter.api.Test;

class TubeKernelTest {

  /** What the class states, of |1/R|: 1e-12, and 1e-10 (kR_max)⁴ close by. */
  private static double stated(double kLargest) {
    return 1e-12 + 1e-10 * Math.pow(kLargest, 4);
  }

  private static final GaussIntegratorFactory RULES = new GaussIntegratorFactory();

  /**
   * Azimuthal mean of exp(−jkR)/R in panels graded toward the closest azimuth: re, im, mean 1/R.
   */
  private static double[] judge(double closest2, double span2, double k) {
    double[] sum = new double[3];
    double from = 0;
    double to = Math.min(Math.PI, Math.sqrt(closest2 / (closest2 + span2)));
    while (from < Math.PI) {
      GaussIntegrator rule = RULES.legendre(24, from, to);
      sum[0] +=
          rule.integrate(phi -> Math.cos(k * r(closest2, span2, phi)) / r(closest2, span2, phi));
      sum[1] -=
          rule.integrate(phi -> Math.sin(k * r(closest2, span2, phi)) / r(closest2, span2, phi));
      sum[2] += rule.integrate(phi -> 1 / r(closest2, span2, phi));
      from = to;
      to = Math.min(Math.PI, 2 * to);
    }
    for (int i = 0; i < 3; i++) {
      sum[i] /= Math.PI;
    }
    return sum;
  }

  private static double r(double closest2, double span2, double phi) {
    double sine = Math.sin(0.5 * phi);
    return Math.sqrt(closest2 + span2 * sine * sine);
  }

  private static void check(double closest2, double span2, double k, double tolerance) {
    double[] out = new double[2];
    TubeKernel.evaluate(closest2, span2, new double[] {k}, out);
    double[] expected = judge(closest2, span2, k);
    assertThat(Math.hypot(out[0] - expected[0], out[1] - expected[1]) / expected[2])
        .as("closest² %g, span² %g, k %g", closest2, span2, k)
        .isLessThan(tolerance);
  }

  @Test
  void agreesWithQuadratureInAzimuthOverAllBranches() {
    Random random = new Random(20240611);
    for (int i = 0; i < 2000; i++) {
      double span2 = Math.pow(10, -8 + 6 * random.nextDouble());
      double closest2 = span2 * Math.pow(10, -14 + 24 * random.nextDouble());
      double k = 2 * random.nextDouble() / Math.sqrt(closest2 + span2);
      check(closest2, span2, k, stated(k * Math.sqrt(closest2 + span2)));
    }
  }

  /**
   * Many wavelengths away, the radius still small against the wavelength. There a single point
   * serves, which leaves out the mean of the squared phase (k span²/4R)²/4.
   */
  @Test
  void agreesWithQuadratureFarAway() {
    Random random = new Random(7);
    for (int i = 0; i < 500; i++) {
      double radius = 1e-3;
      double k = Math.pow(10, -4 + 4 * random.nextDouble()) * 0.06 / radius;
      double u = radius * Math.pow(10, -1 + 7 * random.nextDouble());
      if (k * u < 1000) {
        double phase = k * radius * radius / u;
        check(u * u, 4 * radius * radius, k, 1e-12 + 0.3 * phase * phase);
      }
    }
  }

  /** Close to the ring 1/R averages to (1/πa) ln(8a/u), R to 4a/π (expand K and E for m → 1). */
  @Test
  void hasTheLogarithmicLimit() {
    double a = 1e-3;
    double k = 10;
    double[] out = new double[2];
    for (double u = 1e-4 * a; u > 1e-12 * a; u *= 0.1) {
      TubeKernel.evaluate(u * u, 4 * a * a, new double[] {k}, out);
      double leading = Math.log(8 * a / u) / (Math.PI * a);
      assertThat(out[0] / leading).isCloseTo(1, within((k * a) * (k * a) + 1e-8));
      assertThat(out[1] / -k).isCloseTo(1, within((k * a) * (k * a)));
    }
  }

  @Test
  void isContinuousAcrossItsBranches() {
    double mean = 1e-4;
    double[] below = new double[2];
    double[] above = new double[2];
    for (double ratio : new double[] {1e-7, 3e-4, 1.5e-2, 0.11}) {
      for (double kr : new double[] {0, 0.3, 2}) {
        evaluateAtRatio(mean, ratio * (1 - 1e-13), kr, below);
        evaluateAtRatio(mean, ratio * (1 + 1e-13), kr, above);
        double scale = 1 / Math.sqrt(mean);
        assertThat(above[0]).isCloseTo(below[0], within(1e-11 * scale));
        assertThat(above[1]).isCloseTo(below[1], within(1e-11 * scale));
      }
    }
  }

  private static void evaluateAtRatio(double mean, double ratio, double kr, double[] out) {
    double span2 = 4 * mean * ratio;
    TubeKernel.evaluate(mean - 0.5 * span2, span2, new double[] {kr / Math.sqrt(mean)}, out);
  }

  @Test
  void withoutSpanItIsTheKernelOfAPoint() {
    double[] out = new double[2];
    TubeKernel.evaluate(4, 0, new double[] {0.7}, out);
    assertThat(out[0]).isEqualTo(Math.cos(1.4) / 2);
    assertThat(out[1]).isEqualTo(-Math.sin(1.4) / 2);
  }
}
