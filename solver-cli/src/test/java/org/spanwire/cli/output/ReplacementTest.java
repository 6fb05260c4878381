package org.spanwire.cli.output;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.LinkedHashMap;
import java.util.Map;
import java.util.stream.Stream;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

class ReplacementTest {

  @TempDir private Path directory;

  private Map<Path, String> texts(String... names) {
    Map<Path, String> texts = new LinkedHashMap<>();
    for (String name : names) {
      texts.put(directory.resolve(name), "new " + name);
    }
    return texts;
  }

  private Stream<String> files() throws IOException {
    try (Stream<Path> files = Files.list(directory)) {
      return files.map(file -> file.getFileName().toString()).toList().stream();
    }
  }

  @Test
  void replacesAll() throws IOException {
    Files.writeString(directory.resolve("a"), "old a");
    Replacement.ofAll(texts("a", "b"));
    assertThat(directory.resolve("a")).hasContent("new a");
    assertThat(directory.resolve("b")).hasContent("new b");
    assertThat(files()).containsExactlyInAnyOrder("a", "b");
  }

  /** A directory with something in it cannot be replaced by a file. */
  @Test
  void leavesEverythingAsItWasIfOneFails() throws IOException {
    Files.writeString(directory.resolve("a"), "old a");
    Files.createDirectories(directory.resolve("c/full"));
    assertThatThrownBy(() -> Replacement.ofAll(texts("a", "b", "c")))
        .isInstanceOf(IOException.class);
    assertThat(directory.resolve("a")).hasContent("old a");
    assertThat(files()).containsExactlyInAnyOrder("a", "c");
    assertThat(directory.resolve("c/full")).isDirectory();
  }
}
