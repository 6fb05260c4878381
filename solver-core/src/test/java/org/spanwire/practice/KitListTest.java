package org.spanwire.practice;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.util.List;
import org.junit.jupiter.api.Test;
import org.spanwire.design.CutRules;
import org.spanwire.design.Design;
import org.spanwire.design.DesignReader;

class KitListTest {

  private static final String TEXT =
      """
      format: spanwire-design/1
      title: Kit
      conductors:
        strand: {material: copper, diameter: 2 mm}
        coated: {material: copper, diameter: 2 mm, insulation: {thickness: 1 mm, permittivity: 2.3}}
        jacket: {material: copper, diameter: 5 mm}
      wires:
        radiator: {conductor: strand, path: [[0, 0, 9], [27, 0, 9]]}
        tail: {conductor: coated, path: [[27, 0, 9], [27, 0, 7]]}
      feeds:
        main: {wire: radiator, at: 9 m, gap: 40 mm}
      fittings:
        trap: {wire: radiator, at: 20 m, gap: 60 mm, parallel: {l: 2 uH, c: 50 pF}}
      ground: {soil: very-dry}
      feed-chain:
        - transformer: {ratio: 4}
        - choke: {impedance: 3 kohm}
        - line: {impedance: 50 ohm, length: 16 m, velocity-factor: 0.66}
        - tuner: {swr: 3}
      feed-line: {conductor: jacket, path: [[9, 0, 1], [1, 0, 1]]}
      kit:
        - {item: transformer, mass: 600 g, note: in its box}
        - {item: line, mass: 0.8 kg}
        - {item: trap, mass: 90 g}
        - {item: end insulator, count: 2, mass: 40 g, hangs: true}
        - {item: peg, count: 3, mass: 100 g}
      cut: {datum: eye, loop: 60 mm, fold-back: 150 mm, terminal: 30 mm}
      """;

  private static final Design DESIGN = DesignReader.read(TEXT, "kit");
  private static final KitList KIT = KitList.of(DESIGN);

  private static KitList.Part part(String name) {
    return KIT.parts().stream().filter(p -> p.name().equals(name)).findFirst().orElseThrow();
  }

  @Test
  void holdsEveryPartOnceInOrder() {
    assertThat(KIT.parts())
        .extracting(KitList.Part::name)
        .containsExactly(
            "strand",
            "coated",
            "transformer",
            "choke",
            "line",
            "tuner",
            "trap",
            "end insulator",
            "peg");
  }

  /** The sum of the cut lengths, and by hand 8960 kg/m³ in a circle of 2 mm. */
  @Test
  void wireIsCountedAsItIsCut() {
    CutRules rules = DESIGN.cutRules().orElseThrow();
    List<Leg> legs =
        CutList.of(DESIGN.antenna(), rules).stream()
            .filter(leg -> leg.wire().equals("radiator"))
            .toList();
    double cut = legs.stream().mapToDouble(Leg::cutLength).sum();

    assertThat(part("strand").count()).isEqualTo(legs.size()).isEqualTo(3);
    assertThat(part("strand").metres().orElseThrow()).isCloseTo(cut, within(1e-12));
    assertThat(part("strand").kilograms().orElseThrow())
        .isCloseTo(cut * 8960 * Math.PI * 1e-6, within(1e-12));
    assertThat(part("coated").kilograms()).isEmpty();
  }

  /**
   * 8 m of the 16 m of line lead from the feedpoint at 9 m down to the first point of its route.
   */
  @Test
  void whatStandsAtTheFeedpointHangsAndOfTheLineWhatLeadsDown() {
    assertThat(part("line").hangingKilograms().orElseThrow()).isCloseTo(0.4, within(1e-12));
    assertThat(part("transformer").hangingKilograms()).hasValue(0.6);
    assertThat(part("transformer").note()).isEqualTo("in its box");
    assertThat(part("tuner").hangingShare()).isZero();
    assertThat(part("end insulator").kilograms()).hasValue(0.08);
    double wire = part("strand").kilograms().orElseThrow();
    assertThat(KIT.knownHangingKilograms())
        .isCloseTo(wire + 0.6 + 0.4 + 0.09 + 0.08, within(1e-12));
    assertThat(KIT.knownKilograms()).isCloseTo(wire + 0.6 + 0.8 + 0.09 + 0.08 + 0.3, within(1e-12));
  }

  @Test
  void namesWhatItDoesNotKnow() {
    assertThat(KIT.unknown()).containsExactly("coated", "choke", "tuner");
    assertThat(KIT.unknownHanging()).containsExactly("coated", "choke");
  }

  /** The loads on the wire and what hangs by the kit list are one fact stated twice. */
  @Test
  void doubtsLoadsThatTheKitContradicts() {
    assertThat(KIT.loadDifference(DESIGN)).isEmpty();
    String text =
        TEXT.replace(
            "path: [[0, 0, 9], [27, 0, 9]]}",
            "path: [[0, 0, 9], [27, 0, 9]],"
                + " hang: {tension: 200 N, loads: [{at: 9 m, mass: %s}]}}");
    for (String mass : List.of("1.17 kg", "1.1 kg")) {
      Design agreed = DesignReader.read(text.formatted(mass), "kit");
      assertThat(KitList.of(agreed).loadDifference(agreed)).isEmpty();
    }
    Design differs = DesignReader.read(text.formatted("2 kg"), "kit");
    assertThat(KitList.of(differs).loadDifference(differs).orElseThrow().message())
        .contains("choke")
        .contains("2.00 kg");
  }
}
