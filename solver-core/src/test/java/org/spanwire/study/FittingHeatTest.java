package org.spanwire.study;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.util.List;
import org.junit.jupiter.api.Test;
import org.spanwire.Solver;
import org.spanwire.design.Band;
import org.spanwire.design.Design;
import org.spanwire.design.DesignReader;

/** Heat of traps in the study of bands. */
class FittingHeatTest {

  private static final String TRAPS =
      """
      format: spanwire-design/1
      title: Traps
      conductors:
        strand: {material: copper, diameter: 2 mm}
        jacket: {material: copper, diameter: 5 mm}
      wires:
        dipole: {conductor: strand, path: [[0, 0, 9], [18, 0, 9]]}
      feeds:
        main: {wire: dipole, at: 50 %, gap: 40 mm}
      fittings:
        near: {wire: dipole, at: 4 m, gap: 60 mm, parallel: {r: 2 ohm, l: 2.6 uH, c: 50 pF}}
        far: {wire: dipole, at: 15 m, gap: 60 mm, parallel: {r: 1 ohm, l: 2.6 uH, c: 50 pF}}
      ground: {soil: medium-dry}
      feed-chain:
        - choke: {impedance: 3 kohm}
        - line: {impedance: 50 ohm, length: 12 m, velocity-factor: 0.66, loss: {frequency: 10 MHz, per: 100 m, value: 4 dB}}
      power: 100 W
      """;

  /**
   * The heat of both traps together, by the voltage across each, is what the ledger has for all
   * fittings, by the currents along the wires; with the outside of the line in the model and
   * without.
   */
  @Test
  void trapsMakeTheHeatOfTheLedger() {
    for (String line :
        List.of("", "feed-line: {conductor: jacket, path: [[9, 0, 1], [9, 4, 1]]}\n")) {
      Design design = DesignReader.read(TRAPS + line, "traps");
      Installation installation = Installation.of(design);
      Solver solver = new Solver();
      double lowHz = 14.0e6;
      BandResponse band =
          new BandStudy(installation, List.of(30.0), 5)
              .run(solver, List.of(new Band("20 m", lowHz, lowHz + 1e3)), 1)
              .get(0);
      HeatAt near = band.heat("near").orElseThrow();
      HeatAt far = band.heat("far").orElseThrow();
      Operation operation = installation.solve(solver, near.frequencyHz());
      double all =
          operation.ledger(operation.solution().powerBudget()).orElseThrow().watts("fittings");

      assertThat(near.watts()).isGreaterThan(far.watts()).isGreaterThan(1);
      assertThat(near.watts() + far.watts()).isCloseTo(all, within(2e-3 * all));
    }
  }
}
