package org.spanwire.study;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.assertj.core.api.Assertions.within;

import java.util.List;
import java.util.OptionalDouble;
import org.junit.jupiter.api.Test;
import org.spanwire.Solver;
import org.spanwire.SolverOptions;
import org.spanwire.circuit.Mismatch;
import org.spanwire.design.Design;
import org.spanwire.design.DesignReader;
import org.spanwire.medium.Ground;
import org.spanwire.medium.Soil;
import org.spanwire.unit.Quantity;

/** What the table of a site says is what a design for that site would show. */
class SiteStudyTest {

  private static final Solver SOLVER = new Solver(SolverOptions.defaults().withTolerance(2e-3));

  private static final String DESIGN =
      """
      format: spanwire-design/1
      title: Short dipole
      parameters:
        height: {value: 6 m, limits: [4 m, 8 m]}
      conductors:
        strand: {material: copper, diameter: 2 mm}
        jacket: {material: copper, diameter: 5 mm}
      wires:
        radiator: {conductor: strand, path: [[0, 0, height], [9 m, 0, height]]}
      feeds:
        main: {wire: radiator, at: 36 %, gap: 40 mm}
      ground: perfect
      feed-chain:
        - transformer: {ratio: 4, output: unbalanced}
        - choke: {impedance: 2 kohm}
        - line: {impedance: 50 ohm, length: 7 m, velocity-factor: 0.66, loss: {frequency: 10 MHz, per: 100 m, value: 4 dB}}
      ROUTE
      bands: {plan: iaru-region-1, use: [20 m]}
      """;

  private static final Soil DRY = Soil.of(4, 1e-3);

  private static Design plain() {
    return DesignReader.read(DESIGN.replace("ROUTE\n", ""), "kit.yaml");
  }

  private static Design withRoute() {
    return DesignReader.read(
        DESIGN.replace(
            "ROUTE", "feed-line: {conductor: jacket, path: [[3.24, 0, 2], [3.24, 3, 2]]}"),
        "kit.yaml");
  }

  private static ParameterGrid.Axis heights(String... values) {
    return new ParameterGrid.Axis(
        "height", java.util.Arrays.stream(values).map(Quantity::parse).toList());
  }

  private static void agrees(SiteTable table, int ground, int line, int height, Design there) {
    List<Double> swr = table.at(ground, line, height).swr().get(0);
    List<Double> frequencies = table.frequenciesHz().get(0);
    assertThat(swr).hasSameSizeAs(frequencies);
    OptionalDouble length =
        table.lineLengths().isEmpty()
            ? OptionalDouble.empty()
            : OptionalDouble.of(table.lineLengths().get(line));
    Installation installation = Installation.onSite(there, table.grounds().get(ground), length);
    String feed = there.antenna().feeds().get(0).name();
    for (int i = 0; i < frequencies.size(); i += 7) {
      Mismatch solved =
          installation.solve(SOLVER, frequencies.get(i)).feed(feed).at(Plane.TRANSMITTER);
      double s = swr.get(i);
      assertThat((s - 1) / (s + 1)).isCloseTo(solved.reflection().abs(), within(8e-3));
    }
  }

  @Test
  void everyPlaceIsThatOfADesignForIt() {
    Design design = plain();
    SiteTable table =
        new SiteStudy(
                design, heights("5 m", "7 m"), List.of(Ground.perfect(), DRY), List.of(7.0, 20.0))
            .run(SOLVER, 2);
    assertThat(table.curves()).hasSize(8);
    assertThat(table.interpolationError()).isLessThan(5e-3);
    agrees(table, 0, 0, 0, design.with("height", "5 m"));
    agrees(table, 1, 1, 1, design.with("height", "7 m"));
    assertThat(table.frequenciesHz().get(0)).contains(14.0e6, 14.35e6);
  }

  @Test
  void aLongerLineOnTheAntennaIsAnotherAntenna() {
    Design design = withRoute();
    SiteTable table =
        new SiteStudy(design, heights("6 m"), List.of(Ground.perfect()), List.of(7.0, 9.0))
            .run(SOLVER, 2);
    agrees(table, 0, 0, 0, design);
    agrees(table, 0, 1, 0, design);
    Design longer =
        DesignReader.read(
            DESIGN
                .replace(
                    "ROUTE", "feed-line: {conductor: jacket, path: [[3.24, 0, 2], [3.24, 5, 2]]}")
                .replace("7 m, velocity", "9 m, velocity"),
            "kit.yaml");
    agrees(table, 0, 1, 0, longer);
  }

  /** Power that the mismatch turns back is attenuated twice on its way. */
  @Test
  void aLongLossyLineHidesTheMismatch() {
    SiteTable table =
        new SiteStudy(plain(), heights("6 m"), List.of(DRY), List.of(1.0, 60.0)).run(SOLVER, 1);
    List<Double> near = table.at(0, 0, 0).swr().get(0);
    List<Double> far = table.at(0, 1, 0).swr().get(0);
    for (int i = 0; i < near.size(); i++) {
      assertThat(far.get(i)).isLessThan(near.get(i));
    }
  }

  @Test
  void whatCannotBeModelledHasAReason() {
    SiteTable table =
        new SiteStudy(withRoute(), heights("1 m", "6 m"), List.of(Ground.perfect()), List.of())
            .run(SOLVER, 1);
    assertThat(table.at(0, 0, 0).reason()).isPresent();
    assertThat(table.at(0, 0, 0).swr()).isEmpty();
    assertThat(table.at(0, 0, 1).reason()).isEmpty();
    agrees(table, 0, 0, 1, withRoute());
    Design without =
        DesignReader.read(
            DESIGN.replace("ROUTE\n", "").replaceAll("(?m)^  - line:.*\n", ""), "kit.yaml");
    assertThatThrownBy(() -> new SiteStudy(without, heights("6 m"), List.of(DRY), List.of(5.0)))
        .hasMessageContaining("0 lines");
  }
}
