package org.spanwire.internal.basis;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import org.junit.jupiter.api.Test;
import org.spanwire.internal.math.GaussLegendre;
import org.spanwire.internal.math.LegendrePolynomials;

class LocalBasisTest {

  private static final int HIGHEST = 12;

  private static double value(int i, double t) {
    double[] p = new double[HIGHEST + 1];
    LegendrePolynomials.fill(t, HIGHEST, 1, p, 0);
    return LocalBasis.lowFactor(i) * p[LocalBasis.low(i)]
        + LocalBasis.highFactor(i) * p[LocalBasis.high(i)];
  }

  private static double slope(int i, double t) {
    double[] p = new double[HIGHEST + 1];
    LegendrePolynomials.fill(t, HIGHEST, LocalBasis.derivativeFactor(i), p, 0);
    return p[LocalBasis.derivativeDegree(i)];
  }

  @Test
  void endFunctionsAreOneAtTheirEndAndZeroAtTheOther() {
    assertThat(value(0, -1)).isEqualTo(1);
    assertThat(value(0, 1)).isZero();
    assertThat(value(1, 1)).isEqualTo(1);
    assertThat(value(1, -1)).isZero();
  }

  @Test
  void bubblesVanishAtBothEnds() {
    for (int i = 2; i <= HIGHEST; i++) {
      assertThat(value(i, -1)).isCloseTo(0, within(1e-15));
      assertThat(value(i, 1)).isCloseTo(0, within(1e-15));
    }
  }

  /** N(t) − N(−1) = ∫ N' for every function, by a Gauss rule. */
  @Test
  void derivativesAreThoseOfTheFunctions() {
    GaussLegendre rule = GaussLegendre.of(10);
    for (int i = 0; i <= HIGHEST; i++) {
      for (double t : new double[] {-0.7, 0.1, 0.9, 1}) {
        double sum = 0;
        for (int q = 0; q < rule.size(); q++) {
          sum += 0.5 * (t + 1) * rule.weight(q) * slope(i, -1 + 0.5 * (t + 1) * (1 + rule.node(q)));
        }
        assertThat(sum).as("function %d", i).isCloseTo(value(i, t) - value(i, -1), within(1e-13));
      }
    }
  }

  /** Integrated Legendre polynomials: ∫ N_i' N_j' dt = δ_ij for bubbles. */
  @Test
  void bubbleDerivativesAreOrthonormal() {
    GaussLegendre rule = GaussLegendre.of(HIGHEST + 1);
    for (int i = 2; i <= HIGHEST; i++) {
      for (int j = 2; j <= HIGHEST; j++) {
        double sum = 0;
        for (int q = 0; q < rule.size(); q++) {
          sum += rule.weight(q) * slope(i, rule.node(q)) * slope(j, rule.node(q));
        }
        assertThat(sum).isCloseTo(i == j ? 1 : 0, within(1e-13));
      }
    }
  }
}
