package org.spanwire.cli.output;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.IOException;
import java.io.StringReader;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.OptionalDouble;
import org.apache.commons.csv.CSVFormat;
import org.apache.commons.csv.CSVRecord;
import org.apache.commons.math3.complex.Complex;
import org.junit.jupiter.api.Test;
import org.spanwire.circuit.CommonModeDrive;
import org.spanwire.circuit.Mismatch;
import org.spanwire.cli.JsonSchema;
import org.spanwire.design.Design;
import org.spanwire.design.DesignReader;
import org.spanwire.result.CurrentSample;
import org.spanwire.result.GainSample;
import org.spanwire.result.PeakGain;
import org.spanwire.result.PowerBudget;
import org.spanwire.result.Warning;
import org.spanwire.study.BandResponse;
import org.spanwire.study.CommonMode;
import org.spanwire.study.FrequencyRange;
import org.spanwire.study.HeatAt;
import org.spanwire.study.Ledger;
import org.spanwire.study.Plane;
import org.spanwire.study.PlaneMismatch;
import org.spanwire.study.PlaneResponse;
import org.spanwire.study.SolvedFeed;
import org.spanwire.study.SolvedFrequency;
import org.spanwire.study.SwrAt;

/**
 * How values that a solver rarely returns are written: infinities, undefined angles, exact nulls.
 * The numbers are made up.
 */
class ReportTest {

  private static final String DESIGN =
      """
      format: spanwire-design/1
      title: Hut kit, two feeds
      conductors:
        strand: {material: copper, diameter: 2 mm}
      wires:
        lower: {conductor: strand, path: [[0, 0, 8], [20, 0, 8]]}
        upper: {conductor: strand, path: [[0, 0, 11], [20, 0, 11]]}
      feeds:
        main: {wire: lower, at: 36 %}
        second: {wire: upper, at: 36 %}
      ground: {soil: medium-dry}
      feed-chain:
        - transformer: {ratio: 4}
      """;

  private static final PeakGain ZENITH =
      new PeakGain(6.25, OptionalDouble.of(90), OptionalDouble.empty());

  private static final CommonMode MODE =
      new CommonMode(
          new CommonModeDrive(new Complex(200, 10), new Complex(300, -50)),
          new Complex(3000, 0),
          new Complex(0.06, 0),
          1e-16,
          List.of(new CommonMode.ChokeHeat(0, 180, 10.8), new CommonMode.ChokeHeat(5, 20, 0.4)),
          List.of(new CurrentSample("feed-line", 0, new Complex(0.06, 0))));

  private static final List<Warning> DOUBTS = List.of(new Warning("made-up", "made up; no remedy"));

  private static Conditions conditions() {
    Design design = DesignReader.read(DESIGN, "kit.yaml");
    return new Conditions(design, "1.2.3", 1e-3, 2e-4, Map.of("main", 0.004, "second", 0.004));
  }

  private static SolvedFeed seen(String name, Complex z, double errorOhm) {
    return new SolvedFeed(
        name,
        z,
        errorOhm,
        0.004,
        List.of(
            new PlaneMismatch(Plane.FEEDPOINT, Mismatch.of(z, 200)),
            new PlaneMismatch(
                Plane.TRANSMITTER, Mismatch.of(z.isInfinite() ? z : z.divide(4), 50))));
  }

  private static SolveReport solved(Complex first, Complex second, List<CurrentSample> currents) {
    Complex[][] ports = {{first, new Complex(1, 2)}, {new Complex(1, 2), second}};
    SolvedFrequency solution =
        new SolvedFrequency(
            7.1e6,
            List.of(seen("main", first, 0.2), seen("second", second, 0)),
            ports,
            ZENITH,
            List.of(
                new GainSample(30, OptionalDouble.of(90), -1.5),
                new GainSample(0, OptionalDouble.of(90), Double.NEGATIVE_INFINITY)),
            0.71,
            OptionalDouble.empty(),
            Optional.of(new PowerBudget(2, 1.4, 0.1, 0, OptionalDouble.of(0.5))),
            Optional.of(
                new Ledger(
                    100, List.of(new Ledger.Entry("line", 40), new Ledger.Entry("sky", 60)))),
            Optional.of(MODE),
            currents,
            34,
            List.of());
    return new SolveReport(conditions(), List.of(solution), true, 100, DOUBTS);
  }

  private static PlaneResponse plane(Plane plane, double referenceOhm, double worst) {
    return new PlaneResponse(
        plane,
        referenceOhm,
        2.5,
        1.25,
        worst,
        new SwrAt(7.2e6, worst),
        new SwrAt(7.08e6, 1.2),
        List.of(new FrequencyRange(7.02e6, 7.06e6), new FrequencyRange(7.07e6, 7.15e6)));
  }

  private static BandsReport judged(double worst, Complex impedance) {
    BandResponse band =
        new BandResponse(
            "40 m",
            new FrequencyRange(7e6, 7.2e6),
            List.of(plane(Plane.FEEDPOINT, 200, worst), plane(Plane.TRANSMITTER, 50, worst)),
            seen("main", impedance, 0.1),
            Map.of("main", 0.004, "second", 0.004),
            ZENITH,
            List.of(new GainSample(10, OptionalDouble.empty(), -3)),
            0.71,
            List.of(new HeatAt("line", 12, 7.2e6)),
            11,
            2e-4,
            1e-5,
            List.of());
    return new BandsReport(conditions(), "main", List.of(band), 100, DOUBTS);
  }

  private static String render(Report report, Format format) throws IOException {
    return report.render(format, Palette.plain());
  }

  @Test
  void everyJsonKeepsTheSchemaWhateverTheValues() throws IOException {
    JsonSchema schema = JsonSchema.result();
    List<Complex> impedances =
        List.of(
            new Complex(180, -20),
            Complex.INF,
            Complex.ZERO,
            new Complex(0, 50),
            new Complex(-5, 1));
    for (Complex z : impedances) {
      SolveReport report =
          solved(z, new Complex(200, 0), List.of(new CurrentSample("lower", 3.5, Complex.I)));
      assertThat(schema.faultsOfJson(render(report, Format.JSON))).as("solve " + z).isEmpty();
      BandsReport bands = judged(Double.POSITIVE_INFINITY, z);
      assertThat(schema.faultsOfJson(render(bands, Format.JSON))).as("bands " + z).isEmpty();
    }
  }

  @Test
  void openShortAndUndefinedAreNamedInJson() throws IOException {
    String open = render(solved(Complex.INF, Complex.ZERO, List.of()), Format.JSON);
    assertThat(open)
        .containsSubsequence(
            "\"name\" : \"main\"",
            "\"impedance_ohm\" : null",
            "\"status\" : \"open\"",
            "\"plane\" : \"feedpoint\"",
            "\"reference_ohm\" : 200.0",
            "\"value\" : null",
            "\"status\" : \"open\"",
            "\"name\" : \"second\"",
            "\"value\" : null",
            "\"status\" : \"short\"");
    assertThat(open).containsSubsequence("\"azimuth_deg\" : null", "\"status\" : \"undefined\"");
    assertThat(open).doesNotContain("NaN").doesNotContain("Infinity");
  }

  @Test
  void theTwoPlanesHaveTheirReferences() throws IOException {
    String json = render(solved(new Complex(100, 0), new Complex(200, 0), List.of()), Format.JSON);
    assertThat(json)
        .containsSubsequence(
            "\"feedpoint\"",
            "200.0",
            "\"value\" : 2.0",
            "\"transmitter\"",
            "50.0",
            "\"value\" : 2.0",
            "\"feedpoint\"",
            "200.0",
            "\"value\" : 1.0",
            "\"transmitter\"",
            "50.0",
            "\"value\" : 1.0");
  }

  @Test
  void csvRowsMatchTheirHeader() throws IOException {
    for (Report report :
        List.of(
            solved(Complex.INF, Complex.ZERO, List.of()),
            solved(Complex.ONE, Complex.ONE, List.of(new CurrentSample("lower", 3.5, Complex.I))),
            judged(Double.POSITIVE_INFINITY, Complex.INF))) {
      CSVFormat format = CSVFormat.RFC4180.builder().setHeader().setSkipHeaderRecord(true).get();
      List<CSVRecord> rows =
          format.parse(new StringReader(render(report, Format.CSV))).getRecords();
      assertThat(rows).isNotEmpty().allMatch(CSVRecord::isConsistent);
    }
  }

  @Test
  void csvNamesUnitsAndWritesInfinity() throws IOException {
    String csv = render(solved(Complex.INF, new Complex(200, 0), List.of()), Format.CSV);
    assertThat(csv)
        .startsWith("frequency_hz,feed,resistance_ohm,reactance_ohm,")
        .contains(
            "gain_elevation_30_deg_azimuth_90_deg_dbi",
            "\n7100000.0,main,inf,,,0.004,inf,200.0,inf,50.0,");
    assertThat(render(judged(2.5, Complex.ONE), Format.CSV))
        .contains("7020000-7060000 7070000-7150000,tunable,");
  }

  @Test
  void textNamesGroundHeightsGapToleranceAndCautions() throws IOException {
    for (Report report :
        List.of(solved(Complex.INF, Complex.ZERO, List.of()), judged(2.5, Complex.ONE))) {
      assertThat(render(report, Format.TEXT))
          .contains("medium-dry", "permittivity 15", "0.001 S/m", "ITU-R P.527", "8 m to 11 m")
          .contains("gap 4 mm", "4:1", "200 ohm", "50 ohm", "0.1 %", "0.02 %")
          .containsSubsequence("made-up\n", "made up; no remedy\n")
          .contains("power lines", "RF voltage", "RF exposure", "local codes")
          .doesNotContain("NaN");
    }
  }

  @Test
  void aTableOfBandsBeginsWithItsAnswer() throws IOException {
    BandsReport bands = judged(2.5, Complex.ONE);
    assertThat(render(bands, Format.TEXT))
        .containsSubsequence(
            "In short\n",
            "  tuner to 3:1  40 m\n",
            "  burns first   no part is known to\n",
            "  line          up to 12.0 W of 100 W on 40 m, at 7.2 MHz",
            "  not known     heat of the transformer: taken as ideal\n",
            "SWR over the band",
            "  power         100 W available from the transmitter, assumed");
    assertThat(render(bands, Format.JSON))
        .containsSubsequence(
            "\"power_assumed\" : true",
            "\"tunable\" : [",
            "\"40 m\"",
            "\"burns_first\" : null",
            "\"choke_heat_w\" : null",
            "\"choke_heat_reason\" : \"the design gives no feed-line\"");
  }

  @Test
  void coloursRepeatTheWordsOnly() {
    String plain = judged(2.5, Complex.ONE).text(Palette.plain());
    String coloured = judged(2.5, Complex.ONE).text(new Palette(true));
    assertThat(plain).contains("tunable").doesNotContain("\u001b");
    assertThat(coloured).contains("\u001b[36m");
    assertThat(coloured.replaceAll("\u001b\\[[0-9;]*m", "").replaceAll(" +\n", "\n"))
        .isEqualTo(plain);
  }
}
