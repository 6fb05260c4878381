package org.spanwire.cli;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.IOException;
import java.nio.file.FileSystems;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.Arrays;
import org.junit.jupiter.api.Assumptions;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/** Whatever is written has the rights that new files of the user have. */
class FileRightsTest {

  private static final String DESIGN =
      """
      format: spanwire-design/1
      title: Hut kit under test
      parameters: {height: 9 m}
      conductors: {strand: {material: copper, diameter: 2 mm}}
      wires: {radiator: {conductor: strand, path: [[0, 0, height], [20, 0, height]]}}
      feeds: {main: {wire: radiator, at: 40 %}}
      ground: perfect
      frequencies: [7.1 MHz]
      """;

  @TempDir private Path directory;

  private String path(String name) {
    return directory.resolve(name).toString();
  }

  private void run(String... arguments) {
    Run run = Run.of(arguments);
    assertThat(run.code()).as(run.err()).isZero();
  }

  @Test
  void followTheUsersMask() throws IOException {
    Assumptions.assumeTrue(
        FileSystems.getDefault().supportedFileAttributeViews().contains("posix"));
    Path kit = Files.writeString(directory.resolve("kit.yaml"), DESIGN);
    String[] sweep = {"sweep", kit.toString(), "--vary", "height=8m,9m", "--of", "swr"};
    run("solve", kit.toString(), "--output", path("solved.txt"));
    run(plus(sweep, "--output", path("rows.txt")));
    run(plus(sweep, "--format", "csv", "--output", path("whole.csv")));
    run(plus(sweep, "--format", "csv", "--shard", "1/2", "--output", path("one.csv")));
    run(plus(sweep, "--format", "csv", "--shard", "2/2", "--output", path("two.csv")));
    run("merge", path("one.csv"), path("two.csv"), "--output", path("merged.csv"));
    Path plain = Files.createFile(directory.resolve("plain"));
    for (String name : new String[] {"solved.txt", "rows.txt", "whole.csv", "merged.csv"}) {
      assertThat(Files.getPosixFilePermissions(directory.resolve(name)))
          .as(name)
          .isEqualTo(Files.getPosixFilePermissions(plain));
    }
  }

  private static String[] plus(String[] first, String... more) {
    String[] all = Arrays.copyOf(first, first.length + more.length);
    System.arraycopy(more, 0, all, first.length, more.length);
    return all;
  }
}
