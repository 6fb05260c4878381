package org.spanwire.study;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.List;
import org.apache.commons.math3.complex.Complex;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;
import org.spanwire.Solver;
import org.spanwire.circuit.NPort;
import org.spanwire.design.Design;
import org.spanwire.design.DesignReader;

/** A capacitance across the feed is no part of the antenna that is interpolated. */
class FeedCapacitanceTest {

  private static final double F = 14.1e6;

  private static final String DESIGN =
      """
      format: spanwire-design/1
      title: Hut kit with a box at its feedpoint
      parameters:
        stray: {value: 0 pF, limits: [0 pF, 60 pF]}
        height: {value: 9 m, limits: [8 m, 10 m]}
      conductors:
        strand: {material: copper, diameter: 2 mm}
      wires:
        radiator: {conductor: strand, path: [[0, 0, height], [20.3, 0, height]]}
      feeds:
        main: {wire: radiator, at: 36 %, gap: 40 mm, capacitance: stray}
      ground: perfect
      feed-chain:
        - transformer: {ratio: 4, output: balanced}
        - choke: {impedance: 1 kohm}
        - line: {impedance: 50 ohm, length: 9 m, velocity-factor: 0.66}
      """;

  private static final String ROUTE =
      "feed-line: {conductor: strand, path: [[7.3, 0, 1], [7.3, 2, 1]]}\n";

  private static Design design(String route) {
    return switch (route) {
      case "balanced" -> DesignReader.read(DESIGN + ROUTE, "kit.yaml");
      case "unbalanced" ->
          DesignReader.read(DESIGN.replace("output: balanced", "output: unbalanced") + ROUTE, "k");
      default -> DesignReader.read(DESIGN, "kit.yaml");
    };
  }

  @ParameterizedTest
  @ValueSource(strings = {"none", "balanced", "unbalanced"})
  void addsToTerminalsAsItDoesInTheSolution(String route) {
    Design bare = design(route);
    Solver solver = new Solver();
    NPort terminals = Installation.of(bare).solveWithPorts(solver, F).terminals();
    Installation stray = Installation.of(bare.with("stray", "40 pF"));
    FeedLineCircuit.Solved solved = stray.solveWithPorts(solver, F);
    for (Plane plane : List.of(Plane.FEEDPOINT, Plane.TRANSMITTER)) {
      Complex expected = solved.operation().feeds().get(0).at(plane).impedance();
      Complex without = at(Installation.of(bare).planes(F, terminals), plane);
      Complex found = at(stray.planes(F, terminals), plane);
      assertThat(found.subtract(expected).abs()).isLessThan(1e-7 * expected.abs());
      assertThat(without.subtract(expected).abs()).isGreaterThan(0.05 * expected.abs());
    }
    for (int i = 1; i <= terminals.ports(); i++) {
      for (int j = 1; j <= terminals.ports(); j++) {
        assertThat(solved.terminals().s(i, j).subtract(terminals.s(i, j)).abs()).isLessThan(1e-8);
      }
    }
  }

  private static Complex at(List<PlaneMismatch> planes, Plane plane) {
    return planes.stream()
        .filter(each -> each.plane() == plane)
        .findFirst()
        .orElseThrow()
        .mismatch()
        .impedance();
  }

  @ParameterizedTest
  @ValueSource(strings = {"none", "balanced"})
  void isNotSolvedForAgain(String route) {
    Design design = design(route);
    ParameterBox box =
        new ParameterBox(
            design, design.parameters().values().stream().map(FitStudy::range).toList());
    assertThat(box.ofAntenna(F)).containsExactly(1);
    assertThat(box.ofChain(F)).containsExactly(0);
  }
}
