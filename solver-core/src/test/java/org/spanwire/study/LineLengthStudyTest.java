package org.spanwire.study;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.assertj.core.api.Assertions.within;

import java.util.List;
import org.junit.jupiter.api.Test;
import org.spanwire.Solver;
import org.spanwire.SolverOptions;
import org.spanwire.design.Design;
import org.spanwire.design.DesignReader;
import org.spanwire.design.FeedLine.Polarity;
import org.spanwire.study.LineLengthStudy.Avoid;
import org.spanwire.study.LineLengthStudy.Result;
import org.spanwire.study.LineLengthStudy.Row;

class LineLengthStudyTest {

  private static final Solver SOLVER = new Solver(SolverOptions.defaults().withTolerance(5e-3));

  private static final String DESIGN =
      """
      format: spanwire-design/1
      title: Short dipole with its line
      conductors:
        strand: {material: copper, diameter: 2 mm}
        jacket: {material: copper, diameter: 5 mm}
      wires:
        radiator: {conductor: strand, path: [[0, 0, 6], [9, 0, 6]]}
      feeds:
        main: {wire: radiator, at: 36 %, gap: 40 mm}
      ground: perfect
      feed-chain:
        - transformer: {ratio: 4, output: unbalanced}
        - choke: {impedance: 2 kohm}
        - line: {impedance: 50 ohm, length: 7 m, velocity-factor: 0.66}
      feed-line: {conductor: jacket, path: [[3.24, 0, 2], [3.24, 3, 2]]}
      bands: {plan: iaru-region-1, use: [20 m]}
      """;

  private static Design design(String from, String to) {
    assertThat(DESIGN).contains(from);
    return DesignReader.read(DESIGN.replace(from, to), "kit.yaml");
  }

  /** At the design's own length and polarity the study is the design; the other is its mirror. */
  @Test
  void itsRowsAreThoseOfADesignOfThatLength() {
    Design base = DesignReader.read(DESIGN, "kit.yaml");
    Result result = new LineLengthStudy(base, List.of(5.0, 7.0, 9.0)).run(SOLVER, 1);
    assertThat(result.rows()).hasSize(6);
    assertThat(result.gaps()).isEmpty();
    List<Design> designs =
        List.of(
            base,
            design("feed-line: {", "feed-line: {polarity: last-point, "),
            DesignReader.read(
                DESIGN.replace("7 m", "9 m").replace("[3.24, 3, 2]", "[3.24, 5, 2]"), "kit.yaml"),
            DesignReader.read(
                DESIGN.replace("7 m", "5 m").replace("[3.24, 3, 2]", "[3.24, 1, 2]"), "kit.yaml"));
    double[] lengths = {7, 7, 9, 5};
    for (int i = 0; i < lengths.length; i++) {
      Polarity polarity = i == 1 ? Polarity.LAST_POINT : Polarity.FIRST_POINT;
      Row row = result.hottest(lengths[i], polarity);
      CommonMode mode =
          Installation.of(designs.get(i))
              .solve(SOLVER, row.frequencyHz())
              .commonMode()
              .orElseThrow();
      assertThat(row.chokeWatts()).isCloseTo(mode.topWatts(), within(0.01 * mode.topWatts()));
      assertThat(row.largestAmperes()).isGreaterThan(0.99 * mode.largest().current().abs());
    }
    assertThat(result.polarityIsIndifferent()).isFalse();
    assertThat(new LineLengthStudy(base, List.of(5.0, 7.0, 9.0)).run(SOLVER, 2)).isEqualTo(result);
  }

  @Test
  void polarityIsIndifferentToABalancedOutput() {
    Design balanced = design(", output: unbalanced", "");
    assertThat(new LineLengthStudy(balanced, List.of(7.0)).run(SOLVER, 1).polarityIsIndifferent())
        .isTrue();
  }

  /** Led on downwards the line runs into the ground: told, and no row. */
  @Test
  void aLengthThatCannotLieThereIsNamed() {
    Design down = design("[[3.24, 0, 2], [3.24, 3, 2]]", "[[3.24, 0, 1]]");
    Result result = new LineLengthStudy(down, List.of(4.0, 8.0)).run(SOLVER, 1);
    assertThat(result.lengths()).containsExactly(4.0);
    assertThat(result.gaps())
        .singleElement()
        .satisfies(
            gap -> {
              assertThat(gap.lengthMetres()).isEqualTo(8);
              assertThat(gap.reason()).contains("feed-line");
            });
  }

  private static Row row(double length, Polarity polarity, double watts) {
    return new Row(length, polarity, "20 m", 14e6, watts, 100, 0.1);
  }

  /** Made-up rows. */
  @Test
  void neighboursToAvoidAreOneStretch() {
    Polarity first = Polarity.FIRST_POINT;
    Polarity last = Polarity.LAST_POINT;
    Result result =
        new Result(
            List.of(
                row(5, first, 12), row(5, last, 3),
                row(6, first, 15), row(6, last, 3),
                row(7, first, 2), row(7, last, 4),
                row(8, first, 11), row(8, last, 5)),
            List.of());
    assertThat(result.avoid(first, 10))
        .containsExactly(new Avoid(5, 6, row(6, first, 15)), new Avoid(8, 8, row(8, first, 11)));
    assertThat(result.avoid(last, 10)).isEmpty();
    assertThat(result.coolest()).isEqualTo(row(7, first, 2));
  }

  @Test
  void whatHasNoLineToMoveIsRefused() {
    Design none = DesignReader.read(DESIGN.replaceFirst("feed-line: .*\n", ""), "kit.yaml");
    assertThatThrownBy(() -> new LineLengthStudy(none, List.of(5.0)))
        .hasMessageContaining("add feed-line");
    Design earthed =
        design(
            "path: [[3.24, 0, 2], [3.24, 3, 2]]",
            "path: [[3.24, 0, 2], [3.24, 3, 0]], earthed: true");
    assertThatThrownBy(() -> new LineLengthStudy(earthed, List.of(5.0)))
        .hasMessageContaining("cannot move");
  }
}
