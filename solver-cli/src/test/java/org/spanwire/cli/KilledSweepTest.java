package org.spanwire.cli;

import static org.assertj.core.api.Assertions.assertThat;

import java.nio.file.Path;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/** A part of the long run, which kills twenty times. */
class KilledSweepTest {

  private static final int KILLS = 3;

  @Test
  void aKilledAndResumedSweepIsThatOfOneRun(@TempDir Path directory) throws Exception {
    KilledSweep.Outcome outcome = new KilledSweep(directory).run(KILLS);
    assertThat(outcome.different()).isZero();
    assertThat(outcome.kills()).isEqualTo(KILLS);
  }
}
