package org.spanwire.validation;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.util.List;
import java.util.Map;
import org.apache.commons.math3.complex.Complex;
import org.junit.jupiter.api.Test;

class ThinLimitTest {

  /** Three radii determine a quadratic in 1/ln(λ/a) exactly, so its value at zero comes back. */
  @Test
  void findsTheValueAtZeroOfAQuadratic() {
    Complex limit = ThinLimit.of(example(), thin -> quadratic(thin, 0));
    assertThat(limit.getReal()).isCloseTo(73, within(1e-9));
    assertThat(limit.getImaginary()).isCloseTo(42.5, within(1e-9));
  }

  /** What it leaves of a cubic term is the product of the three abscissas. */
  @Test
  void leavesTheProductOfTheAbscissasOfACubic() {
    Complex limit = ThinLimit.of(example(), thin -> quadratic(thin, 1));
    double left = 1 / (Math.log(1e5) * Math.log(1e7) * Math.log(1e9));
    assertThat(limit.getReal() - 73).isCloseTo(left, within(1e-9));
  }

  /** The reference gets the same radius, and neither keeps the list. */
  @Test
  void reachesTheReferenceToo() {
    ThinLimit.of(
        example(),
        thin -> {
          assertThat(thin.reference().parameters().number("radius"))
              .isEqualTo(thin.parameters().number("radius"));
          assertThat(thin.parameters().has(ThinLimit.PARAMETER)).isFalse();
          assertThat(thin.reference().parameters().has(ThinLimit.PARAMETER)).isFalse();
          return Complex.ONE;
        });
  }

  private static Complex quadratic(ValidationCase thin, double cubic) {
    double x = -1 / Math.log(thin.parameters().number("radius"));
    return new Complex(73 + 20 * x - 300 * x * x + cubic * x * x * x, 42.5 - 5 * x);
  }

  private static ValidationCase example() {
    Structure structure =
        new Structure(
            Shape.DIPOLE, new Parameters(Map.of(ThinLimit.PARAMETER, List.of(1e-5, 1e-7, 1e-9))));
    return new ValidationCase(
        "1-1",
        1,
        structure,
        structure,
        Quantity.INPUT_IMPEDANCE,
        Complex.ONE,
        new Tolerance(0.01, true, "because"),
        "Hallén 1938",
        Origin.CLOSED_FORM);
  }
}
