package org.spanwire.validation;

import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.Instant;
import java.time.temporal.ChronoUnit;
import java.util.Optional;
import java.util.stream.Stream;

/**
 * What a run was made of.
 *
 * @param commit revision of the sources, marked if files differ from it
 * @param jdk Java runtime
 * @param machine class of the machine
 * @param date date and time, UTC
 */
record RunStamp(String commit, String jdk, String machine, Instant date) {

  private static final String UNKNOWN = "unknown";

  /** The stamp of a run here and now. */
  static RunStamp now() {
    Runtime.Version version = Runtime.version();
    return new RunStamp(
        currentCommit(),
        "JDK " + version + ", " + System.getProperty("java.vm.name"),
        machineClass(),
        Instant.now().truncatedTo(ChronoUnit.SECONDS));
  }

  private static String currentCommit() {
    Optional<String> revision = git("rev-parse", "HEAD");
    if (revision.isEmpty()) {
      return UNKNOWN + " (not in a Git working tree)";
    }
    boolean clean = git("status", "--porcelain").filter(String::isEmpty).isPresent();
    return revision.get() + (clean ? "" : " with changes not committed");
  }

  private static Optional<String> git(String... arguments) {
    String[] command = Stream.concat(Stream.of("git"), Stream.of(arguments)).toArray(String[]::new);
    try {
      Process process = new ProcessBuilder(command).start();
      String output =
          new String(process.getInputStream().readAllBytes(), StandardCharsets.UTF_8).strip();
      return process.waitFor() == 0 ? Optional.of(output) : Optional.empty();
    } catch (IOException e) {
      return Optional.empty();
    } catch (InterruptedException e) {
      Thread.currentThread().interrupt();
      return Optional.empty();
    }
  }

  private static String machineClass() {
    return System.getProperty("os.name")
        + " "
        + System.getProperty("os.arch")
        + ", "
        + Runtime.getRuntime().availableProcessors()
        + " processors, "
        + processorModel();
  }

  private static String processorModel() {
    Path information = Path.of("/proc/cpuinfo");
    if (!Files.isReadable(information)) {
      return "processor model " + UNKNOWN;
    }
    try (Stream<String> lines = Files.lines(information)) {
      return lines
          .filter(line -> line.startsWith("model name"))
          .findFirst()
          .map(line -> line.substring(line.indexOf(':') + 1).strip())
          .orElse("processor model " + UNKNOWN);
    } catch (IOException e) {
      return "processor model " + UNKNOWN;
    }
  }
}
