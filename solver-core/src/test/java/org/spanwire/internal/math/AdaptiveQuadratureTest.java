package org.spanwire.internal.math;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import org.junit.jupiter.api.Test;

/** Against integrals in closed form. */
class AdaptiveQuadratureTest {

  @Test
  void findsNarrowPeaks() {
    AdaptiveQuadrature.Integral peak =
        AdaptiveQuadrature.integrate(x -> 1 / (x * x + 1e-6), new double[] {-1, 1}, 1e-10);
    assertThat(peak.value()).isCloseTo(2e3 * Math.atan(1e3), within(1e-7));
    assertThat(peak.error()).isLessThan(1e-10 * peak.value());
  }

  @Test
  void tellsWhenATaskIsTooHard() {
    AdaptiveQuadrature.Integral wild =
        AdaptiveQuadrature.integrate(x -> Math.sin(1e6 * x), new double[] {0, 1}, 1e-12);
    assertThat(wild.error()).isGreaterThan(1e-6);
  }

  @Test
  void isExactForPolynomialsOfDegreeTwentyTwo() {
    AdaptiveQuadrature.Integral power =
        AdaptiveQuadrature.integrate(x -> Math.pow(x, 22), new double[] {-1, 1}, 1);
    assertThat(power.value()).isCloseTo(2.0 / 23, within(1e-16));
  }
}
