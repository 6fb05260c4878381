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
import java.util.stream.Stream;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.spanwire.circuit.Touchstone;

/** {@code spanwire response}: a range of frequencies, held to single solutions. */
class ResponseRunTest {

  private static final String DESIGN =
      """
      format: spanwire-design/1
      title: Hut wire
      conductors: {strand: {material: copper, diameter: 2 mm}}
      wires: {radiator: {conductor: strand, path: [[0, 0, 9], [20.2, 0, 9]]}}
      feeds: {main: {wire: radiator, at: 36 %, gap: 30 mm}}
      ground: {soil: medium-dry}
      feed-chain:
        - transformer: {ratio: 4}
        - line: {impedance: 50 ohm, length: 9 m, velocity-factor: 0.66, loss: {frequency: 10 MHz, per: 100 m, value: 4.5 dB}}
      """;

  private static final String BANDS = "bands: {plan: iaru-region-1, use: [40 m, 30 m]}\n";

  @TempDir private Path directory;

  private Path design(String more) throws IOException {
    return Files.writeString(directory.resolve("wire.yaml"), DESIGN + more);
  }

  private Run response(String more, String... options) throws IOException {
    return Run.of(
        Stream.concat(Stream.of("response", design(more).toString()), Stream.of(options))
            .toArray(String[]::new));
  }

  private List<String[]> rows(String... options) throws IOException {
    List<String> all = new ArrayList<>(List.of(options));
    all.addAll(List.of("--format", "csv"));
    Run run = response(BANDS, all.toArray(new String[0]));
    assertThat(run.code()).as(run.err()).isZero();
    return run.out().lines().map(line -> line.split(",", -1)).toList();
  }

  @Test
  void rowsAreThoseOfSolve() throws IOException {
    List<String[]> rows =
        rows(
            "--range", "6.9MHz:7.3MHz", "--step", "100kHz", "--elevation", "30", "--azimuth", "40");
    assertThat(rows.get(0))
        .containsExactly(
            "frequency_hz",
            "resistance_ohm",
            "reactance_ohm",
            "swr",
            "gain_elevation_30_deg_azimuth_40_deg_dbi");
    assertThat(rows.stream().skip(1).map(row -> row[0]))
        .containsExactly("6900000.0", "7000000.0", "7100000.0", "7200000.0", "7300000.0");
    String[] solve = {
      "solve",
      design(BANDS).toString(),
      "--frequency",
      "7.1MHz",
      "--format",
      "csv",
      "--elevation",
      "30",
      "--azimuth",
      "40",
      "--tolerance",
      "0.01%"
    };
    List<String[]> solved = Run.of(solve).out().lines().map(line -> line.split(",", -1)).toList();
    List<String> columns = List.of(solved.get(0));
    for (String[] pair :
        new String[][] {
          {"3", "swr_transmitter"}, {"4", "gain_elevation_30_deg_azimuth_40_deg_dbi"}
        }) {
      double right = Double.parseDouble(solved.get(1)[columns.indexOf(pair[1])]);
      double seen = Double.parseDouble(rows.get(3)[Integer.parseInt(pair[0])]);
      assertThat(seen).as(pair[1]).isCloseTo(right, within(3e-3 * Math.abs(right)));
    }
  }

  /** The bands' edges are the range; without a further row at its end if the step does not fit. */
  @Test
  void withoutARangeItIsThatOfTheBands() throws IOException {
    List<String[]> rows = rows("--step", "900kHz", "--plane", "feedpoint");
    assertThat(rows.stream().skip(1).map(row -> row[0]))
        .containsExactly("7000000.0", "7900000.0", "8800000.0", "9700000.0");
    Run text = response(BANDS);
    assertThat(text.out())
        .contains("frequencies solved from 7 MHz to 10.15 MHz; error of |reflection coefficient|")
        .contains("Resonances of the feedpoint", "SWR at the transmitter, 50 ohm, before any tuner")
        .contains("Cautions");
  }

  @Test
  void theTextTellsWhatTheJsonTells() throws Exception {
    String[] range = {"--range", "6MHz:16MHz", "--elevation", "10,30", "--azimuth", "90"};
    Run text = response(BANDS, range);
    Run run = response(BANDS, with(range, "--step", "5MHz", "--format", "json"));
    assertThat(JsonSchema.result().faultsOfJson(run.out())).isEmpty();
    JsonNode json = new ObjectMapper().readTree(run.out());
    assertThat(json.get("rows")).hasSize(3);
    assertThat(json.get("directions")).hasSize(2);
    assertThat(json.get("resonances")).hasSizeGreaterThan(1);
    for (JsonNode resonance : json.get("resonances")) {
      assertThat(text.out())
          .containsPattern(
              "%.4f +%s +\\d"
                  .formatted(
                      resonance.get("frequency_hz").asDouble() / 1e6,
                      resonance.get("kind").asText()));
    }
    assertThat(json.get("best_matches")).isNotEmpty();
    for (JsonNode match : json.get("best_matches")) {
      assertThat(text.out())
          .containsPattern(
              "%.4f +%.2f "
                  .formatted(
                      match.get("frequency_hz").asDouble() / 1e6, match.get("value").asDouble()));
    }
    JsonNode three = json.at("/within/1/ranges");
    assertThat(json.at("/within/1/swr").asDouble()).isEqualTo(3);
    assertThat(three).isNotEmpty();
    for (JsonNode inside : three) {
      assertThat(text.out())
          .containsPattern(
              " 3 +%.4f +%.4f "
                  .formatted(
                      inside.get("low_hz").asDouble() / 1e6,
                      inside.get("high_hz").asDouble() / 1e6));
    }
    assertThat(text.out()).contains("Gain over the range");
    assertThat(text.out().lines()).allMatch(line -> line.length() <= 110);
  }

  private static String[] with(String[] options, String... more) {
    return Stream.concat(Stream.of(options), Stream.of(more)).toArray(String[]::new);
  }

  /** As it is measured: with several gains the root of the sum of squares exceeds the largest. */
  @Test
  void theErrorOfGainsSaysWhatItIsRelativeTo() throws IOException {
    String[] range = {"--range", "7MHz:7.2MHz", "--azimuth", "90", "--elevation"};
    assertThat(response(BANDS, with(range, "30")).out().replaceAll("\\s+", " "))
        .containsPattern("of the gain as a ratio [\\d.e-]+ % Cautions");
    assertThat(response(BANDS, with(range, "10,30")).out().replaceAll("\\s+", " "))
        .containsPattern(
            "of gains as ratios [\\d.e-]+ % of the root of the sum of their squares Cautions");
  }

  @Test
  void aDirectionGivenTwiceIsGivenOnce() throws IOException {
    List<String[]> rows =
        rows("--range", "7MHz:7.2MHz", "--elevation", "30,10,30", "--azimuth", "90,90");
    assertThat(rows.get(0))
        .endsWith(
            "swr",
            "gain_elevation_30_deg_azimuth_90_deg_dbi",
            "gain_elevation_10_deg_azimuth_90_deg_dbi");
  }

  /** Nothing matches and nothing is resonant in a stretch as short as this. */
  @Test
  void nothingFoundIsSaid() throws IOException {
    Run run = response("", "--range", "3MHz:3.01MHz");
    assertThat(run.out().split("none in this range", -1)).hasSize(4);
    Run json = response("", "--range", "3MHz:3.01MHz", "--format", "json");
    assertThat(JsonSchema.result().faultsOfJson(json.out())).isEmpty();
  }

  @Test
  void theTouchstoneFileIsWhatAnInstrumentWouldShow() throws IOException {
    Path file = directory.resolve("wire.s1p");
    List<String[]> rows =
        rows("--range", "7MHz:7.2MHz", "--step", "50kHz", "--touchstone", file.toString());
    assertThat(file).content().startsWith("! Hut wire, at the transmitter, computed by Spanwire ");
    Touchstone read = Touchstone.read(file);
    assertThat(read.references()).containsExactly(50);
    assertThat(read.frequenciesHz()).containsExactly(7e6, 7.05e6, 7.1e6, 7.15e6, 7.2e6);
    for (int i = 0; i < 5; i++) {
      double magnitude = read.network().sample(i).s(1, 1).abs();
      assertThat((1 + magnitude) / (1 - magnitude))
          .isCloseTo(Double.parseDouble(rows.get(i + 1)[3]), within(1e-9));
    }
  }

  /** What is computed is found again: the height that it was computed for. */
  @Test
  void fitReadsTheTouchstoneFile() throws IOException {
    String design = Run.EXAMPLES.resolve("hut-kit-heights.yaml").toString();
    Path file = directory.resolve("hut.s1p");
    Run made =
        Run.of(
            "response",
            design,
            "--set",
            "height=8m",
            "--range",
            "3.5MHz:14.5MHz",
            "--step",
            "250kHz",
            "--touchstone",
            file.toString());
    assertThat(made.code()).as(made.err()).isZero();
    Run fit =
        Run.of(
            "fit", design, "--measured", file.toString(), "--vary", "height", "--format", "json");
    assertThat(fit.code()).as(fit.err()).isZero();
    JsonNode estimate = new ObjectMapper().readTree(fit.out()).at("/estimates/0");
    assertThat(estimate.get("parameter").asText()).isEqualTo("height");
    assertThat(estimate.get("value").asDouble()).isCloseTo(8, within(0.05));
  }

  @ParameterizedTest
  @CsvSource(
      delimiter = '|',
      value = {
        "--range 7MHz | range 7MHz is none; write one such as 3.5MHz:30MHz",
        "--range 8MHz:7MHz | range 8MHz:7MHz is none",
        "--range 7m:8m | is a length",
        "--step 0kHz | must be above zero",
        "--step 1Hz | makes 3150001 rows, at most 1000000; take a larger one",
        "--plane middle | is no plane of the feed chain",
        "--elevation 30 | --elevation: needs --azimuth here; add one such as --azimuth 90",
        "--azimuth 30 | --azimuth: needs --elevation; add one such as --elevation 30",
        "--elevation 95 --azimuth 0 | --elevation 95.0: must lie between -90 and 90 degrees",
        "--tolerance 10% | --tolerance 10%: must lie between 0.001% and 5% for a response",
        "--touchstone wire.txt | --touchstone wire.txt: must end in .s1p",
        "--touchstone none/wire.s1p | there is no directory",
        "--plot wire.gif | --plot wire.gif: must end in .svg or .png"
      })
  void badOptionsAreToldInOneLine(String options, String message) throws IOException {
    Run run = response(BANDS, options.split(" "));
    assertThat(run.code()).isEqualTo(2);
    assertThat(run.out()).isEmpty();
    assertThat(run.err()).contains(message);
  }

  @Test
  void whatTheDesignDoesNotHaveIsToldInOneLine() throws IOException {
    Run range = response("frequencies: [7.1 MHz]\n");
    assertThat(range.code()).isEqualTo(2);
    assertThat(range.err())
        .contains("wire.yaml: names no range of frequencies; give one such as --range 1.8MHz:30MHz")
        .hasLineCount(1);
    Path bare =
        Files.writeString(
            directory.resolve("bare.yaml"), DESIGN.substring(0, DESIGN.indexOf("feed-chain")));
    Run plane =
        Run.of(
            "response", bare.toString(), "--range", "7MHz:7.2MHz", "--plane", "transformer-input");
    assertThat(plane.code()).isEqualTo(2);
    assertThat(plane.err())
        .contains("--plane transformer-input: the feed chain of")
        .hasLineCount(1);
  }

  @Test
  void withSeveralFeedsItSaysWhichIsSeen() throws IOException {
    Path pair =
        Files.writeString(
            directory.resolve("pair.yaml"),
            """
            format: spanwire-design/1
            title: Pair
            conductors: {strand: {material: copper, diameter: 2 mm}}
            wires:
              front: {conductor: strand, path: [[0, 0, 9], [20.2, 0, 9]]}
              back: {conductor: strand, path: [[0, 6, 9], [20.2, 6, 9]]}
            feeds:
              near: {wire: front, at: 50 %}
              far: {wire: back, at: 50 %, voltage: {magnitude: 1 V, phase: 90 deg}}
            ground: perfect
            """);
    Run run = Run.of("response", pair.toString(), "--range", "7MHz:7.3MHz");
    assertThat(run.out())
        .contains("Resonances of feed near, ", "at feed near, with all feeds driven as");
    assertThat(response("", "--range", "7MHz:7.3MHz").out()).doesNotContain(" feed main, where");
  }
}
