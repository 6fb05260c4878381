package org.spanwire.study;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.assertj.core.api.Assertions.within;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.concurrent.atomic.AtomicInteger;
import org.junit.jupiter.api.Test;
import org.spanwire.Solution;
import org.spanwire.Solver;
import org.spanwire.circuit.Mismatch;
import org.spanwire.design.Design;
import org.spanwire.design.DesignReader;
import org.spanwire.unit.Quantity;

class SweepTest {

  private static final Design DESIGN =
      DesignReader.read(
          """
          format: spanwire-design/1
          title: Hut kit under test
          parameters:
            height: 10 m
            offset: 36 %
            second: 5 m
          conductors:
            strand: {material: copper, diameter: 2 mm}
          wires:
            radiator: {conductor: strand, path: [[0, 0, height], [20, 0, height]]}
          feeds:
            main: {wire: radiator, at: offset}
          ground: perfect
          feed-chain: [{transformer: {ratio: 4}}]
          """,
          "kit.yaml");

  private static ParameterGrid grid(String height, String offset) {
    return new ParameterGrid(
        List.of(
            new ParameterGrid.Axis("height", quantities(height)),
            new ParameterGrid.Axis("offset", quantities(offset))));
  }

  private static List<Quantity> quantities(String texts) {
    return List.of(texts.split(",")).stream().map(Quantity::parse).toList();
  }

  private static Sweep sweep(ParameterSpace space, Plane plane, SweepQuantity... quantities) {
    return new Sweep(
        DESIGN,
        space,
        List.of(7.1e6, 14.1e6),
        new SweepRequest("main", plane, List.of(quantities), List.of(), List.of()));
  }

  private static List<SweepRow> run(Sweep sweep, int threads) {
    List<SweepRow> rows = new ArrayList<>();
    sweep.run(SweepPlan.rowByRow(new Solver()), sweep.rows(), threads, rows::add);
    return rows;
  }

  @Test
  void theLastParameterIsFastestAndFrequencyInnermost() {
    Sweep sweep = sweep(grid("8m,9m", "20%,30%,40%"), Plane.FEEDPOINT, SweepQuantity.SWR);
    List<String> order = new ArrayList<>();
    for (long row = 0; row < sweep.rows().count(); row++) {
      order.add(
          sweep.parameters(row).get(0).value()
              + " "
              + sweep.parameters(row).get(1).value()
              + " "
              + sweep.frequencyHz(row));
    }
    assertThat(order)
        .containsExactly(
            "8.0 0.2 7100000.0",
            "8.0 0.2 1.41E7",
            "8.0 0.3 7100000.0",
            "8.0 0.3 1.41E7",
            "8.0 0.4 7100000.0",
            "8.0 0.4 1.41E7",
            "9.0 0.2 7100000.0",
            "9.0 0.2 1.41E7",
            "9.0 0.3 7100000.0",
            "9.0 0.3 1.41E7",
            "9.0 0.4 7100000.0",
            "9.0 0.4 1.41E7");
  }

  @Test
  void aRowIsWhatSolvingItsDesignGives() {
    Sweep sweep =
        sweep(
            grid("8m,11m", "34%"),
            Plane.TRANSMITTER,
            SweepQuantity.IMPEDANCE,
            SweepQuantity.SWR,
            SweepQuantity.GAIN);
    SweepRow row = run(sweep, 2).get(3);
    Solution solution =
        new Solver().solve(DESIGN.with("height", "11m").with("offset", "34%").antenna(), 14.1e6);
    assertThat(sweep.request().columns())
        .containsExactly(
            "resistance_ohm",
            "reactance_ohm",
            "swr",
            "gain_dbi",
            "gain_elevation_deg",
            "gain_azimuth_deg");
    assertThat(row.values().get(0)).isCloseTo(solution.impedance().getReal() / 4, within(1e-9));
    assertThat(row.values().get(1))
        .isCloseTo(solution.impedance().getImaginary() / 4, within(1e-9));
    assertThat(row.values().get(2))
        .isCloseTo(Mismatch.of(solution.impedance(), 200).swr(), within(1e-9));
    assertThat(row.values().get(3)).isEqualTo(solution.peakGain().gainDbi());
  }

  @Test
  void rowsDoNotDependOnTheNumberOfThreads() {
    Sweep sweep = sweep(grid("8m,9m,10m", "20%,30%"), Plane.FEEDPOINT, SweepQuantity.IMPEDANCE);
    assertThat(run(sweep, 3)).isEqualTo(run(sweep, 1));
  }

  @Test
  void aPointThatCannotBeModelledHasAReasonAndTheOthersTheirValues() {
    Sweep sweep = sweep(grid("9m,-1m", "30%,130%"), Plane.FEEDPOINT, SweepQuantity.SWR);
    List<SweepRow> rows = run(sweep, 2);
    assertThat(rows.stream().map(SweepRow::status))
        .containsExactly(
            "ok",
            "ok",
            "bad-design",
            "bad-design",
            "bad-geometry",
            "bad-geometry",
            "bad-design",
            "bad-design");
    assertThat(rows.get(4).values()).isEmpty();
    assertThat(rows.get(4).failure().orElseThrow().message())
        .startsWith("kit.yaml:")
        .contains("below the ground");
  }

  @Test
  void parametersThatMustFitEachOtherAreSetTogether() {
    Design coupled =
        DesignReader.read(
            """
            format: spanwire-design/1
            title: Hut kit under test
            parameters:
              low: 5 m
              high: 6 m
              gap: {value: high - low, limits: [0.5 m, 2 m]}
            conductors:
              strand: {material: copper, diameter: 2 mm}
            wires:
              radiator: {conductor: strand, path: [[0, 0, low], [20, 0, high]]}
            feeds:
              main: {wire: radiator, at: 36 %}
            ground: perfect
            """,
            "kit.yaml");
    ParameterGrid both =
        new ParameterGrid(
            List.of(
                new ParameterGrid.Axis("low", quantities("9m")),
                new ParameterGrid.Axis("high", quantities("10m"))));
    Sweep sweep =
        new Sweep(
            coupled,
            both,
            List.of(7e6),
            new SweepRequest(
                "main", Plane.FEEDPOINT, List.of(SweepQuantity.SWR), List.of(), List.of()));
    assertThat(run(sweep, 1).get(0).status()).isEqualTo("ok");
  }

  /** Counts the rows that are solved ahead of the one handed on. */
  @Test
  void onlyABoundedNumberOfRowsIsHeld() {
    ParameterGrid many =
        new ParameterGrid(
            List.of(
                ParameterGrid.Axis.even(
                    "height", Quantity.parse("5 m"), Quantity.parse("9 m"), 5000)));
    Sweep sweep = sweep(many, Plane.FEEDPOINT, SweepQuantity.SWR);
    AtomicInteger held = new AtomicInteger();
    AtomicInteger most = new AtomicInteger();
    sweep.run(
        counting(held),
        sweep.rows(),
        2,
        row -> most.accumulateAndGet(held.getAndDecrement(), Math::max));
    assertThat(most.get()).isBetween(1, 1000);
    assertThat(held.get()).isZero();
  }

  private static SweepPlan counting(AtomicInteger solved) {
    return new SweepPlan() {
      @Override
      public int blockRows(Sweep sweep) {
        return 7;
      }

      @Override
      public long solves(Sweep sweep, RowRange rows) {
        return rows.count();
      }

      @Override
      public List<SweepRow> solve(Sweep sweep, RowRange rows) {
        List<SweepRow> made = new ArrayList<>();
        for (long row = rows.first(); row < rows.end(); row++) {
          solved.incrementAndGet();
          made.add(
              new SweepRow(
                  sweep.parameters(row),
                  sweep.frequencyHz(row),
                  List.of((double) row),
                  Optional.empty()));
        }
        return made;
      }
    };
  }

  /** Blocks are cut at the ends of a part, and the parts together are the whole. */
  @Test
  void partsFollowEachOtherWithoutGapWhateverTheBlocks() {
    Sweep sweep = sweep(grid("5m,6m,7m,8m,9m", "20%,30%,40%"), Plane.FEEDPOINT, SweepQuantity.SWR);
    List<Double> rows = new ArrayList<>();
    for (int part = 1; part <= 4; part++) {
      sweep.run(
          counting(new AtomicInteger()),
          sweep.rows().part(part, 4),
          2,
          row -> rows.add(row.values().get(0)));
    }
    assertThat(rows).hasSize(30);
    for (int i = 0; i < 30; i++) {
      assertThat(rows.get(i)).isEqualTo(i);
    }
  }

  @Test
  void partsOfHugeSweepsDoNotOverflow() {
    RowRange huge = new RowRange(0, Long.MAX_VALUE - 5);
    long end = 0;
    for (int part = 1; part <= 1000; part++) {
      assertThat(huge.part(part, 1000).first()).isEqualTo(end);
      end = huge.part(part, 1000).end();
    }
    assertThat(end).isEqualTo(huge.end());
  }

  @Test
  void anAxisEndsExactlyWhereAsked() {
    List<Quantity> values =
        ParameterGrid.Axis.even("height", Quantity.parse("0.1 m"), Quantity.parse("0.7 m"), 4)
            .values();
    assertThat(values.get(0).value()).isEqualTo(0.1);
    assertThat(values.get(3).value()).isEqualTo(0.7);
    assertThat(values.get(1).value()).isCloseTo(0.3, within(1e-15));
  }

  /**
   * Of 2^k − 1 points of the sequence (its first point left out) every dyadic interval of length
   * 2^−k but the first holds exactly one in each coordinate: Sobol (1967).
   */
  @Test
  void aSampleFillsEveryRangeEvenly() {
    ParameterSample sample =
        new ParameterSample(
            List.of(
                new ParameterSample.Range("height", Quantity.parse("0 m"), Quantity.parse("1 m")),
                new ParameterSample.Range("offset", Quantity.parse("0"), Quantity.parse("1"))),
            63);
    for (int axis = 0; axis < 2; axis++) {
      boolean[] hit = new boolean[64];
      for (long place = 0; place < sample.count(); place++) {
        hit[(int) (64 * sample.at(place).get(axis).value())] = true;
      }
      for (int i = 1; i < 64; i++) {
        assertThat(hit[i]).as("interval %d of axis %d", i, axis).isTrue();
      }
    }
  }

  @Test
  void aParameterIsVariedOnce() {
    ParameterGrid.Axis axis = new ParameterGrid.Axis("height", quantities("5m"));
    assertThatThrownBy(() -> new ParameterGrid(List.of(axis, axis)))
        .hasMessageContaining("varied twice");
  }
}
