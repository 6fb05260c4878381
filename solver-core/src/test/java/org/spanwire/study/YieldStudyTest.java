package org.spanwire.study;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.assertj.core.api.Assertions.within;

import java.util.List;
import java.util.Locale;
import org.apache.commons.math3.complex.Complex;
import org.junit.jupiter.api.Test;
import org.spanwire.Solver;
import org.spanwire.SolverOptions;
import org.spanwire.circuit.Mismatch;
import org.spanwire.design.Design;
import org.spanwire.design.DesignReader;
import org.spanwire.design.Requirement;

/** Yield of a kit over perfect ground, whose solutions are quick. */
class YieldStudyTest {

  private static final String DESIGN =
      """
      format: spanwire-design/1
      title: Hut kit with spreads
      parameters:
        height: {value: 10 m, spread: 2 m}
        factor: {value: 1, spread: {sigma: 0.4 %}}
        ratio: {value: 4, spread: 0.2}
        offset: 36 %
      conductors:
        strand: {material: copper, diameter: 2 mm}
      wires:
        radiator: {conductor: strand, path: [[0, 0, height], [20.3 m * factor, 0, height]]}
      feeds:
        main: {wire: radiator, at: offset, gap: 40 mm}
      ground: perfect
      feed-chain:
        - transformer: {ratio: ratio}
        - line: {impedance: 50 ohm, length: 12 m, velocity-factor: 0.66}
      bands: {plan: iaru-region-1, use: [40 m, 20 m]}
      """;

  private static final Design KIT = DesignReader.read(DESIGN, "kit.yaml");

  private static YieldResult run(Design design, int samples, long seed, int threads) {
    return new YieldStudy(design, samples, seed, YieldStudy.DEFAULT_ACCURACY)
        .run(new Solver(), threads);
  }

  @Test
  void thousandSamplesAreWithinThreePercentOfTwentyThousand() {
    YieldResult small = run(KIT, 1000, 1, 2);
    YieldResult large = run(KIT, 20_000, 9, 2);
    assertThat(small.outcomes()).hasSize(4);
    assertThat(large.modelError()).isLessThan(YieldStudy.DEFAULT_ACCURACY);
    int undecided = 0;
    for (int i = 0; i < small.outcomes().size(); i++) {
      double share = large.outcomes().get(i).share().value();
      YieldResult.Share found = small.outcomes().get(i).share();
      assertThat(found.value()).isCloseTo(share, within(0.03));
      assertThat(share).isBetween(found.low(), found.high());
      undecided += share > 0.05 && share < 0.95 ? 1 : 0;
    }
    assertThat(undecided).as("shares that are neither none nor all").isPositive();
    assertThat(small.all().value()).isCloseTo(large.all().value(), within(0.03));
  }

  /**
   * Slopes of the worst SWR, which lies at a band edge, against solutions at either side. However
   * rough the polynomial is that the installations are judged on, the slopes are not.
   */
  @Test
  void slopesEqualFiniteDifferencesOfSolutions() {
    Solver exact = new Solver(SolverOptions.defaults().withTolerance(1e-5));
    YieldResult result = run(KIT, 10, 1, 2);
    String[] units = {" m", "", ""};
    double[] spreads = {2, 0.004, 0.2};
    double[] nominal = {10, 1, 4};
    for (int band = 0; band < 2; band++) {
      YieldResult.Outcome outcome = result.outcomes().get(band);
      for (int j = 0; j < 3; j++) {
        String name = outcome.influences().get(j).parameter();
        double step = 0.02 * spreads[j];
        double up = worst(exact, name, nominal[j] + step, units[j], band);
        double down = worst(exact, name, nominal[j] - step, units[j], band);
        double slope = (up - down) / 0.04;
        assertThat(outcome.influences().get(j).perSpread())
            .as("%s in band %d", name, band)
            .isCloseTo(slope, within(0.005 * Math.abs(slope)));
      }
    }
  }

  private static double worst(Solver solver, String name, double value, String unit, int band) {
    Design moved = KIT.with(name, String.format(Locale.ROOT, "%.9f%s", value, unit));
    Installation installation = Installation.of(moved);
    double worst = 0;
    for (double f : List.of(KIT.bands().get(band).lowHz(), KIT.bands().get(band).highHz())) {
      Operation operation = installation.solve(solver, f);
      worst = Math.max(worst, operation.feed("main").at(Plane.TRANSMITTER).swr());
    }
    return worst;
  }

  /** One parameter, uniform: the share follows from where SWR crosses the limit. */
  @Test
  void shareOfOneParameterIsWhatItsCrossingSays() {
    String text =
        DESIGN
            .replace("height: {value: 10 m, spread: 2 m}", "height: 10 m")
            .replace("{value: 1, spread: {sigma: 0.4 %}}", "1")
            .replace("{value: 4, spread: 0.2}", "{value: 4, spread: 2}")
            .replace(
                "bands: {plan: iaru-region-1, use: [40 m, 20 m]}",
                "requirements: [{frequency: 7.1 MHz, swr: {max: 1.8}}]");
    Design design = DesignReader.read(text, "ratio.yaml");
    Complex impedance = Installation.of(design).solve(new Solver(), 7.1e6).feed("main").impedance();
    int met = 0;
    int steps = 1000;
    for (int i = 0; i < steps; i++) {
      // The line is of 50 ohm, the reference: SWR follows from the impedance and the ratio alone.
      double ratio = 2 + 4 * (i + 0.5) / steps;
      met += Mismatch.of(impedance, 50 * ratio).swr() <= 1.8 ? 1 : 0;
    }
    YieldResult result = run(design, 4000, 3, 2);
    assertThat((double) met / steps).isBetween(0.05, 0.95);
    assertThat(result.outcomes().get(0).share().value())
        .isCloseTo((double) met / steps, within(0.01));
    assertThat(result.outcomes().get(0).influences().get(0).varianceShare()).isEqualTo(1);
  }

  @Test
  void sameSeedGivesSameBitsForAnyNumberOfThreads() {
    YieldResult one = run(KIT, 300, 5, 1);
    YieldResult four = run(KIT, 300, 5, 4);
    assertThat(four).isEqualTo(one);
    assertThat(run(KIT, 300, 6, 2).outcomes()).isNotEqualTo(one.outcomes());
  }

  /** With small spreads a value is linear in them, and both ways to a share agree. */
  @Test
  void slopesAndSampleAgreeForSmallSpreads() {
    String text =
        DESIGN
            .replace("spread: 2 m}", "spread: 0 m}")
            .replace("sigma: 0.4 %", "sigma: 0.05 %")
            .replace("spread: 0.2", "spread: 0")
            .replace("bands: {", "# bands: {");
    Design bare = DesignReader.read(text + "frequencies: [7.2 MHz]\n", "small.yaml");
    double nominal =
        Installation.of(bare).solve(new Solver(), 7.2e6).feed("main").at(Plane.TRANSMITTER).swr();
    String limit =
        String.format(
            Locale.ROOT,
            "requirements: [{frequency: 7.2 MHz, swr: {max: %.4f}}]%n",
            nominal + 0.002);
    YieldResult.Outcome outcome =
        run(DesignReader.read(text + limit, "small.yaml"), 4000, 2, 2).outcomes().get(0);
    assertThat(outcome.share().value()).isBetween(0.2, 0.95);
    assertThat(outcome.linearShare()).isCloseTo(outcome.share().value(), within(0.02));
  }

  @Test
  void valuesAreTheNominalOnesOfACheck() {
    String text =
        DESIGN
            + "requirements:\n"
            + "  - {band: 20 m, swr: {max: 2.5}}\n"
            + "  - {band: 20 m, gain: {min: 4 dBi, elevation: 30 deg}}\n"
            + "  - {band: 40 m, verdict: tunable}\n";
    Design design = DesignReader.read(text, "requirements.yaml");
    List<CheckedRequirement> checked = new RequirementCheck(design).run(new Solver(), 2);
    YieldResult result = run(design, 50, 1, 2);
    assertThat(result.outcomes()).hasSize(3);
    for (int i = 0; i < 3; i++) {
      assertThat(result.outcomes().get(i).nominal())
          .isCloseTo(checked.get(i).found(), within(0.03));
    }
  }

  @Test
  void whatCannotBeJudgedIsNamed() {
    String text = DESIGN + "requirements: [{band: 40 m, bandwidth: {min: 50 kHz, swr: 2}}]\n";
    YieldResult result = run(DesignReader.read(text, "width.yaml"), 10, 1, 2);
    assertThat(result.outcomes()).as("judged by SWR instead").hasSize(4);
    assertThat(result.notJudged()).singleElement().isInstanceOf(Requirement.MinimumBandwidth.class);
  }

  @Test
  void designsWithoutSpreadOrGoalAreRefused() {
    Design still = DesignReader.read(DESIGN.replaceAll("spread: [^,}]*\\}?\\}", "}"), "still.yaml");
    assertThatThrownBy(() -> new YieldStudy(still, 10, 1, 1e-3))
        .isInstanceOf(IllegalArgumentException.class)
        .hasMessageContaining("no parameter has a spread");
    Design aimless = DesignReader.read(DESIGN.replace("bands: {", "# bands: {"), "aimless.yaml");
    assertThatThrownBy(() -> new YieldStudy(aimless, 10, 1, 1e-3))
        .hasMessageContaining("neither bands nor requirements");
    assertThatThrownBy(() -> new YieldStudy(KIT, 0, 1, 1e-3)).hasMessageContaining("samples 0");
  }
}
