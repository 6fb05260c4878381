package org.spanwire.internal.halfspace;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.assertj.core.api.Assertions.within;

import org.apache.commons.math3.complex.Complex;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

/** The kernels' derivatives against difference quotients of the kernels themselves. */
class ReflectedFieldKernelTest {

  private static final double K0 = 0.15;

  private static Complex at(double[] values, int position) {
    return new Complex(values[position], values[position + 1]);
  }

  /** Central difference of fourth order of a potential kernel. */
  private static Complex slope(
      SommerfeldKernel kernel, double rho, double zeta, int position, boolean across, double h) {
    Complex sum = Complex.ZERO;
    double[] weight = {1, -8, 8, -1};
    double[] shift = {-2, -1, 1, 2};
    for (int i = 0; i < 4; i++) {
      double[] out = new double[ReflectedKernel.VALUES];
      double step = shift[i] * h;
      kernel.evaluate(rho + (across ? step : 0), zeta + (across ? 0 : step), out, 0);
      sum = sum.add(at(out, position).multiply(weight[i] / (12 * h)));
    }
    return sum;
  }

  @ParameterizedTest
  @CsvSource({
    "13, -12, 2, 5",
    "13, -12, 20, 3",
    "3, 0, 30, 1",
    "70, -12000, 5, 0.4",
    "4, -1, 900, 2"
  })
  void derivatives(double epsilon, double loss, double rho, double zeta) {
    Complex soil = new Complex(epsilon, loss);
    SommerfeldKernel potentials = new SommerfeldKernel(K0, soil, 1e-12);
    double[] out = new double[ReflectedFieldKernel.VALUES];
    new ReflectedFieldKernel(K0, soil, 1e-11).evaluate(rho, zeta, out);
    double[] kernels = new double[ReflectedKernel.VALUES];
    potentials.evaluate(rho, zeta, kernels, 0);
    double distance = Math.hypot(rho, zeta);
    double h = 0.02 * Math.min(zeta, 1 / K0);
    double limit = 1e-6 * (K0 + 1 / distance) / distance;
    Complex cross = at(kernels, ReflectedKernel.CROSS);
    check(out, ReflectedFieldKernel.HORIZONTAL, at(kernels, ReflectedKernel.HORIZONTAL), limit);
    check(out, ReflectedFieldKernel.VERTICAL, at(kernels, ReflectedKernel.VERTICAL), limit);
    check(out, ReflectedFieldKernel.CROSS_OVER_RHO, cross.divide(rho), limit);
    Complex crossSlope = slope(potentials, rho, zeta, ReflectedKernel.CROSS, true, h);
    check(out, ReflectedFieldKernel.CROSS_SUM, crossSlope.add(cross.divide(rho)), limit);
    int scalar = ReflectedKernel.SCALAR;
    int horizontal = ReflectedKernel.HORIZONTAL;
    check(
        out,
        ReflectedFieldKernel.SCALAR_ZETA,
        slope(potentials, rho, zeta, scalar, false, h),
        limit);
    check(
        out, ReflectedFieldKernel.SCALAR_RHO, slope(potentials, rho, zeta, scalar, true, h), limit);
    check(
        out,
        ReflectedFieldKernel.HORIZONTAL_ZETA,
        slope(potentials, rho, zeta, horizontal, false, h),
        limit);
    check(
        out,
        ReflectedFieldKernel.HORIZONTAL_RHO,
        slope(potentials, rho, zeta, horizontal, true, h),
        limit);
    Complex curl =
        slope(potentials, rho, zeta, ReflectedKernel.VERTICAL, true, h)
            .add(slope(potentials, rho, zeta, ReflectedKernel.CROSS, false, h));
    check(out, ReflectedFieldKernel.CURL, curl, limit);
  }

  private static void check(double[] out, int position, Complex expected, double limit) {
    assertThat(at(out, position).subtract(expected).abs())
        .as("position %d", position)
        .isLessThan(limit);
  }

  @Test
  void theAxisIsTheLimitOfSmallDistances() {
    ReflectedFieldKernel kernel = new ReflectedFieldKernel(K0, new Complex(13, -5), 1e-10);
    double[] on = new double[ReflectedFieldKernel.VALUES];
    double[] beside = new double[ReflectedFieldKernel.VALUES];
    kernel.evaluate(0, 4, on);
    kernel.evaluate(1e-5, 4, beside);
    for (int i = 0; i < on.length; i++) {
      assertThat(on[i]).isCloseTo(beside[i], within(1e-6));
    }
  }

  @Test
  void soilThatIsAirReflectsNothing() {
    double[] out = new double[ReflectedFieldKernel.VALUES];
    out[3] = 1;
    new ReflectedFieldKernel(K0, Complex.ONE, 1e-9).evaluate(1, 1, out);
    assertThat(out).containsOnly(0);
    assertThatThrownBy(() -> new ReflectedFieldKernel(K0, Complex.ONE, 1e-9).evaluate(1, 0, out))
        .hasMessageContaining("must be positive");
  }
}
