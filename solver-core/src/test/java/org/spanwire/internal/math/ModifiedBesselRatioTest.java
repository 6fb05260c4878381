package org.spanwire.internal.math;

import static org.assertj.core.api.Assertions.assertThat;

import org.apache.commons.math3.complex.Complex;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

class ModifiedBesselRatioTest {

  /** Reference values: mpmath, 30 digits, besseli(0, z)/besseli(1, z). */
  @ParameterizedTest
  @CsvSource({
    "1e-3, 0, 2000.00024999998958, 0",
    "1e-3, 1e-3, 1000.00025000002083, -999.999750000020833",
    "1, 1, 1.26793438713712527, -0.773050390574119735",
    "3, 0.5, 1.22215063386629377, -0.053720879693733502",
    "0.5, 8, 0.61006679362192653, -0.54405855512459039",
    "10, 10, 1.02489293824046613, -0.0269674332616933743",
    "39.9, 0.0, 1.01277298617884496, 0",
    "40.1, 0.0, 1.01270805005034793, 0",
    "40.1, 40.1, 1.00623291145030943, -0.00635247055484477092",
    "40.1, 300.0, 1.00021491230508807, -0.00163847403478618964",
    "42, 42, 1.0059510752164039, -0.00605993800588906475",
    "42.4, 42.4, 1.00589495766364215, -0.00600175197313907098",
    "42.5, 42.5, 1.00588109321709033, -0.0059873796180602493",
    "59.99, 0, 1.00844069996120749, 0",
    "60.01, 0, 1.00843785095026394, 0",
    "43, 43, 1.0058127376394998, -0.00591653804006210871",
    "700, 700, 1.00035714258330613, -0.00035752578352706729",
    "5000, 5000, 1.0000499999992498, -0.0000500075007499999662"
  })
  void agreesWithReferenceValues(double re, double im, double ratioRe, double ratioIm) {
    Complex expected = new Complex(ratioRe, ratioIm);
    Complex got = ModifiedBesselRatio.zeroOverOne(new Complex(re, im));
    assertThat(got.subtract(expected).abs() / expected.abs()).isLessThan(1e-13);
  }

  /** Near the imaginary axis, where the second exponential of Hankel's expansion counts. */
  @ParameterizedTest
  @CsvSource({
    "1, 59.9, 1.08478332464988446, 0.263296502588738726",
    "1, 60.1, 1.19983131668673651, 0.214486420559485586"
  })
  void agreesWithReferenceValuesNearTheImaginaryAxis(
      double re, double im, double ratioRe, double ratioIm) {
    agreesWithReferenceValues(re, im, ratioRe, ratioIm);
  }

  /** I0' = I1 and I1' = I0 − I1/z (Abramowitz and Stegun 1964, 9.6.26): r' = 1 − r² + r/z. */
  @Test
  void obeysItsRiccatiEquation() {
    for (double magnitude : new double[] {0.5, 5, 20, 56, 57, 300}) {
      Complex z = new Complex(magnitude * Math.sqrt(0.5), magnitude * Math.sqrt(0.5));
      double h = 1e-3 * Math.min(1, magnitude);
      Complex slope =
          ModifiedBesselRatio.zeroOverOne(z.add(h))
              .subtract(ModifiedBesselRatio.zeroOverOne(z.subtract(h)))
              .divide(2 * h);
      Complex r = ModifiedBesselRatio.zeroOverOne(z);
      Complex expected = Complex.ONE.subtract(r.multiply(r)).add(r.divide(z));
      assertThat(slope.subtract(expected).abs()).isLessThan(1e-5 * (1 + expected.abs()));
    }
  }
}
