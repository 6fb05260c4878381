package org.spanwire.cli;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.IOException;
import java.io.RandomAccessFile;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.Duration;
import java.util.List;
import java.util.regex.Pattern;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/** Designs with one fault each: one line with its place, what was expected and what to do. */
class BadDesignTest {

  private static final String GOOD =
      """
      format: spanwire-design/1
      title: Hut kit under test
      conductors:
        strand: {material: copper, diameter: 2 mm}
      wires:
        radiator: {conductor: strand, path: [[0, 0, 10], [20, 0, 10]]}
      feeds:
        main: {wire: radiator, at: 36 %}
      ground: {soil: medium-dry}
      bands: {plan: iaru-region-1, use: [40 m]}
      frequencies: [7.1 MHz]
      """;

  @TempDir private Path directory;
  private Path file;

  @BeforeEach
  void name() {
    file = directory.resolve("kit.yaml");
  }

  private static List<Run> everyCommand(Path file) {
    return List.of(Run.of("solve", file.toString()), Run.of("bands", file.toString()));
  }

  private void refused(String design, int line, String... words) throws IOException {
    Files.writeString(file, design);
    for (Run run : everyCommand(file)) {
      assertThat(run.err())
          .matches("(?s)spanwire: " + Pattern.quote(file + ":" + line + ":") + "\\d+: .*")
          .contains(words)
          .hasLineCount(1);
      assertThat(run.code()).isEqualTo(2);
      assertThat(run.out()).isEmpty();
    }
  }

  private static String with(String old, String changed) {
    assertThat(GOOD).contains(old);
    return GOOD.replace(old, changed);
  }

  @Test
  void unknownKey() throws IOException {
    refused(with("material: copper", "metal: copper"), 4, "'metal'", "material");
  }

  @Test
  void wrongUnit() throws IOException {
    refused(with("2 mm", "2 MHz"), 4, "2 MHz", "length");
  }

  @Test
  void unknownWire() throws IOException {
    refused(with("wire: radiator, at", "wire: radiatr, at"), 8, "'radiatr'", "radiator");
  }

  @Test
  void notYaml() throws IOException {
    refused(with("[20, 0, 10]]", "[20, 0, 10]"), 6, "expected ',' or ']'");
  }

  @Test
  void missingFile() {
    for (Run run : everyCommand(file)) {
      assertThat(run.err()).isEqualTo("spanwire: " + file + ": no such file; check the path\n");
      assertThat(run.code()).isEqualTo(2);
    }
  }

  @Test
  void aFileOfHundredMegabytesIsRefusedUnread() throws IOException {
    try (RandomAccessFile big = new RandomAccessFile(file.toFile(), "rw")) {
      big.setLength(100L << 20);
    }
    long before = System.nanoTime();
    for (Run run : everyCommand(file)) {
      assertThat(run.err())
          .startsWith("spanwire: " + file + ": ")
          .contains("104857600 bytes", "limit")
          .hasLineCount(1);
      assertThat(run.code()).isEqualTo(2);
    }
    assertThat(Duration.ofNanos(System.nanoTime() - before)).isLessThan(Duration.ofSeconds(2));
  }

  @Test
  void anAliasBombIsRefused() throws IOException {
    StringBuilder bomb = new StringBuilder("a0: &a0 [x, x, x, x, x, x, x, x, x]\n");
    for (int i = 1; i < 30; i++) {
      bomb.append("a").append(i).append(": &a").append(i).append(" [");
      bomb.append(("*a" + (i - 1) + ", ").repeat(9)).append("x]\n");
    }
    refused(bomb + GOOD, 1, "anchor");
  }

  @Test
  void deepNestingIsRefused() throws IOException {
    Files.writeString(file, GOOD + "power: " + "[".repeat(100_000));
    for (Run run : everyCommand(file)) {
      assertThat(run.err()).startsWith("spanwire: " + file + ":").hasLineCount(1);
      assertThat(run.code()).isEqualTo(2);
    }
  }

  @Test
  void feedOffTheWire() throws IOException {
    refused(with("at: 36 %", "at: 136 %"), 8, "1.36", "0 to 100 %");
    refused(with("at: 36 %", "at: 21 m"), 8, "'main'", "21", "20", "place it between");
  }

  @Test
  void feedAtAFreeEnd() throws IOException {
    refused(with("at: 36 %", "at: 0 %"), 8, "'main'", "free end", "inward");
  }

  @Test
  void wireThroughTheGround() throws IOException {
    String through = with("[20, 0, 10]]", "[20, 0, -1]]");
    refused(through, 6, "'radiator'", "below the ground", "raise it");
    refused(through.replace("{soil: medium-dry}", "perfect"), 6, "'radiator'", "below", "raise it");
  }

  /** At 7.0 to 7.1 MHz a thousandth of a wavelength is 42 to 43 mm. */
  /** The lowest point, and that it is none of the two that the design gives. */
  @Test
  void wireThatSagsThroughTheGround() throws IOException {
    String sagging =
        with("2 mm", "2 mm, mechanical: {mass-per-length: 28 g/m}")
            .replace("[20, 0, 10]]", "[20, 0, 10]], hang: {sag: 11 m}");
    refused(
        sagging,
        6,
        "lies 1.000 m below the ground surface",
        "; its path is the one that it hangs in");
  }

  @Test
  void wireTooCloseToSoil() throws IOException {
    refused(
        with("[20, 0, 10]]", "[20, 0, 0.04]]"),
        6,
        "'radiator'",
        "above the soil",
        "limit 0.042",
        "raise it");
  }

  @Test
  void wireOfNoLength() throws IOException {
    refused(with("[0, 0, 10]", "[20, 0, 10]"), 6, "'radiator'", "coincide", "remove one");
    refused(with("[20, 0, 10]]", "[20, 0, 10], [20, 0, 10]]"), 6, "'radiator'", "coincide");
  }

  @Test
  void overlappingWires() throws IOException {
    String second = "\n  second: {conductor: strand, path: [[5, 0, 10], [25, 0, 10]]}";
    refused(
        with("[20, 0, 10]]}", "[20, 0, 10]]}" + second), 6, "'second'", "touches", "add the point");
  }

  @Test
  void twoFeedsOnOneSpot() throws IOException {
    refused(
        with("at: 36 %}", "at: 36 %}\n  second: {wire: radiator, at: 7.2 m}"),
        9,
        "'second'",
        "'main'",
        "move");
  }

  @Test
  void radiusLargerThanTheShortestStraightPiece() throws IOException {
    refused(
        with("[20, 0, 10]]", "[20, 0, 10], [20, 0, 9.9995]]"),
        6,
        "'radiator'",
        "0.0005",
        "diameter",
        "thinner");
  }
}
