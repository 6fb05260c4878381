package org.spanwire.cli;

import static org.assertj.core.api.Assertions.assertThat;

import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.ObjectMapper;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/** {@code spanwire yield} on a small antenna that is really solved. */
class YieldRunTest {

  private static final String DESIGN =
      """
      format: spanwire-design/1
      title: Hut kit with spreads
      parameters:
        height: {value: 10 m, spread: 2 m}
        ratio: {value: 4, spread: {sigma: 0.1}}
      conductors:
        strand: {material: copper, diameter: 2 mm}
      wires:
        radiator: {conductor: strand, path: [[0, 0, height], [20.3, 0, height]]}
      feeds:
        main: {wire: radiator, at: 36 %, gap: 40 mm}
      ground: perfect
      feed-chain:
        - transformer: {ratio: ratio}
      bands: {plan: iaru-region-1, use: [40 m]}
      """;

  @TempDir private static Path directory;

  private static String file(String text) throws IOException {
    return Files.writeString(Files.createTempFile(directory, "kit", ".yaml"), text).toString();
  }

  @Test
  void jsonKeepsTheSchema() throws IOException {
    Run run = Run.of("yield", file(DESIGN), "--samples", "100", "--format", "json");
    assertThat(run.code()).as(run.err()).isZero();
    assertThat(JsonSchema.result().faultsOfJson(run.out())).isEmpty();
    JsonNode yield = new ObjectMapper().readTree(run.out());
    assertThat(yield.at("/requirements/0/requirement").asText()).isEqualTo("40 m: SWR <= 2");
    assertThat(yield.at("/parameters/1/law").asText()).isEqualTo("normal");
    assertThat(yield.at("/envelopes/0/points")).hasSizeGreaterThan(2);
  }

  @Test
  void textSaysWhatDominates() throws IOException {
    Run run = Run.of("yield", file(DESIGN), "--samples", "100");
    assertThat(run.code()).as(run.err()).isZero();
    assertThat(run.out()).contains("95 % confidence", "by slopes", "height", "seed 1");
    assertThat(run.out().lines()).allMatch(line -> line.length() <= 118);
  }

  @Test
  void csvHasARowPerRequirement() throws IOException {
    Run run = Run.of("yield", file(DESIGN), "--samples", "50", "--format", "csv");
    assertThat(run.out().lines().toList())
        .hasSize(3)
        .first()
        .asString()
        .startsWith("requirement,share_met,share_low")
        .endsWith("ratio_per_spread,ratio_variance_share");
  }

  @Test
  void judgesBandwidthAndDistanceAndDrawsItsEnvelopes() throws IOException {
    String text =
        DESIGN
            + """
            power: 1 kW
            exposure: {limits: [icnirp-2020-public], mode: carrier, floors: [3 m]}
            requirements:
              - {band: 40 m, bandwidth: {min: 120 kHz, swr: 2.5}}
              - {band: 40 m, exposure-distance: {max: 9 m}}
            """;
    Path picture = directory.resolve("envelopes.svg");
    Run run =
        Run.of(
            "yield",
            file(text),
            "--samples",
            "50",
            "--format",
            "json",
            "--plot",
            picture.toString());
    assertThat(run.code()).as(run.err()).isZero();
    assertThat(JsonSchema.result().faultsOfJson(run.out())).isEmpty();
    JsonNode yield = new ObjectMapper().readTree(run.out());
    assertThat(yield.at("/requirements/0/requirement").asText())
        .isEqualTo("40 m: 120 kHz within SWR 2.5");
    assertThat(yield.at("/requirements/0/nominal").asDouble()).isBetween(1e3, 200e3);
    assertThat(yield.at("/requirements/1/requirement").asText())
        .isEqualTo("40 m: keep away <= 9 m");
    assertThat(yield.at("/distance_error_m").isNumber()).isTrue();
    assertThat(yield.at("/warnings")).isEmpty();
    assertThat(Files.readString(picture))
        .contains("SWR of the installations, 40 m", "10 % below", "90 % below");
  }

  @Test
  void badInputIsRefusedInOneLine() throws IOException {
    Run still = Run.of("yield", file(DESIGN.replaceAll(", spread: [^}]*\\}+", "}")));
    assertThat(still.code()).isEqualTo(2);
    assertThat(still.err()).contains("no parameter has a spread").hasLineCount(1);
    Run none = Run.of("yield", file(DESIGN), "--samples", "0");
    assertThat(none.code()).isEqualTo(2);
    assertThat(none.err()).contains("samples 0").hasLineCount(1);
    Run low =
        Run.of(
            "yield",
            file(
                DESIGN
                    .replace("ground: perfect", "ground: {soil: medium-dry}")
                    .replace("spread: 2 m", "spread: 10 m")),
            "--samples",
            "10");
    assertThat(low.code()).isEqualTo(2);
    assertThat(low.err()).hasLineCount(1);
  }
}
