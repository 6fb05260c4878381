package org.spanwire.study;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.ArrayList;
import java.util.List;
import java.util.stream.Stream;
import org.junit.jupiter.api.Test;
import org.spanwire.Solver;
import org.spanwire.design.Design;
import org.spanwire.design.DesignReader;
import org.spanwire.unit.Quantity;

/** The judge is the same sweep row by row. */
class SharedPlanTest {

  private static final Design DESIGN =
      DesignReader.read(
          """
          format: spanwire-design/1
          title: Hut kit under test
          parameters:
            span: 20 m
            height: 10 m
            offset: 36 %
            length: 15 m
          conductors:
            strand: {material: copper, diameter: 2 mm, insulation: {thickness: 0.6 mm, permittivity: 2.3}}
          wires:
            radiator: {conductor: strand, path: [[0, 0, height], [span, 0, height]]}
          feeds:
            main: {wire: radiator, at: offset}
          ground: {soil: medium-dry}
          feed-chain: [{transformer: {ratio: 4}},
                       {line: {impedance: 50 ohm, length: length, velocity-factor: 0.66}}]
          """,
          "kit.yaml");

  private static final List<Double> BANDS = List.of(7.0e6, 7.1e6, 7.2e6, 14.0e6, 14.35e6);

  private static ParameterGrid.Axis axis(String name, String values) {
    return new ParameterGrid.Axis(name, Stream.of(values.split(",")).map(Quantity::parse).toList());
  }

  private static Sweep sweep(List<ParameterGrid.Axis> axes, SweepQuantity... quantities) {
    return new Sweep(
        DESIGN,
        new ParameterGrid(axes),
        BANDS,
        new SweepRequest("main", Plane.TRANSMITTER, List.of(quantities), List.of(), List.of()));
  }

  private static List<SweepRow> run(Sweep sweep, SweepPlan plan, int threads) {
    List<SweepRow> rows = new ArrayList<>();
    sweep.run(plan, sweep.rows(), threads, rows::add);
    return rows;
  }

  private static final Design WITH_LINE =
      DesignReader.read(
          """
          format: spanwire-design/1
          title: Hut kit with its line under test
          parameters:
            height: 9 m
            choke: 2 kohm
          conductors:
            strand: {material: copper, diameter: 2 mm}
            jacket: {material: copper, diameter: 5 mm}
          wires:
            radiator: {conductor: strand, path: [[0, 0, height], [20, 0, height]]}
          feeds:
            main: {wire: radiator, at: 36 %, gap: 40 mm}
          ground: {soil: medium-dry}
          feed-chain: [{transformer: {ratio: 4}}, {choke: {impedance: choke}},
                       {line: {impedance: 50 ohm, length: 14 m, velocity-factor: 0.66}}]
          feed-line: {conductor: jacket, path: [[7.2, 0, height - 8 m], [7.2, 6, height - 8 m]]}
          """,
          "line.yaml");

  private static Sweep withLine(String... axes) {
    List<ParameterGrid.Axis> varied = new ArrayList<>();
    for (int i = 0; i < axes.length; i += 2) {
      varied.add(axis(axes[i], axes[i + 1]));
    }
    return new Sweep(
        WITH_LINE,
        new ParameterGrid(varied),
        BANDS,
        new SweepRequest(
            "main", Plane.TRANSMITTER, List.of(SweepQuantity.SWR), List.of(), List.of()));
  }

  /** The line is a conductor of the antenna: heights, chokes and frequencies share its mesh. */
  @Test
  void aFeedLineRisesWithTheWires() {
    Sweep sweep = withLine("height", "9m,10m", "choke", "1kohm,4kohm");
    assertThat(SweepPlan.shared(sweep, new Solver()).blockRows(sweep)).isEqualTo(20);
    hold(sweep, 2e-3);
  }

  /** Compares the values; for a single plane the error of R and X is a share of the magnitude. */
  private static void hold(Sweep sweep, double tolerance) {
    List<SweepRow> shared = run(sweep, SweepPlan.shared(sweep, new Solver()), 2);
    List<SweepRow> judge = run(sweep, SweepPlan.rowByRow(new Solver()), 2);
    assertThat(shared).hasSameSizeAs(judge);
    for (int row = 0; row < judge.size(); row++) {
      assertThat(shared.get(row).status()).isEqualTo(judge.get(row).status());
      assertThat(shared.get(row).failure()).isEqualTo(judge.get(row).failure());
      assertThat(shared.get(row).parameters()).isEqualTo(judge.get(row).parameters());
      assertThat(shared.get(row).frequencyHz()).isEqualTo(judge.get(row).frequencyHz());
      List<Double> right = judge.get(row).values();
      double size = right.stream().mapToDouble(Math::abs).max().orElse(0);
      for (int i = 0; i < right.size(); i++) {
        assertThat(Math.abs(shared.get(row).values().get(i) - right.get(i)))
            .as("value %d of row %d", i, row)
            .isLessThan(tolerance * size);
      }
    }
  }

  /** Both values lie within the tolerance of the truth. */
  @Test
  void placesHeightsAndLinesShareSolutionsAndFaultyRowsKeepTheirReasons() {
    Sweep sweep =
        sweep(
            List.of(
                axis("offset", "12%,21%,33%,0.1%,47%"),
                axis("height", "10m,6m,14m,-2m"),
                axis("length", "10m,20m,-1m")),
            SweepQuantity.IMPEDANCE);
    hold(sweep, 4e-3);
    SweepPlan plan = SweepPlan.shared(sweep, new Solver());
    assertThat(plan.solves(sweep, sweep.rows())).isEqualTo(4 * 5);
    assertThat(plan.blockRows(sweep)).isEqualTo(sweep.rows().count());
  }

  @Test
  void anotherSpanIsAnotherStructure() {
    Sweep sweep =
        sweep(
            List.of(axis("span", "19m,21m"), axis("offset", "20%,30%,40%")),
            SweepQuantity.IMPEDANCE,
            SweepQuantity.SWR);
    hold(sweep, 4e-3);
    SweepPlan plan = SweepPlan.shared(sweep, new Solver());
    assertThat(plan.blockRows(sweep)).isEqualTo(3 * 5);
    assertThat(plan.solves(sweep, sweep.rows())).isEqualTo(2 * 5);
  }

  @Test
  void gainComesFromOneMeshForAllHeights() {
    Sweep sweep =
        sweep(
            List.of(axis("offset", "20%,40%"), axis("height", "6m,10m")),
            SweepQuantity.GAIN,
            SweepQuantity.EFFICIENCY);
    hold(sweep, 4e-3);
    SweepPlan plan = SweepPlan.shared(sweep, new Solver());
    assertThat(plan.solves(sweep, sweep.rows())).isEqualTo(sweep.rows().count());
  }

  /** A line changes nothing at the antenna: its rows come from one solution, to the last bit. */
  @Test
  void whatFollowsTheFeedpointTakesNoSolution() {
    Sweep sweep = sweep(List.of(axis("length", "10m,20m,30m,40m")), SweepQuantity.EFFICIENCY);
    SweepPlan plan = SweepPlan.shared(sweep, new Solver());
    assertThat(plan.solves(sweep, sweep.rows())).isEqualTo(BANDS.size());
    List<SweepRow> rows = run(sweep, plan, 1);
    for (int i = 0; i < BANDS.size(); i++) {
      assertThat(rows.get(i + 2 * BANDS.size()).values()).isEqualTo(rows.get(i).values());
    }
  }

  @Test
  void rowsDependNeitherOnThreadsNorOnTheRowsAskedFor() {
    Sweep sweep =
        sweep(
            List.of(axis("offset", "12%,21%,33%,40%"), axis("height", "6m,10m,14m")),
            SweepQuantity.IMPEDANCE);
    List<SweepRow> whole = run(sweep, SweepPlan.shared(sweep, new Solver()), 1);
    assertThat(run(sweep, SweepPlan.shared(sweep, new Solver()), 8)).isEqualTo(whole);
    List<SweepRow> parts = new ArrayList<>();
    for (int part = 1; part <= 4; part++) {
      sweep.run(SweepPlan.shared(sweep, new Solver()), sweep.rows().part(part, 4), 2, parts::add);
    }
    assertThat(parts).isEqualTo(whole);
  }
}
