package org.spanwire.cli;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.IOException;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/** A part of the fuzz run. */
class CommandFuzzTest {

  private static final int LINES = 300;

  @Test
  void randomCommandLinesEndAsPromised(@TempDir Path directory) throws IOException {
    List<String> faults = new ArrayList<>();
    Map<String, Integer> counts =
        new CommandFuzz(directory).run(CommandFuzz.SEED, 0, LINES, faults);
    assertThat(faults).isEmpty();
    assertThat(counts.get("exit code 0")).isGreaterThan(LINES / 20);
    assertThat(counts.get("exit code 2")).isGreaterThan(LINES / 4);
  }
}
