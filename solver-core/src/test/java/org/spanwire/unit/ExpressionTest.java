package org.spanwire.unit;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.assertj.core.api.Assertions.within;

import java.util.Map;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.ValueSource;

class ExpressionTest {

  private static final Map<String, Quantity> VALUES =
      Map.of(
          "span", Quantity.parse("24 m"),
          "offset", Quantity.parse("25 %"),
          "height", Quantity.parse("9 m"),
          "m", Quantity.parse("2 m"),
          "slope", Quantity.parse("30 deg"),
          "f", Quantity.parse("7 MHz"));

  private static Quantity evaluate(String text) {
    return Expression.parse(text).evaluate(VALUES);
  }

  @ParameterizedTest
  @CsvSource({
    "span * offset, 6",
    "height - 0.5 m, 8.5",
    "height-0.5m, 8.5",
    "span - height - 5 m, 10",
    "span / 2 / 3, 4",
    "1 m + 2 * 3 m, 7",
    "(1 m + 2 m) * 3, 9",
    "-span + 25 m, 1",
    "span - -1 m, 25",
    "2 * m, 4",
    "span/m * 1 m, 12",
    "sqrt(3 m * 3 m + 4 m * 4 m), 5",
    "'min(span, height, 30 ft)', 9",
    "'max(height, span)', 24",
    "abs(height - span), 15",
    "300e6 * 1 m / 1 m * 1 m / 150e6, 2"
  })
  void followsTheRulesOfArithmetic(String text, double metres) {
    assertThat(evaluate(text).in(Dimension.LENGTH)).isCloseTo(metres, within(1e-14 * metres));
  }

  /** sin 30° = 1/2, cos 60° = 1/2, tan 45° = 1. */
  @Test
  void takesTheSineOfAngles() {
    assertThat(evaluate("span * sin(slope)").in(Dimension.LENGTH)).isCloseTo(12, within(1e-13));
    assertThat(evaluate("cos(60 deg)").in(Dimension.NUMBER)).isCloseTo(0.5, within(1e-15));
    assertThat(evaluate("tan(pi / 4 * 1 rad)").in(Dimension.NUMBER)).isCloseTo(1, within(1e-15));
  }

  /** √(L/C) of 1 µH and 400 pF is 50 Ω; 1/(2π√(LC)) has the dimension of a frequency. */
  @Test
  void carriesDimensionsThroughProductsAndRoots() {
    assertThat(evaluate("sqrt(1 uH / 400 pF)").in(Dimension.RESISTANCE))
        .isCloseTo(50, within(1e-12));
    assertThat(evaluate("1 / (2 * pi * sqrt(1 uH * 400 pF))").in(Dimension.FREQUENCY))
        .isCloseTo(1 / (2 * Math.PI * 2e-8), within(1e-6));
    assertThat(evaluate("1 V * 1 V / 50 ohm").in(Dimension.POWER)).isEqualTo(0.02);
  }

  @ParameterizedTest
  @CsvSource(
      delimiter = '|',
      value = {
        "height + f | cannot add 9 m (a length) and 7 MHz (a frequency)",
        "height - 0.5 | cannot subtract 9 m (a length) and 0.5 (a number without unit)",
        "max(height, 3) | cannot take the larger of 9 m",
        "2 dB + 3 dBi | cannot add",
        "sqrt(height) | cannot take the square root of a length",
        "sqrt(-4) | at least 0",
        "sin(height) | expected an angle",
        "sin(0.5) | expected an angle",
        "span / (height - 9 m) | division by zero: 24 m / 0 m",
        "1 / 0 | division by zero",
        "1e200 * 1e200 | not a finite number",
        "heigth + 1 m | unknown name 'heigth'",
        "2 span | unknown unit 'span' after 2",
        "log(2) | unknown function 'log'",
        "sqrt(1, 2) | expected one",
        "span * | expected a number with a unit",
        "(span | expected ')'",
        "span) | cannot read",
        "span ^ 2 | cannot read",
        "'' | no quantity given"
      })
  void saysWhatDoesNotFit(String text, String part) {
    assertThatThrownBy(() -> evaluate(text))
        .isInstanceOf(UnitException.class)
        .hasMessageContaining(part);
  }

  @Test
  void refusesWhatCouldExhaustTheStack() {
    assertThatThrownBy(() -> evaluate("(".repeat(300) + "1" + ")".repeat(300)))
        .hasMessageContaining("nested more than 50 deep");
    assertThatThrownBy(() -> evaluate("-".repeat(900) + "1")).hasMessageContaining("nested");
    assertThatThrownBy(() -> evaluate("1+".repeat(600) + "1")).hasMessageContaining("limit 1000");
  }

  @Test
  void knowsTheNamesItNeeds() {
    assertThat(Expression.parse("span * offset + min(span, 3 m)").names())
        .containsExactlyInAnyOrder("span", "offset");
  }

  @ParameterizedTest
  @ValueSource(strings = {"5", "-5", "+0.5", "1e3", " 7 "})
  void recognisesABareNumber(String text) {
    assertThat(Expression.parse(text).isBareNumber()).isTrue();
  }

  @ParameterizedTest
  @ValueSource(strings = {"5 m", "2 * 3", "span", "36 %"})
  void recognisesWhatIsMoreThanABareNumber(String text) {
    assertThat(Expression.parse(text).isBareNumber()).isFalse();
  }

  @Test
  void keepsNamesApartFromFunctions() {
    assertThat(Expression.isName("span_2")).isTrue();
    assertThat(Expression.isName("sqrt")).isFalse();
    assertThat(Expression.isName("wire-factor")).isFalse();
    assertThat(Expression.isName("2nd")).isFalse();
  }
}
