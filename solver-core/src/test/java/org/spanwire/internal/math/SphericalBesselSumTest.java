package org.spanwire.internal.math;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import org.apache.commons.math3.complex.Complex;
import org.apache.commons.math3.special.BesselJ;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.ValueSource;

/**
 * Against BesselJ of commons-math (half-integer order, DLMF 10.47.3) and against the integral DLMF
 * 10.54.2.
 */
class SphericalBesselSumTest {

  @ParameterizedTest
  @ValueSource(doubles = {0.02, 0.3, 1, Math.PI, 5, 7.9, 8.1, 20, 60})
  void realSumsAgreeWithBesselFunctionsOfHalfIntegerOrder(double x) {
    for (int n = 0; n <= 12; n++) {
      double expected = Math.sqrt(Math.PI / (2 * x)) * BesselJ.value(n + 0.5, x);
      for (int length = n + 1; length <= 13; length += 6) {
        double[] out = new double[2];
        double[] unit = new double[length];
        unit[n] = 1;
        SphericalBesselSum.real(unit, new double[length], x, out, 0);
        assertThat(out[0])
            .isCloseTo(expected, within(2e-14 * Math.min(1, 1e-2 + Math.abs(expected))));
        assertThat(out[1]).isZero();
        SphericalBesselSum.real(new double[length], unit, -x, out, 0);
        assertThat(out[1]).isCloseTo(n % 2 == 0 ? expected : -expected, within(2e-14));
      }
    }
  }

  @Test
  void smallArgumentsKeepTheirRelativeAccuracy() {
    // DLMF 10.52.1: j_n(x) → xⁿ/(2n+1)!!, next term relative −x²/(2(2n+3)).
    double[] out = new double[2];
    SphericalBesselSum.real(new double[] {0, 0, 0, 1}, new double[4], 1e-5, out, 0);
    assertThat(out[0]).isCloseTo(1e-15 / 105 * (1 - 1e-10 / 18), within(1e-30));
    SphericalBesselSum.real(new double[] {3, 1, 1}, new double[3], 0, out, 0);
    assertThat(out[0]).isEqualTo(3);
  }

  @Test
  void seriesAndRecurrenceMeet() {
    double[] re = {1, -2, 0.5, 3, 1, 1, 1};
    double[] below = new double[4];
    SphericalBesselSum.real(re, re, Math.nextDown(0.01), below, 0);
    SphericalBesselSum.real(re, re, 0.01, below, 2);
    assertThat(below[0]).isCloseTo(below[2], within(1e-15));
    SphericalBesselSum.scaledComplex(re, re, 0.00599999999, 0.00799999999, below, 0);
    SphericalBesselSum.scaledComplex(re, re, 0.00600000001, 0.00800000001, below, 2);
    assertThat(below[0]).isCloseTo(below[2], within(1e-9));
  }

  @ParameterizedTest
  @CsvSource({
    "0.003, 0.004",
    "0.5, 0.2",
    "0, 1",
    "-2, -3",
    "3.1415926535, 0.001",
    "10, 0.5",
    "0.4, 12",
    "25, 30",
    "-1, 60"
  })
  void complexSumsAgreeWithTheIntegralOfLegendrePolynomials(double x, double y) {
    double[] re = {1, -0.4, 0.3, 0.2, -0.1, 0.7};
    double[] im = {0.2, 0.1, -0.6, 0.5, 0.3, -0.2};
    Complex expected = Complex.ZERO;
    GaussLegendre rule = GaussLegendre.of(60);
    for (int i = 0; i < rule.size(); i++) {
      double t = rule.node(i);
      Complex wave = new Complex(-y * t - Math.abs(y), x * t).exp().multiply(0.5 * rule.weight(i));
      double before = 0;
      double p = 1;
      for (int n = 0; n < re.length; n++) {
        // 2 jⁿ j_n(x) = ∫ P_n(t) e^{jxt} dt
        expected =
            expected.add(
                new Complex(re[n], im[n]).multiply(p).multiply(wave).multiply(Complex.I.pow(-n)));
        double after = ((2 * n + 1) * t * p - n * before) / (n + 1);
        before = p;
        p = after;
      }
    }
    double[] out = new double[2];
    SphericalBesselSum.scaledComplex(re, im, x, y, out, 0);
    assertThat(out[0]).isCloseTo(expected.getReal(), within(2e-14));
    assertThat(out[1]).isCloseTo(expected.getImaginary(), within(2e-14));
  }

  @Test
  void hugeImaginaryArgumentsStayFinite() {
    double[] out = new double[2];
    // e^{−y} i_0(y) → 1/(2y), DLMF 10.52.5
    SphericalBesselSum.scaledComplex(new double[] {1}, new double[1], 0, 5000, out, 0);
    assertThat(out[0]).isCloseTo(1e-4, within(1e-15));
  }
}
