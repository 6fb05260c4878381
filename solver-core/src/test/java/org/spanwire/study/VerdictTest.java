package org.spanwire.study;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

class VerdictTest {

  @ParameterizedTest
  @CsvSource({
    "1, direct",
    "2, direct",
    "2.0000001, tunable",
    "3, tunable",
    "3.0000001, wide-tuner",
    "10, wide-tuner",
    "10.000001, unusable",
    "Infinity, unusable"
  })
  void limitsBelongToTheBetterVerdict(double swr, String label) {
    assertThat(Verdict.of(swr).label()).isEqualTo(label);
  }

  @Test
  void whatIsNoNumberGetsNoVerdict() {
    assertThatThrownBy(() -> Verdict.of(Double.NaN)).isInstanceOf(IllegalArgumentException.class);
  }
}
