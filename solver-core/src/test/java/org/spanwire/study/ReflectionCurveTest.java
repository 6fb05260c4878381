package org.spanwire.study;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import org.apache.commons.math3.complex.Complex;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;
import org.spanwire.circuit.Mismatch;

/**
 * Checks against a series resonant circuit, whose impedance, SWR and bandwidth are known in closed
 * form.
 */
class ReflectionCurveTest {

  private static final FrequencyRange BAND = new FrequencyRange(3.5e6, 3.8e6);
  private static final double REFERENCE = 200;
  private static final double RESONANCE = 3.61e6;

  /** R + jX with X = RQ(f/f0 − f0/f): any text on circuits. */
  private static Complex resonator(double resistance, double quality, double frequency) {
    double detuning = frequency / RESONANCE - RESONANCE / frequency;
    return new Complex(resistance, resistance * quality * detuning);
  }

  private static Complex reflection(double resistance, double quality, double frequency) {
    return Mismatch.of(resonator(resistance, quality, frequency), REFERENCE).reflection();
  }

  private static ReflectionCurve curve(double resistance, double quality, int points) {
    double[] frequencies = ReflectionCurve.frequencies(BAND, points);
    Complex[] values = new Complex[points];
    for (int i = 0; i < points; i++) {
      values[i] = reflection(resistance, quality, frequencies[i]);
    }
    return new ReflectionCurve(BAND, values);
  }

  /** The best match lies at resonance, where the SWR is the ratio of the resistances. */
  @ParameterizedTest
  @ValueSource(doubles = {8, 15, 30})
  void findsTheResonance(double quality) {
    ReflectionCurve curve = curve(120, quality, 21);
    assertThat(curve.search().best()).isCloseTo(RESONANCE, within(50.0));
    double swr = Mismatch.ofReflection(curve.at(curve.search().best()), REFERENCE).swr();
    assertThat(swr).isCloseTo(200.0 / 120, within(1e-4));
    assertThat(curve.search().worst()).isEqualTo(BAND.highHz());
  }

  /**
   * |Γ|² = ((R − R0)² + X²)/((R + R0)² + X²) = 1/9 gives X² = ((R + R0)² − 9 (R − R0)²)/8 at both
   * ends of SWR 2.
   */
  @Test
  void findsWhereTheSwrStaysBelowTwo() {
    double reactance = Math.sqrt((320.0 * 320 - 9 * 80.0 * 80) / 8);
    double detuning = reactance / (120 * 15);
    double root = Math.sqrt(detuning * detuning / 4 + 1);
    FrequencyRange found = curve(120, 15, 21).search().within(1.0 / 3).get(0);
    assertThat(found.lowHz()).isCloseTo(RESONANCE * (root - detuning / 2), within(50.0));
    assertThat(found.highHz()).isCloseTo(RESONANCE * (root + detuning / 2), within(50.0));
  }

  @Test
  void aBandThatNeverReachesTwoHasNoRange() {
    assertThat(curve(20, 15, 11).search().within(1.0 / 3)).isEmpty();
    assertThat(curve(200, 0.1, 11).search().within(1.0 / 3)).containsExactly(BAND);
  }

  /**
   * The estimate bounds the true error, without being empty talk, as long as it is below the value
   * that asks for more points.
   */
  @ParameterizedTest
  @ValueSource(doubles = {5, 8, 12, 20, 30, 50})
  void errorEstimateBoundsTheError(double quality) {
    int points = 11;
    ReflectionCurve curve = curve(120, quality, points);
    while (curve.error() > 2e-3) {
      points = 2 * points - 1;
      curve = curve(120, quality, points);
    }
    double largest = 0;
    for (int i = 0; i <= 5000; i++) {
      double f = BAND.lowHz() + (BAND.highHz() - BAND.lowHz()) * i / 5000;
      largest = Math.max(largest, curve.at(f).subtract(reflection(120, quality, f)).abs());
    }
    assertThat(largest).isLessThanOrEqualTo(curve.error() + 1e-14);
    assertThat(curve.error()).isLessThan(1000 * largest + 1e-12);
  }

  /**
   * A worst match between the edges: Z = 100 + 3000/(1 + jt) is a circle about the real axis, in
   * the Γ plane too, so |Γ| is largest where it cuts the axis at t = 0, Z = 3100 ohm. Edges and
   * middle show SWR below 4.
   */
  @Test
  void findsAWorstMatchBetweenThePoints() {
    int points = 161;
    double[] frequencies = ReflectionCurve.frequencies(BAND, points);
    Complex[] values = new Complex[points];
    for (int i = 0; i < points; i++) {
      Complex impedance = resonator(1, 200, frequencies[i]).reciprocal().multiply(3000).add(100);
      values[i] = Mismatch.of(impedance, REFERENCE).reflection();
    }
    ReflectionCurve curve = new ReflectionCurve(BAND, values);
    assertThat(curve.error()).isLessThan(2e-3);
    assertThat(curve.search().worst()).isCloseTo(RESONANCE, within(50.0));
    assertThat(Mismatch.ofReflection(curve.at(curve.search().worst()), REFERENCE).swr())
        .isCloseTo(15.5, within(0.05));
  }

  @Test
  void everySecondPointOfAFinerSetIsAPointOfTheCoarser() {
    double[] coarse = ReflectionCurve.frequencies(BAND, 11);
    double[] fine = ReflectionCurve.frequencies(BAND, 21);
    for (int i = 0; i < coarse.length; i++) {
      assertThat(fine[2 * i]).isCloseTo(coarse[i], within(1e-8));
    }
    assertThat(coarse[5]).isEqualTo(BAND.middleHz());
  }
}
