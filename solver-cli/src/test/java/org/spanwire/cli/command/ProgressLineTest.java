package org.spanwire.cli.command;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.ByteArrayOutputStream;
import java.io.PrintStream;
import java.nio.charset.StandardCharsets;
import org.junit.jupiter.api.Test;

class ProgressLineTest {

  @Test
  void showsRowsAndRate() {
    ByteArrayOutputStream shown = new ByteArrayOutputStream();
    PrintStream terminal = new PrintStream(shown, true, StandardCharsets.UTF_8);
    try (ProgressLine progress = ProgressLine.ofRows(terminal, 40)) {
      for (int i = 0; i < 40; i++) {
        progress.step();
      }
    }
    assertThat(shown.toString(StandardCharsets.UTF_8)).contains("sweep", "40/40 rows", "rows/s");
  }

  @Test
  void namesTheParts() {
    ByteArrayOutputStream shown = new ByteArrayOutputStream();
    PrintStream terminal = new PrintStream(shown, true, StandardCharsets.UTF_8);
    try (ProgressLine progress = ProgressLine.ofParts("report", terminal, 3)) {
      progress.begin("curves");
      progress.begin("map");
    }
    assertThat(shown.toString(StandardCharsets.UTF_8)).contains("report", "1/3", "map");
  }
}
