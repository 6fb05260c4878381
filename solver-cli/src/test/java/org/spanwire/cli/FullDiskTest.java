package org.spanwire.cli;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.stream.Stream;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.condition.DisabledOnOs;
import org.junit.jupiter.api.condition.OS;
import org.junit.jupiter.api.io.TempDir;

/** A disk that takes no more: here the shell's limit on the size of a file, 512 bytes. */
@DisabledOnOs(value = OS.WINDOWS, disabledReason = "needs the limits of a POSIX shell")
class FullDiskTest {

  private static final String DESIGN =
      """
      format: spanwire-design/1
      title: Hut kit under test
      conductors: {strand: {material: copper, diameter: 2 mm}}
      wires: {radiator: {conductor: strand, path: [[0, 0, 9], [20, 0, 9]]}}
      feeds: {main: {wire: radiator, at: 40 %}}
      ground: perfect
      frequencies: [7.1 MHz, 7.2 MHz, 7.3 MHz, 14.1 MHz, 14.2 MHz, 14.3 MHz, 21.1 MHz]
      requirements: [{frequency: 7.1 MHz, swr: {max: 99}}]
      """;

  @TempDir private Path directory;

  private List<String> files() throws IOException {
    try (Stream<Path> files = Files.list(directory)) {
      return files.map(file -> file.getFileName().toString()).sorted().toList();
    }
  }

  @Test
  void leavesTheOldFileAndNoHalfOne() throws Exception {
    Shell shell = new Shell(directory);
    Files.writeString(directory.resolve("kit.yaml"), DESIGN);
    for (String line :
        List.of(
            "spanwire solve kit.yaml --format json --output old.txt",
            "spanwire baseline record kit.yaml",
            "spanwire check kit.yaml --format json --output old.txt")) {
      Files.writeString(directory.resolve("old.txt"), "old");
      Files.writeString(directory.resolve("kit.baseline.csv"), "old");
      Files.deleteIfExists(directory.resolve("log.txt"));
      List<String> before = files();
      int code = shell.run("ulimit -f 1; trap '' XFSZ; " + line);
      assertThat(shell.log()).as(line).contains("could not be written").hasLineCount(1);
      assertThat(code).isEqualTo(2);
      Files.delete(directory.resolve("log.txt"));
      assertThat(files()).isEqualTo(before);
      assertThat(directory.resolve("old.txt")).hasContent("old");
      assertThat(directory.resolve("kit.baseline.csv")).hasContent("old");
    }
  }
}
