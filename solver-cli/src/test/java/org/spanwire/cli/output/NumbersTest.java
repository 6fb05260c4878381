package org.spanwire.cli.output;

import static org.assertj.core.api.Assertions.assertThat;

import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

class NumbersTest {

  @ParameterizedTest
  @CsvSource({
    "1.004, 1.00",
    "9.994, 9.99",
    "9.996, 10.0",
    "99.94, 99.9",
    "99.96, 100",
    "1234.4, 1234",
    "Infinity, inf",
    "1.996, 2.00",
    "2, 2.00",
    "2.004, 2.004",
    "3.003, 3.003",
    "3.00004, 3.00004",
    "10, 10.0",
    "10.04, 10.04"
  })
  void swrKeepsThreeDigitsAndItsSideOfAVerdictsLimit(double swr, String text) {
    assertThat(Numbers.swr(swr)).isEqualTo(text);
  }

  @ParameterizedTest
  @CsvSource({
    "67.4512342, 0.019, 67.45",
    "67.4512342, 0.2, 67.5",
    "4841.8, 5, 4842",
    "67.4512342, 0.0000027, 67.451234",
    "67.4512342, 0, 67.451234",
    "-0.001, 0.05, 0.00"
  })
  void impedanceKeepsTheDigitsItsErrorLeaves(double value, double error, String text) {
    assertThat(Numbers.ohms(value, error)).isEqualTo(text);
  }

  @Test
  void frequenciesKeepEveryHertzAndNoMore() {
    assertThat(Numbers.megahertz(5351500)).isEqualTo("5.3515");
    assertThat(Numbers.megahertz(14e6)).isEqualTo("14");
    assertThat(Numbers.megahertz(7100000.4)).isEqualTo("7.1");
  }

  @Test
  void significantDigitsNeedNoExponent() {
    assertThat(Numbers.significant(1e-4, 6)).isEqualTo("0.0001");
    assertThat(Numbers.significant(2e6, 6)).isEqualTo("2000000");
    assertThat(Numbers.significant(0, 3)).isEqualTo("0");
  }
}
