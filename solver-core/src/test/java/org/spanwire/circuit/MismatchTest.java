package org.spanwire.circuit;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.assertj.core.api.Assertions.within;

import java.util.SplittableRandom;
import org.apache.commons.math3.complex.Complex;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.ValueSource;

class MismatchTest {

  /**
   * Closed form from the definition (Pozar, Microwave Engineering, 2012, section 2.3): columns are
   * computed by |Γ| = (S − 1)/(S + 1), −20 log |Γ| and −10 log(1 − |Γ|²) in ten digits.
   */
  @ParameterizedTest
  @CsvSource({
    "1.1, 0.04761904762, 26.44438589, 0.009859129817",
    "1.2, 0.09090909091, 20.8278537, 0.03604124269",
    "1.5, 0.2, 13.97940009, 0.1772876696",
    "2, 0.3333333333, 9.542425094, 0.5115252245",
    "2.5, 0.4285714286, 7.359535706, 0.881360887",
    "3, 0.5, 6.020599913, 1.249387366",
    "4, 0.6, 4.436974992, 1.93820026",
    "5, 0.6666666667, 3.521825181, 2.552725051",
    "10, 0.8181818182, 1.743003514, 4.80725379",
    "20, 0.9047619048, 0.8693138756, 7.413486025"
  })
  void agreesWithTheDefinition(double swr, double gamma, double returnLoss, double mismatchLoss) {
    for (double resistance : new double[] {50 * swr, 50 / swr}) {
      Mismatch mismatch = Mismatch.of(new Complex(resistance, 0), 50);
      assertThat(mismatch.swr()).isCloseTo(swr, within(1e-12 * swr));
      assertThat(mismatch.reflection().abs()).isCloseTo(gamma, within(1e-10));
      assertThat(mismatch.returnLossDb()).isCloseTo(returnLoss, within(1e-8));
      assertThat(mismatch.mismatchLossDb()).isCloseTo(mismatchLoss, within(1e-9));
    }
  }

  /** A match reflects nothing: by definition. */
  @Test
  void perfectMatch() {
    Mismatch mismatch = Mismatch.of(new Complex(200, 0), 200);
    assertThat(mismatch.reflection()).isEqualTo(Complex.ZERO);
    assertThat(mismatch.swr()).isEqualTo(1);
    assertThat(mismatch.returnLossDb()).isEqualTo(Double.POSITIVE_INFINITY);
    assertThat(mismatch.mismatchLossDb()).isZero();
  }

  @Test
  void openAndShortReflectEverythingWithOppositeSigns() {
    Mismatch open = Mismatch.of(Complex.INF, 50);
    Mismatch shorted = Mismatch.of(Complex.ZERO, 50);
    assertThat(open.reflection()).isEqualTo(Complex.ONE);
    assertThat(shorted.reflection()).isEqualTo(new Complex(-1, 0));
    for (Mismatch mismatch : new Mismatch[] {open, shorted, Mismatch.of(new Complex(0, -3), 50)}) {
      assertThat(mismatch.swr()).isEqualTo(Double.POSITIVE_INFINITY);
      assertThat(mismatch.returnLossDb()).isZero();
      assertThat(mismatch.mismatchLossDb()).isEqualTo(Double.POSITIVE_INFINITY);
    }
  }

  /**
   * A load that delivers power has |Γ| above 1, for which the ratio of the definition would turn
   * negative.
   */
  @ParameterizedTest
  @ValueSource(doubles = {-1e-9, -20, -50, -3000})
  void negativeResistanceHasNoFiniteSwr(double resistance) {
    Mismatch mismatch = Mismatch.of(new Complex(resistance, 0), 50);
    assertThat(mismatch.swr()).isEqualTo(Double.POSITIVE_INFINITY);
    assertThat(mismatch.mismatchLossDb()).isEqualTo(Double.POSITIVE_INFINITY);
    assertThat(mismatch.returnLossDb()).isNegative();
  }

  /** 1 − |Γ| cancels here: SWR of a resistance far above the reference is exactly their ratio. */
  @ParameterizedTest
  @ValueSource(doubles = {1e6, 1e12, 1e18, 1e100})
  void keepsItsDigitsNearAnOpenCircuit(double ratio) {
    assertThat(Mismatch.of(new Complex(50 * ratio, 0), 50).swr())
        .isCloseTo(ratio, within(1e-12 * ratio));
    assertThat(Mismatch.of(new Complex(50 / ratio, 0), 50).swr())
        .isCloseTo(ratio, within(1e-12 * ratio));
  }

  /**
   * Laws over random loads: inversion about the reference changes the sign of Γ only; an ideal
   * transformer scales load and reference alike and changes nothing; reflection and impedance are
   * inverse to each other; the accepted share of the power is 1 − |Γ|².
   */
  @Test
  void lawsOverRandomLoads() {
    SplittableRandom random = new SplittableRandom(1);
    for (int i = 0; i < 1000; i++) {
      double reference = Math.pow(10, random.nextDouble(0, 4));
      Complex z =
          new Complex(Math.pow(10, random.nextDouble(-1, 5)), random.nextDouble(-3000, 3000));
      Mismatch direct = Mismatch.of(z, reference);
      double gamma = direct.reflection().abs();

      Complex inverse = Complex.ONE.divide(z).multiply(reference * reference);
      assertThat(Mismatch.of(inverse, reference).reflection().add(direct.reflection()).abs())
          .isLessThan(1e-12);
      assertThat(Mismatch.of(z.multiply(4), 4 * reference).swr())
          .isCloseTo(direct.swr(), within(1e-12 * direct.swr()));
      assertThat(
              Mismatch.ofReflection(direct.reflection(), reference).impedance().subtract(z).abs())
          .isLessThan(1e-9 * z.abs() * direct.swr());
      assertThat(Math.pow(10, -direct.mismatchLossDb() / 10))
          .isCloseTo(1 - gamma * gamma, within(1e-12));
    }
  }

  @Test
  void refusesWhatIsNotANumber() {
    assertThatThrownBy(() -> Mismatch.of(Complex.NaN, 50))
        .isInstanceOf(IllegalArgumentException.class);
    for (double reference : new double[] {0, -50, Double.NaN, Double.POSITIVE_INFINITY}) {
      assertThatThrownBy(() -> Mismatch.of(Complex.ONE, reference))
          .isInstanceOf(IllegalArgumentException.class)
          .hasMessageContaining("ohm");
    }
  }

  @Test
  void reflectionOneIsAnOpenCircuit() {
    assertThat(Mismatch.ofReflection(Complex.ONE, 50).impedance().isInfinite()).isTrue();
  }
}
