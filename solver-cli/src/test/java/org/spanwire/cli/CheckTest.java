package org.spanwire.cli;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatCode;

import java.io.IOException;
import java.io.StringReader;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import javax.xml.XMLConstants;
import javax.xml.transform.stream.StreamSource;
import javax.xml.validation.Schema;
import javax.xml.validation.SchemaFactory;
import org.apache.maven.plugin.surefire.log.api.NullConsoleLogger;
import org.apache.maven.plugins.surefire.report.ReportTestCase;
import org.apache.maven.plugins.surefire.report.ReportTestSuite;
import org.apache.maven.plugins.surefire.report.SurefireReportParser;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.MethodSource;
import org.junit.jupiter.params.provider.ValueSource;
import org.spanwire.design.DesignReader;

/** {@code spanwire check} as a build server runs it. */
class CheckTest {

  private static final String GOOD =
      """
      format: spanwire-design/1
      title: Hut kit under test
      parameters: {span: 20.2 m}
      conductors:
        strand: {material: copper, diameter: 2 mm}
      wires:
        radiator: {conductor: strand, path: [[0, 0, 10], [span, 0, 10]]}
      feeds:
        main: {wire: radiator, at: 50 %}
      ground: perfect
      bands: {plan: iaru-region-1, use: [40 m]}
      requirements:
        - {frequency: 7.1 MHz, swr: {max: 2}}
        - {frequency: 7.1 MHz, gain: {min: 5 dBi, elevation: 60 deg}}
      """;

  @TempDir private Path directory;

  /** Those that promise something. */
  static List<Path> examples() throws IOException {
    List<Path> promising =
        Run.examples().stream()
            .filter(example -> !DesignReader.read(example).requirements().isEmpty())
            .toList();
    assertThat(promising).hasSizeGreaterThanOrEqualTo(4);
    return promising;
  }

  private Path file(String name, String text) throws IOException {
    return Files.writeString(directory.resolve(name), text);
  }

  @ParameterizedTest
  @MethodSource("examples")
  void examplesKeepWhatTheyPromise(Path example) {
    Run run = Run.of("check", example.toString());
    assertThat(run.code()).as(run.out()).isZero();
    assertThat(run.out()).contains(" requirements are met").doesNotContain("failed", "undecided");
    assertThat(run.out().lines()).allMatch(line -> line.length() <= 118);
  }

  @Test
  void aWorsenedCopyOfAnExampleFailsAndSaysWhy() throws IOException {
    String example = Files.readString(Run.EXAMPLES.resolve("hut-kit-short.yaml"));
    String offset = "offset: 34 %";
    assertThat(example).contains(offset);
    Path worse = file("worse.yaml", example.replace(offset, "offset: 45 %"));
    Path xml = directory.resolve("TEST-check.xml");
    Run run = Run.of("check", worse.toString(), "--junit", xml.toString());
    assertThat(run.code()).isEqualTo(1);
    assertThat(run.err()).isEmpty();
    assertThat(run.out())
        .contains("failed", "ohm against 200.0 ohm at", "of 6 requirements are not met");
    ReportTestSuite suite = parse().get(0);
    assertThat(suite.getNumberOfTests()).isEqualTo(6);
    assertThat(suite.getNumberOfFailures()).isPositive();
    ReportTestCase failed =
        suite.getTestCases().stream().filter(ReportTestCase::hasFailure).findFirst().orElseThrow();
    assertThat(failed.getFailureMessage()).contains("found ", ", limit <= ", ", margin -");
    assertThat(failed.getFailureDetail()).contains("worse.yaml: the feedpoint shows");
    assertThat(failed.getClassName()).isEqualTo("Hut kit, short span");
  }

  /**
   * Another supplier's wire, a shorter span, hung lower and fed elsewhere, breaks every promise.
   */
  @Test
  void everyKindOfRequirementIsKeptAndCanFail() throws IOException {
    String kit =
        """
        format: spanwire-design/1
        title: Hut kit, everything promised
        parameters: {span: {value: 20.2 m, spread: 20 mm}, offset: 50 %, height: 10 m}
        conductors: {strand: {material: copper, diameter: 2 mm}}
        wires: {radiator: {conductor: strand, path: [[0, 0, height], [span, 0, height]]}}
        feeds: {main: {wire: radiator, at: offset}}
        ground: perfect
        feed-chain:
          - choke: {impedance: 1 kohm}
          - line: {impedance: 50 ohm, length: 9 m, velocity-factor: 0.66}
        feed-line: {conductor: strand, path: [[span * offset, 0, 1]]}
        power: 400 W
        exposure: {limits: [icnirp-2020-public], mode: carrier, floors: [1 m]}
        bands: {plan: iaru-region-1, use: [40 m]}
        requirements:
          - {frequency: 7.1 MHz, swr: {max: 2}}
          - {band: 40 m, swr: {max: 3, plane: feedpoint}}
          - {band: 40 m, verdict: tunable}
          - {band: 40 m, bandwidth: {min: 100 kHz}}
          - {frequency: 7.1 MHz, gain: {min: 5 dBi, elevation: 60 deg}}
          - {band: 40 m, efficiency: {min: 95 %}}
          - {frequency: 7.1 MHz, choke-heat: {max: 8 W}}
          - {band: 40 m, exposure-distance: {max: 0.1 m}}
          - {yield: {min: 90 %}}
        """;
    String worse =
        kit.replace(
                "material: copper, diameter: 2 mm",
                "material: {conductivity: 1 MS/m, permeability: 60}, diameter: 0.6 mm")
            .replace("20.2 m", "17 m")
            .replace("offset: 50 %", "offset: 30 %")
            .replace("height: 10 m", "height: 3 m");
    Run kept = Run.of("check", file("kit.yaml", kit).toString(), "--format", "csv");
    assertThat(kept.code()).as(kept.out()).isZero();
    assertThat(kept.out().lines().filter(line -> line.contains(",met,"))).hasSize(9);
    Run broken = Run.of("check", file("worse.yaml", worse).toString());
    assertThat(broken.code()).isEqualTo(1);
    assertThat(broken.out().lines().filter(line -> line.startsWith(" failed "))).hasSize(9);
    assertThat(broken.out())
        .contains(
            "mostly capacitive reactance",
            "its best match in the band",
            "the pattern peaks with",
            " is in conductors at ",
            "A of common-mode current through 1000 ohm",
            "icnirp-2020-public, electric field",
            "is the spread of span",
            "9 of 9 requirements are not met");
  }

  @Test
  void junitXmlKeepsTheCommonSchemaWhateverTheTitle() throws Exception {
    Path good = file("good.yaml", GOOD);
    Path odd =
        file("odd.yaml", GOOD.replace("Hut kit under test", "\"<Hut> & 'kit' 1.5 \\u0085 Übung\""));
    Path xml = directory.resolve("TEST-check.xml");
    assertThat(Run.of("check", good.toString(), odd.toString(), "--junit", xml.toString()).code())
        .isZero();
    Schema schema =
        SchemaFactory.newInstance(XMLConstants.W3C_XML_SCHEMA_NS_URI)
            .newSchema(CheckTest.class.getResource("surefire-test-report.xsd"));
    String text = Files.readString(xml);
    assertThatCode(() -> schema.newValidator().validate(new StreamSource(new StringReader(text))))
        .doesNotThrowAnyException();
    List<ReportTestSuite> designs = parse();
    assertThat(designs).hasSize(2).allMatch(design -> design.getNumberOfTests() == 2);
    assertThat(designs).allMatch(design -> design.getNumberOfFailures() == 0);
    assertThat(designs.get(0).getTestCases().get(0).getName())
        .isEqualTo("7.1 MHz: SWR at the transmitter <= 2.00");
    assertThat(designs.get(1).getFullClassName()).startsWith("<Hut> & 'kit' 1 5 ");
  }

  /** A suite for each design, as the consumer groups tests by class. */
  private List<ReportTestSuite> parse() {
    return new SurefireReportParser(List.of(directory.toFile()), new NullConsoleLogger())
        .parseXMLReportFiles();
  }

  @Test
  void jsonKeepsItsSchemaAndCsvHasARowForEach() throws IOException {
    Path file = file("kit.yaml", GOOD);
    Run json = Run.of("check", file.toString(), "--format", "json", "--set", "span=19m");
    assertThat(json.code()).isEqualTo(1);
    assertThat(JsonSchema.result().faultsOfJson(json.out())).isEmpty();
    assertThat(json.out()).contains("\"passed\" : false", "\"outcome\" : \"failed\"");
    Run csv = Run.of("check", file.toString(), "--format", "csv");
    assertThat(csv.code()).isZero();
    assertThat(csv.out()).hasLineCount(3).contains(",SWR at the transmitter,,met,at-most,2.0,");
  }

  @Test
  void nothingToCheckIsBadInput() throws IOException {
    String none = GOOD.substring(0, GOOD.indexOf("requirements:"));
    Path file = file("none.yaml", none);
    Path xml = directory.resolve("TEST-check.xml");
    Run run =
        Run.of(
            "check", file("kit.yaml", GOOD).toString(), file.toString(), "--junit", xml.toString());
    assertThat(run.code()).isEqualTo(2);
    assertThat(run.err()).contains("none.yaml: has no requirements; add").hasLineCount(1);
    assertThat(run.out()).isEmpty();
    assertThat(xml).doesNotExist();
    assertThat(Run.of("check").code()).isEqualTo(2);
  }

  @Test
  void theReportAndTheJunitXmlDoNotOverwriteEachOther() throws IOException {
    Path file = file("kit.yaml", GOOD);
    Path both = directory.resolve("check.out");
    Run run =
        Run.of("check", file.toString(), "--junit", both.toString(), "--output", both.toString());
    assertThat(run.code()).isEqualTo(2);
    assertThat(run.err()).contains("is named by --output and --junit").hasLineCount(1);
    assertThat(both).doesNotExist();
  }

  @Test
  void theReportAndTheJunitXmlMayBothBeWritten() throws IOException {
    Path file = file("kit.yaml", GOOD);
    Path text = directory.resolve("check.txt");
    Path xml = directory.resolve("TEST-check.xml");
    Run run =
        Run.of("check", file.toString(), "--junit", xml.toString(), "--output", text.toString());
    assertThat(run.code()).as(run.err()).isZero();
    assertThat(run.out()).isEmpty();
    assertThat(text).content().contains("all 2 requirements are met");
    assertThat(xml).content().contains("tests=\"2\"");
  }

  @ParameterizedTest
  @ValueSource(strings = {"--junit", "--output"})
  void neverWritesOverADesign(String option) throws IOException {
    Path file = file("kit.yaml", GOOD);
    Run run = Run.of("check", file.toString(), option, file.toString());
    assertThat(run.code()).isEqualTo(2);
    assertThat(run.err()).contains("is the design itself").hasLineCount(1);
    assertThat(file).hasContent(GOOD);
  }
}
