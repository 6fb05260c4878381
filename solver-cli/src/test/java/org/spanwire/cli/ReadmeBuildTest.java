package org.spanwire.cli;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.File;
import java.io.IOException;
import java.nio.charset.StandardCharsets;
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

  @BeforeEach
  void prepare() throws IOException {
    String whole = Files.readString(Path.of("..", "README.md"));
    int begin = whole.indexOf(SECTION);
    readme = whole.substring(begin, whole.indexOf("\n## ", begin));
    Path command = directory.resolve("spanwire");
    Files.writeString(
        command,
        "#!/bin/sh\nexec '"
            + Path.of(System.getProperty("java.home"), "bin", "java")
            + "' -cp '"
            + System.getProperty("java.class.path")
            + "' org.spanwire.cli.Spanwire \"$@\"\n");
    assertThat(command.toFile().setExecutable(true)).isTrue();
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

  private int shell(String script) throws IOException, InterruptedException {
    ProcessBuilder builder = new ProcessBuilder("/bin/sh", "-c", script);
    builder
        .environment()
        .merge("PATH", directory.toString(), (path, own) -> own + File.pathSeparator + path);
    Path log = directory.resolve("log.txt");
    Process process =
        builder
            .directory(directory.toFile())
            .redirectErrorStream(true)
            .redirectOutput(log.toFile())
            .start();
    process.getOutputStream().close();
    return process.waitFor();
  }

  private String log() throws IOException {
    return Files.readString(directory.resolve("log.txt"), StandardCharsets.UTF_8);
  }

  @Test
  void theRequirementsOfTheReadmeAreRead() throws IOException {
    String design = Files.readString(Run.EXAMPLES.resolve("hut-kit-short.yaml"));
    design = design.substring(0, design.indexOf("requirements:"));
    String requirements = block("yaml", SECTION).replace("band: 40 m", "band: 60 m");
    // The band of the example is 15 kHz wide.
    requirements = requirements.replace("min: 150 kHz", "min: 15 kHz");
    assertThat(DesignReader.read(design + requirements, "readme.yaml").requirements()).hasSize(6);
    assertThat(JsonSchema.design().faultsOfYaml(design + requirements)).isEmpty();
  }

  @Test
  void theStepsOfABuildPassUntilADesignIsSpoilt() throws Exception {
    assertThat(shell(block("sh", "Once, and again"))).as(log()).isZero();
    assertThat(directory.resolve("designs/inverted-v.baseline.csv")).exists();
    String build = block("sh", "build server that collects");
    assertThat(build.lines().toList()).containsSubsequence(List.of("set -e"));
    assertThat(shell(build)).as(log()).isZero();
    assertThat(directory.resolve("TEST-designs.xml")).content().contains("failures=\"0\"");
    Path design = directory.resolve("designs/inverted-v.yaml");
    Files.writeString(design, Files.readString(design).replace("10.2 m", "10.251 m"));
    assertThat(shell(build)).as(log()).isEqualTo(1);
    assertThat(log()).contains("reactance_ohm");
    Files.writeString(design, Files.readString(design).replace("10.251 m", "9.2 m"));
    assertThat(shell(build)).isEqualTo(1);
    assertThat(log()).contains("requirements are not met").doesNotContain("results moved");
  }
}
