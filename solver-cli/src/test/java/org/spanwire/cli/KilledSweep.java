package org.spanwire.cli;

import java.io.File;
import java.io.IOException;
import java.net.URL;
import java.net.URLClassLoader;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.SplittableRandom;
import java.util.concurrent.TimeUnit;
import java.util.stream.Collectors;
import java.util.stream.Stream;

/**
 * The command in a process of its own, killed at random moments and resumed each time, until it has
 * been killed as often as asked for: the file must be the one that an uninterrupted run leaves.
 */
final class KilledSweep {

  static final long SEED = 1618L;

  private static final int KILLS = 20;
  private static final int MOST_SECONDS = 600;

  private static final List<String> OPTIONS =
      List.of(
          "--vary=span=18m:22m:25",
          "--vary=offset=20%:40%:5",
          "--vary=height=8m:11m:4",
          "--of=impedance,swr",
          "--frequency=7.1MHz,14.1MHz",
          "--threads=2",
          "--format=csv");

  private static final String DESIGN =
      """
      format: spanwire-design/1
      title: Hut kit under test
      parameters: {span: 20 m, height: 9 m, offset: 36 %}
      conductors: {strand: {material: copper, diameter: 2 mm}}
      wires: {radiator: {conductor: strand, path: [[0, 0, height], [span, 0, height]]}}
      feeds: {main: {wire: radiator, at: offset}}
      ground: {soil: medium-dry}
      """;

  private final Path directory;
  private final Path design;
  private final SplittableRandom random = new SplittableRandom(SEED);

  KilledSweep(Path directory) throws IOException {
    this.directory = directory;
    design = Files.writeString(directory.resolve("kit.yaml"), DESIGN);
  }

  /**
   * What came of it.
   *
   * @param kills processes that were killed before they were done
   * @param resumed those of them that left rows behind
   * @param different files that were not those of the uninterrupted run
   */
  record Outcome(int kills, int resumed, int different) {}

  Outcome run(int kills) throws IOException, InterruptedException {
    Path whole = directory.resolve("whole.csv");
    long start = System.nanoTime();
    finish(start(whole));
    double seconds = (System.nanoTime() - start) * 1e-9;
    byte[] expected = Files.readAllBytes(whole);
    Path file = directory.resolve("killed.csv");
    int killed = 0;
    int resumed = 0;
    int different = 0;
    while (killed < kills) {
      Process process = start(file, "--resume");
      long wait = (long) (1000 * seconds * (0.3 + 0.6 * random.nextDouble()));
      if (!process.waitFor(wait, TimeUnit.MILLISECONDS)) {
        process.destroyForcibly();
        process.waitFor();
        killed++;
        resumed += rowsBeside(file) > 0 ? 1 : 0;
      }
      if (Files.exists(file)) {
        different += same(file, expected);
      }
    }
    finish(start(file, "--resume"));
    different += same(file, expected);
    return new Outcome(killed, resumed, different);
  }

  /** 0 if a finished file is as expected; the next run begins anew. */
  private static int same(Path file, byte[] expected) throws IOException {
    boolean same = Arrays.equals(Files.readAllBytes(file), expected);
    Files.delete(file);
    return same ? 0 : 1;
  }

  /** Lines after the two of the head. */
  private static long rowsBeside(Path file) throws IOException {
    Path part = file.resolveSibling(file.getFileName() + ".part");
    if (!Files.exists(part)) {
      return 0;
    }
    try (Stream<String> lines = Files.lines(part)) {
      return Math.max(0, lines.count() - 2);
    }
  }

  private Process start(Path file, String... more) throws IOException {
    List<String> command = new ArrayList<>();
    command.add(Path.of(System.getProperty("java.home"), "bin", "java").toString());
    command.addAll(List.of("-XX:TieredStopAtLevel=1", "-XX:+UseSerialGC", "-cp"));
    command.add(classPath());
    command.addAll(List.of(Spanwire.class.getName(), "sweep", design.toString()));
    command.addAll(OPTIONS);
    command.add("--output=" + file);
    command.addAll(List.of(more));
    return new ProcessBuilder(command)
        .redirectErrorStream(true)
        .redirectOutput(directory.resolve("messages.txt").toFile())
        .start();
  }

  /** Some test runners load the classes by a loader of their own. */
  private static String classPath() {
    return Spanwire.class.getClassLoader() instanceof URLClassLoader loader
        ? Arrays.stream(loader.getURLs())
            .map(URL::getPath)
            .collect(Collectors.joining(File.pathSeparator))
        : System.getProperty("java.class.path");
  }

  private void finish(Process process) throws IOException, InterruptedException {
    boolean ended = process.waitFor(MOST_SECONDS, TimeUnit.SECONDS);
    if (!ended) {
      process.destroyForcibly();
    }
    if (!ended || process.exitValue() != 0) {
      throw new IllegalStateException(Files.readString(directory.resolve("messages.txt")));
    }
  }

  /** Arguments: number of kills. */
  public static void main(String[] args) throws IOException, InterruptedException {
    Outcome outcome =
        new KilledSweep(Files.createTempDirectory("killed-sweep"))
            .run(args.length > 0 ? Integer.parseInt(args[0]) : KILLS);
    System.out.println("killed sweeps: " + outcome);
    if (outcome.different() > 0 || outcome.resumed() == 0) {
      throw new IllegalStateException("a killed sweep is not what it would have been");
    }
  }
}
