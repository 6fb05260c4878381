package org.spanwire.design;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.assertj.core.api.Assertions.within;

import java.util.List;
import org.junit.jupiter.api.Test;
import org.spanwire.Antenna;
import org.spanwire.Solver;
import org.spanwire.geometry.Point;
import org.spanwire.geometry.SpanShape;
import org.spanwire.geometry.Wire;

class HangTest {

  private static Design hung(String hang) {
    String text =
        Designs.spoilt(
                "diameter: 2 mm}", "diameter: 2 mm, mechanical: {mass-per-length: 28.149 g/m}}")
            .replace(
                "path: [[0, 0, height], [span, 0, height]]",
                "path: [[0, 0, height], [span, 0, height]]\n    hang: " + hang);
    return DesignReader.read(text, "test");
  }

  private static Wire wire(Design design) {
    return design.antenna().wire("radiator").orElseThrow();
  }

  @Test
  void sagOfZeroIsTheStraightWire() {
    Design straight = DesignReader.read(Designs.SMALL, "test");
    assertThat(wire(hung("{sag: 0 m}")).path()).isEqualTo(wire(straight).path());
  }

  /** As the sag goes to zero the impedance goes to that of the straight wire. */
  @Test
  void littleSagChangesLittle() {
    Antenna straight = DesignReader.read(Designs.SMALL, "test").antenna();
    Antenna hung = hung("{sag: 1 mm}").antenna();
    assertThat(wire(hung("{sag: 1 mm}")).path()).hasSize(2);
    double f = 7.1e6;
    assertThat(new Solver().solve(hung, f).impedance())
        .isEqualTo(new Solver().solve(straight, f).impedance());
  }

  /** Lower in the middle means nearer to the soil: the impedance must notice. */
  @Test
  void sagReachesTheSolver() {
    double f = 7.1e6;
    double straight = new Solver().solve(hung("{sag: 0 m}").antenna(), f).impedance().getReal();
    double hung = new Solver().solve(hung("{sag: 2 m}").antenna(), f).impedance().getReal();
    assertThat(Math.abs(hung / straight - 1)).isGreaterThan(0.02);
  }

  @Test
  void wireHangsBelowItsSupportsByItsSag() {
    Design design = hung("{sag: 0.5 m}");
    Wire wire = wire(design);
    double lowest = wire.path().stream().mapToDouble(Point::z).min().orElseThrow();
    assertThat(lowest).isCloseTo(9 - 0.5, within(Hang.CHORD_ERROR));
    assertThat(wire.path().get(0)).isEqualTo(new Point(0, 0, 9));
    SpanShape shape = design.hangs().get("radiator").shape().orElseThrow();
    assertThat(shape.sag()).isCloseTo(0.5, within(1e-9));
    assertThat(wire.length()).isCloseTo(shape.length(), within(2e-4));
  }

  /** The places of feed and load are measured along the wire, as a fraction or as a distance. */
  @Test
  void loadHangsWhereTheFeedIs() {
    Design byFraction = hung("{tension: 100 N, loads: [{at: 36 %, mass: 1.8 kg}]}");
    SpanShape shape = byFraction.hangs().get("radiator").shape().orElseThrow();
    Point knot = shape.at(0.36);
    assertThat(wire(byFraction).path()).contains(knot);
    assertThat(shape.largestSupportTension()).isCloseTo(100, within(1e-6));
    double metres = 0.36 * shape.length();
    Design byDistance = hung("{tension: 100 N, loads: [{at: " + metres + " m, mass: 1.8 kg}]}");
    Point same = byDistance.hangs().get("radiator").shape().orElseThrow().at(0.36);
    assertThat(same.distance(knot)).isLessThan(1e-6);
  }

  @Test
  void parametersReachTheHanging() {
    Design design = hung("{tension: 60 N}");
    List<Point> path = wire(design).path();
    assertThat(wire(design.with("height", "12 m")).path().get(1).z() - path.get(1).z())
        .isCloseTo(3, within(1e-9));
  }

  @Test
  void readsWhatTheWireBearsAndHowItIsCut() {
    Design complete = DesignReader.read(Designs.resource("complete.yaml"));
    assertThat(complete.hangs().keySet()).containsExactly("taut", "slack", "low");
    var mechanical = complete.hangs().get("taut").mechanical();
    assertThat(mechanical.massPerMetre()).isEqualTo(0.031);
    assertThat(mechanical.breakingStrength()).hasValue(700);
    // 110 GPa times the metal's cross section of 2 mm diameter.
    assertThat(mechanical.stiffness().orElseThrow())
        .isCloseTo(110e9 * Math.PI * 1e-6, within(1e-6));
    assertThat(mechanical.expansion()).hasValue(17e-6);
    assertThat(complete.cutRules())
        .hasValue(new CutRules(CutRules.Datum.EYE, 0.060, 0.150, 0.030, 0.002, 0.005));
  }

  /** Without a stated mass the wire's own follows from its metal and its coat. */
  @Test
  void theMassOfTheWireFollowsFromItsDensities() {
    String bare = "diameter: 2 mm}";
    String coat = "diameter: 2 mm, insulation: {thickness: 0.6 mm, permittivity: 2.3%s}}";
    String hang = "path: [[0, 0, height], [span, 0, height]]";
    for (String conductor : List.of(bare, coat.formatted(", density: 930 kg/m3"))) {
      Design design =
          DesignReader.read(
              Designs.spoilt(bare, conductor).replace(hang, hang + "\n    hang: {tension: 100 N}"),
              "test");
      assertThat(design.hangs().get("radiator").mechanical().massPerMetre())
          .isEqualTo(wire(design).conductor().massPerMetre().orElseThrow());
    }
    assertThatThrownBy(
            () ->
                DesignReader.read(
                    Designs.spoilt(bare, coat.formatted(""))
                        .replace(hang, hang + "\n    hang: {tension: 100 N}"),
                    "test"))
        .isInstanceOf(DesignException.class)
        .hasMessageContaining("density of its insulation");
  }
}
