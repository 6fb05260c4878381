package org.spanwire.internal.math;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import org.junit.jupiter.api.Test;

class LegendrePolynomialsTest {

  /** Closed forms: Abramowitz and Stegun 1964, table 22.9. */
  @Test
  void agreesWithClosedForms() {
    double[] p = new double[8];
    for (double t = -1; t <= 1; t += 0.125) {
      LegendrePolynomials.fill(t, 5, 3, p, 2);
      double t2 = t * t;
      assertThat(p[2]).isEqualTo(3);
      assertThat(p[3]).isEqualTo(3 * t);
      assertThat(p[4]).isCloseTo(1.5 * (3 * t2 - 1), within(1e-15));
      assertThat(p[5]).isCloseTo(1.5 * t * (5 * t2 - 3), within(1e-15));
      assertThat(p[6]).isCloseTo(0.375 * (35 * t2 * t2 - 30 * t2 + 3), within(2e-15));
      assertThat(p[7]).isCloseTo(0.375 * t * (63 * t2 * t2 - 70 * t2 + 15), within(2e-15));
    }
  }

  @Test
  void isOneAtOneAndAlternatesAtMinusOne() {
    double[] p = new double[31];
    LegendrePolynomials.fill(1, 30, 1, p, 0);
    assertThat(p).containsOnly(1.0);
    LegendrePolynomials.fill(-1, 30, 1, p, 0);
    for (int n = 0; n <= 30; n++) {
      assertThat(p[n]).isEqualTo(n % 2 == 0 ? 1.0 : -1.0);
    }
  }

  @Test
  void derivativesAgreeWithClosedForms() {
    double[] p = new double[7];
    for (double t = -1; t <= 1; t += 0.125) {
      LegendrePolynomials.fillDerivatives(t, 5, 2, p, 1);
      double t2 = t * t;
      assertThat(p[1]).isZero();
      assertThat(p[2]).isEqualTo(2);
      assertThat(p[3]).isCloseTo(6 * t, within(1e-14));
      assertThat(p[4]).isCloseTo(15 * t2 - 3, within(1e-14));
      assertThat(p[5]).isCloseTo(t * (35 * t2 - 15), within(1e-14));
      assertThat(p[6]).isCloseTo(0.25 * (315 * t2 * t2 - 210 * t2 + 15), within(1e-13));
    }
  }
}
