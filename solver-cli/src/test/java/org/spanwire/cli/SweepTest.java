package org.spanwire.cli;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.withinPercentage;

import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.Random;
import java.util.stream.Stream;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

class SweepTest {

  private static final String DESIGN =
      """
      format: spanwire-design/1
      title: Hut kit under test
      parameters:
        height: 10 m
        offset: 36 %
      conductors:
        strand: {material: copper, diameter: 2 mm}
      wires:
        radiator: {conductor: strand, path: [[0, 0, height], [20, 0, height]]}
      feeds:
        main: {wire: radiator, at: offset}
      ground: perfect
      bands: {plan: iaru-region-1, use: [40 m]}
      frequencies: [7.1 MHz]
      """;

  private static final int ROWS = 18;
  private static final int KILLS = 20;

  @TempDir private Path directory;
  private Path design;

  @BeforeEach
  void write() throws IOException {
    design = Files.writeString(directory.resolve("kit.yaml"), DESIGN);
  }

  private Run sweep(String... options) {
    return Run.of(
        Stream.concat(Stream.of("sweep", design.toString()), Arrays.stream(options))
            .toArray(String[]::new));
  }

  /** Three heights, one of them in the ground, three offsets and two frequencies to a file. */
  private Run map(Path file, String... more) {
    List<String> options =
        new ArrayList<>(
            List.of(
                "--vary=height=8m,9m,-1m",
                "--vary=offset=20%:40%:3",
                "--of=impedance,swr",
                "--frequency=7.1MHz,14.1MHz",
                "--format=csv",
                "--output=" + file));
    options.addAll(List.of(more));
    Run run = sweep(options.toArray(String[]::new));
    assertThat(run.out()).isEmpty();
    return run;
  }

  private Path whole() {
    Path file = directory.resolve("whole.csv");
    assertThat(map(file).code()).isZero();
    return file;
  }

  private Path shard(int k, int n) {
    Path file = directory.resolve("part." + k + ".csv");
    assertThat(map(file, "--shard=" + k + "/" + n).code()).isZero();
    return file;
  }

  private static Path beside(Path file) {
    return file.resolveSibling(file.getFileName() + ".part");
  }

  @Test
  void rowsAreInSiUnitsAndInOrder() throws IOException {
    List<String> lines = Files.readAllLines(whole());
    assertThat(lines.get(0))
        .isEqualTo("height,offset,frequency_hz,resistance_ohm,reactance_ohm,swr,status");
    assertThat(lines).hasSize(ROWS + 1);
    assertThat(lines.get(1)).matches("8\\.0,0\\.2,7100000\\.0(,-?[0-9.]+){3},ok");
    assertThat(lines.get(2)).startsWith("8.0,0.2,1.41E7,");
    assertThat(lines.get(3)).startsWith("8.0,0.30000000000000004,7100000.0,");
    assertThat(lines.get(7)).startsWith("9.0,0.2,7100000.0,");
    // One mesh for all places and one for each place agree within the tolerances of both.
    assertThat(Double.parseDouble(lines.get(1).split(",")[3]))
        .isCloseTo(
            Double.parseDouble(
                Run.of(
                        "solve",
                        design.toString(),
                        "--set=height=8m",
                        "--set=offset=20%",
                        "--format=csv")
                    .out()
                    .lines()
                    .toList()
                    .get(1)
                    .split(",")[2]),
            withinPercentage(0.2));
  }

  /**
   * In free space a wire may lie anywhere, so it is a feed off its wire that cannot be modelled.
   */
  @Test
  void aPointWithoutResultHasItsReason() {
    Run run = sweep("--vary=offset=20%,120%", "--of=swr", "--format=csv");
    assertThat(run.code()).isZero();
    assertThat(run.out().lines().toList().get(2)).isEqualTo("1.2,7100000.0,,bad-design");
    assertThat(run.err()).contains("rows without a result: 1; the first one:", "kit.yaml:11:");
  }

  @Test
  void tellsTheCostBeforeItStarts() {
    assertThat(map(directory.resolve("map.csv")).err())
        .contains("points x frequencies = rows: 9 x 2 = 18; solves to do: 6")
        .contains("one solve takes", "at most for all");
  }

  @Test
  void theNumberOfThreadsDoesNotShow() throws IOException {
    Path one = directory.resolve("one.csv");
    map(one, "--threads=1");
    assertThat(one).hasSameBinaryContentAs(whole());
  }

  @Test
  void fourShardsMergedAreTheWholeToTheByte() throws IOException {
    Path merged = directory.resolve("merged.csv");
    Run merge =
        Run.of(
            "merge",
            shard(3, 4).toString(),
            shard(1, 4).toString(),
            shard(4, 4).toString(),
            shard(2, 4).toString(),
            "--output=" + merged);
    assertThat(merge.err()).isEmpty();
    assertThat(merge.code()).isZero();
    assertThat(merged).hasSameBinaryContentAs(whole());
  }

  @Test
  void mergeRefusesWhatIsNotAllOfOneSweep() throws IOException {
    Path first = shard(1, 2);
    Path second = shard(2, 2);
    Path merged = directory.resolve("merged.csv");
    refused(merged, "shards [2] of 2 are missing", first);
    refused(merged, "once more", first, second, second);
    refused(merged, "no part of a sweep", first, whole());
    refused(merged, "no such file", first, directory.resolve("part.9.csv"));
    Path torn = directory.resolve("torn.csv");
    byte[] bytes = Files.readAllBytes(second);
    Files.write(torn, Arrays.copyOf(bytes, bytes.length - 3));
    refused(merged, "--resume", first, torn);
    Path other = directory.resolve("other.csv");
    map(other, "--shard=2/2", "--tolerance=0.2%");
    refused(merged, "another sweep", first, other);
  }

  private static void refused(Path merged, String why, Path... parts) {
    List<String> args = new ArrayList<>(List.of("merge", "--output=" + merged));
    Arrays.stream(parts).map(Path::toString).forEach(args::add);
    Run run = Run.of(args.toArray(String[]::new));
    assertThat(run.err()).contains(why).hasLineCount(1);
    assertThat(run.code()).isEqualTo(2);
    assertThat(merged).doesNotExist();
  }

  /** A kill leaves what was appended so far, cut anywhere. */
  @Test
  void killedAnywhereAndResumedIsTheWholeToTheByte() throws IOException {
    byte[] complete = Files.readAllBytes(whole());
    String header =
        Files.readAllLines(shard(1, 2)).get(0).replaceAll("shard .*", "shard 1/1 rows 0 to 18\n");
    byte[] part =
        (header + new String(complete, StandardCharsets.UTF_8)).getBytes(StandardCharsets.UTF_8);
    Random random = new Random(11);
    Path file = directory.resolve("killed.csv");
    for (int kill = 0; kill < KILLS; kill++) {
      int kept = kill == 0 ? part.length : random.nextInt(part.length);
      Files.deleteIfExists(file);
      Files.write(beside(file), Arrays.copyOf(part, kept));
      Run run = map(file, "--resume");
      assertThat(run.code()).as("killed after %d bytes", kept).isZero();
      assertThat(Files.readAllBytes(file)).as("killed after %d bytes", kept).isEqualTo(complete);
      assertThat(beside(file)).doesNotExist();
    }
  }

  @Test
  void aShardIsResumedTooAndACompleteOneLeftAsItIs() throws IOException {
    Path file = shard(2, 3);
    byte[] complete = Files.readAllBytes(file);
    assertThat(map(file, "--shard=2/3", "--resume").err())
        .contains("already there: 6; solves to do: 0");
    Files.move(file, beside(file));
    Files.write(beside(file), Arrays.copyOf(complete, complete.length - 70));
    assertThat(map(file, "--shard=2/3", "--resume").err()).contains("already there: ");
    assertThat(Files.readAllBytes(file)).isEqualTo(complete);
  }

  @Test
  void whatBelongsToAnotherSweepIsNotGoneOnWith() throws IOException {
    Path file = shard(1, 2);
    Files.move(file, beside(file));
    byte[] part = Files.readAllBytes(beside(file));
    for (String other :
        new String[] {"--tolerance=0.2%", "--set=height=11m", "--plane=transmitter"}) {
      Run run = map(file, "--shard=1/2", "--resume", other);
      assertThat(run.code()).isEqualTo(2);
      assertThat(run.err()).contains("another sweep").hasLineCount(1);
    }
    Run forgotten = map(file, "--shard=1/2");
    assertThat(forgotten.code()).isEqualTo(2);
    assertThat(forgotten.err()).contains("add --resume").hasLineCount(1);
    Files.writeString(design, DESIGN.replace("2 mm", "3 mm"));
    assertThat(map(file, "--shard=1/2", "--resume").err()).contains("another sweep");
    assertThat(Files.readAllBytes(beside(file))).isEqualTo(part);
  }

  @Test
  void jsonKeepsToTheSchema() throws IOException {
    Run run =
        sweep(
            "--vary=offset=20%:120%:3",
            "--of=impedance,gain,unknowns", "--bands", "--points=2", "--format=json");
    assertThat(run.code()).isZero();
    assertThat(JsonSchema.result().faultsOfJson(run.out())).isEmpty();
    assertThat(run.out()).contains("\"offset\" : 0.7", "bad-design", "\"message\"");
  }

  @Test
  void aSampleHasAsManyPlacesAsAsked() {
    Run run = sweep("--vary=height=5m:9m", "--vary=offset=20%:40%", "--sample=5", "--of=swr");
    assertThat(run.code()).isZero();
    assertThat(run.out().lines().filter(line -> line.endsWith("  ok"))).hasSize(5);
  }

  @ParameterizedTest
  @CsvSource(
      delimiter = '|',
      quoteCharacter = '"',
      value = {
        "--vary heigth=5m:9m:3 --of swr           | unknown parameter 'heigth' | height, offset",
        "--vary height=5m:9m:0 --of swr           | count '0'                  | from 1",
        "--vary height=5m:9m:many --of swr        | count 'many'               | whole number",
        "--vary height=5m:9m --of swr             | needs a count              | 5m:12m:15",
        "--vary height=5m:9m:3:4 --of swr         | too many colons            | 5m:12m:15",
        "--vary height --of swr                   | is not NAME=VALUES         | 5m:12m:15",
        "--vary height=5MHz,9m --of swr           | 5 MHz is a frequency       | a length",
        "--vary height=5m,,9m --of swr            | no quantity                | 27.3 m",
        "--vary height=5m --vary height=6m --of swr | varied twice             | once",
        "--vary height=5m:9m:3 --of colour        | 'colour'                   | impedance, ",
        "--vary height=5m:9m:3                    | --of                       | sweep --help",
        "--of swr                                 | --vary                     | sweep --help",
        "--vary height=5m:9m:3 --of swr --sample 4 | without a count           | 5m:12m",
        "--vary height=5m:9m --of swr --sample 0  | --sample 0                 | between 1",
        "--vary height=5m --of swr --bands --points 1 | --points 1             | between 2",
        "--vary height=5m --of swr --feed second  | --feed second              | main",
        "--vary height=5m --of swr --resume       | --resume                   | --format csv",
        "--vary height=5m --of swr --shard 1/2    | --shard                    | --format csv",
        "--vary height=5m --of swr --shard 3/2    | shard 3 of 2               | counted from 1",
        "--vary height=5m --of swr --azimuth 0    | --azimuth                  | --elevation 30",
        "--vary height=5m --of swr --plane tower  | 'tower'                  | feedpoint, ",
        "--vary height=5m --of swr --bands --frequency 7MHz | exclusive        | --help"
      })
  void badUsageIsOneLineThatNamesTheFaultAndTheRemedy(String line, String fault, String remedy) {
    Run run = sweep(line.split(" "));
    assertThat(run.err()).startsWith("spanwire: ").contains(fault, remedy).hasLineCount(1);
    assertThat(run.code()).isEqualTo(2);
    assertThat(run.out()).isEmpty();
  }
}
