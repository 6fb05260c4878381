package org.spanwire.validation.accuracy;

import static org.assertj.core.api.Assertions.assertThat;

import org.junit.jupiter.api.Test;

/** A part of the fuzz run. */
class DesignFuzzTest {

  private static final int DESIGNS = 300;

  @Test
  void randomDesignsAreSolvedOrRefused() throws InterruptedException {
    DesignFuzz.Outcome outcome = DesignFuzz.run(DesignFuzz.SEED, 0, DESIGNS);
    assertThat(outcome.faults()).isEmpty();
    assertThat(outcome.counts().get("solved")).isGreaterThan(DESIGNS / 5);
    assertThat(outcome.counts().get("refused by the reader")).isGreaterThan(DESIGNS / 10);
    assertThat(outcome.counts().get("refused for its geometry")).isGreaterThan(DESIGNS / 10);
  }

  @Test
  void sameSeedAndNumberGiveTheSameText() {
    assertThat(RandomDesign.of(3, 5)).isEqualTo(RandomDesign.of(3, 5));
    assertThat(RandomDesign.of(3, 6)).isNotEqualTo(RandomDesign.of(3, 5));
  }
}
