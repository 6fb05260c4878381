package org.spanwire.study;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.ArrayList;
import java.util.List;
import java.util.OptionalDouble;
import java.util.concurrent.Callable;
import java.util.function.IntFunction;
import java.util.stream.DoubleStream;
import java.util.stream.Stream;
import org.apache.commons.math3.complex.Complex;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.Arguments;
import org.junit.jupiter.params.provider.MethodSource;
import org.spanwire.Solver;
import org.spanwire.design.Design;
import org.spanwire.design.DesignReader;
import org.spanwire.unit.Quantity;

/** Everything that threads gives the same bits on one, two and eight threads. */
class ThreadCountTest {

  private static final Design KIT =
      DesignReader.read(
          """
          format: spanwire-design/1
          title: Hut kit under test
          parameters:
            height: {value: 9 m, spread: 0.5 m}
            offset: 36 %
          conductors:
            strand: {material: copper, diameter: 2 mm}
          wires:
            radiator: {conductor: strand, path: [[0, 0, height], [20, 0, height - 1 m]]}
          feeds:
            main: {wire: radiator, at: offset}
          ground: {soil: medium-dry}
          feed-chain: [{transformer: {ratio: 4}}]
          bands: {plan: iaru-region-1, use: [40 m, 20 m]}
          """,
          "kit.yaml");

  private static Object bands(int threads) {
    return new BandStudy(Installation.of(KIT), List.of(30.0), 3)
        .run(new Solver(), KIT.bands(), threads);
  }

  private static Object sweep(int threads) {
    ParameterGrid grid =
        new ParameterGrid(
            List.of(
                new ParameterGrid.Axis(
                    "height", List.of(Quantity.parse("8 m"), Quantity.parse("9 m"))),
                new ParameterGrid.Axis(
                    "offset", List.of(Quantity.parse("20 %"), Quantity.parse("30 %")))));
    Sweep sweep =
        new Sweep(
            KIT,
            grid,
            List.of(7.1e6, 14.1e6),
            new SweepRequest(
                "main",
                Plane.FEEDPOINT,
                List.of(SweepQuantity.IMPEDANCE, SweepQuantity.GAIN),
                List.of(30.0),
                List.of()));
    List<SweepRow> rows = new ArrayList<>();
    sweep.run(SweepPlan.rowByRow(new Solver()), sweep.rows(), threads, rows::add);
    return rows;
  }

  /** Few frequencies are solved one by one, many on a common mesh. */
  private static Object frequencies(int count, int threads) {
    List<Double> frequencies =
        DoubleStream.iterate(7e6, f -> f + 2e4).limit(count).boxed().toList();
    return new FrequencyStudy(List.of(20.0), List.of(), 5, false)
        .run(new Solver(), Installation.of(KIT), frequencies, threads);
  }

  private static Object response(int threads) {
    FrequencyResponse response =
        FrequencyResponse.of(KIT.antenna(), new FrequencyRange(6.5e6, 7.5e6), 1e-3, threads);
    return DoubleStream.iterate(6.5e6, f -> f + 1e5)
        .limit(11)
        .mapToObj(f -> response.impedance("main", f))
        .toList();
  }

  private static Object yield(int threads) {
    return new YieldStudy(KIT, 200, 1, YieldStudy.DEFAULT_ACCURACY).run(new Solver(), threads);
  }

  private static Object optimum(int threads) {
    OptimizeStudy.Weighted swr =
        new OptimizeStudy.Weighted(Goal.of(Goal.Measure.WORST_SWR), OptionalDouble.empty());
    Goal gain = new Goal(Goal.Measure.GAIN, OptionalDouble.of(30));
    ParameterSample.Range offset =
        new ParameterSample.Range("offset", Quantity.parse("25 %"), Quantity.parse("45 %"));
    return new OptimizeStudy(
            KIT,
            List.of(offset),
            List.of(),
            new ParameterGrid(List.of()),
            List.of(swr, new OptimizeStudy.Weighted(gain, OptionalDouble.empty())),
            List.of(),
            1)
        .run(new Solver(), threads);
  }

  private static Object fixes(int threads) {
    return new FixStudy(KIT).run(new Solver(), threads);
  }

  /** One solver asked by all threads at once, the tables over soil shared. */
  private static Object solver(int threads) {
    Solver solver = new Solver();
    List<Callable<Complex>> tasks = new ArrayList<>();
    for (int i = 0; i < 8; i++) {
      double frequency = 7e6 + 1e5 * (i % 4);
      tasks.add(() -> solver.solve(KIT.antenna(), frequency).impedance());
    }
    try (Workers workers = new Workers(threads)) {
      return workers.run(tasks);
    }
  }

  static Stream<Arguments> studies() {
    return Stream.of(
        study("bands", ThreadCountTest::bands),
        study("sweep", ThreadCountTest::sweep),
        study("three frequencies", threads -> frequencies(3, threads)),
        study("seven frequencies", threads -> frequencies(7, threads)),
        study("response", ThreadCountTest::response),
        study("yield", ThreadCountTest::yield),
        study("optimum and front", ThreadCountTest::optimum),
        study("fixes", ThreadCountTest::fixes),
        study("solver", ThreadCountTest::solver));
  }

  private static Arguments study(String name, IntFunction<Object> run) {
    return Arguments.of(name, run);
  }

  @ParameterizedTest(name = "{0}")
  @MethodSource("studies")
  void sameBits(String name, IntFunction<Object> run) {
    Object one = run.apply(1);
    for (int threads : new int[] {2, 8}) {
      assertThat(run.apply(threads))
          .as("%s on %d threads", name, threads)
          .usingRecursiveComparison()
          .isEqualTo(one);
    }
  }
}
