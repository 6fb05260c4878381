package org.spanwire.internal.math;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.assertj.core.api.Assertions.within;

import org.apache.commons.math3.complex.Complex;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

/** The Faddeeva function. */
class FaddeevaFunctionTest {

  /** Values by mpmath, 30 digits, exp(−z²) erfc(−jz). */
  @ParameterizedTest
  @CsvSource({
    "0, 0, 1, 0",
    "0.3, 0.2, 0.752894790136879209, 0.229653152349069945",
    "2, 0, 0.0183156388887341803, 0.340026217066066201",
    "-3, 0.01, 0.000908830706741580498, -0.201146462540196404",
    "5, 1, 0.0230031325940599625, 0.110332832553579959",
    "6.9, 0, 2.10493997833972413e-21, 0.0826539096870851263",
    "30, 2, 0.00125027161233361074, 0.0187332943808447579",
    "0.01, -0.5, 1.95201124165850139, 0.0308041786726377411",
    "-1.5, -0.7, -0.381702254110163736, -0.587868269708534653"
  })
  void values(double x, double y, double re, double im) {
    Complex w = FaddeevaFunction.value(new Complex(x, y));
    Complex expected = new Complex(re, im);
    assertThat(w.subtract(expected).abs()).isLessThan(1e-14 * expected.abs());
  }

  @Test
  void farAwayItIsTheFieldOfACharge() {
    // DLMF 7.12.1: w(z) → j/(√π z).
    Complex z = new Complex(3e6, 4e6);
    Complex product = FaddeevaFunction.value(z).multiply(z).multiply(Math.sqrt(Math.PI));
    assertThat(product.getImaginary()).isCloseTo(1, within(1e-12));
    assertThat(product.getReal()).isCloseTo(0, within(1e-12));
  }

  @Test
  void whereItOverflowsItSaysSo() {
    assertThatThrownBy(() -> FaddeevaFunction.value(new Complex(0, -40)))
        .isInstanceOf(ArithmeticException.class)
        .hasMessageContaining("too large");
  }
}
