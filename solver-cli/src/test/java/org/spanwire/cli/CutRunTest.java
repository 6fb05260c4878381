package org.spanwire.cli;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.ObjectMapper;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import org.junit.jupiter.api.BeforeAll;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/** {@code spanwire cut} on a small antenna that is really solved. */
class CutRunTest {

  private static final String DESIGN =
      """
      format: spanwire-design/1
      title: Hut kit to be cut
      parameters:
        span: 20.2 m
      conductors:
        strand: {material: copper, diameter: 2 mm}
      wires:
        radiator: {conductor: strand, path: [[0, 0, 9], [span, 0, 9]]}
      feeds:
        main: {wire: radiator, at: 36 %, gap: 20 mm}
      ground: perfect
      feed-chain:
        - transformer: {ratio: 2}
      cut: {datum: eye, loop: 60 mm, fold-back: 150 mm, terminal: 30 mm, stretch: 0.2 %, tolerance: 5 mm}
      kit:
        - {item: transformer, mass: 400 g}
        - {item: end insulator, count: 2, mass: 40 g, hangs: true, note: glazed}
      bands: {plan: iaru-region-1, use: [40 m, 30 m]}
      """;

  private static final ObjectMapper MAPPER = new ObjectMapper();

  @TempDir private static Path directory;
  private static String design;
  private static JsonNode cut;

  @BeforeAll
  static void cutOnce() throws IOException {
    design = Files.writeString(directory.resolve("kit.yaml"), DESIGN).toString();
    cut = json("cut", design);
  }

  private static JsonNode json(String... arguments) throws IOException {
    List<String> all = new ArrayList<>(List.of(arguments));
    all.addAll(List.of("--format", "json"));
    Run run = Run.of(all.toArray(new String[0]));
    assertThat(run.code()).as(run.err()).isZero();
    assertThat(JsonSchema.result().faultsOfJson(run.out())).isEmpty();
    return MAPPER.readTree(run.out());
  }

  /** From the sheet's cut lengths, to the millimetre, back to the span, by hand. */
  @Test
  void cutLengthsMakeTheDesignAgain() throws IOException {
    double span = 0.020;
    for (JsonNode leg : cut.get("legs")) {
      double metres = Math.rint(1000 * leg.get("cut_length_m").asDouble()) / 1000;
      span += (metres - 0.030 - 0.150 - 0.030) * 1.002;
    }
    assertThat(span).isCloseTo(20.2, within(0.001));
    JsonNode again = json("cut", design, "--set", String.format(Locale.ROOT, "span=%.6fm", span));
    for (int i = 0; i < 2; i++) {
      assertThat(again.at("/legs/" + i + "/cut_length_m").asDouble())
          .isCloseTo(cut.at("/legs/" + i + "/cut_length_m").asDouble(), within(0.001));
    }
  }

  /** Against a kit hung 5 cm shorter and 5 cm longer, judged by another command. */
  @Test
  void trimTableAgreesWithAShorterKit() throws IOException {
    JsonNode row = cut.at("/trim/bands/0");
    double slope = (best("20.15m") - best("20.25m")) / 0.10;
    assertThat(row.get("hz_per_m").asDouble()).isCloseTo(slope, within(0.02 * slope));
    assertThat(row.get("best_match_hz").asDouble()).isCloseTo(best("20.2m"), within(500.0));
    // A half-wave wire's resonance goes like one over its length.
    assertThat(row.get("hz_per_m").asDouble())
        .isCloseTo(row.get("best_match_hz").asDouble() / 20.2, within(0.03 * 350e3));
    assertThat(cut.at("/trim/first_share").asDouble()).isCloseTo(0.36, within(1e-12));
  }

  private static double best(String span) throws IOException {
    return json("bands", design, "--set", "span=" + span)
        .at("/bands/0/best_match/frequency_hz")
        .asDouble();
  }

  @Test
  void bandWithoutAMatchHasNoNumber() {
    JsonNode row = cut.at("/trim/bands/1");
    assertThat(row.get("band").asText()).isEqualTo("30 m");
    assertThat(row.get("hz_per_m").isNull()).isTrue();
  }

  @Test
  void sheetNamesDatumInsulationAndCautions() {
    Run run = Run.of("cut", design);
    assertThat(run.code()).isZero();
    assertThat(run.out())
        .contains(
            "bearing point of the eye",
            "fold-back 150 mm",
            "apply no further shortening factor",
            "+/- 5 mm",
            "power lines",
            "let nobody stand below");
  }

  @Test
  void csvHasARowPerLeg() {
    Run run = Run.of("cut", design, "--format", "csv");
    assertThat(run.out().lines().toList())
        .hasSize(3)
        .first()
        .asString()
        .startsWith("wire,from,from_name,to,to_name,model_length_m,cut_length_m");
  }

  /** In JSON, as text, and alone as CSV; one sum in all of them. */
  @Test
  void theKitListHoldsWireStagesAndItems() {
    JsonNode parts = cut.at("/kit/parts");
    assertThat(parts.findValuesAsText("part"))
        .containsExactly("strand", "transformer", "end insulator");
    double sum = 0;
    for (JsonNode part : parts) {
      sum += part.get("mass_kg").asDouble();
    }
    assertThat(cut.at("/kit/known_mass_kg").asDouble()).isCloseTo(sum, within(1e-12));
    assertThat(sum).isCloseTo(0.4 + 0.08 + 20.6 * 0.028149, within(0.01));

    assertThat(Run.of("cut", design).out())
        .contains("Kit list", "end insulator: glazed", "hang on wires and supports");
    Run csv = Run.of("cut", design, "--kit", "--format", "csv");
    assertThat(csv.code()).isZero();
    assertThat(csv.out().lines().toList())
        .hasSize(4)
        .last()
        .asString()
        .startsWith("item,end insulator,glazed,2,,0.08,0.08");
    assertThat(Run.of("cut", design, "--kit").out())
        .contains("Kit list")
        .doesNotContain("Cut list", "Trimming");
  }

  @Test
  void withoutRulesItSaysSo() throws IOException {
    String text = DESIGN.replaceAll("cut: .*\\n", "").replace("perfect", "free-space");
    String plain = Files.writeString(directory.resolve("plain.yaml"), text).toString();
    Run run = Run.of("cut", plain);
    assertThat(run.code()).as(run.err()).isZero();
    assertThat(run.out()).contains("no-cut-rules");
  }

  private static final String HANGING =
      """
      format: spanwire-design/1
      title: Hut kit that hangs
      conductors:
        strand: {material: copper, diameter: 2 mm, mechanical: {mass-per-length: 28 g/m, breaking-strength: 600 N}}
      wires:
        radiator:
          conductor: strand
          path: [[0, 0, 9], [40, 0, 9]]
          hang: {tension: 100 N, loads: [{at: 36 %, mass: 1.5 kg}]}
      feeds:
        main: {wire: radiator, at: 36 %, gap: 20 mm}
      ground: perfect
      weather: {storm: {wind: 35 m/s}}
      """;

  /** Pull and margin in still air and in the design's weather; too small a margin is warned of. */
  @Test
  void tellsHowAWireHangs() throws IOException {
    String file = Files.writeString(directory.resolve("hanging.yaml"), HANGING).toString();
    JsonNode sheet = json("cut", file);
    JsonNode states = sheet.get("mechanics");
    assertThat(states).hasSize(2);
    assertThat(states.at("/0/weather").asText()).isEqualTo("still air");
    assertThat(states.at("/0/support_pull_n").asDouble()).isCloseTo(100, within(1e-6));
    assertThat(states.at("/1/wind_m_per_s").asDouble()).isEqualTo(35);
    for (JsonNode state : states) {
      assertThat(state.get("breaking_margin").asDouble())
          .isCloseTo(600 / state.get("largest_tension_n").asDouble(), within(1e-9));
    }
    assertThat(states.at("/1/swing_m").asDouble()).isGreaterThan(1);
    Run text = Run.of("cut", file);
    assertThat(text.out()).contains("How it hangs, in still air and in weather").contains("storm");
    assertThat(text.out().lines().mapToInt(String::length).max().orElseThrow())
        .isLessThanOrEqualTo(118);
    Run weak =
        Run.of(
            "cut",
            Files.writeString(directory.resolve("weak.yaml"), HANGING.replace("600 N", "150 N"))
                .toString());
    assertThat(weak.out()).contains("low-breaking-margin");
  }
}
