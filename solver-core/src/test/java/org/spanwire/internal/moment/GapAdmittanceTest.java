package org.spanwire.internal.moment;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import org.apache.commons.math3.complex.Complex;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.spanwire.internal.math.GaussLegendre;
import org.spanwire.medium.Conductor;
import org.spanwire.medium.Insulation;
import org.spanwire.medium.Materials;
import org.spanwire.unit.PhysicalConstants;

class GapAdmittanceTest {

  private static TubeSpectrum perfect(double frequencyHz) {
    return new TubeSpectrum(
        PhysicalConstants.wavenumber(frequencyHz), 1e-3, new SeriesImpedance(0, 0, 0, 0));
  }

  /** Reference: mpmath, 25 digits, besseli(0, x) besselk(0, x). */
  @ParameterizedTest
  @CsvSource({
    "0.0, 0.001, 7.0236830327979, -1.5707955413969",
    "0.01, 0.05, 3.0884308397074, -1.3699590754247",
    "0.3, 1.0, 0.12389978661726, -0.6712784274112",
    "2, 0, 0.25963079834597, 0.0",
    "5.5, 0, 0.091311403306465, 0.0",
    "9, 0, 0.055643211311433, 0.0"
  })
  void theProductOfBesselFunctionsAgreesWithReferenceValues(
      double re, double im, double productRe, double productIm) {
    Complex right = new Complex(productRe, productIm);
    assertThat(TubeSpectrum.product(new Complex(re, im)).subtract(right).abs())
        .isLessThan(1e-11 * right.abs());
  }

  /**
   * Reference: the same integral by mpmath, 25 digits, on another path (a rectangle of height k/3
   * over 0 to 3k, then the axis), the weights from its own solution of the two conditions.
   */
  @Test
  void theDifferenceAgreesWithReferenceValues() {
    GapAdmittance gap = new GapAdmittance(perfect(14.2e6), 4e-3, new double[] {2, 1.7});
    SplinePair pair = gap.pair(0);
    assertThat(pair.wideWeight().getReal()).isCloseTo(-2.63843215969, within(1e-8));
    assertThat(pair.narrowWeight().getReal()).isCloseTo(3.63836065788, within(1e-8));
    Complex got = gap.over(0);
    assertThat(got.getReal()).isCloseTo(1.09481015225e-8, within(1e-11));
    assertThat(got.getImaginary()).isCloseTo(0.000130869974224, within(1e-10));
  }

  /** What the panels are laid out for must not change the value. */
  @Test
  void theDifferenceDoesNotDependOnTheOtherWidths() {
    TubeSpectrum wire = perfect(7.1e6);
    Complex one = new GapAdmittance(wire, 0.02, new double[] {3, 2}).over(0);
    Complex other = new GapAdmittance(wire, 0.02, new double[] {9, 3, 2, 0.2}).over(1);
    assertThat(one.subtract(other).abs()).isLessThan(1e-7 * one.abs());
  }

  /** At the guided wave the wire needs no impressed field. */
  @Test
  void theGuidedWaveIsAZeroOfTheImpedance() {
    Conductor coated =
        Conductor.bare(Materials.COPPER, 1e-3).withInsulation(new Insulation(0.8e-3, 2.5, 0.001));
    for (double frequency : new double[] {1.9e6, 28e6}) {
      TubeSpectrum wire = TubeSpectrum.of(coated, frequency);
      Complex guided = wire.guided();
      assertThat(guided.getReal()).isBetween(wire.k(), 1.1 * wire.k());
      assertThat(guided.getImaginary()).isNegative();
      Complex beside = wire.impedance(guided.add(1e-3 * wire.k()));
      assertThat(wire.impedance(guided).abs()).isLessThan(1e-6 * beside.abs());
    }
  }

  @Test
  void aSplineHasUnitIntegralAndAPairThePromisedTransform() {
    double integral = 0;
    Complex transform = Complex.ZERO;
    double zeta = 0.7;
    SplinePair pair = SplinePair.of(2, 1.7, 0.01, new Complex(zeta, -0.01));
    GaussLegendre rule = GaussLegendre.of(20);
    for (int panel = -40; panel < 40; panel++) {
      for (int i = 0; i < 20; i++) {
        double s = 0.05 * (panel + 0.5 + 0.5 * rule.node(i));
        double weight = 0.025 * rule.weight(i);
        integral += weight * SplinePair.value(s, 2);
        Complex value =
            pair.wideWeight()
                .multiply(SplinePair.value(s, 2))
                .add(pair.narrowWeight().multiply(SplinePair.value(s, 1.7)));
        transform = transform.add(value.multiply(weight * Math.cos(zeta * s)));
      }
    }
    assertThat(integral).isCloseTo(1, within(1e-12));
    assertThat(transform.subtract(transform(pair, new Complex(zeta))).abs()).isLessThan(1e-12);
    Complex box = SplinePair.box(new Complex(zeta, -0.01), 0.01);
    assertThat(transform(pair, new Complex(zeta, -0.01)).subtract(box).abs()).isLessThan(1e-12);
  }

  private static Complex transform(SplinePair pair, Complex zeta) {
    return pair.wideWeight()
        .multiply(SplinePair.spline(zeta, pair.wide()))
        .add(pair.narrowWeight().multiply(SplinePair.spline(zeta, pair.narrow())));
  }
}
