package org.spanwire.study;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.util.List;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;
import org.spanwire.Solver;
import org.spanwire.SolverOptions;
import org.spanwire.design.Design;
import org.spanwire.design.DesignReader;
import org.spanwire.unit.Quantity;

/** Slopes of what follows from three terminals and a chain, against differences of solutions. */
class TangentTest {

  private static final String TEXT =
      """
          format: spanwire-design/1
          title: Hut kit with its line
          parameters:
            height: {value: 9 m, limits: [9 m, 12 m]}
            span: 20.4 m
            offset: 36 %
            choke: 2 kohm
            line: 9 m
            stray: 6 pF
          conductors:
            strand: {material: copper, diameter: 2 mm}
            jacket: {material: copper, diameter: 5 mm}
          wires:
            radiator: {conductor: strand, path: [[0, 0, 9 m], [span, 0, 9 m]]}
          feeds:
            main: {wire: radiator, at: offset, gap: 40 mm, capacitance: stray}
          ground: perfect
          feed-chain:
            - transformer: {ratio: 4}
            - choke: {impedance: choke}
            - line: {impedance: 75 ohm, length: line, velocity-factor: 0.66}
          feed-line:
            conductor: jacket
            path: [[7 m, 0, 2 m], [3 m, 3 m, 1 m]]
          bands: {plan: iaru-region-1, use: [40 m]}
          """;

  private static final Design KIT = DesignReader.read(TEXT, "line.yaml");

  private static final double HERTZ = 7.15e6;

  private static final ParameterBox BOX =
      new ParameterBox(
          KIT,
          List.of(
              range("span", "20 m", "21 m"),
              range("offset", "30 %", "40 %"),
              range("choke", "1 kohm", "3 kohm"),
              range("line", "8 m", "10 m"),
              range("stray", "4 pF", "8 pF"),
              range("height", "9 m", "12 m")));

  private static final double[] CENTRE = {20.4, 0.36, 2000, 9, 6e-12, 9};
  private static final double[] REACH = {0.1, 0.003, 20, 0.05, 2e-13, 0.1};

  private static ParameterSample.Range range(String name, String from, String to) {
    return new ParameterSample.Range(name, Quantity.parse(from), Quantity.parse(to));
  }

  private static Tangent tangent(double tolerance) {
    return new Tangent(BOX, CENTRE, REACH, new Solver(new SolverOptions(tolerance)));
  }

  private static double swr(Operation operation) {
    return operation.feeds().get(0).at(Plane.TRANSMITTER).swr();
  }

  private static double watts(Operation operation) {
    return operation.commonMode().orElseThrow().topWatts();
  }

  @ParameterizedTest
  @ValueSource(ints = {0, 1, 2, 3, 4})
  void equalsDifferencesOfSolutions(int parameter) {
    Solver tight = new Solver(new SolverOptions(1e-5));
    double[] up = CENTRE.clone();
    double[] down = CENTRE.clone();
    double step = REACH[parameter] / 4;
    up[parameter] += step;
    down[parameter] -= step;
    Operation above = Installation.of(BOX.with(up)).solve(tight, HERTZ);
    Operation below = Installation.of(BOX.with(down)).solve(tight, HERTZ);
    Tangent tangent = tangent(1e-4);
    double swrSlope =
        tangent.slope((look, f) -> look.swr(0, f, Plane.TRANSMITTER), HERTZ, parameter).get();
    double expected = (swr(above) - swr(below)) / (2 * step);
    assertThat(swrSlope).isCloseTo(expected, within(2e-3 * Math.abs(expected)));
    double heatSlope = tangent.slope((look, f) -> look.chokeWatts(0, f), HERTZ, parameter).get();
    expected = (watts(above) - watts(below)) / (2 * step);
    assertThat(heatSlope).isCloseTo(expected, within(2e-3 * Math.abs(expected)));
  }

  /** Without the line's outside the terminals are those of one port. */
  @ParameterizedTest
  @ValueSource(ints = {0, 1, 4})
  void equalsDifferencesWithoutALine(int parameter) {
    String text =
        TEXT.substring(0, TEXT.indexOf("feed-line:")) + TEXT.substring(TEXT.indexOf("bands:"));
    ParameterBox box = new ParameterBox(DesignReader.read(text, "bare.yaml"), BOX.ranges());
    Solver tight = new Solver(new SolverOptions(1e-5));
    double[] up = CENTRE.clone();
    double[] down = CENTRE.clone();
    double step = REACH[parameter] / 4;
    up[parameter] += step;
    down[parameter] -= step;
    double above = swr(Installation.of(box.with(up)).solve(tight, HERTZ));
    double below = swr(Installation.of(box.with(down)).solve(tight, HERTZ));
    double expected = (above - below) / (2 * step);
    Tangent tangent = new Tangent(box, CENTRE, REACH, new Solver(new SolverOptions(1e-4)));
    assertThat(
            tangent.slope((look, f) -> look.swr(0, f, Plane.TRANSMITTER), HERTZ, parameter).get())
        .isCloseTo(expected, within(2e-3 * Math.abs(expected)));
  }

  @Test
  void valueIsThatOfTheSolution() {
    Operation solved = Installation.of(KIT).solve(new Solver(), HERTZ);
    assertThat(tangent(1e-3).value((look, f) -> look.chokeWatts(0, f), HERTZ))
        .isCloseTo(watts(solved), within(1e-9));
  }

  /** The height is at its lower limit and moves nothing. */
  @Test
  void whatMayGoToOneSideOnlyHasNoSlope() {
    assertThat(tangent(1e-3).slope((look, f) -> look.swr(0, f, Plane.TRANSMITTER), HERTZ, 5))
        .isEmpty();
  }
}
