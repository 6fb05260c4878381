package org.spanwire.study;

import static org.assertj.core.api.Assertions.assertThat;

import org.junit.jupiter.api.Test;
import org.spanwire.Solver;
import org.spanwire.design.Design;
import org.spanwire.design.DesignReader;

/** A transformer that hangs from the feedpoint of a sagging wire, with its line. */
class HangingFeedLineTest {

  private static final String DESIGN =
      """
      format: spanwire-design/1
      title: Hut kit that hangs
      conductors:
        strand: {material: copper, diameter: 2 mm, mechanical: {mass-per-length: 28 g/m}}
        jacket: {material: copper, diameter: 5 mm}
      wires:
        radiator:
          conductor: strand
          path: [[0, 0, 9], [20, 0, 10]]
          hang: {tension: 150 N, loads: [{at: 30 %, mass: 1.2 kg}]}
      feeds:
        main: {wire: radiator, at: 30 %, gap: 40 mm}
      ground: perfect
      feed-chain:
        - transformer: {ratio: 4}
        - choke: {impedance: 3 kohm}
        - line: {impedance: 50 ohm, length: 7.6 m, velocity-factor: 0.66}
      feed-line: {conductor: jacket, path: [[6, 0, 1]]}
      """;

  /**
   * The load makes a point of the path, a micrometre from the feedpoint as the chords have it: they
   * are one.
   */
  @Test
  void theLoadsPointIsTheFeedpoint() {
    Design design = DesignReader.read(DESIGN, "kit.yaml");
    Installation installation = Installation.of(design);
    Operation operation = installation.solve(new Solver(), 7.1e6);
    assertThat(operation.feeds().get(0).impedance().getReal()).isGreaterThan(10);
    assertThat(operation.feeds().get(0).relativeError()).isLessThan(1e-3);
    assertThat(operation.commonMode().orElseThrow().kirchhoff()).isLessThan(1e-9);
  }
}
