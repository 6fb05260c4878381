package org.spanwire.validation.accuracy;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.concurrent.TimeUnit;
import org.junit.jupiter.api.Test;

/** A part of the soak. */
class ThreadSoakTest {

  @Test
  void eightThreadsGetTheBitsOfOne() throws Exception {
    ThreadSoak.Outcome outcome = ThreadSoak.run(TimeUnit.SECONDS.toNanos(1));
    assertThat(outcome.differences()).isEmpty();
    assertThat(outcome.solutions()).isGreaterThanOrEqualTo(24);
  }
}
