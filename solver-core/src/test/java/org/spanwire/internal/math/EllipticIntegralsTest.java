package org.spanwire.internal.math;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.withinPercentage;

import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

class EllipticIntegralsTest {

  /** Relative, in percent: 1e-14. */
  private static final double PERCENT = 1e-12;

  /** Abramowitz and Stegun 1964, table 17.1. */
  @ParameterizedTest
  @CsvSource({
    "0, 1.570796326794897, 1.570796326794897",
    "0.1, 1.612441348720219, 1.530757636897763",
    "0.5, 1.854074677301372, 1.350643881047676",
    "0.9, 2.578092113348173, 1.104774732704073",
    "0.99, 3.695637362989875, 1.015993545025224"
  })
  void agreesWithThePrintedTable(double m, double first, double second) {
    assertThat(EllipticIntegrals.firstKind(1 - m)).isCloseTo(first, withinPercentage(PERCENT));
    assertThat(EllipticIntegrals.secondKind(1 - m)).isCloseTo(second, withinPercentage(PERCENT));
  }

  /** Reference values: mpmath, 60 digits. */
  @ParameterizedTest
  @CsvSource({
    "1e-4, 5.9915893405069964024, 1.0002745824306629652",
    "1e-8, 10.59663475708766032, 1.0000000504831738439",
    "1e-12, 15.201804919087715174, 1.0000000000073509025",
    "1e-20, 24.412145291060347459, 1"
  })
  void keepsItsAccuracyInTheLogarithmicLimit(double m1, double first, double second) {
    assertThat(EllipticIntegrals.firstKind(m1)).isCloseTo(first, withinPercentage(PERCENT));
    assertThat(EllipticIntegrals.secondKind(m1)).isCloseTo(second, withinPercentage(PERCENT));
  }

  /** Legendre's relation, E K' + E' K − K K' = π/2 (Abramowitz and Stegun 1964, 17.3.13). */
  @Test
  void obeysLegendresRelation() {
    for (int i = 1; i < 200; i++) {
      double m1 = i / 200.0;
      double k = EllipticIntegrals.firstKind(m1);
      double e = EllipticIntegrals.secondKind(m1);
      double kc = EllipticIntegrals.firstKind(1 - m1);
      double ec = EllipticIntegrals.secondKind(1 - m1);
      assertThat(e * kc + ec * k - k * kc).isCloseTo(Math.PI / 2, withinPercentage(PERCENT));
    }
  }
}
