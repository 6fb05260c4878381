package org.spanwire.validation.accuracy;

import static org.assertj.core.api.Assertions.assertThat;

import org.junit.jupiter.api.Test;

/** A part of the fuzz run. */
class TouchstoneFuzzTest {

  private static final int FILES = 20_000;

  @Test
  void randomFilesAreReadOrRefused() {
    DesignFuzz.Outcome outcome = TouchstoneFuzz.run(TouchstoneFuzz.SEED, 0, FILES);
    assertThat(outcome.faults()).isEmpty();
    assertThat(outcome.counts().get("read, written and used")).isGreaterThan(FILES / 10);
    assertThat(outcome.counts().get("refused by the reader")).isGreaterThan(FILES / 5);
  }
}
