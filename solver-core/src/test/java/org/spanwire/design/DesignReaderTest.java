package org.spanwire.design;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.assertj.core.api.Assertions.within;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;
import org.apache.commons.math3.complex.Complex;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.spanwire.circuit.LineAttenuation;
import org.spanwire.circuit.TransmissionLine;
import org.spanwire.geometry.GeometryException;
import org.spanwire.geometry.GeometryException.Subject;
import org.spanwire.geometry.Point;
import org.spanwire.geometry.Position;
import org.spanwire.medium.Cladding;
import org.spanwire.medium.Conductor;
import org.spanwire.medium.Ground;
import org.spanwire.medium.Materials;
import org.spanwire.medium.Soil;
import org.spanwire.medium.SoilLayer;
import org.spanwire.medium.Stranding;
import org.spanwire.unit.Quantity;

class DesignReaderTest {

  private static Design complete() {
    return DesignReader.read(Designs.resource("complete.yaml"));
  }

  private static Design small() {
    return DesignReader.read(Designs.SMALL, "small.yaml");
  }

  /** A table of soil is read, and a row that is wrong is told with its file, line and column. */
  @Test
  void soilTable(@TempDir Path directory) throws IOException {
    Path table = directory.resolve("soil.csv");
    Files.writeString(
        table,
        "frequency_hz,relative_permittivity,conductivity_s_per_m\n1e6,30,0.01\n1e7,20,0.02\n");
    Path design = directory.resolve("d.yaml");
    Files.writeString(
        design,
        "format: spanwire-design/1\ntitle: t\nconductors: {s: {material: copper, diameter: 2 mm}}\n"
            + "wires: {w: {conductor: s, path: [[0, 0, 9], [20, 0, 9]]}}\n"
            + "feeds: {f: {wire: w, at: 50 %}}\nground: {table: soil.csv, snow: {depth: 1 m}}\n"
            + "frequencies: [7.1 MHz]\n");
    Soil soil = (Soil) DesignReader.read(design).antenna().ground();
    assertThat(soil.name()).isEqualTo("soil.csv");
    assertThat(soil.table().orElseThrow().rows()).hasSize(2);
    assertThat(soil.layers()).containsExactly(SoilLayer.snow(1));
    assertThat(soil.complexPermittivity(1e7)).isEqualTo(Soil.of(20, 0.02).complexPermittivity(1e7));
    Files.writeString(
        table, "frequency_hz,relative_permittivity,conductivity_s_per_m\n1e6,30,wet\n");
    assertThatThrownBy(() -> DesignReader.read(design))
        .hasMessageContaining("soil.csv:2:8: value 'wet'");
  }

  @Test
  void readsTheWires() {
    var wires = complete().antenna().wires();
    assertThat(wires.get(0).path()).containsExactly(new Point(0, 0, 11), new Point(27.3, 0, 11));
    assertThat(wires.get(1).path())
        .containsExactly(new Point(0, 5, 11), new Point(27.3, 5, 10.5), new Point(28.3, 6.096, 6));
    var strand = wires.get(0).conductor();
    assertThat(strand.radius()).isEqualTo(1e-3);
    assertThat(strand.material()).isEqualTo(Materials.COPPER);
    assertThat(strand.insulation())
        .hasValueSatisfying(
            coat -> {
              assertThat(coat.thickness()).isEqualTo(0.6e-3);
              assertThat(coat.relativePermittivity()).isEqualTo(2.3);
              assertThat(coat.lossTangent()).isEqualTo(5e-4);
            });
    assertThat(wires.get(1).conductor().material().conductivity()).isEqualTo(10e6);
  }

  @Test
  void readsLayeredAndStrandedConductors() {
    var clad =
        conductor(
            "{material: steel, diameter: 2.05 mm, cladding: {material: copper, thickness: 50 um}}");
    assertThat(clad.radius()).isEqualTo(1.025e-3);
    assertThat(clad.material()).isEqualTo(Materials.STEEL);
    assertThat(clad.cladding()).hasValue(new Cladding(Materials.COPPER, 50e-6));
    var cord = conductor("{material: copper, strands: {count: 7, diameter: 0.5 mm}}");
    assertThat(cord.radius()).isEqualTo(new Stranding(7, 0.25e-3).equivalentRadius());
    assertThat(cord.material()).isEqualTo(new Stranding(7, 0.25e-3).equivalent(Materials.COPPER));
  }

  private static Conductor conductor(String text) {
    String design = Designs.spoilt("{material: copper, diameter: 2 mm}", text);
    return DesignReader.read(design, "small.yaml").antenna().wires().get(0).conductor();
  }

  @Test
  void readsFeedsAndFittings() {
    var feeds = complete().antenna().feeds();
    assertThat(feeds.get(0).at()).isEqualTo(Position.fraction(0.36));
    assertThat(feeds.get(0).gap()).isEqualTo(OptionalDouble.of(4e-3));
    assertThat(feeds.get(0).capacitance()).isEqualTo(2e-12);
    assertThat(feeds.get(1).capacitance()).isZero();
    assertThat(feeds.get(1).at()).isEqualTo(Position.distance(3));
    assertThat(feeds.get(1).gap()).isEmpty();
    assertThat(feeds.get(1).voltage().subtract(new Complex(0, 2)).abs()).isLessThan(1e-15);
    var fittings = complete().antenna().fittings();
    double w = 2 * Math.PI * 7.1e6;
    Complex coil = fittings.get(0).impedance().at(7.1e6);
    assertThat(coil.getReal()).isEqualTo(0.5);
    assertThat(coil.getImaginary()).isCloseTo(w * 4.2e-6 - 1 / (w * 60e-12), within(1e-9));
    Complex trap = fittings.get(1).impedance().at(7.1e6);
    Complex admittance = new Complex(0, w * 60e-12).add(new Complex(0.5, w * 4.2e-6).reciprocal());
    assertThat(trap.multiply(admittance).subtract(1).abs()).isLessThan(1e-12);
  }

  @Test
  void interpolatesAnImpedanceTableAndStaysInsideIt() {
    var part = complete().antenna().fittings().get(2);
    assertThat(part.impedance().at(1e6)).isEqualTo(new Complex(10, -200));
    assertThat(part.impedance().at(2e6)).isEqualTo(new Complex(15, -150));
    assertThat(part.impedance().at(30e6)).isEqualTo(new Complex(50, 400));
    assertThatThrownBy(() -> part.impedance().at(31e6))
        .isInstanceOf(GeometryException.class)
        .hasMessageContaining("31 MHz lies outside")
        .hasMessageContaining("1 MHz to 30 MHz; extend the table");
  }

  @Test
  void readsTheRouteOfTheLine() {
    FeedLine line =
        DesignReader.read(
                """
                format: spanwire-design/1
                title: Line
                parameters: {down: 2 m}
                conductors: {strand: {material: copper, diameter: 2 mm}}
                wires: {radiator: {conductor: strand, path: [[0, 0, 9], [20, 0, 9]]}}
                feeds: {main: {wire: radiator, at: 36 %}}
                ground: perfect
                feed-chain: [line: {impedance: 50 ohm, length: 15 m, velocity-factor: 0.66}]
                feed-line:
                  conductor: strand
                  path: [[7.2, 0, down], [7.2, 6, 0]]
                  earthed: true
                  chokes: [{at: 5 m, impedance: {r: 1 kohm, x: 2 kohm}}, {at: 50 %, impedance: 300 ohm}]
                  polarity: last-point
                """,
                "line.yaml")
            .feedLine()
            .orElseThrow();
    assertThat(line.path()).containsExactly(new Point(7.2, 0, 2), new Point(7.2, 6, 0));
    assertThat(line.earthed()).isTrue();
    assertThat(line.polarity()).isEqualTo(FeedLine.Polarity.LAST_POINT);
    assertThat(line.conductor().name()).isEqualTo("strand");
    assertThat(line.chokes())
        .extracting(FeedLine.Choke::at)
        .containsExactly(Position.distance(5), Position.fraction(0.5));
    assertThat(line.chokes().get(0).impedance().at(7e6)).isEqualTo(new Complex(1000, 2000));
  }

  @Test
  void readsTheInstallation() {
    Design design = complete();
    assertThat(design.title()).isEqualTo("Every key");
    assertThat(((Soil) design.antenna().ground()).conductivity()).isEqualTo(0.005);
    assertThat(design.feedChain())
        .hasSize(8)
        .contains(
            new Stage.Transformer(
                4,
                Optional.of(Designs.resource("complete.yaml").resolveSibling("balun.s3p")),
                Optional.empty(),
                Stage.Output.UNBALANCED),
            new Stage.Line(
                new TransmissionLine(50, 20, 0.66, LineAttenuation.ofConductor(10e6, 2.2 / 100))));
    assertThat(((Stage.Choke) design.feedChain().get(1)).impedance().at(7e6))
        .isEqualTo(new Complex(2000, -1500));
    assertThat(design.referenceOhm()).isEqualTo(50);
    assertThat(design.feedpointReferenceOhm()).isEqualTo(800);
    assertThat(design.powerWatts()).hasValue(100);
    assertThat(design.bands())
        .extracting(Band::name)
        .containsExactly("80 m", "40 m", "30 m", "20 m");
    assertThat(design.frequencies()).containsExactly(7.1e6, 14.15e6);
    Band forty = design.bands().get(1);
    Requirement.InBand twenty = new Requirement.InBand(design.bands().get(3));
    assertThat(design.requirements())
        .containsExactly(
            new Requirement.MaximumSwr(
                new Requirement.InBand(forty), 2, Requirement.Plane.FEEDPOINT),
            new Requirement.MinimumGain(
                new Requirement.AtFrequency(7.1e6), 5, 30, OptionalDouble.of(90)),
            new Requirement.MinimumEfficiency(new Requirement.InBand(forty), 0.4),
            new Requirement.MaximumChokeHeat(twenty, 20),
            new Requirement.MinimumBandwidth(twenty, 100e3, 1.5, Requirement.Plane.FEEDPOINT),
            new Requirement.LowestVerdict(
                new Requirement.InBand(design.bands().get(2)), Requirement.Usability.WIDE_TUNER),
            new Requirement.MaximumExposureDistance(
                new Requirement.InBand(design.bands().get(2)), 4),
            new Requirement.MinimumYield(0.95));
  }

  @Test
  void readsParametersWithSpreadAndLimits() {
    var parameters = complete().parameters();
    assertThat(parameters.keySet()).containsExactly("span", "offset", "height");
    assertThat(parameters.get("span"))
        .isEqualTo(
            new Parameter(
                "span",
                Quantity.parse("27.3 m"),
                Optional.of(new Spread.Uniform(Quantity.parse("20 mm"))),
                Optional.of(new Parameter.Limits(Quantity.parse("25 m"), Quantity.parse("30 m")))));
    assertThat(parameters.get("height").spread())
        .contains(new Spread.Normal(Quantity.parse("0.5 m")));
    assertThat(parameters.get("offset").spread()).isEmpty();
  }

  @Test
  void whatIsLeftOutHasItsStatedDefault() {
    Design design = small();
    assertThat(design.referenceOhm()).isEqualTo(50);
    assertThat(design.powerWatts()).isEmpty();
    assertThat(design.antenna().feeds().get(0).voltage()).isEqualTo(Complex.ONE);
    assertThat(design.source()).isEqualTo("small.yaml");
    String bare = Designs.SMALL.substring(0, Designs.SMALL.indexOf("feed-chain"));
    Design least = DesignReader.read(bare, "least.yaml");
    assertThat(least.bands()).isEmpty();
    assertThat(least.frequencies()).isEmpty();
    assertThat(least.requirements()).isEmpty();
    assertThat(least.feedpointReferenceOhm()).isEqualTo(50);
  }

  @Test
  void readsJsonLikeYaml() {
    String json =
        """
        {"format": "spanwire-design/1", "title": "Small",
        \t"parameters": {"span": "20 m"},
        \t"conductors": {"strand": {"material": "copper", "diameter": "2 mm"}},
          "wires": {"radiator": {"conductor": "strand", "path": [[0, 0, 9], ["span", 0, 9.0]]}},
          "feeds": {"main": {"wire": "radiator", "at": 0.36}},
          "ground": {"soil": "medium-dry"}}
        """;
    assertThat(DesignReader.read(json, "small.json").antenna().wires())
        .isEqualTo(small().antenna().wires());
  }

  @Test
  void readsEveryGround() {
    String given = "{soil: medium-dry}";
    assertThat(DesignReader.read(Designs.spoilt(given, "perfect"), "g").antenna().ground())
        .isEqualTo(Ground.perfect());
    assertThat(DesignReader.read(Designs.spoilt(given, "free-space"), "g").antenna().ground())
        .isEqualTo(Ground.freeSpace());
  }

  @Test
  void allBandsOfThePlanUnlessSomeAreChosen() {
    List<String> every =
        BandPlan.find("iaru-region-2").orElseThrow().bands().stream().map(Band::name).toList();
    for (String use : List.of("", ", use: all")) {
      String text = Designs.spoilt("iaru-region-1, use: [40 m, 20 m]", "iaru-region-2" + use);
      assertThat(DesignReader.read(text, "b").bands()).extracting(Band::name).isEqualTo(every);
    }
  }

  @Test
  void changesAParameterAndWhatDependsOnIt() {
    Design lower = small().with("height", "6m").with("span", "2 * height + 20 ft");
    assertThat(lower.antenna().wires().get(0).path().get(1).z()).isEqualTo(6);
    assertThat(lower.antenna().wires().get(0).path().get(1).x()).isCloseTo(18.096, within(1e-12));
    assertThat(lower.parameters().get("height").spread()).isPresent();
    assertThat(small().antenna().wires().get(0).path().get(1).z()).isEqualTo(9);
  }

  @Test
  void refusesAChangeThatDoesNotFit() {
    Design design = small();
    assertThatThrownBy(() -> design.with("hieght", "6m"))
        .isInstanceOf(DesignException.class)
        .hasMessage(
            "small.yaml: unknown parameter 'hieght'; did you mean height? expected one of span,"
                + " height");
    assertThatThrownBy(() -> design.with("height", "6MHz"))
        .hasMessage(
            "small.yaml:5:19: parameter height set to '6MHz' is 6 MHz (a frequency); expected a"
                + " length such as 27.3 m");
    assertThatThrownBy(() -> design.with("height", "15m"))
        .hasMessage(
            "small.yaml:5:19: parameter height is 15 m, limits 5 m to 14 m; change the value or the"
                + " limits");
    assertThatThrownBy(() -> design.with("height", "6parsec"))
        .hasMessageContaining("unknown unit 'parsec'");
    assertThatThrownBy(() -> design.with("span", "span + 1m"))
        .hasMessageContaining("refers to itself");
  }

  @Test
  void placesFaultsOfTheGeometryInTheFile() {
    Design design = small();
    assertThat(design.locate(new GeometryException(Subject.WIRE, "radiator", "too low; raise it")))
        .hasMessage("small.yaml:9:3: too low; raise it");
    assertThat(design.locate(new GeometryException(Subject.FEED, "main", "off the wire; move it")))
        .hasMessage("small.yaml:13:3: off the wire; move it");
    assertThat(design.locate(new GeometryException(Subject.ANTENNA, "", "no feed; add one")))
        .hasMessage("small.yaml:9:3: no feed; add one");
    assertThat(
            complete()
                .locate(new GeometryException(Subject.FITTING, "trap", "off the wire"))
                .line())
        .isEqualTo(35);
  }
}
