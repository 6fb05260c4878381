package org.spanwire.cli;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.ObjectMapper;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

class LineLengthsTest {

  private static final String DESIGN =
      """
      format: spanwire-design/1
      title: Short dipole with its line
      conductors:
        strand: {material: copper, diameter: 2 mm}
        jacket: {material: copper, diameter: 5 mm}
      wires:
        radiator: {conductor: strand, path: [[0, 0, 6], [9, 0, 6]]}
      feeds:
        main: {wire: radiator, at: 36 %, gap: 40 mm}
      ground: perfect
      feed-chain:
        - transformer: {ratio: 4, output: unbalanced}
        - choke: {impedance: 2 kohm}
        - line: {impedance: 50 ohm, length: 7 m, velocity-factor: 0.66}
      feed-line: {conductor: jacket, path: [[3.24, 0, 2], [3.24, 3, 2]]}
      bands: {plan: iaru-region-1, use: [20 m]}
      """;

  @TempDir private Path directory;

  private Path design(String text) throws IOException {
    return Files.writeString(directory.resolve("kit.yaml"), text);
  }

  /** At the design's own length the heat is that of the table of bands. */
  @Test
  void belongToTheTableOfBands() throws IOException {
    String file = design(DESIGN).toString();
    String[] lengths = {"--line-lengths", "5m:9m:3", "--choke-limit", "4W", "--tolerance", "1%"};
    Run json =
        Run.of(
            "bands",
            file,
            lengths[0],
            lengths[1],
            lengths[2],
            lengths[3],
            lengths[4],
            lengths[5],
            "--format",
            "json");
    assertThat(json.code()).isZero();
    assertThat(JsonSchema.result().faultsOfJson(json.out())).isEmpty();
    JsonNode result = new ObjectMapper().readTree(json.out());
    JsonNode rows = result.at("/line_lengths/rows");
    assertThat(rows).hasSize(6);
    double heat = result.at("/bands/0/choke_heat_w").doubleValue();
    assertThat(rows.at("/2/length_m").doubleValue()).isEqualTo(7);
    assertThat(rows.at("/2/choke_heat_w").doubleValue()).isCloseTo(heat, within(0.02 * heat));
    Run text =
        Run.of(
            "bands", file, lengths[0], lengths[1], lengths[2], lengths[3], lengths[4], lengths[5]);
    assertThat(text.out())
        .contains("hot terminal to the wire's first point", "hot terminal to the wire's last point")
        .containsPattern("avoid: .* choke above 4 W")
        .contains("coolest: ");
    assertThat(text.out().lines()).allMatch(line -> line.length() <= 120);
  }

  @Test
  void askForALineAndForLengths() throws IOException {
    String bare = design(DESIGN.replaceFirst("feed-line: .*\n", "")).toString();
    Run none = Run.of("bands", bare, "--line-lengths", "5m:9m:3");
    assertThat(none.code()).isEqualTo(2);
    assertThat(none.err()).hasLineCount(1).contains("--line-lengths", "add feed-line");
    Run wrong = Run.of("bands", bare, "--line-lengths", "9m:5m:3");
    assertThat(wrong.code()).isEqualTo(2);
    assertThat(wrong.err()).contains("FROM:TO:COUNT such as 5m:30m:26");
  }
}
