package org.spanwire.cli;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.condition.DisabledOnOs;
import org.junit.jupiter.api.condition.OS;
import org.junit.jupiter.api.io.TempDir;
import org.spanwire.design.DesignReader;

/** What the README says about designs in a build, run as a build server would. */
@DisabledOnOs(value = OS.WINDOWS, disabledReason = "the README's lines are for a POSIX shell")
class ReadmeBuildTest {

  private static final String SECTION = "## Designs in a build";

  @TempDir private Path directory;
  private String readme;
  private Shell shell;

  @BeforeEach
  void prepare() throws IOException {
    String whole = Files.readString(Path.of("..", "README.md"));
    int begin = whole.indexOf(SECTION);
    readme = whole.substring(begin, whole.indexOf("\n## ", begin));
    shell = new Shell(directory);
    Files.createDirectory(directory.resolve("designs"));
    Files.copy(
        Run.EXAMPLES.resolve("mast-inverted-v.yaml"), directory.resolve("designs/inverted-v.yaml"));
  }

  /** The first fenced block of a language after a sentence. */
  private String block(String language, String after) {
    int from =
        readme.indexOf("```" + language + "\n", readme.indexOf(after)) + 4 + language.length();
    return readme.substring(from, readme.indexOf("```", from));
  }

  @Test
  void theRequirementsOfTheReadmeAreRead() throws IOException {
    String design = Files.readString(Run.EXAMPLES.resolve("hut-kit-short.yaml"));
    design = design.substring(0, design.indexOf("requirements:"));
    String requirements = block("yaml", SECTION).replace("band: 40 m", "band: 60 m");
    // The band of the example is 15 kHz wide.
    requirements = requirements.replace("min: 150 kHz", "min: 15 kHz");
    assertThat(DesignReader.read(design + requirements, "readme.yaml").requirements()).hasSize(8);
    assertThat(JsonSchema.design().faultsOfYaml(design + requirements)).isEmpty();
  }

  @Test
  void theStepsOfABuildPassUntilADesignIsSpoilt() throws Exception {
    assertThat(shell.run(block("sh", "Once, and again"))).as(shell.log()).isZero();
    assertThat(directory.resolve("designs/inverted-v.baseline.csv")).exists();
    String build = block("sh", "build server that collects");
    assertThat(build.lines().toList()).containsSubsequence(List.of("set -e"));
    assertThat(shell.run(build)).as(shell.log()).isZero();
    assertThat(directory.resolve("TEST-designs.xml")).content().contains("failures=\"0\"");
    Path design = directory.resolve("designs/inverted-v.yaml");
    Files.writeString(design, Files.readString(design).replace("10.2 m", "10.251 m"));
    assertThat(shell.run(build)).as(shell.log()).isEqualTo(1);
    assertThat(shell.log()).contains("reactance_ohm");
    Files.writeString(design, Files.readString(design).replace("10.251 m", "9.2 m"));
    assertThat(shell.run(build)).isEqualTo(1);
    assertThat(shell.log())
        .contains("1 of 2 requirements is not met")
        .doesNotContain("results moved");
  }
}
