package org.spanwire.internal.math;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatIllegalArgumentException;
import static org.assertj.core.api.Assertions.within;

import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.ValueSource;

class GaussLegendreTest {

  /** Abramowitz and Stegun 1964, table 25.4: n, index in ascending order, abscissa, weight. */
  @ParameterizedTest
  @CsvSource({
    "1, 0, 0, 2",
    "2, 1, 0.577350269189626, 1",
    "3, 1, 0, 0.888888888888889",
    "3, 2, 0.774596669241483, 0.555555555555556",
    "5, 2, 0, 0.568888888888889",
    "5, 3, 0.538469310105683, 0.478628670499366",
    "5, 4, 0.906179845938664, 0.236926885056189",
    "10, 5, 0.148874338981631, 0.295524224714753",
    "10, 6, 0.433395394129247, 0.269266719309996",
    "10, 7, 0.679409568299024, 0.219086362515982",
    "10, 8, 0.865063366688985, 0.149451349150581",
    "10, 9, 0.973906528517172, 0.066671344308688"
  })
  void agreesWithThePrintedTable(int n, int index, double node, double weight) {
    GaussLegendre rule = GaussLegendre.of(n);
    assertThat(rule.node(index)).isCloseTo(node, within(1e-15));
    assertThat(rule.weight(index)).isCloseTo(weight, within(1e-14));
    assertThat(rule.node(n - 1 - index)).isEqualTo(-rule.node(index) + 0.0);
    assertThat(rule.weight(n - 1 - index)).isEqualTo(rule.weight(index));
  }

  /** ∫ P_m P_k = 2 δ_mk/(2m + 1) for every degree m + k ≤ 2n − 1. */
  @ParameterizedTest
  @ValueSource(ints = {1, 2, 3, 7, 16, 20, 33, 64, 65, 200})
  void isExactUpToDegreeTwiceTheNodesLessOne(int n) {
    GaussLegendre rule = GaussLegendre.of(n);
    double[][] p = new double[n][n + 1];
    for (int q = 0; q < n; q++) {
      LegendrePolynomials.fill(rule.node(q), n, 1, p[q], 0);
    }
    for (int m = 0; m <= n; m++) {
      for (int k = 0; k <= m && m + k <= 2 * n - 1; k++) {
        double sum = 0;
        for (int q = 0; q < n; q++) {
          sum += rule.weight(q) * p[q][m] * p[q][k];
        }
        double expected = m == k ? 2.0 / (2 * m + 1) : 0;
        assertThat(sum).as("n %d, degrees %d and %d", n, m, k).isCloseTo(expected, within(4e-14));
      }
    }
  }

  /**
   * The rule's own error term (Abramowitz and Stegun 1964, 25.4.29) at the first degree it misses.
   */
  @Test
  void missesTheNextDegreeByTheErrorTerm() {
    GaussLegendre rule = GaussLegendre.of(3);
    double sum = 0;
    for (int q = 0; q < 3; q++) {
      sum += rule.weight(q) * Math.pow(rule.node(q), 6);
    }
    // 2^(2n+1) (n!)^4 / ((2n+1) ((2n)!)^3) · (2n)! with n = 3
    double error = 128.0 * 1296 / (7 * 720.0 * 720 * 720) * 720;
    assertThat(2.0 / 7 - sum).isCloseTo(error, within(1e-14));
  }

  @Test
  void refusesARuleWithoutNodes() {
    assertThatIllegalArgumentException()
        .isThrownBy(() -> GaussLegendre.of(0))
        .withMessageContaining("at least one node");
  }
}
