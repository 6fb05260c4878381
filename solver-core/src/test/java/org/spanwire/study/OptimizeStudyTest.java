package org.spanwire.study;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.assertj.core.api.Assertions.within;

import java.util.Arrays;
import java.util.List;
import java.util.Locale;
import java.util.OptionalDouble;
import java.util.stream.Stream;
import org.junit.jupiter.api.Test;
import org.spanwire.Solver;
import org.spanwire.SolverOptions;
import org.spanwire.design.Design;
import org.spanwire.design.DesignReader;
import org.spanwire.unit.Quantity;

/** Held to dense grids of solutions. */
class OptimizeStudyTest {

  private static final String DESIGN =
      """
      format: spanwire-design/1
      title: Hut kit to be made better
      parameters:
        height: 10 m
        span: 20.5 m
        ratio: 4
        offset: 33.3 %
      conductors:
        strand: {material: copper, diameter: 2 mm}
      wires:
        radiator: {conductor: strand, path: [[0, 0, height], [span, 0, height]]}
      feeds:
        main: {wire: radiator, at: offset, gap: 40 mm}
      ground: perfect
      feed-chain:
        - transformer: {ratio: ratio}
      bands: {plan: iaru-region-1, use: [40 m, 20 m]}
      """;

  private static final Design KIT = DesignReader.read(DESIGN, "kit.yaml");
  private static final Solver SOLVER = new Solver(SolverOptions.defaults());
  private static final OptimizeStudy.Weighted WORST_SWR =
      new OptimizeStudy.Weighted(Goal.of(Goal.Measure.WORST_SWR), OptionalDouble.empty());
  private static final Goal GAIN_AT_30 = new Goal(Goal.Measure.GAIN, OptionalDouble.of(30));
  private static final OptimizeStudy.Weighted LOW_GAIN =
      new OptimizeStudy.Weighted(GAIN_AT_30, OptionalDouble.empty());
  private static final ParameterGrid AS_IT_IS = new ParameterGrid(List.of());

  private static ParameterSample.Range range(String name, String from, String to) {
    return new ParameterSample.Range(name, Quantity.parse(from), Quantity.parse(to));
  }

  private static ParameterGrid.Axis axis(String name, String... values) {
    return new ParameterGrid.Axis(name, List.of(values).stream().map(Quantity::parse).toList());
  }

  /** Edges and middles of the bands. */
  private static List<Double> frequencies(Design design) {
    return design.bands().stream()
        .flatMap(band -> Stream.of(band.lowHz(), band.middleHz(), band.highHz()))
        .toList();
  }

  private static double worst(Design design) {
    Installation installation = Installation.of(design);
    return frequencies(design).stream()
        .mapToDouble(f -> installation.solve(SOLVER, f).feed("main").at(Plane.TRANSMITTER).swr())
        .max()
        .orElseThrow();
  }

  @Test
  void noWorseThanADenseGrid() {
    double grid = Double.POSITIVE_INFINITY;
    for (int i = 0; i <= 60; i++) {
      String offset = String.format(Locale.ROOT, "%.3f%%", 15 + 0.5 * i);
      grid = Math.min(grid, worst(KIT.with("offset", offset)));
    }
    OptimizeStudy study =
        new OptimizeStudy(
            KIT,
            List.of(range("offset", "15%", "45%")),
            List.of(),
            AS_IT_IS,
            List.of(WORST_SWR),
            List.of(),
            1);
    OptimizeResult result = study.run(SOLVER, 2);
    OptimizeResult.Candidate best = result.candidates().get(0);
    assertThat(best.values().get(0)).isLessThan(grid + 0.01).isLessThan(result.nominal().cost());
    double offset = best.parameters().get(0).value().value();
    assertThat(best.values().get(0))
        .isCloseTo(worst(KIT.with("offset", String.valueOf(offset))), within(0.005));
    assertThat(best.binding()).isNotEmpty();
    // What it calls flat costs a tenth at its ends.
    OptimizeResult.Flatness flat = best.flatness().get(0);
    for (OptionalDouble end : List.of(flat.low(), flat.high())) {
      if (end.isPresent()) {
        assertThat(worst(KIT.with("offset", String.valueOf(end.getAsDouble()))))
            .isCloseTo(best.cost() + 0.1, within(0.02));
      }
    }
    assertThat(study.run(SOLVER, 1)).isEqualTo(result);
  }

  /** A worst case over soil and heights, and a ratio to choose: better than the one-third feed. */
  @Test
  void worstCaseOverHeightsBeatsTheOneThirdFeed() {
    Design soil =
        DesignReader.read(
            DESIGN.replace("ground: perfect", "ground: {soil: medium-dry}"), "s.yaml");
    OptimizeResult result =
        new OptimizeStudy(
                soil,
                List.of(range("offset", "15%", "45%")),
                List.of(axis("ratio", "2", "4")),
                new ParameterGrid(List.of(axis("height", "6m", "15m"))),
                List.of(WORST_SWR),
                List.of(),
                1)
            .run(SOLVER, 2);
    OptimizeResult.Candidate best = result.candidates().get(0);
    assertThat(best.cost()).isLessThan(result.nominal().cost() - 0.2);
    Design chosen =
        soil.with("offset", String.valueOf(best.parameters().get(0).value().value()))
            .with("ratio", String.valueOf(best.parameters().get(1).value().value()));
    double over = Math.max(worst(chosen.with("height", "6m")), worst(chosen.with("height", "15m")));
    assertThat(best.cost()).isCloseTo(over, within(0.01));
    assertThat(best.binding().get(0).installation().get(0).parameter()).isEqualTo("height");
  }

  /** The design as it is beside a single other choice: each with its own solution. */
  @Test
  void aSingleChoiceIsComparedWithTheDesignAsItIs() {
    OptimizeResult result =
        new OptimizeStudy(
                KIT,
                List.of(),
                List.of(axis("offset", "20%")),
                AS_IT_IS,
                List.of(WORST_SWR),
                List.of(),
                1)
            .run(SOLVER, 2);
    assertThat(result.nominal().cost()).isCloseTo(worst(KIT), within(0.01));
    assertThat(result.candidates().get(0).cost())
        .isCloseTo(worst(KIT.with("offset", "20%")), within(0.01));
  }

  @Test
  void limitsAreKeptAndTheFrontTradesOff() {
    List<ParameterSample.Range> height = List.of(range("height", "5m", "14m"));
    OptimizeResult free =
        new OptimizeStudy(
                KIT, height, List.of(), AS_IT_IS, List.of(WORST_SWR, LOW_GAIN), List.of(), 1)
            .run(SOLVER, 2);
    assertThat(free.front()).hasSizeGreaterThan(1);
    for (int i = 1; i < free.front().size(); i++) {
      assertThat(free.front().get(i).values().get(1))
          .isGreaterThan(free.front().get(i - 1).values().get(1) - 0.01);
    }
    double wanted = free.front().get(free.front().size() - 1).values().get(1) - 0.3;
    OptimizeResult limited =
        new OptimizeStudy(
                KIT,
                height,
                List.of(),
                AS_IT_IS,
                List.of(WORST_SWR, LOW_GAIN),
                List.of(new OptimizeStudy.Limit(GAIN_AT_30, wanted)),
                1)
            .run(SOLVER, 2);
    OptimizeResult.Candidate best = limited.candidates().get(0);
    assertThat(best.values().get(1)).isGreaterThan(wanted - 0.05);
    assertThat(best.values().get(0)).isGreaterThanOrEqualTo(free.candidates().get(0).cost() - 0.01);
  }

  /**
   * No design of a dense grid is better in one goal than one of the front and as good in the other.
   */
  @Test
  void theFrontIsNoWorseThanADenseGrid() {
    OptimizeResult result =
        new OptimizeStudy(
                KIT,
                List.of(range("offset", "20%", "40%"), range("height", "6m", "12m")),
                List.of(),
                AS_IT_IS,
                List.of(WORST_SWR, LOW_GAIN),
                List.of(),
                1)
            .run(SOLVER, 2);
    List<List<Double>> front =
        result.front().stream().map(OptimizeResult.Candidate::values).toList();
    assertThat(front).hasSizeGreaterThan(2);
    for (List<Double> one : front) {
      assertThat(front).noneMatch(other -> other.get(0) < one.get(0) && other.get(1) > one.get(1));
    }
    for (int i = 0; i <= 12; i++) {
      Design offset = KIT.with("offset", String.format(Locale.ROOT, "%.3f%%", 20 + i * 20.0 / 12));
      for (int k = 0; k <= 8; k++) {
        Design design = offset.with("height", String.format(Locale.ROOT, "%.3f m", 6 + 0.75 * k));
        double[] goals = swrAndGain(design);
        for (List<Double> one : front) {
          boolean better = goals[0] < one.get(0) - 0.02 && goals[1] > one.get(1) + 0.02;
          assertThat(better)
              .as("offset %d, height %d: %s beat %s", i, k, Arrays.toString(goals), one)
              .isFalse();
        }
      }
    }
  }

  /**
   * Around the front no design is better in both goals: what the scan found has been searched on
   * from. The scan's own designs leave 0.06 to be had by these moves, in SWR and in dB.
   */
  @Test
  void aroundTheFrontNothingIsBetterInBothGoals() {
    List<ParameterSample.Range> ranges =
        List.of(
            range("offset", "15%", "45%"),
            range("height", "6m", "12m"),
            range("span", "18m", "23m"));
    double[] step = {0.01, 0.2, 0.1};
    OptimizeResult result =
        new OptimizeStudy(
                KIT, ranges, List.of(), AS_IT_IS, List.of(WORST_SWR, LOW_GAIN), List.of(), 1)
            .run(SOLVER, 2);
    assertThat(result.front()).hasSizeGreaterThan(2);
    for (OptimizeResult.Candidate one : result.front()) {
      for (int move = 0; move < 27; move++) {
        int[] towards = {move % 3 - 1, move / 3 % 3 - 1, move / 9 - 1};
        Design moved = KIT;
        for (int i = 0; i < step.length; i++) {
          double value = one.parameters().get(i).value().value() + step[i] * towards[i];
          ParameterSample.Range range = ranges.get(i);
          double kept = Math.max(range.from().value(), Math.min(range.to().value(), value));
          Quantity quantity = new Quantity(kept, range.from().dimension());
          moved = moved.with(range.parameter(), Sweep.exact(quantity));
        }
        double[] goals = swrAndGain(moved);
        assertThat(Math.min(one.values().get(0) - goals[0], goals[1] - one.values().get(1)))
            .as("%s moved by %s steps", one.parameters(), Arrays.toString(towards))
            .isLessThan(0.01);
      }
    }
  }

  /** The worst SWR and the least gain at 30 degrees elevation. */
  private static double[] swrAndGain(Design design) {
    Installation installation = Installation.of(design);
    double swr = 1;
    double gain = Double.POSITIVE_INFINITY;
    for (double f : frequencies(design)) {
      Operation operation = installation.solve(SOLVER, f);
      swr = Math.max(swr, operation.feed("main").at(Plane.TRANSMITTER).swr());
      gain = Math.min(gain, operation.solution().gainAtElevation(30).gainDbi());
    }
    return new double[] {swr, gain};
  }

  @Test
  void questionsWithoutSenseAreRefused() {
    assertThatThrownBy(
            () ->
                new OptimizeStudy(
                    KIT, List.of(), List.of(), AS_IT_IS, List.of(WORST_SWR), List.of(), 1))
        .hasMessageContaining("nothing to vary");
    assertThatThrownBy(
            () ->
                new OptimizeStudy(
                    KIT,
                    List.of(range("offset", "15%", "45%")),
                    List.of(),
                    AS_IT_IS,
                    List.of(
                        new OptimizeStudy.Weighted(
                            Goal.of(Goal.Measure.CHOKE_WATTS), OptionalDouble.empty())),
                    List.of(),
                    1))
        .hasMessageContaining("feed-line");
  }
}
