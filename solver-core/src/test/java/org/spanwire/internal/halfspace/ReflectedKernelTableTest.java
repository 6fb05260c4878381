package org.spanwire.internal.halfspace;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import java.util.Random;
import org.apache.commons.math3.complex.Complex;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

class ReflectedKernelTableTest {

  private static final double WAVENUMBER = 0.1488;

  /**
   * Soil, region in metres at 7.1 MHz, tolerance: general regions, one height (also 0.001 λ),
   * slightly different heights.
   */
  @ParameterizedTest
  @CsvSource({
    "3, 0.0001, 40, 5, 22, 1e-5",
    "13, 0.005, 40, 5, 22, 1e-5",
    "13, 0.005, 40, 5, 22, 1e-7",
    "80, 0.003, 40, 1, 22, 1e-5",
    "70, 5, 40, 5, 22, 1e-5",
    "13, 0, 200, 10, 12, 1e-5",
    "13, 0.005, 40, 20, 20, 1e-5",
    "13, 0.005, 40, 20, 20, 1e-7",
    "80, 0.003, 40, 0.0845, 0.0845, 1e-5",
    "3, 0.0001, 300, 0.4, 0.4, 1e-6",
    "1.001, 0, 40, 0.1, 3, 1e-6",
    "1, 0, 40, 1, 3, 1e-5",
    "1, 1e9, 40, 1, 30, 1e-6"
  })
  void interpolatesWithinItsTolerance(
      double permittivity,
      double conductivity,
      double rhoMax,
      double zetaMin,
      double zetaMax,
      double tolerance) {
    Complex eps = SoilsForTests.at(permittivity, conductivity, 7.1e6);
    ReflectedKernelTable table =
        new ReflectedKernelTable(
            WAVENUMBER, eps, new KernelRegion(rhoMax, zetaMin, zetaMax), tolerance);
    SommerfeldKernel direct =
        new SommerfeldKernel(WAVENUMBER, eps, Math.min(1e-9, 0.01 * tolerance));
    Random random = new Random(7);
    double[] a = new double[8];
    double[] b = new double[8];
    for (int i = 0; i < 250; i++) {
      double rho = i == 0 ? 0 : i == 1 ? rhoMax : rhoMax * Math.pow(random.nextDouble(), 1 + i % 4);
      double zeta =
          i == 0 ? zetaMin : i == 1 ? zetaMax : zetaMin + (zetaMax - zetaMin) * random.nextDouble();
      table.evaluate(rho, zeta, a, 0);
      direct.evaluate(rho, zeta, b, 0);
      for (int k = 0; k < 8; k += 2) {
        double error = Math.hypot(a[k] - b[k], a[k + 1] - b[k + 1]) * Math.hypot(rho, zeta);
        assertThat(error).as("kernel %s at rho %s, zeta %s", k, rho, zeta).isLessThan(tolerance);
      }
    }
  }

  @Test
  void horizontalLookUpWritesTheSameBitsAndNothingElse() {
    ReflectedKernelTable table =
        new ReflectedKernelTable(
            WAVENUMBER, new Complex(13, -12), new KernelRegion(40, 5, 22), 1e-5);
    double[] all = new double[10];
    double[] two = new double[10];
    java.util.Arrays.fill(two, -7);
    table.evaluate(12.3, 17.1, all, 1);
    table.evaluateHorizontal(12.3, 17.1, two, 1);
    assertThat(two).containsExactly(-7, all[1], all[2], -7, -7, all[5], all[6], -7, -7, -7);
  }

  @Test
  void sameInputGivesTheSameBits() {
    KernelRegion region = new KernelRegion(30, 4, 9);
    ReflectedKernelTable first =
        new ReflectedKernelTable(WAVENUMBER, new Complex(13, -12), region, 1e-5);
    ReflectedKernelTable second =
        new ReflectedKernelTable(WAVENUMBER, new Complex(13, -12), region, 1e-5);
    double[] a = new double[8];
    double[] b = new double[8];
    first.evaluate(11.1, 5.5, a, 0);
    second.evaluate(11.1, 5.5, b, 0);
    assertThat(a).containsExactly(b);
  }

  @Test
  void refusesDistancesOutsideItsRegion() {
    ReflectedKernelTable general =
        new ReflectedKernelTable(
            WAVENUMBER, new Complex(13, -12), new KernelRegion(40, 5, 22), 1e-4);
    ReflectedKernelTable oneHeight =
        new ReflectedKernelTable(
            WAVENUMBER, new Complex(13, -12), new KernelRegion(40, 20, 20), 1e-4);
    double[] out = new double[8];
    double[][] outside = {
      {41, 10}, {-1, 10}, {1, 4.9}, {1, 22.1}, {Double.NaN, 10}, {1, Double.NaN}
    };
    for (double[] p : outside) {
      assertThatThrownBy(() -> general.evaluate(p[0], p[1], out, 0))
          .isInstanceOf(IllegalArgumentException.class)
          .hasMessageContaining("outside the table");
    }
    assertThatThrownBy(() -> oneHeight.evaluate(1, 20.1, out, 0))
        .isInstanceOf(IllegalArgumentException.class);
    general.evaluate(40 * (1 + 1e-12), 5 * (1 - 1e-12), out, 0);
    assertThat(out[0]).isNotNaN();
  }

  @Test
  void refusesRegionsAndTolerancesThatMakeNoSense() {
    assertThatThrownBy(() -> new KernelRegion(0, 1, 2))
        .isInstanceOf(IllegalArgumentException.class);
    assertThatThrownBy(() -> new KernelRegion(1, 2, 1))
        .isInstanceOf(IllegalArgumentException.class);
    assertThatThrownBy(
            () -> new ReflectedKernelTable(1, new Complex(3, 0), new KernelRegion(1, 1, 2), 0.1))
        .isInstanceOf(IllegalArgumentException.class)
        .hasMessageContaining("tolerance");
  }
}
