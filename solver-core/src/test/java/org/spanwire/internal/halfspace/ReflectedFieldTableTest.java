package org.spanwire.internal.halfspace;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import java.util.Random;
import org.apache.commons.math3.complex.Complex;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

/** The table against the quadrature that fills it. */
class ReflectedFieldTableTest {

  private static final double WAVENUMBER = 0.3;

  /** Lossy earth, sea water and dry rock, whose two waves along the surface beat. */
  @ParameterizedTest
  @CsvSource({"13, -12, 1e-3", "80, -5000, 1e-4", "3, -0.1, 1e-4", "5, 0, 1e-3"})
  void keepsItsTolerance(double re, double im, double tolerance) {
    Complex permittivity = new Complex(re, im);
    ReflectedFieldTable table = new ReflectedFieldTable(WAVENUMBER, permittivity, tolerance);
    ReflectedFieldKernel direct = new ReflectedFieldKernel(WAVENUMBER, permittivity, 1e-8);
    Random random = new Random(5);
    double[] found = new double[ReflectedFieldKernel.VALUES];
    double[] expected = new double[ReflectedFieldKernel.VALUES];
    for (int i = 0; i < 200; i++) {
      double rho = i % 10 == 0 ? 0 : Math.pow(10, -1 + 3.5 * random.nextDouble());
      double zeta = Math.pow(10, -1 + 2.5 * random.nextDouble());
      table.evaluate(rho, zeta, found);
      direct.evaluate(rho, zeta, expected);
      double distance = Math.hypot(rho, zeta);
      double kernel = 1 / distance;
      double derivative = (WAVENUMBER + 1 / distance) / distance;
      for (int v = 0; v < found.length; v++) {
        double unit = v < ReflectedFieldKernel.CROSS_OVER_RHO ? kernel : derivative;
        assertThat(Math.abs(found[v] - expected[v]) / unit)
            .as("value %d at rho %s, zeta %s", v, rho, zeta)
            .isLessThan(tolerance);
      }
    }
  }

  @Test
  void refusesWhatItDoesNotCover() {
    ReflectedFieldTable table = new ReflectedFieldTable(WAVENUMBER, new Complex(13, -12), 1e-3);
    double[] out = new double[ReflectedFieldKernel.VALUES];
    assertThatThrownBy(() -> table.evaluate(1, 0, out)).hasMessageContaining("height sum");
    assertThatThrownBy(() -> new ReflectedFieldTable(WAVENUMBER, Complex.ONE, 0.1))
        .hasMessageContaining("tolerance 0.1");
  }
}
