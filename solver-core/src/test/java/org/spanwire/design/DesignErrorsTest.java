package org.spanwire.design;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.assertj.core.api.Assertions.catchThrowableOfType;

import java.io.ByteArrayOutputStream;
import java.io.PrintStream;
import java.nio.charset.StandardCharsets;
import java.util.stream.Stream;
import org.junit.jupiter.api.AfterEach;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.Arguments;
import org.junit.jupiter.params.provider.MethodSource;

/**
 * Faulty designs. Each case replaces a part of the small design; the sign » in the replacement
 * marks the place that the message must name.
 */
class DesignErrorsTest {

  private static final String RING =
      "{outer: 61 mm, inner: 35.55 mm, height: 12.7 mm, material: generic-nickel-zinc}";

  private static final String LINE =
      "- line: {impedance: 50 ohm, length: 15 m, velocity-factor: 0.66}\n";

  private static final char MARK = '»';

  private final PrintStream out = System.out;
  private final PrintStream err = System.err;
  private final ByteArrayOutputStream printed = new ByteArrayOutputStream();

  @BeforeEach
  void watchTheConsole() {
    PrintStream watched = new PrintStream(printed, true, StandardCharsets.UTF_8);
    System.setOut(watched);
    System.setErr(watched);
  }

  @AfterEach
  void releaseTheConsole() {
    System.setOut(out);
    System.setErr(err);
  }

  private static Arguments hanging(String hang, String... parts) {
    return fault(
        "strand: {material: copper, diameter: 2 mm}\nwires:\n  radiator:\n    conductor: strand",
        "strand: {material: copper, diameter: 2 mm, mechanical: {mass-per-length: 28 g/m}}\n"
            + "wires:\n  radiator:\n    hang: "
            + hang
            + "\n    conductor: strand",
        parts);
  }

  private static Arguments kit(String items, String... parts) {
    return fault("frequencies: [7.1 MHz]", "frequencies: [7.1 MHz]\nkit: [" + items + "]", parts);
  }

  static Stream<Arguments> faults() {
    return Stream.of(
        // Hanging and cutting.
        fault(
            "material: copper, diameter: 2 mm}\nwires:\n  radiator:\n    conductor: strand",
            "material: perfect, diameter: 2 mm}\nwires:\n  radiator:\n    hang: »{tension: 100 N}\n"
                + "    conductor: strand",
            "needs the weight of conductor 'strand'",
            "mechanical: {mass-per-length: 28 g/m}"),
        fault(
            "material: copper, diameter: 2 mm}",
            "material: copper, diameter: 2 mm, insulation: {thickness: 1 mm, permittivity: 3,"
                + " density: »3 g/m}}",
            "expected a density such as 950 kg/m3"),
        fault(
            "material: copper, diameter: 2 mm}",
            "material: perfect, diameter: 2 mm, mechanical: »{expansion: 17 ppm/K}}",
            "has no mass-per-length, and it does not follow from the densities"),
        fault(
            "strand: {material: copper, diameter: 2 mm}",
            "strand: »{material: copper, diameter: 1e-300 m}",
            "conductor 'strand': mass per length 0.0 kg/m must be positive and finite"),
        fault(
            "strand: {material: copper, diameter: 2 mm}",
            "strand: »{material: copper, diameter: 1e-300 m, mechanical: {mass-per-length: 1 g/m,"
                + " elastic-modulus: 110 GPa}}",
            "conductor 'strand': stiffness 0.0 N must be positive"),
        fault(
            "frequencies: [7.1 MHz]",
            "frequencies: [7.1 MHz, »14.15]",
            "frequencies of the design is 14.15 without a unit; expected one such as 7.1 MHz"),
        kit("»{count: 2}", "has no item; add one such as item: end insulator"),
        kit("{item: peg, count: »2.5}", "expected a whole number such as 2"),
        kit("{item: peg, mass: »40 mm}", "expected a mass such as 1.8 kg"),
        kit("{item: peg, hangs: »maybe}", "expected one of false, true"),
        kit("{item: peg}, »{item: peg}", "item 'peg' is in the kit twice"),
        hanging("»{tension: 100 N, sag: 1 m}", "expected exactly one of tension, sag, length"),
        hanging("{tension: »100 kg}", "expected a force such as 100 N"),
        hanging("»{length: 20 m}", "does not reach over"),
        hanging("»{tension: 1 N}", "too little to hold the load"),
        hanging("»{sag: 1 m, loads: [{at: 100 %, mass: 1 kg}]}", "must lie between its ends"),
        hanging("{sag: 1 m, loads: [{at: 50 %, mass: »0 kg}]}", "expected more than 0"),
        fault(
            "frequencies: [7.1 MHz]",
            "frequencies: [7.1 MHz]\ncut: {datum: »end}",
            "unknown datum 'end'; expected one of eye, tip"),
        fault(
            "frequencies: [7.1 MHz]",
            "frequencies: [7.1 MHz]\nexposure: {limits: [»fcc-publik]}",
            "unknown limit 'fcc-publik'; did you mean fcc-public?"),
        fault(
            "frequencies: [7.1 MHz]",
            "frequencies: [7.1 MHz]\nexposure: {mode: »morse}",
            "unknown mode 'morse'"),
        fault(
            "frequencies: [7.1 MHz]",
            "frequencies: [7.1 MHz]\nweather: {storm: {wind: »-3 m/s}}",
            "wind"),
        fault(
            "frequencies: [7.1 MHz]",
            "frequencies: [7.1 MHz]\nweather: {storm: {wind: »30 m}}",
            "expected a speed such as 30 m/s"),
        fault(
            "frequencies: [7.1 MHz]",
            "frequencies: [7.1 MHz]\nratings: {choke: »{}}",
            "needs heat or voltage"),
        fault(
            "frequencies: [7.1 MHz]",
            "frequencies: [7.1 MHz]\nratings: {choke: {heat: »-3 W}}",
            "expected more than 0"),
        fault(
            "frequencies: [7.1 MHz]",
            "frequencies: [7.1 MHz]\nexposure: »{transmitting: 120 %}",
            "share of time transmitted 1.2 must lie above 0 and at most 1"),
        // Keys.
        fault(
            "title: Small",
            "»titel: Small",
            "unknown key 'titel' in the design; did you mean title?"),
        fault(
            "conductor: strand",
            "»conducter: strand",
            "did you mean conductor? expected one of conductor, path, hang"),
        fault(
            "title: Small",
            "»zzz: Small",
            "unknown key 'zzz' in the design; expected one of format, title"),
        fault(
            "title: Small",
            "title: Small\n»title: Big",
            "duplicate key 'title'",
            "remove one of them"),
        fault(
            "format: spanwire-design/1\n",
            "",
            1,
            1,
            "the design has no format; add one such as format: spanwire-design/1"),
        fault(
            "copper, diameter: 2 mm",
            "copper",
            7,
            11,
            "conductor 'strand' has no diameter; add one such as diameter: 2 mm"),
        fault(
            "ground: {soil: medium-dry}\n",
            "",
            1,
            1,
            "the design has no ground",
            "{soil: medium-dry}"),
        fault("    conductor: strand\n", "", 10, 5, "wire 'radiator' has no conductor"),
        fault("title: Small", "title: Small\n»<<: {a: b}", "unknown key '<<'"),
        fault(
            "title: Small",
            "title: Small\n? »[a]\n: b",
            "a key of the design is no text; expected one of"),
        // Names.
        fault(
            "feeds:",
            "  »radiator: {conductor: strand, path: [[0, 0, 1], [1, 0, 1]]}\nfeeds:",
            "duplicate wire name 'radiator'; rename one of them"),
        fault("  radiator:\n", "  »\"a\\nb\":\n", "wire name 'a b' is not allowed; expected"),
        fault(
            "  span: 20 m",
            "  »wire-factor: 20 m",
            "parameter name 'wire-factor' is not allowed",
            "letters, digits and _"),
        fault("  span: 20 m", "  »sqrt: 20 m", "parameter name 'sqrt' is not allowed"),
        // References.
        fault(
            "wire: radiator",
            "wire: »radiatr",
            "unknown wire 'radiatr'; did you mean radiator? expected radiator"),
        fault("conductor: strand", "conductor: »rope", "unknown conductor 'rope'; expected strand"),
        fault(
            "material: copper",
            "material: »coper",
            "unknown material 'coper'; did you mean copper? expected one of perfect, copper,"
                + " aluminium"),
        fault(
            "soil: medium-dry",
            "soil: »medium",
            "unknown soil 'medium'",
            "expected one of sea-water"),
        fault(
            "{soil: medium-dry}", "»perfekt", "unknown ground 'perfekt'", "perfect, or free-space"),
        fault(
            "plan: iaru-region-1",
            "plan: »iaru-region-4",
            "unknown band plan 'iaru-region-4'",
            "iaru-region-2, iaru-region-3"),
        fault(
            "[40 m, 20 m]",
            "[40 m, »23 m]",
            "unknown band '23 m' in band plan iaru-region-1",
            "expected one of 160 m, 80 m"),
        fault("[40 m, 20 m]", "[40 m, »40 m]", "band 40 m is listed twice"),
        fault(
            "band: 40 m",
            "band: »80 m",
            "unknown band '80 m' in the design's bands",
            "expected one of 40 m, 20 m"),
        // Quantities.
        fault(
            "diameter: 2 mm",
            "diameter: »2 MHz",
            "diameter of conductor 'strand' is 2 MHz (a frequency); expected a length such as 27.3"
                + " m"),
        fault("diameter: 2 mm", "diameter: »2", "is 2 (a number without unit); expected a length"),
        fault(
            "diameter: 2 mm",
            "diameter: »2 mmm",
            "unknown unit 'mmm' after 2; expected one of m, ft"),
        fault(
            "diameter: 2 mm",
            "diameter: »0 mm",
            "diameter of conductor 'strand' is 0 m; expected more than 0"),
        fault("diameter: 2 mm", "diameter: »-2 mm", "is -2 mm; expected more than 0"),
        fault("[7.1 MHz]", "[»7.1 mhz]", "did you mean MHz?"),
        fault("[7.1 MHz]", "[»7.1 m]", "is 7.1 m (a length); expected a frequency such as 7.1 MHz"),
        fault("[7.1 MHz]", "[»0]", "is 0 Hz; expected more than 0 such as 7.1 MHz"),
        fault("[7.1 MHz]", "[»-7.1 MHz]", "is -7.1 MHz; expected more than 0"),
        fault("[span, 0, height]", "[»span / 0, 0, height]", "division by zero: 20 m / 0"),
        fault(
            "[span, 0, height]",
            "[span, 0, »height + 2]",
            "cannot add 9 m (a length) and 2 (a number without unit)"),
        fault(
            "[span, 0, height]",
            "[span, 0, »2 * 3]",
            "is 6 (a number without unit); expected a length"),
        fault("[span, 0, height]", "[span, 0, ».inf]", "cannot read '.inf'"),
        fault("[span, 0, height]", "[span, 0, ».nan]", "cannot read '.nan'"),
        fault(
            "[span, 0, height]",
            "[span, 0, »1e999]",
            "number 1e999 is too large; expected a finite number"),
        fault("[span, 0, height]", "[span, 0, »1e300 * 1e300 * 1 m]", "not a finite number"),
        fault("at: 36 %", "at: »136 %", "at of feed 'main' is 1.36; expected 0 to 1 (0 to 100 %)"),
        fault("at: 36 %", "at: »-3 m", "must not be negative"),
        fault("at: 36 %", "at: »36 deg", "is 36 deg; expected a fraction of the wire such as 36 %"),
        fault(
            "at: 36 %", "at: 36 %, gap: »0 mm", "gap of feed 'main' is 0 m; expected more than 0"),
        fault(
            "at: 36 %",
            "at: 36 %, capacitance: »-2 pF",
            "capacitance of feed 'main' is -2 pF; expected at least 0"),
        fault(
            "at: 36 %",
            "at: 36 %, capacitance: »2 nH",
            "capacitance of feed 'main' is 2 nH (an inductance); expected a capacitance"),
        fault("ratio: 4", "ratio: »0", "expected more than 0"),
        fault("max: 2", "max: »0.5", "expected an SWR of at least 1"),
        fault("swr: {max: 2}", "efficiency: {min: »140 %}", "is 140.0 %; expected at most 100 %"),
        fault("swr: {max: 2}", "efficiency: {min: »0 %}", "expected more than 0"),
        fault("swr: {max: 2}", "bandwidth: {min: »1 MHz}", "more than band 40 m has", "200 kHz"),
        fault("swr: {max: 2}", "choke-heat: »{max: 2 W}", "add feed-line"),
        fault("swr: {max: 2}", "exposure-distance: {max: »-2 m}", "is -2 m; expected at least 0"),
        fault(
            "{band: 40 m, swr: {max: 2}}",
            "{band: »40 m, yield: {min: 90 %}}",
            "that of the whole design",
            "remove band"),
        fault("swr: {max: 2}", "verdict: »good", "'good'", "direct, tunable, wide-tuner"),
        fault("swr: {max: 2}", "swr: {max: 2, plane: »line}", "unknown plane 'line'"),
        fault(
            "{band: 40 m, swr: {max: 2}}",
            "{frequency: 7 MHz, verdict: »direct}",
            "at one frequency; name a band instead"),
        fault(
            "transformer: {ratio: 4}",
            "line: »{impedance: 50 ohm, length: 3 m, velocity-factor: 1.5}",
            "velocity factor 1.5 must be above 0 and at most 1"),
        stage(
            "line: {impedance: 50 ohm, length: 3 m, velocity-factor: 1, loss: »{per: 1 m}}",
            "frequency"),
        stage(
            "line: {impedance: 50 ohm, length: 3 m, velocity-factor: 1, loss: {per: 1 m, table:"
                + " [[9 MHz, 1 dB], »[7 MHz, 2 dB]]}}",
            "sort the rows"),
        stage(
            "line: {impedance: 50 ohm, length: 3 m, velocity-factor: 1, loss: {per: 1 m, table:"
                + " [[9 MHz, 1 dB], »[10 MHz]]}}",
            "1 values"),
        stage("stub: »{impedance: 50 ohm, length: 3 m, velocity-factor: 1}", "has no end"),
        stage("attenuator: {loss: »-1 dB}", "at least 0"),
        stage("matching: [series: »{}]", "at least one of r, l, c"),
        stage("matching: »[]", "at least one element"),
        stage("tuner: »{swr: 0.5}", "SWR of at least 1"),
        stage("tuner: »{swr: 3, loss: 1 dB, limit-loss: 0.5 dB}", "nor fall"),
        stage(
            wound("ratio: 4", "connection: »autotransformers", "9"),
            "did you mean autotransformer"),
        stage(
            wound("ratio: 5", "connection: »equal-delay", "9"), "the square of a number of lines"),
        stage(wound("ratio: 9", "connection: »autotransformer", "6"), "expected ratio: 4"),
        stage(wound("ratio: 4, output: balanced", "connection: »equal-delay", "9"), "remove"),
        stage(wound("ratio: 4", "connection: equal-delay", "»2.5"), "whole number"),
        stage(
            "transformer: {ratio: 4, wound: »{connection: equal-delay, turns: 9, core: "
                + RING
                + ", line: {impedance: 100 ohm, length: 0.2 m, velocity-factor: 1}}}",
            "too short for 9 turns of 0.05085 m"),
        stage(
            "transformer: {ratio: 4, wound: {connection: equal-delay, turns: 9, core: {outer: 6 mm,"
                + " inner: 3 mm, height: 1 mm, material: »none.csv}, line: {impedance: 100 ohm,"
                + " velocity-factor: 1}}}",
            "none.csv",
            "no such file"),
        fault(
            "- transformer: {ratio: 4}\n",
            "- attenuator: {loss: 1 dB}\n  - transformer: {ratio: 4}\n  - line: {impedance: 50 ohm, length:"
                + " 15 m, velocity-factor: 0.66}\nfeed-line: »{conductor: strand, path: [[7, 0, 1]]}\n",
            "an attenuator between feedpoint and transformer"),
        fault(
            "diameter: 2 mm",
            "diameter: 2 mm, insulation: »{thickness: 1 mm, permittivity: 0.5}",
            "permittivity 0.5 must be at least 1"),
        fault(
            "copper, diameter: 2 mm",
            "steel, diameter: 2 mm, cladding: {material: copper, thickness: »0 um}",
            "thickness of cladding of conductor 'strand' is 0 m; expected more than 0"),
        fault(
            "strand: {material: copper, diameter: 2 mm}",
            "strand: »{material: steel, diameter: 2 mm, cladding: {material: copper, thickness: 1"
                + " mm}}",
            "cladding thickness 0.001 m must be less than the conductor radius 0.001 m"),
        fault(
            "diameter: 2 mm",
            "diameter: 2 mm, cladding: »{thickness: 50 um}",
            "cladding of conductor 'strand' has no material; add one such as material: copper"),
        fault(
            "diameter: 2 mm",
            "diameter: 2 mm, cladding: {material: »coper, thickness: 50 um}",
            "unknown material 'coper'; did you mean copper?"),
        fault(
            "strand: {material: copper, diameter: 2 mm}",
            "strand: »{material: copper, diameter: 2 mm, strands: {count: 7, diameter: 0.5 mm}}",
            "conductor 'strand' has diameter and strands; expected exactly one of"),
        fault(
            "diameter: 2 mm",
            "strands: »{count: 3, diameter: 0.5 mm}",
            "strand count 3 must be at least 7"),
        fault(
            "diameter: 2 mm",
            "strands: {count: »7.5, diameter: 0.5 mm}",
            "count of strands of conductor 'strand' is 7.5; expected a whole number such as 7"),
        fault(
            "diameter: 2 mm",
            "strands: »{count: 7, diameter: 0.5 mm}, cladding: {material: copper, thickness: 5 um}",
            "has a cladding and strands; expected one of them"),
        // Parameters.
        fault(
            "[span, 0, height]",
            "[»spam, 0, height]",
            "unknown parameter 'spam'",
            "did you mean span? expected one of span, height"),
        fault("span: 20 m", "span: »span + 1 m", "parameter span refers to itself (span -> span)"),
        fault(
            "span: 20 m",
            "span: a\n  a: b + 1 m\n  b: »2 * span",
            "refers to itself (span -> a -> b -> span); give one of them a value"),
        fault("span: 20 m", "span:»", "has no value"),
        fault(
            "value: 9 m",
            "value: »15 m",
            "parameter height is 15 m, limits 5 m to 14 m; change the value or the limits"),
        fault("spread: 1 m", "spread: »10 %", "is 0.1 (a number without unit); expected a length"),
        fault("spread: 1 m", "spread: »-1 m", "is -1 m; expected at least 0"),
        fault(
            "[5 m, 14 m]", "»[14 m, 5 m]", "run from 14 m to 5 m; expected the smaller one first"),
        fault("[5 m, 14 m]", "»[14 m]", "has 1 values; expected two"),
        // Types and shapes.
        fault(
            "title: Small",
            "title: »[a]",
            "title of the design is a list; expected a single value"),
        fault(
            "[[0, 0, height], [span, 0, height]]",
            "»5",
            "path of wire 'radiator' is the single value '5'; expected a list of points"),
        fault(
            "[[0, 0, height], [span, 0, height]]",
            "»[[0, 0, height]]",
            "has 1 points; expected at least two"),
        fault("[span, 0, height]", "»[span, height]", "has 2 coordinates; expected three"),
        fault(
            "{wire: radiator, at: 36 %}",
            "»main", "feed 'main' is the single value 'main'; expected a mapping with wire, at"),
        fault(
            "feeds:\n  main: {wire: radiator, at: 36 %}",
            "feeds: »{}", "expected at least one feed"),
        fault(
            "- transformer: {ratio: 4}",
            "- »{transformer: {ratio: 4}, choke: {impedance: 1 kohm}}",
            "transformer and choke; expected exactly one of"),
        fault(
            "- transformer: {ratio: 4}",
            "- transformer: {ratio: 4, output: »middle}",
            "output of transformer",
            "balanced, unbalanced"),
        fault(
            "- transformer: {ratio: 4}",
            "- choke: {impedance: {r: »-1 ohm, x: 1 kohm}}",
            "expected at least 0"),
        fault(
            "- transformer: {ratio: 4}",
            "- transformer: {ratio: 4}\nfeed-line: »{conductor: strand, path: [[7, 0, 1]]}",
            "is the route of the feed chain's line, of which there are 0"),
        fault(
            "- transformer: {ratio: 4}",
            LINE + "feed-line: {conductor: »string, path: [[7, 0, 1]]}",
            "unknown conductor 'string'"),
        fault(
            "- transformer: {ratio: 4}",
            LINE + "feed-line: {conductor: strand, path: »[]}",
            "at least one point after the feedpoint"),
        fault(
            "- transformer: {ratio: 4}",
            LINE + "feed-line: {conductor: strand, path: [[7, 0, 1]], earthed: »true}",
            "needs ground: perfect"),
        fault(
            "- transformer: {ratio: 4}",
            LINE.strip()
                + "\n"
                + "  - choke: {impedance: 1 kohm}\n"
                + "feed-line: »{conductor: strand, path: [[7, 0, 1]]}",
            "has a choke between line and transmitter"),
        fault(
            "[7.1 MHz]", "»7.1 MHz", "expected a list of frequencies such as [7.1 MHz, 14.15 MHz]"),
        fault(
            "- {band: 40 m, swr: {max: 2}}",
            "- »{band: 40 m}",
            "has none; expected exactly one of swr, gain"),
        fault(
            "{soil: medium-dry}",
            "»{soil: dry, permittivity: 3}",
            "has more than one of a soil name, constants and a table; keep one"),
        fault("{soil: medium-dry}", "{table: »none.csv}", "none.csv: no such file"),
        fault("{soil: medium-dry}", "{soil: dry, snow: »{permittivity: 1.5}}", "depth"),
        fault(
            "{soil: medium-dry}",
            "{soil: dry, beneath: »{depth: 3 m, permittivity: 0.5, conductivity: 0 S/m}}",
            "at least 1"),
        fault(
            "feed-chain",
            "fittings:\n  trap: »{wire: radiator, at: 3 m}\nfeed-chain",
            "expected exactly one of series, parallel, impedance"),
        fault(
            "feed-chain",
            "fittings:\n  t: {wire: radiator, at: 3 m, impedance: »none.csv}\nfeed-chain",
            "none.csv: no such file"),
        // Versions and syntax.
        fault(
            "spanwire-design/1",
            "»spanwire-design/2",
            "format 'spanwire-design/2' is not known here; expected spanwire-design/1"),
        fault(
            "title: Small",
            "title: [Small\nx»: }",
            "not valid YAML",
            "check indentation, brackets and quotes here"),
        fault("title: Small", "title: Small\n»\tx: 1", "not valid YAML"),
        fault(
            "title: Small",
            "title: »!!java.io.File [x]",
            "tag 'tag:yaml.org,2002:java.io.File' is not allowed; remove it"),
        fault("title: Small", "title: »!secret x", "tag '!secret' is not allowed"),
        fault("title: Small", "title: »&a Small", "anchor is not allowed"),
        fault("title: Small", "title: »*a", "alias is not allowed"),
        fault("title: Small", "title: Small\n---\na: b", 3, 1, "not valid YAML"),
        fault("title: Small", "title: S»\u0000mall", "character U+0000 is not allowed in YAML"));
  }

  private static Arguments stage(String stage, String... messages) {
    return fault("transformer: {ratio: 4}", stage, messages);
  }

  private static String wound(String keys, String connection, String turns) {
    return "transformer: {%s, wound: {%s, turns: %s, core: %s, line: {impedance: 100 ohm, velocity-factor: 1}}}"
        .formatted(keys, connection, turns, RING);
  }

  @Test
  void aYieldNeedsASpread() {
    String yield = Designs.spoilt("{band: 40 m, swr: {max: 2}}", "{yield: {min: 90 %}}");
    assertThat(DesignReader.read(yield, "small.yaml").requirements()).hasSize(1);
    assertThatThrownBy(
            () -> DesignReader.read(yield.replaceAll("spread: [^,}]*, ", ""), "small.yaml"))
        .isInstanceOf(DesignException.class)
        .hasMessageContaining("needs a spread; add one such as height");
  }

  private static Arguments fault(String part, String replacement, String... messages) {
    String marked = Designs.spoilt(part, replacement);
    int at = marked.indexOf(MARK);
    int[] place = TextFile.end(marked.substring(0, at));
    return fault(part, replacement.replace(String.valueOf(MARK), ""), place[0], place[1], messages);
  }

  private static Arguments fault(
      String part, String replacement, int line, int column, String... messages) {
    return Arguments.of(replacement, Designs.spoilt(part, replacement), line, column, messages);
  }

  @ParameterizedTest(name = "{0}")
  @MethodSource("faults")
  void isToldInOneLineWithItsPlace(
      String change, String text, int line, int column, String... messages) {
    DesignException fault =
        catchThrowableOfType(
            DesignException.class, () -> DesignReader.read(text, "huts/small.yaml"));
    assertThat(fault).as("no exception for %s", change).isNotNull();
    assertThat(fault.getMessage())
        .startsWith("huts/small.yaml:" + line + ":" + column + ": ")
        .doesNotContain("\n");
    assertThat(fault.getMessage()).contains(messages);
    assertThat(fault.file()).isEqualTo("huts/small.yaml");
    assertThat(fault.line()).isEqualTo(line);
    assertThat(fault.column()).isEqualTo(column);
    assertThat(printed.toString(StandardCharsets.UTF_8)).isEmpty();
  }
}
