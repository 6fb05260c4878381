package org.spanwire.internal.math;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.assertj.core.api.Assertions.within;

import org.junit.jupiter.api.Test;

class VectorQuadratureTest {

  @Test
  void kronrodRuleIsExactToDegree31InOnePanel() {
    VectorQuadrature quadrature = new VectorQuadrature(2);
    double[] sum = new double[2];
    quadrature.add(
        (t, v) -> {
          v[0] = Math.pow(t, 30);
          v[1] = 1;
        },
        -1,
        1,
        1,
        sum);
    assertThat(quadrature.evaluations()).isEqualTo(21);
    assertThat(sum[0]).isCloseTo(2.0 / 31, within(1e-15));
    assertThat(sum[1]).isCloseTo(2, within(1e-14));
  }

  @Test
  void halvesPanelsUntilANarrowPeakIsResolved() {
    VectorQuadrature quadrature = new VectorQuadrature(1);
    double[] sum = new double[1];
    quadrature.add((t, v) -> v[0] = 1e-3 / (t * t + 1e-6), -1, 2, 1e-11, sum);
    assertThat(sum[0]).isCloseTo(Math.atan(2000) + Math.atan(1000), within(1e-10));
  }

  @Test
  void refusesWhatItCannotReach() {
    VectorQuadrature quadrature = new VectorQuadrature(1);
    assertThatThrownBy(
            () -> quadrature.add((t, v) -> v[0] = 1 / (t - 0.3), 0, 1, 1e-9, new double[1]))
        .isInstanceOf(ArithmeticException.class)
        .hasMessageContaining("did not reach");
    assertThatThrownBy(() -> quadrature.add((t, v) -> v[0] = Double.NaN, 0, 1, 1e-9, new double[1]))
        .isInstanceOf(ArithmeticException.class)
        .hasMessageContaining("not finite");
  }
}
