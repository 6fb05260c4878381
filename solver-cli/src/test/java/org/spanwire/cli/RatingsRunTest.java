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

/** {@code spanwire bands --ratings} on a small antenna that is really solved. */
class RatingsRunTest {

  private static final String DESIGN =
      """
      format: spanwire-design/1
      title: Hut kit with weak insulators
      conductors:
        strand: {material: copper, diameter: 2 mm}
      wires:
        radiator: {conductor: strand, path: [[0, 0, 9], [14.2, 0, 9]]}
      feeds:
        main: {wire: radiator, at: 50 %, gap: 20 mm}
      ground: free-space
      power: 100 W
      ratings: {ends: {voltage: 500 V}}
      bands: {plan: iaru-region-1, use: [30 m]}
      """;

  @TempDir private static Path directory;
  private static String design;

  @BeforeAll
  static void write() throws IOException {
    design = Files.writeString(directory.resolve("kit.yaml"), DESIGN).toString();
  }

  private static Run run(String... more) {
    String[] all = new String[5 + more.length];
    System.arraycopy(new String[] {"bands", design, "--points", "5", "--ratings"}, 0, all, 0, 5);
    System.arraycopy(more, 0, all, 5, more.length);
    Run run = Run.of(all);
    assertThat(run.code()).as(run.err()).isZero();
    return run;
  }

  /** The ends' voltage limits the power, the same in every mode. */
  @Test
  void jsonNamesThePartThatLimits() throws IOException {
    Run run = run("--format", "json");
    assertThat(JsonSchema.result().faultsOfJson(run.out())).isEmpty();
    JsonNode rating = new ObjectMapper().readTree(run.out()).at("/ratings/0");
    double peak = 0;
    for (JsonNode load : rating.get("loads")) {
      peak = load.get("part").asText().equals("ends") ? load.get("volts_peak").asDouble() : peak;
    }
    for (JsonNode largest : rating.get("largest_power")) {
      assertThat(largest.get("part").asText()).isEqualTo("ends");
      assertThat(largest.get("cause").asText()).isEqualTo("voltage");
      assertThat(largest.get("envelope_w").asDouble())
          .isCloseTo(100 * Math.pow(500 / peak, 2), within(1e-6));
    }
  }

  @Test
  void textAndCsvNameItToo() {
    Run text = run();
    assertThat(text.out())
        .contains("ends voltage")
        .contains("the design states no rating for feedpoint");
    assertThat(text.out().lines().mapToInt(String::length).max().orElseThrow())
        .isLessThanOrEqualTo(118);
    assertThat(run("--format", "csv").out().lines().findFirst().orElseThrow())
        .contains("ends_peak_v,feedpoint_peak_v,largest_ssb_w,largest_ssb_set_by");
  }
}
