package org.spanwire.cli;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.nio.file.StandardCopyOption;
import java.util.List;
import java.util.Map;
import java.util.stream.Stream;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.condition.DisabledOnOs;
import org.junit.jupiter.api.condition.OS;

/** The launcher that the build leaves, run as a user runs it. */
@DisabledOnOs(value = OS.WINDOWS, disabledReason = "the launcher is a POSIX shell script")
class LauncherIT {

  private static final Path LAUNCHER = Path.of("target", "spanwire").toAbsolutePath();
  private static final String JAVA_HOME = System.getProperty("java.home");

  /** Another directory than the launcher's, with a blank in its name. */
  private Path elsewhere;

  @BeforeEach
  void makeDirectory() throws IOException {
    elsewhere = Files.createDirectories(Path.of("target", "launcher it").toAbsolutePath());
  }

  @Test
  void findsItsJarThroughAChainOfSymbolicLinks() throws Exception {
    Path absolute = link("absolute link", LAUNCHER);
    Path relative = link("relative", absolute.getFileName());

    Run run = run(Map.of("JAVA_HOME", JAVA_HOME), relative.toString(), "--version");

    assertThat(run.exitCode()).as(run.output()).isZero();
    assertThat(run.output()).startsWith("spanwire ").doesNotContain("${");
  }

  @Test
  void takesJavaFromThePathWithoutJavaHome() throws Exception {
    String path = JAVA_HOME + "/bin:/usr/bin:/bin";

    Run run = run(Map.of("PATH", path), LAUNCHER.toString(), "--version");

    assertThat(run.exitCode()).as(run.output()).isZero();
  }

  @Test
  void saysWhatToDoWithoutJava() throws Exception {
    for (String tool : List.of("dirname", "readlink")) {
      link(tool, where(tool));
    }

    Run run = run(Map.of("PATH", elsewhere.toString()), LAUNCHER.toString(), "--version");

    assertThat(run.exitCode()).isEqualTo(2);
    assertThat(run.output()).contains("install Java 17").hasLineCount(1);
  }

  @Test
  void handsOverArgumentsUnsplitAndReturnsTheExitCode() throws Exception {
    Run run = run(Map.of("JAVA_HOME", JAVA_HOME), LAUNCHER.toString(), "no such verb");

    assertThat(run.exitCode()).isEqualTo(2);
    assertThat(run.output()).contains("'no such verb'");
  }

  @Test
  void handsOverJvmOptions() throws Exception {
    Map<String, String> environment =
        Map.of("JAVA_HOME", JAVA_HOME, "SPANWIRE_OPTS", "-Xmx200m -XshowSettings:vm");

    Run run = run(environment, LAUNCHER.toString(), "--version");

    assertThat(run.output()).contains("Max. Heap Size: 200.00M");
  }

  /** Class data of another Java, or none at all, change nothing but the time it takes. */
  @Test
  void passesOverClassDataThatDoNotFit() throws Exception {
    Path home = Files.createDirectories(elsewhere.resolve("own copy"));
    Path copy = copy(LAUNCHER, home);
    copy(LAUNCHER.resolveSibling("spanwire.jar"), home);
    Run without = run(Map.of("JAVA_HOME", JAVA_HOME), copy.toString(), "--version");
    Path classes = Files.writeString(home.resolve("spanwire.jsa"), "not class data");
    Run wrong = run(Map.of("JAVA_HOME", JAVA_HOME), copy.toString(), "--version");
    Files.copy(
        LAUNCHER.resolveSibling("spanwire.jsa"), classes, StandardCopyOption.REPLACE_EXISTING);
    Run moved = run(Map.of("JAVA_HOME", JAVA_HOME), copy.toString(), "--version");

    assertThat(without.exitCode()).as(without.output()).isZero();
    assertThat(wrong).isEqualTo(without);
    assertThat(moved).isEqualTo(without);
  }

  private static Path copy(Path file, Path directory) throws IOException {
    return Files.copy(
        file,
        directory.resolve(file.getFileName()),
        StandardCopyOption.REPLACE_EXISTING,
        StandardCopyOption.COPY_ATTRIBUTES);
  }

  /** The build's class data are those that the launcher's Java takes. */
  @Test
  void startsFromTheClassDataOfTheBuild() throws Exception {
    Map<String, String> environment =
        Map.of("JAVA_HOME", JAVA_HOME, "SPANWIRE_OPTS", "-Xlog:class+load:stdout");

    Run run = run(environment, LAUNCHER.toString(), "--version");

    assertThat(run.output())
        .containsPattern("org\\.spanwire\\.cli\\.Spanwire source: shared objects file");
  }

  private Path link(String name, Path target) throws IOException {
    Path link = elsewhere.resolve(name);
    Files.deleteIfExists(link);
    return Files.createSymbolicLink(link, target);
  }

  private static Path where(String tool) {
    return Stream.of("/usr/bin", "/bin")
        .map(directory -> Path.of(directory, tool))
        .filter(Files::isExecutable)
        .findFirst()
        .orElseThrow();
  }

  /** Runs a command in the given environment, {@code PATH} being the system's unless it says so. */
  private Run run(Map<String, String> environment, String... command)
      throws IOException, InterruptedException {
    ProcessBuilder builder = new ProcessBuilder(command).directory(elsewhere.toFile());
    builder.redirectErrorStream(true).environment().clear();
    builder.environment().put("PATH", "/usr/bin:/bin");
    builder.environment().putAll(environment);
    Process process = builder.start();
    process.getOutputStream().close();
    String output = new String(process.getInputStream().readAllBytes(), StandardCharsets.UTF_8);
    return new Run(process.waitFor(), output);
  }

  private record Run(int exitCode, String output) {}
}
