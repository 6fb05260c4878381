package org.spanwire.cli;

import static org.assertj.core.api.Assertions.assertThat;

import java.nio.file.Files;
import java.nio.file.Path;
import java.util.Arrays;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import org.junit.jupiter.api.Test;

/** Runs the commands of the README and holds them to the output printed there. */
class ReadmeCommandsTest {

  private static final Path README = Path.of("..", "README.md");

  @Test
  void printWhatTheReadmeShows() throws Exception {
    Matcher blocks =
        Pattern.compile("```console\\n\\$ spanwire ([^\\n]*)\\n(.*?)```", Pattern.DOTALL)
            .matcher(Files.readString(README));
    int found = 0;
    while (blocks.find()) {
      found++;
      String[] args =
          Arrays.stream(blocks.group(1).split(" "))
              .map(arg -> arg.startsWith("solver-cli/") ? arg.substring(11) : arg)
              .toArray(String[]::new);
      Run run = Run.of(args);
      assertThat(run.err()).isEmpty();
      assertThat(run.code()).isZero();
      assertThat(run.out()).isEqualTo(blocks.group(2));
    }
    assertThat(found).isPositive();
  }
}
