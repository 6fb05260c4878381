package org.spanwire.cli;

import java.io.IOException;
import java.io.UncheckedIOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.Set;
import java.util.SplittableRandom;
import java.util.TreeMap;
import java.util.stream.Stream;

/**
 * Random command lines on sound, damaged and missing files. Each must end with one of the exit
 * codes 0 to 3; with 2 or 3 it says why in one line, prints no result and leaves no file behind.
 */
final class CommandFuzz {

  static final long SEED = 31_415L;

  private static final int LINES = 100_000;

  private static final String DESIGN =
      """
      format: spanwire-design/1
      title: Hut kit under test
      parameters: {span: {value: 20 m, spread: 0.1 m}, height: 9 m}
      conductors: {strand: {material: copper, diameter: 2 mm}}
      wires: {radiator: {conductor: strand, path: [[0, 0, height], [span, 0, height]]}}
      feeds: {main: {wire: radiator, at: 40 %}}
      ground: perfect
      feed-chain: [transformer: {ratio: 4}, line: {impedance: 50 ohm, length: 9 m, velocity-factor: 0.7}]
      bands: {plan: iaru-region-1, use: [60 m]}
      frequencies: [5.36 MHz]
      requirements: [{band: 60 m, swr: {max: 9}}]
      """;

  /** Commands with options of their own; those that take minutes by their nature are left out. */
  private static final Map<String, List<String>> COMMANDS =
      Map.ofEntries(
          Map.entry(
              "solve",
              List.of("--frequency", "--elevation", "--azimuth", "--currents", "--power-balance")),
          Map.entry("bands", List.of("--points")),
          Map.entry(
              "response",
              List.of("--range", "--step", "--plane", "--elevation", "--azimuth", "--touchstone")),
          Map.entry(
              "sweep", List.of("--vary", "--of", "--frequency", "--plane", "--shard", "--resume")),
          Map.entry("cut", List.of()),
          Map.entry("check", List.of("--junit")),
          Map.entry("baseline compare", List.of("--directory")),
          Map.entry("baseline record", List.of("--directory")),
          Map.entry("balun bench", List.of()),
          Map.entry("merge", List.of()),
          Map.entry("schema", List.of()));

  private static final List<String> COMMON =
      List.of(
          "--set",
          "--tolerance",
          "--threads",
          "--format",
          "--output",
          "--no-such-option",
          "--help");

  /** Options whose value names what is written. */
  private static final Set<String> WRITING =
      Set.of("--output", "--junit", "--directory", "--touchstone");

  private static final String[] VALUES = {
    "",
    "0",
    "-1",
    "2",
    "3",
    "5.36MHz",
    "5MHz:6MHz",
    "6MHz:5MHz",
    "out.s1p",
    "7.1MHz,14MHz",
    "1e999",
    "nan",
    "10,30",
    "95",
    "span=21m",
    "span=-3m",
    "span=1e300m",
    "height=0m",
    "none=1",
    "=",
    "span=",
    "span=20m:21m:2",
    "span=20m:21m:0",
    "span=20m:21m:-5",
    "span=1:2:2",
    "height=1m,2m",
    "impedance,swr",
    "swr,swr",
    "gain",
    "1/2",
    "3/2",
    "0/0",
    "auto",
    "feedpoint",
    "transmitter",
    "text",
    "json",
    "csv",
    "xml",
    "0.1%",
    "5%",
    "200%",
    "9999999999999999999",
    "é",
    "\u0000",
    "--",
    "design",
    "a b",
    "../x",
    "/"
  };

  private final Path directory;

  CommandFuzz(Path directory) {
    this.directory = directory;
  }

  /**
   * Runs all lines and exits with 1 if one breaks the promise.
   *
   * @param args number of lines, and the first; 100,000 and 0 without
   */
  public static void main(String[] args) throws IOException {
    int lines = args.length > 0 ? Integer.parseInt(args[0]) : LINES;
    int first = args.length > 1 ? Integer.parseInt(args[1]) : 0;
    List<String> faults = new ArrayList<>();
    Path directory = Files.createTempDirectory("command-fuzz");
    Map<String, Integer> counts = new CommandFuzz(directory).run(SEED, first, lines, faults);
    counts.forEach((name, count) -> System.out.println(count + " " + name));
    faults.forEach(System.out::println);
    System.exit(faults.isEmpty() ? 0 : 1);
  }

  /** Runs a stretch of the sequence of lines. */
  Map<String, Integer> run(long seed, int first, int lines, List<String> faults)
      throws IOException {
    Map<String, Integer> counts = new TreeMap<>();
    for (int i = first; i < first + lines; i++) {
      clear();
      SplittableRandom random = new SplittableRandom(seed * 1_000_003 + i);
      List<String> line = line(random);
      Set<String> before = files();
      Run run = Run.of(line.toArray(new String[0]));
      String fault = fault(run, before);
      counts.merge("exit code " + run.code(), 1, Integer::sum);
      if (!fault.isEmpty()) {
        faults.add("line " + i + ": " + fault + ": " + line + "\n" + run.err());
      }
    }
    return counts;
  }

  private List<String> line(SplittableRandom random) throws IOException {
    List<String> names = COMMANDS.keySet().stream().sorted().toList();
    String command = names.get(random.nextInt(names.size()));
    List<String> line = new ArrayList<>(List.of(command.split(" ", 2)));
    line.add(file(random));
    List<String> options = new ArrayList<>(COMMANDS.get(command));
    options.addAll(COMMON);
    for (int n = random.nextInt(4); n > 0; n--) {
      String option = options.get(random.nextInt(options.size()));
      line.add(option);
      // An option left without its value would take the next option for the name of a file.
      if (random.nextInt(8) > 0 || WRITING.contains(option)) {
        String value =
            random.nextInt(12) == 0 ? file(random) : VALUES[random.nextInt(VALUES.length)];
        line.add(WRITING.contains(option) ? inside(value) : value);
      }
    }
    if (Set.of("solve", "bands", "response", "sweep").contains(command)) {
      line.addAll(List.of("--tolerance", "5%"));
    }
    return line;
  }

  /** A path that does not leave the directory, whatever the value. */
  private String inside(String value) {
    return value.startsWith(directory.toString())
        ? value
        : directory + "/" + value.replace("..", "up");
  }

  /** Sound in half the cases. */
  private String file(SplittableRandom random) throws IOException {
    Path file = directory.resolve("kit.yaml");
    StringBuilder text = new StringBuilder(DESIGN);
    switch (random.nextInt(8)) {
      case 0 -> {
        return directory.resolve("missing.yaml").toString();
      }
      case 1 -> {
        return directory.toString();
      }
      case 2, 3 -> {
        for (int damage = 1 + random.nextInt(3); damage > 0; damage--) {
          int at = random.nextInt(text.length());
          if (random.nextBoolean()) {
            text.deleteCharAt(at);
          } else {
            text.insert(at, (char) random.nextInt(1, 256));
          }
        }
      }
      default -> {}
    }
    Files.writeString(file, text);
    return file.toString();
  }

  private String fault(Run run, Set<String> before) {
    if (run.code() < 0 || run.code() > 3) {
      return "exit code " + run.code();
    }
    if (run.code() < 2) {
      return run.out().contains("NaN") ? "prints what is no number" : "";
    }
    List<String> said =
        run.err().lines().filter(l -> !l.startsWith("spanwire: warning: ")).toList();
    if (said.size() != 1 || !said.get(0).startsWith("spanwire: ")) {
      return "says " + said.size() + " lines";
    }
    if (!run.out().isEmpty()) {
      return "prints a result";
    }
    Set<String> after = files();
    return before.containsAll(after) ? "" : "leaves " + after;
  }

  private Set<String> files() {
    try (Stream<Path> files = Files.walk(directory)) {
      return Set.copyOf(files.map(Path::toString).toList());
    } catch (IOException e) {
      throw new UncheckedIOException(e);
    }
  }

  private void clear() throws IOException {
    try (Stream<Path> files = Files.walk(directory)) {
      for (Path file : files.sorted((a, b) -> b.compareTo(a)).toList()) {
        if (!file.equals(directory)) {
          Files.delete(file);
        }
      }
    }
  }
}
