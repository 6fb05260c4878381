package org.spanwire.study;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.assertj.core.api.Assertions.within;

import java.util.List;
import java.util.OptionalDouble;
import org.apache.commons.math3.complex.Complex;
import org.junit.jupiter.api.Test;
import org.spanwire.Solver;
import org.spanwire.SolverOptions;
import org.spanwire.design.Design;
import org.spanwire.design.DesignReader;

/** What is recorded, how far it may move, and what counts as drift. */
class BaselineTest {

  private static final Design KIT =
      DesignReader.read(
          """
          format: spanwire-design/1
          title: Hut dipole
          parameters: {span: 20.2 m}
          conductors: {strand: {material: copper, diameter: 2 mm}}
          wires: {radiator: {conductor: strand, path: [[0, 0, 9], [span, 0, 9]]}}
          feeds: {main: {wire: radiator, at: 36 %}}
          ground: perfect
          feed-chain:
            - transformer: {ratio: 4}
            - choke: {impedance: 1 kohm}
            - line: {impedance: 50 ohm, length: 8 m, velocity-factor: 0.66}
          feed-line: {conductor: strand, path: [[7.272, 0, 1]]}
          bands: {plan: iaru-region-1, use: [30 m]}
          frequencies: [7.1 MHz]
          """,
          "kit.yaml");

  private static final Solver SOLVER = new Solver(new SolverOptions(1e-3));

  private static Baseline.Entry entry(Baseline baseline, String place, String quantity) {
    return baseline.entries().stream()
        .filter(e -> e.place().equals(place) && e.quantity().equals(quantity))
        .findFirst()
        .orElseThrow();
  }

  private static void holds(Baseline.Entry entry, double value, double limit) {
    assertThat(entry.value()).isCloseTo(value, within(1e-9 * Math.abs(value)));
    assertThat(entry.limit()).isCloseTo(limit, within(1e-9 * limit));
  }

  @Test
  void recordsFrequenciesMiddlesAndBandsWithThreeTimesTheTolerance() {
    Baseline baseline = Baseline.of(KIT, SOLVER, 2);
    assertThat(baseline.entries())
        .extracting(e -> e.place() + " " + e.quantity())
        .containsExactly(
            "7.1 MHz resistance_ohm",
            "7.1 MHz reactance_ohm",
            "7.1 MHz swr",
            "7.1 MHz gain_peak_dbi",
            "7.1 MHz radiation_efficiency",
            "middle of 30 m resistance_ohm",
            "middle of 30 m reactance_ohm",
            "middle of 30 m swr",
            "middle of 30 m gain_peak_dbi",
            "middle of 30 m radiation_efficiency",
            "30 m swr_minimum",
            "30 m swr_maximum",
            "30 m choke_heat_w");
    Operation at = Installation.of(KIT).solve(SOLVER, 7.1e6);
    Complex z = at.feed("main").impedance();
    double swr = at.feed("main").at(Plane.TRANSMITTER).swr();
    double efficiency = at.solution().radiationEfficiency();
    holds(entry(baseline, "7.1 MHz", "resistance_ohm"), z.getReal(), 3e-3 * z.abs());
    holds(entry(baseline, "7.1 MHz", "reactance_ohm"), z.getImaginary(), 3e-3 * z.abs());
    holds(entry(baseline, "7.1 MHz", "swr"), swr, 3e-3 * swr * z.abs() / z.getReal());
    holds(
        entry(baseline, "7.1 MHz", "gain_peak_dbi"),
        at.solution().peakGain().gainDbi(),
        3 * 20 * Math.log10(1.001));
    holds(entry(baseline, "7.1 MHz", "radiation_efficiency"), efficiency, 6e-3 * efficiency);
    BandResponse band =
        new BandStudy(Installation.of(KIT), List.of(), 11).run(SOLVER, KIT.bands(), 1).get(0);
    Complex best = band.feed().impedance();
    double relative = 3e-3 * best.abs() / best.getReal();
    PlaneResponse seen = band.at(Plane.TRANSMITTER);
    holds(entry(baseline, "30 m", "swr_minimum"), seen.best().swr(), relative * seen.best().swr());
    holds(
        entry(baseline, "30 m", "swr_maximum"), seen.worst().swr(), relative * seen.worst().swr());
    double watts = band.heat(Ledger.CHOKE).orElseThrow().watts();
    holds(entry(baseline, "30 m", "choke_heat_w"), watts, 3e-2 * watts);
  }

  @Test
  void tellsWireFromNoise() {
    Baseline was = Baseline.of(KIT, SOLVER, 2);
    assertThat(was.compare(Baseline.of(KIT.with("span", "20.2000202 m"), SOLVER, 2)))
        .hasSize(13)
        .noneMatch(Baseline.Change::drifted);
    assertThat(was.compare(Baseline.of(KIT.with("span", "20.301 m"), SOLVER, 2)))
        .anyMatch(change -> change.drifted() && change.quantity().equals("reactance_ohm"));
  }

  @Test
  void aValueMayMoveByItsLimitAndNoMore() {
    Baseline was = new Baseline(List.of(new Baseline.Entry("7 MHz", "swr", 2, 0.5)));
    assertThat(drifted(was, 2.5)).isFalse();
    assertThat(drifted(was, 1.5)).isFalse();
    assertThat(drifted(was, 2.5000001)).isTrue();
    assertThat(drifted(was, 1.4999999)).isTrue();
  }

  private static boolean drifted(Baseline was, double is) {
    return was.compare(new Baseline(List.of(new Baseline.Entry("7 MHz", "swr", is, 9))))
        .get(0)
        .drifted();
  }

  @Test
  void whatVanishesOrAppearsHasDrifted() {
    Baseline was = new Baseline(List.of(new Baseline.Entry("7 MHz", "swr", 2, 0.5)));
    Baseline now = new Baseline(List.of(new Baseline.Entry("7.2 MHz", "swr", 3, 0.25)));
    assertThat(was.compare(now))
        .containsExactly(
            new Baseline.Change("7 MHz", "swr", OptionalDouble.of(2), OptionalDouble.empty(), 0.5),
            new Baseline.Change(
                "7.2 MHz", "swr", OptionalDouble.empty(), OptionalDouble.of(3), 0.25))
        .allMatch(Baseline.Change::drifted);
  }

  @Test
  void refusesWhatStandsTwiceAndWhatIsNoNumber() {
    Baseline.Entry once = new Baseline.Entry("7 MHz", "swr", 2, 0);
    assertThatThrownBy(() -> new Baseline(List.of(once, once)))
        .isInstanceOf(IllegalArgumentException.class)
        .hasMessage("swr at 7 MHz stands there twice; remove one of them");
    for (double bad : new double[] {Double.NaN, Double.POSITIVE_INFINITY}) {
      assertThatThrownBy(() -> new Baseline.Entry("7 MHz", "swr", bad, 1))
          .isInstanceOf(IllegalArgumentException.class);
      assertThatThrownBy(() -> new Baseline.Entry("7 MHz", "swr", 1, bad))
          .isInstanceOf(IllegalArgumentException.class);
    }
    assertThatThrownBy(() -> new Baseline.Entry("7 MHz", "swr", 1, -1))
        .isInstanceOf(IllegalArgumentException.class);
  }
}
