package org.spanwire.cli;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.ObjectMapper;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import org.junit.jupiter.api.BeforeAll;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/** {@code spanwire exposure} on a small antenna that is really solved. */
class ExposureRunTest {

  private static final String DESIGN =
      """
      format: spanwire-design/1
      title: Hut kit above the terrace
      parameters:
        height: {value: 5 m, spread: 0.5 m}
      conductors:
        strand: {material: copper, diameter: 2 mm}
      wires:
        radiator: {conductor: strand, path: [[0, 0, height], [10, 0, height]]}
      feeds:
        main: {wire: radiator, at: 50 %, gap: 20 mm}
      ground: {permittivity: 13, conductivity: 5 mS/m}
      power: 400 W
      exposure: {limits: [icnirp-1998-public, icnirp-2010-public], mode: ssb, floors: [0 m, 2 m]}
      bands: {plan: iaru-region-1, use: [20 m]}
      """;

  @TempDir private static Path directory;
  private static String design;
  private static JsonNode exposure;

  @BeforeAll
  static void runOnce() throws IOException {
    design = Files.writeString(directory.resolve("kit.yaml"), DESIGN).toString();
    Run run = Run.of("exposure", design, "--format", "json");
    assertThat(run.code()).as(run.err()).isZero();
    assertThat(JsonSchema.result().faultsOfJson(run.out())).isEmpty();
    exposure = new ObjectMapper().readTree(run.out());
  }

  /** The design's rules hold, and a limit that says nothing about the band has no row. */
  @Test
  void judgesByWhatTheDesignStates() {
    assertThat(exposure.get("duty").asDouble()).isEqualTo(0.2);
    assertThat(exposure.get("limits")).hasSize(2);
    JsonNode rows = exposure.at("/bands/0/rows");
    assertThat(rows).hasSize(2);
    assertThat(rows.at("/0/limit").asText()).isEqualTo("icnirp-1998-public");
    assertThat(rows.at("/0/limit_e_v_per_m").asDouble()).isEqualTo(28);
    assertThat(exposure.at("/bands/0/antenna_w").asDouble()).isCloseTo(400, within(1e-6));
  }

  /** The fields at the end of the distance are the limit's: E or H, for a fifth of the power. */
  @Test
  void theDistanceEndsWhereTheLimitIsMet() {
    JsonNode row = exposure.at("/bands/0/rows/1");
    double share =
        Math.max(
            row.at("/at/electric_v_per_m").asDouble() / 28,
            row.at("/at/magnetic_a_per_m").asDouble() / 0.073);
    assertThat(0.2 * share * share).isCloseTo(1, within(0.01));
    assertThat(row.get("distance_m").asDouble())
        .isBetween(row.get("shortest_m").asDouble(), row.get("longest_m").asDouble());
    assertThat(row.get("exposure").asDouble()).isGreaterThan(1);
  }

  @Test
  void textAndCsvSayTheSame() throws IOException {
    Run text = Run.of("exposure", design);
    assertThat(text.out())
        .contains("no certificate")
        .contains("Distance to keep on the ground, 0.5 m to 2 m up")
        .contains("SSB speech, average over peak power 20 %");
    assertThat(text.out().lines().mapToInt(String::length).max().orElseThrow())
        .isLessThanOrEqualTo(118);
    Run csv = Run.of("exposure", design, "--format", "csv");
    double metres = exposure.at("/bands/0/rows/1/distance_m").asDouble();
    assertThat(csv.out().lines()).hasSize(3).element(2).asString().contains("," + metres + ",");
  }

  @Test
  void optionsGoFirst() throws IOException {
    Run run =
        Run.of(
            "exposure",
            design,
            "--mode",
            "carrier",
            "--transmitting",
            "50%",
            "--floors",
            "0m,2m",
            "--limits",
            "fcc-public",
            "--format",
            "json");
    assertThat(run.code()).as(run.err()).isZero();
    JsonNode other = new ObjectMapper().readTree(run.out());
    assertThat(other.get("duty").asDouble()).isEqualTo(0.5);
    assertThat(other.at("/bands/0/rows")).hasSize(2);
  }

  @Test
  void badInputIsOneLineAndExitCode2() {
    Run limit = Run.of("exposure", design, "--limits", "nobody");
    assertThat(limit.code()).isEqualTo(2);
    assertThat(limit.err()).contains("'nobody' is no limit").contains("fcc-public");
    Run share = Run.of("exposure", design, "--transmitting", "150%");
    assertThat(share.code()).isEqualTo(2);
    assertThat(share.err()).contains("--transmitting: 150%").contains("at most 100%");
  }
}
