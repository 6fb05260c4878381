package org.spanwire.internal.halfspace;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.assertj.core.api.Assertions.within;

import java.util.Random;
import org.apache.commons.math3.complex.Complex;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.aggregator.ArgumentsAccessor;
import org.junit.jupiter.params.provider.CsvFileSource;
import org.junit.jupiter.params.provider.ValueSource;
import org.spanwire.internal.math.VectorQuadrature;

class SommerfeldKernelTest {

  /** Values and their source are in the file. */
  @ParameterizedTest
  @CsvFileSource(resources = "reflected-kernels.csv")
  void agreesWithHighPrecisionQuadrature(ArgumentsAccessor row) {
    double rho = row.getDouble(2);
    double zeta = row.getDouble(3);
    double[] expected = new double[8];
    for (int i = 0; i < 8; i++) {
      expected[i] = row.getDouble(4 + i);
    }
    double[] out = new double[8];
    new SommerfeldKernel(1, new Complex(row.getDouble(0), row.getDouble(1)))
        .evaluate(rho, zeta, out, 0);
    assertThat(difference(out, expected, rho, zeta)).isLessThan(SommerfeldKernel.DEFAULT_TOLERANCE);
  }

  /**
   * Two contours that share nothing but the spectral factors: J0 and J1 on one, Hankel functions on
   * the other.
   */
  @ParameterizedTest
  @ValueSource(doubles = {1.0005, 1.5, 3, 13, 80})
  void verticalPathAndSaddlePathAgree(double permittivity) {
    Random random = new Random(11);
    for (int i = 0; i < 40; i++) {
      double loss = i % 2 == 0 ? 0 : Math.pow(10, -2 + 6 * random.nextDouble());
      double zeta = Math.pow(10, -4 + 5 * random.nextDouble());
      double rho = zeta * (0.3 + 2 * random.nextDouble());
      if (rho * rho > 12 * zeta) {
        continue;
      }
      double distance = Math.hypot(rho, zeta);
      double limit = 1e-10 / distance;
      ReflectionSpectrum spectrum = new ReflectionSpectrum(permittivity, -loss);
      double[] vertical = new double[8];
      double[] saddle = new double[8];
      new VerticalPath(spectrum, new PotentialKernels())
          .add(rho, zeta, limit, 26, new VectorQuadrature(8), vertical);
      new SaddlePath(spectrum, new PotentialKernels())
          .add(rho, zeta, limit, 26, new VectorQuadrature(8), saddle);
      turn(vertical, zeta);
      turn(saddle, distance);
      assertThat(difference(vertical, saddle, rho, zeta))
          .as("rho %s zeta %s loss %s", rho, zeta, loss)
          .isLessThan(3e-9);
    }
  }

  /**
   * Wires near the surface seen from far, up to k0R' = 1000, where only the saddle path is at hand:
   * two tolerances.
   */
  @ParameterizedTest
  @ValueSource(doubles = {3, 13, 80})
  void toleranceIsKeptAtGrazingIncidence(double permittivity) {
    Random random = new Random(12);
    for (int i = 0; i < 60; i++) {
      double loss = i % 3 == 0 ? 0 : Math.pow(10, -2 + 7 * random.nextDouble());
      double rho = Math.pow(10, -4 + 7 * random.nextDouble());
      double zeta = rho * Math.pow(10, -0.5 - 4 * random.nextDouble());
      Complex soil = new Complex(permittivity, -loss);
      double[] coarse = new double[8];
      double[] fine = new double[8];
      new SommerfeldKernel(1, soil, 1e-7).evaluate(rho, zeta, coarse, 0);
      new SommerfeldKernel(1, soil, 1e-11).evaluate(rho, zeta, fine, 0);
      assertThat(difference(coarse, fine, rho, zeta))
          .as("rho %s zeta %s loss %s", rho, zeta, loss)
          .isLessThan(1e-7);
    }
  }

  /**
   * To first order in 1/√ε the kernels of a good conductor differ from those of perfect ground by
   * 1/√|ε|.
   */
  @ParameterizedTest
  @ValueSource(doubles = {1e4, 1e8, 1e14, 1e17})
  void tendsToPerfectGround(double loss) {
    SommerfeldKernel soil = new SommerfeldKernel(1, new Complex(1, -loss));
    PerfectGroundKernel perfect = new PerfectGroundKernel(1);
    double[] a = new double[8];
    double[] b = new double[8];
    for (double[] p : new double[][] {{0, 0.1}, {0.3, 0.5}, {2, 0.7}, {10, 1}, {100, 3}}) {
      soil.evaluate(p[0], p[1], a, 0);
      perfect.evaluate(p[0], p[1], b, 0);
      double distance = Math.hypot(p[0], p[1]);
      double bound = (10 + 3 * Math.max(distance, 1 / distance)) / Math.sqrt(loss) + 1e-9;
      assertThat(difference(a, b, p[0], p[1])).isLessThan(bound);
    }
  }

  @Test
  void vanishesInFreeSpaceAndInProportionToTheContrast() {
    double[] none = new double[8];
    double[] small = new double[8];
    double[] smaller = new double[8];
    for (double[] p : new double[][] {{0, 0.1}, {0.4, 0.5}, {2, 0.3}, {30, 60}}) {
      new SommerfeldKernel(1, Complex.ONE).evaluate(p[0], p[1], none, 0);
      for (double value : none) {
        assertThat(value).isZero();
      }
      new SommerfeldKernel(1, new Complex(1 + 1e-6, 0), 1e-12).evaluate(p[0], p[1], small, 0);
      new SommerfeldKernel(1, new Complex(1 + 0.5e-6, 0), 1e-12).evaluate(p[0], p[1], smaller, 0);
      double distance = Math.hypot(p[0], p[1]);
      for (int i = 0; i < 8; i++) {
        assertThat(Math.abs(small[i] - 2 * smaller[i]) * distance).isLessThan(2e-9);
        assertThat(Math.abs(small[i]) * distance).isLessThan(1e-4);
      }
    }
  }

  /**
   * Close to the image the kernels are those of statics: potential −K/R', vertical current +2K/R',
   * K = (ε − 1)/(ε + 1).
   */
  @Test
  void tendsToTheStaticImages() {
    Complex eps = new Complex(13, -12.66);
    Complex image = eps.subtract(1).divide(eps.add(1));
    double[] out = new double[8];
    for (double[] p : new double[][] {{0, 1e-5}, {1e-5, 2e-5}, {2e-5, 1e-6}}) {
      new SommerfeldKernel(1, eps).evaluate(p[0], p[1], out, 0);
      double distance = Math.hypot(p[0], p[1]);
      assertThat(Math.hypot(out[0], out[1]) * distance).isLessThan(3e-4);
      assertThat(new Complex(out[4], out[5]).multiply(distance).add(image).abs()).isLessThan(1e-3);
      assertThat(new Complex(out[2], out[3]).multiply(distance).subtract(image.multiply(2)).abs())
          .isLessThan(1e-3);
    }
  }

  @Test
  void kernelsScaleWithTheWavenumber() {
    Complex eps = new Complex(13, -5);
    double[] a = new double[8];
    double[] b = new double[9];
    new SommerfeldKernel(1, eps).evaluate(1.5, 0.4, a, 0);
    new SommerfeldKernel(0.25, eps).evaluate(6, 1.6, b, 1);
    for (int i = 0; i < 8; i++) {
      assertThat(4 * b[i + 1]).isCloseTo(a[i], within(1e-14));
    }
  }

  @Test
  void refusesWhatIsOutOfRange() {
    assertThatThrownBy(() -> new SommerfeldKernel(1, new Complex(0.9, 0)))
        .isInstanceOf(IllegalArgumentException.class)
        .hasMessageContaining("real part of at least 1");
    assertThatThrownBy(() -> new SommerfeldKernel(1, new Complex(3, 0.1)))
        .isInstanceOf(IllegalArgumentException.class);
    assertThatThrownBy(() -> new SommerfeldKernel(Double.NaN, new Complex(3, 0)))
        .isInstanceOf(IllegalArgumentException.class);
    SommerfeldKernel kernel = new SommerfeldKernel(1, new Complex(3, 0));
    assertThatThrownBy(() -> kernel.evaluate(1, 0, new double[8], 0))
        .isInstanceOf(IllegalArgumentException.class)
        .hasMessageContaining("height sum");
  }

  /** Turns kernels that carry e^{jr} back. */
  private static void turn(double[] values, double r) {
    for (int i = 0; i < 8; i += 2) {
      double re = values[i] * Math.cos(r) + values[i + 1] * Math.sin(r);
      values[i + 1] = values[i + 1] * Math.cos(r) - values[i] * Math.sin(r);
      values[i] = re;
    }
  }

  /** Largest difference of a kernel relative to 1/R'. */
  private static double difference(double[] a, double[] b, double rho, double zeta) {
    double worst = 0;
    for (int i = 0; i < 8; i += 2) {
      worst = Math.max(worst, Math.hypot(a[i] - b[i], a[i + 1] - b[i + 1]));
    }
    return worst * Math.hypot(rho, zeta);
  }
}
