package org.spanwire.practice;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.assertj.core.api.Assertions.within;

import java.util.List;
import org.junit.jupiter.api.Test;
import org.spanwire.design.DesignReader;

/** A design's hanging wire in the weather that it states. */
class SpanStateTest {

  private static final String DESIGN =
      """
      format: spanwire-design/1
      title: Hut kit that hangs
      conductors:
        strand:
          material: copper
          diameter: 2 mm
          mechanical: {mass-per-length: 28 g/m, breaking-strength: 900 N, elastic-modulus: 110 GPa%s}
      wires:
        radiator:
          conductor: strand
          path: [[0, 0, 9], [40, 0, 9]]
          hang: {tension: 100 N, loads: [{at: 1/3, mass: 1.8 kg}]}
      feeds:
        main: {wire: radiator, at: 1/3}
      ground: {permittivity: 13, conductivity: 5 mS/m}
      weather:
        storm: {wind: 30 m/s}
        frost: {temperature-change: -30 K}
      """;

  private static List<SpanState> states(String expansion) {
    return SpanState.of(DesignReader.read(DESIGN.formatted(expansion), "kit.yaml"));
  }

  /**
   * By hand: the point load's W p(1 − p) S/T is 1.57 m of sag for 100 N, the wire's own w S²/8T at
   * a third of the span another 0.49 m, less a few percent because the horizontal pull is less than
   * that at the support.
   */
  @Test
  void transformerAndLineSetTheSag() {
    SpanState still = states(", expansion: 17 ppm/K").get(0);
    double weight = 1.8 * 9.80665;
    double byHand =
        weight * (1.0 / 3) * (2.0 / 3) * 40 / 100
            + 0.028 * 9.80665 * (40.0 / 3) * (80.0 / 3) / 2 / 100;
    assertThat(still.name()).isEqualTo(SpanState.STILL);
    assertThat(still.sag()).isCloseTo(byHand, within(0.03 * byHand));
    assertThat(still.lowest()).isCloseTo(9 - still.sag(), within(1e-6));
    assertThat(still.supportPull()).isCloseTo(100, within(1e-6));
    assertThat(still.breakingMargin().orElseThrow())
        .isCloseTo(900 / still.largestTension(), within(1e-9));
  }

  /** Cold shortens the wire: less sag, more pull. Wind swings it out and pulls. */
  @Test
  void weatherChangesIt() {
    List<SpanState> states = states(", expansion: 17 ppm/K");
    assertThat(states).extracting(SpanState::name).containsExactly("still air", "storm", "frost");
    SpanState still = states.get(0);
    assertThat(states.get(1).swing()).isGreaterThan(1);
    assertThat(states.get(1).supportPull()).isGreaterThan(110);
    assertThat(states.get(2).sag()).isLessThan(still.sag());
    assertThat(states.get(2).supportPull()).isGreaterThan(still.supportPull());
    assertThat(states.get(2).swing()).isCloseTo(0, within(1e-9));
  }

  @Test
  void refusesAColdWireOfUnknownExpansion() {
    assertThatThrownBy(() -> states(""))
        .hasMessageContaining("wire 'radiator' in weather 'frost'")
        .hasMessageContaining("give expansion");
  }
}
