package org.spanwire.cli;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.ObjectMapper;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.HashMap;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.stream.Collectors;
import java.util.stream.IntStream;
import java.util.stream.Stream;
import org.apache.commons.math3.complex.Complex;
import org.junit.jupiter.api.BeforeAll;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.spanwire.circuit.Mismatch;

/** What the commands print for a small antenna that is really solved, held to laws. */
class RealRunTest {

  /**
   * Off-centre-fed, and half a wave long in the 40 m band, so that the best match lies inside it.
   */
  private static final String DESIGN =
      """
      format: spanwire-design/1
      title: Hut kit under test
      parameters:
        span: {value: 20.2 m}
        height: 9 m
      conductors:
        strand: {material: copper, diameter: 2 mm}
      wires:
        radiator: {conductor: strand, path: [[0, 0, height], [span, 0, height]]}
      feeds:
        main: {wire: radiator, at: 36 %, gap: 20 mm}
      ground: perfect
      feed-chain:
        - transformer: {ratio: 2}
      bands: {plan: iaru-region-1, use: [40 m]}
      frequencies: [7.0 MHz, 7.1 MHz]
      """;

  private static final String STAGES =
      """
        - choke: {impedance: 3 kohm}
        - line:
            impedance: 50 ohm
            length: 15.3 m
            velocity-factor: 0.66
            loss: {frequency: 7.0 MHz, per: 15.3 m, value: 0.9 dB}
      power: 80 W\
      """;

  private static final ObjectMapper MAPPER = new ObjectMapper();

  @TempDir private static Path shared;
  private static String design;
  private static JsonNode bands;

  @TempDir private Path directory;

  @BeforeAll
  static void solveOnce() throws IOException {
    design = Files.writeString(shared.resolve("kit.yaml"), DESIGN).toString();
    bands = json("bands", design).get("bands");
  }

  /** The design with one change, in a file of its own. */
  private String changed(String old, String fresh) throws IOException {
    assertThat(DESIGN).contains(old);
    return Files.writeString(directory.resolve("changed.yaml"), DESIGN.replace(old, fresh))
        .toString();
  }

  private static JsonNode json(String... args) throws IOException {
    List<String> all = new ArrayList<>(List.of(args));
    all.addAll(List.of("--format", "json"));
    Run run = Run.of(all.toArray(new String[0]));
    assertThat(run.err()).isEmpty();
    assertThat(run.code()).isZero();
    assertThat(JsonSchema.result().faultsOfJson(run.out())).isEmpty();
    return MAPPER.readTree(run.out());
  }

  /** SWR at the transmitter, solved at each frequency in hertz. */
  private static List<Double> swrAt(String design, List<Double> frequencies) throws IOException {
    String list =
        frequencies.stream()
            .map(hertz -> String.format(Locale.ROOT, "%.3fHz", hertz))
            .collect(Collectors.joining(","));
    List<Double> swr = new ArrayList<>();
    for (JsonNode solution : json("solve", design, "--frequency", list).get("solutions")) {
      swr.add(solution.at("/feeds/0/swr/1/value").doubleValue());
    }
    return swr;
  }

  private static Complex complex(JsonNode node) {
    return new Complex(node.get("re").doubleValue(), node.get("im").doubleValue());
  }

  @Test
  void swrIsThatOfTheImpedanceAtBothPlanes() throws IOException {
    for (JsonNode solution : json("solve", design).get("solutions")) {
      JsonNode feed = solution.at("/feeds/0");
      Complex z = complex(feed.get("impedance_ohm"));
      double swr = Mismatch.of(z, 100).swr();
      assertThat(feed.at("/swr/0/reference_ohm").doubleValue()).isEqualTo(100);
      assertThat(feed.at("/swr/1/reference_ohm").doubleValue()).isEqualTo(50);
      assertThat(feed.at("/swr/0/value").doubleValue()).isCloseTo(swr, within(1e-12));
      assertThat(feed.at("/swr/1/value").doubleValue()).isCloseTo(swr, within(1e-12));
      assertThat(complex(solution.at("/port_matrix_ohm/0/0")).subtract(z).abs())
          .isLessThan(1e-9 * z.abs());
      assertThat(feed.get("gap_m").doubleValue()).isEqualTo(0.02);
      assertThat(solution.get("power_balance").doubleValue()).isCloseTo(1, within(1e-3));
    }
  }

  @Test
  void theLargestGainOverAzimuthIsReachedAtItsAzimuthAndNowhereExceeded() throws IOException {
    JsonNode largest =
        json("solve", design, "--frequency", "7.1MHz", "--elevation", "30")
            .at("/solutions/0/gain_samples/0");
    double azimuth = largest.get("azimuth_deg").doubleValue();
    JsonNode samples =
        json(
                "solve",
                design,
                "--frequency",
                "7.1MHz",
                "--elevation",
                "30deg",
                "--azimuth",
                azimuth + ",0,45,90,200")
            .at("/solutions/0/gain_samples");
    assertThat(samples).hasSize(5);
    double top = largest.get("gain_dbi").doubleValue();
    assertThat(samples.get(0).get("gain_dbi").doubleValue()).isCloseTo(top, within(1e-6));
    for (JsonNode sample : samples) {
      assertThat(sample.get("elevation_deg").doubleValue()).isEqualTo(30);
      assertThat(sample.get("gain_dbi").doubleValue()).isLessThanOrEqualTo(top + 1e-6);
    }
  }

  /**
   * Over soil the balance is not known unless the absorbed power is computed too, and then it is 1.
   */
  @Test
  void powerIsAccountedForOverSoilWhenAskedFor() throws IOException {
    String soil = changed("ground: perfect", "ground: {soil: medium-dry}");
    JsonNode plain = json("solve", soil, "--frequency", "7.1MHz").at("/solutions/0");
    assertThat(plain.get("power_balance").isNull()).isTrue();
    assertThat(plain.has("power_budget_w")).isFalse();
    JsonNode asked =
        json("solve", soil, "--frequency", "7.1MHz", "--power-balance").at("/solutions/0");
    assertThat(asked.get("power_balance").doubleValue()).isCloseTo(1, within(1e-3));
    JsonNode budget = asked.get("power_budget_w");
    double sum = 0;
    for (String part :
        new String[] {"radiated", "conductor_loss", "fitting_loss", "soil_absorbed"}) {
      sum += budget.get(part).doubleValue();
    }
    assertThat(budget.get("soil_absorbed").doubleValue()).isPositive();
    assertThat(sum).isCloseTo(budget.get("accepted").doubleValue(), within(1e-3 * sum));
    assertThat(asked.get("radiation_efficiency").doubleValue())
        .isCloseTo(
            budget.get("radiated").doubleValue() / budget.get("accepted").doubleValue(),
            within(1e-9));
  }

  @Test
  void soilGivenByItsConstantsIsPrintedOnce() throws IOException {
    String soil = changed("ground: perfect", "ground: {permittivity: 5, conductivity: 0.5 mS/m}");
    assertThat(Run.of("solve", soil, "--frequency", "7.1MHz").out())
        .contains("soil of relative permittivity 5, conductivity 0.0005 S/m (given by the user)");
  }

  @Test
  void currentsComeFromEndToEndAndVanishThere() throws IOException {
    String csv =
        Run.of("solve", design, "--frequency", "7.1MHz", "--currents", "5", "--format", "csv")
            .out();
    List<String> lines = csv.lines().toList();
    assertThat(lines.get(0)).isEqualTo("frequency_hz,wire,distance_m,current_re_a,current_im_a");
    assertThat(lines).hasSize(6);
    assertThat(lines.get(1)).startsWith("7100000.0,radiator,0.0,");
    assertThat(magnitude(lines.get(1))).isLessThan(1e-3 * magnitude(lines.get(3)));
    assertThat(magnitude(lines.get(5))).isLessThan(1e-3 * magnitude(lines.get(3)));
  }

  private static double magnitude(String line) {
    String[] cells = line.split(",");
    return Math.hypot(Double.parseDouble(cells[3]), Double.parseDouble(cells[4]));
  }

  @Test
  void settingAParameterIsEditingTheFile() throws IOException {
    String edited = changed("height: 9 m", "height: 7.5 m");
    assertThat(Run.of("solve", design, "--set", "height=7.5m").out().lines().skip(1))
        .isEqualTo(Run.of("solve", edited).out().lines().skip(1).toList());
  }

  @Test
  void theNumberOfThreadsChangesNothing() {
    for (String command : new String[] {"solve", "bands"}) {
      Run one = Run.of(command, design, "--format", "json", "--threads", "1");
      Run three = Run.of(command, design, "--format", "json", "--threads", "3");
      assertThat(one.code()).isZero();
      assertThat(three.out()).isEqualTo(one.out());
    }
  }

  @Test
  void bandFiguresAgreeWithSolutionsOfTheirOwn() throws IOException {
    for (JsonNode band : bands) {
      JsonNode swr = band.at("/swr/1");
      assertThat(swr.get("plane").textValue()).isEqualTo("transmitter");
      List<JsonNode> places =
          Stream.of("low_edge", "middle", "high_edge", "minimum", "maximum").map(swr::get).toList();
      List<Double> solved =
          swrAt(
              design,
              places.stream().map(place -> place.get("frequency_hz").doubleValue()).toList());
      for (int i = 0; i < places.size(); i++) {
        double value = places.get(i).get("value").doubleValue();
        // Bands share a mesh, single solutions have their own: both within 0.1 % of the truth.
        assertThat(value).isCloseTo(solved.get(i), within(1e-3 * value));
      }
      double worst = solved.get(4);
      String verdict =
          worst <= 2 ? "direct" : worst <= 3 ? "tunable" : worst <= 10 ? "wide-tuner" : "unusable";
      assertThat(swr.get("verdict").textValue()).isEqualTo(verdict);
      assertThat(band.get("points").intValue()).isBetween(5, 17);
    }
  }

  /** Against solutions at places of their own all across the band. */
  @Test
  void noFrequencyOfTheBandIsBetterThanTheBestOrWorseThanTheWorst() throws IOException {
    for (JsonNode band : bands) {
      double low = band.get("low_hz").doubleValue();
      double width = band.get("high_hz").doubleValue() - low;
      List<Double> frequencies =
          IntStream.range(0, 16).mapToObj(i -> low + width * (i + 0.37) / 16).toList();
      double best = band.at("/swr/1/minimum/value").doubleValue();
      double worst = band.at("/swr/1/maximum/value").doubleValue();
      assertThat(swrAt(design, frequencies))
          .allMatch(swr -> swr >= best * (1 - 1e-4) && swr <= worst * (1 + 1e-4));
    }
  }

  /**
   * The best match of 40 m lies inside the band here, and a little to either side the match is
   * worse.
   */
  @Test
  void theBestMatchIsAMinimum() throws IOException {
    JsonNode band = bands.get(0);
    double best = band.at("/swr/1/minimum/frequency_hz").doubleValue();
    assertThat(best).isStrictlyBetween(7.02e6, 7.18e6);
    List<Double> swr = swrAt(design, List.of(best - 20e3, best, best + 20e3));
    assertThat(swr.get(1)).isLessThan(swr.get(0)).isLessThan(swr.get(2));
    assertThat(swr.get(1)).isCloseTo(band.at("/swr/1/minimum/value").doubleValue(), within(1e-6));
  }

  @Test
  void atTheEndsOfTheRangeBelowTwoTheSwrIsTwo() throws IOException {
    String longer = changed("20.2 m", "20.7 m");
    int inside = 0;
    for (JsonNode band : json("bands", longer).get("bands")) {
      for (JsonNode range : band.at("/swr/1/at_most_2")) {
        for (String end : new String[] {"low_hz", "high_hz"}) {
          double hertz = range.get(end).doubleValue();
          double swr = swrAt(longer, List.of(hertz)).get(0);
          assertThat(swr).isLessThan(2.001);
          if (hertz != band.get(end).doubleValue()) {
            assertThat(swr).isCloseTo(2, within(1e-3));
            inside++;
          }
        }
      }
    }
    assertThat(inside).isPositive();
  }

  /** Without a route a choke has nothing to act on: said by name, and its heat is not a number. */
  @Test
  void aChokeWithoutTheLinesRouteIsNamed() throws IOException {
    assertThat(json("solve", design).at("/solutions/0/warnings")).isEmpty();
    String chain = changed("{ratio: 2}", "{ratio: 2}\n" + STAGES);
    JsonNode solution = json("solve", chain).at("/solutions/0");
    assertThat(solution.at("/warnings/0/name").textValue()).isEqualTo("common-mode-not-modelled");
    assertThat(solution.get("common_mode").isNull()).isTrue();
    assertThat(solution.get("common_mode_reason").textValue()).contains("no feed-line");
    JsonNode band = json("bands", chain).at("/bands/0");
    assertThat(band.get("choke_heat_w").isNull()).isTrue();
    assertThat(band.get("choke_heat_reason").textValue()).contains("no feed-line");
    assertThat(Run.of("solve", chain, "--format", "csv").err())
        .startsWith("spanwire: warning: common-mode-not-modelled: choke")
        .hasLineCount(1);
  }

  /**
   * The line's matched loss hides part of the mismatch: ARRL's formula of total loss against the
   * stage's own watts, and SWR behind the attenuation A = 10^(loss/10): |Γ| falls by A.
   */
  @Test
  void theLineFlattersTheTransmittersEnd() throws IOException {
    String chain = changed("{ratio: 2}", "{ratio: 2}\n" + STAGES);
    JsonNode solution =
        json("solve", chain, "--frequency", "7.0MHz", "--power-balance").at("/solutions/0");
    double feedpoint = solution.at("/feeds/0/swr/0/value").doubleValue();
    double transmitter = solution.at("/feeds/0/swr/1/value").doubleValue();
    double input = solution.at("/feeds/0/swr/2/value").doubleValue();
    assertThat(solution.at("/feeds/0/swr/2/plane").textValue()).isEqualTo("transformer-input");
    assertThat(input).isCloseTo(feedpoint, within(1e-9));
    double a = Math.pow(10, 0.09);
    double gamma = (input - 1) / (input + 1);
    double seen = (transmitter - 1) / (transmitter + 1);
    // Z0 of a lossy line is not quite real.
    assertThat(seen).isCloseTo(gamma / a, within(0.01));
    Map<String, Double> watts = new HashMap<>();
    solution
        .at("/power_ledger/parts")
        .forEach(
            part -> watts.put(part.get("part").textValue(), part.get("power_w").doubleValue()));
    double accepted = 80 - watts.get("mismatch");
    double through = a * (1 - gamma * gamma) / (a * a - gamma * gamma);
    assertThat(watts.get("line")).isCloseTo(accepted * (1 - through), within(0.3));
    assertThat(watts.values().stream().mapToDouble(w -> w).sum()).isCloseTo(80, within(0.08));
  }

  @Test
  void theChokesWattsAreShownWithTheRoute() throws IOException {
    String chain =
        changed(
            "{ratio: 2}",
            "{ratio: 2}\n"
                + STAGES
                + "\n"
                + "feed-line: {conductor: strand, earthed: true, path: [[7.272, 0, 0.5], [7.272,"
                + " 6.5, 0.5], [7.272, 6.5, 0]]}");
    JsonNode solution =
        json("solve", chain, "--frequency", "7.0MHz", "--currents", "3").at("/solutions/0");
    JsonNode mode = solution.get("common_mode");
    double current = mode.get("current_at_choke_a").doubleValue();
    assertThat(mode.at("/chokes/0/heat_w").doubleValue())
        .isCloseTo(3000 * current * current, within(1e-9));
    assertThat(mode.at("/chokes/0/voltage_v").doubleValue())
        .isCloseTo(3000 * current, within(1e-9));
    assertThat(mode.at("/power_w").doubleValue()).isEqualTo(80);
    assertThat(solution.get("currents")).hasSize(6);
    double band = json("bands", chain).at("/bands/0/choke_heat_w").doubleValue();
    assertThat(band).isGreaterThanOrEqualTo(mode.at("/chokes/0/heat_w").doubleValue() * 0.999);
    Run text = Run.of("bands", chain);
    assertThat(text.err()).isEmpty();
    assertThat(text.out()).contains("Heat at 80 W", "choke", "earthed");
    assertThat(text.out().lines()).allMatch(line -> line.length() <= 120);
  }

  @Test
  void severalFeedsAreAllSolvedAndTheFirstJudged() throws IOException {
    String two =
        changed("gap: 20 mm}", "gap: 20 mm}\n  second: {wire: radiator, at: 70 %, voltage: 0 V}");
    JsonNode solution = json("solve", two, "--frequency", "7.1MHz").at("/solutions/0");
    assertThat(solution.get("feeds")).hasSize(2);
    Complex forward = complex(solution.at("/port_matrix_ohm/0/1"));
    assertThat(complex(solution.at("/port_matrix_ohm/1/0")).subtract(forward).abs())
        .isLessThan(1e-9 * forward.abs());
    assertThat(Run.of("bands", two).out()).contains("first-feed-only").contains("feed second");
  }

  @Test
  void tablesFitTheTerminal() {
    Run bands = Run.of("bands", design);
    Run solve =
        Run.of("solve", design, "--elevation", "10,30", "--currents", "3", "--power-balance");
    assertThat(bands.code()).isZero();
    assertThat(solve.code()).isZero();
    assertThat(bands.out().lines()).allMatch(line -> line.length() <= 120);
    assertThat(solve.out().lines()).allMatch(line -> line.length() <= 120);
  }

  @Test
  void anOutputFileIsReplacedByACompleteOneOnly() throws IOException {
    Path file = Files.writeString(directory.resolve("result.csv"), "old");
    Run run = Run.of("solve", design, "--format", "csv", "--output", file.toString());
    assertThat(run.out()).isEmpty();
    assertThat(run.code()).isZero();
    String complete = Run.of("solve", design, "--format", "csv").out();
    assertThat(Files.readString(file)).isEqualTo(complete);

    String bad = changed("at: 36 %", "at: 21 m");
    assertThat(Run.of("solve", bad, "--format", "csv", "--output", file.toString()).code())
        .isEqualTo(2);
    assertThat(Files.readString(file)).isEqualTo(complete);
    try (Stream<Path> left = Files.list(directory)) {
      assertThat(left).containsExactlyInAnyOrder(file, Path.of(bad));
    }
  }

  @Test
  void everyExampleIsSolvedWithinItsTolerance() throws IOException {
    for (Path example : Run.examples()) {
      JsonNode solved = json("solve", example.toString());
      assertThat(solved.at("/conditions/largest_relative_error").doubleValue())
          .as(example.toString())
          .isLessThanOrEqualTo(solved.at("/conditions/tolerance").doubleValue());
    }
  }
}
