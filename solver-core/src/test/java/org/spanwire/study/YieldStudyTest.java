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

  /** A ratio turns no antenna: widths follow from impedances alone, at many frequencies. */
  @Test
  void bandwidthIsThatOfEveryInstallation() {
    String text =
        DESIGN
                .replace("height: {value: 10 m, spread: 2 m}", "height: 10 m")
                .replace("{value: 1, spread: {sigma: 0.4 %}}", "1")
                .replace("{value: 4, spread: 0.2}", "{value: 3, spread: 1.5}")
            + "requirements: [{band: 40 m, bandwidth: {min: 130 kHz, swr: 1.8}}]\n";
    Design design = DesignReader.read(text, "width.yaml");
    Installation installation = Installation.of(design);
    int steps = 400;
    Complex[] impedances = new Complex[steps + 1];
    for (int i = 0; i <= steps; i += 20) {
      impedances[i] =
          installation.solve(new Solver(), 7.0e6 + 0.2e6 * i / steps).feed("main").impedance();
    }
    for (int i = 0; i < steps; i++) {
      double share = i % 20 / 20.0;
      Complex low = impedances[i - i % 20];
      Complex high = impedances[i - i % 20 + 20];
      impedances[i] = low.add(high.subtract(low).multiply(share));
    }
    int met = 0;
    int draws = 500;
    for (int n = 0; n < draws; n++) {
      double reference = 50 * (1.5 + 3 * (n + 0.5) / draws);
      int widest = 0;
      int run = 0;
      for (Complex each : impedances) {
        run = Mismatch.of(each, reference).swr() <= 1.8 ? run + 1 : 0;
        widest = Math.max(widest, run);
      }
      met += (widest - 1) * 0.2e6 / steps >= 130e3 ? 1 : 0;
    }
    double expected = (double) met / draws;
    YieldResult.Outcome outcome = run(design, 4000, 3, 2).outcomes().get(0);
    assertThat(expected).isBetween(0.1, 0.9);
    assertThat(outcome.share().value()).isCloseTo(expected, within(0.02));
    assertThat(outcome.undecided()).isBetween(1e-4, 0.2);
    CheckedRequirement checked = new RequirementCheck(design).run(new Solver(), 2).get(0);
    assertThat(outcome.nominal()).isCloseTo(checked.found(), within(2e3));
  }

  /** One parameter, uniform: the share follows from where the distance crosses its limit. */
  @Test
  void distanceToKeepIsThatOfEveryInstallation() {
    String text =
        DESIGN
                .replace(
                    "height: {value: 10 m, spread: 2 m}", "height: {value: 4.5 m, spread: 1 m}")
                .replace("{value: 1, spread: {sigma: 0.4 %}}", "1")
                .replace("{value: 4, spread: 0.2}", "4")
            + "power: 1500 W\n"
            + "exposure: {limits: [icnirp-2020-public], mode: carrier, floors: [1 m]}\n";
    Design bare = DesignReader.read(text, "bare.yaml");
    double[] distances = new double[9];
    for (int i = 0; i < distances.length; i++) {
      Design moved =
          bare.with("height", String.format(Locale.ROOT, "%.4f m", 3.5 + 2 * (i + 0.5) / 9));
      distances[i] =
          new ExposureStudy(moved, moved.exposureRules().orElseThrow())
              .run(new Solver(), moved.bands().subList(1, 2), 2).get(0).rows().stream()
                  .mapToDouble(row -> row.keepOut().distance())
                  .max()
                  .orElseThrow();
    }
    double limit = (distances[3] + distances[4]) / 2;
    Design design =
        DesignReader.read(
            text
                + String.format(
                    Locale.ROOT,
                    "requirements: [{band: 20 m, exposure-distance: {max: %.3f m}}]%n",
                    limit),
            "distance.yaml");
    YieldResult result = run(design, 1000, 3, 2);
    YieldResult.Outcome outcome = result.outcomes().get(0);
    assertThat(distances[3]).isGreaterThan(distances[4] + 0.01);
    assertThat(outcome.share().value()).isCloseTo(5 / 9.0, within(0.06));
    assertThat(outcome.nominal()).isCloseTo(distances[4], within(0.05));
    assertThat(result.distanceError().orElseThrow()).isLessThan(0.1);
    assertThat(outcome.undecided()).isLessThan(0.3);
  }

  /** Stray capacitance that a design starts from zero with can only be added. */
  @Test
  void aParameterAtItsLimitHasTheSlopeOfTheSideThatIsLeft() {
    String text =
        DESIGN
            .replace("offset: 36 %", "stray: {value: 0 pF, spread: 30 pF, limits: [0 pF, 80 pF]}")
            .replace("height: {value: 10 m, spread: 2 m}", "height: 10 m")
            .replace("{value: 1, spread: {sigma: 0.4 %}}", "1")
            .replace("{value: 4, spread: 0.2}", "4")
            .replace("at: offset, gap: 40 mm", "at: 36 %, gap: 40 mm, capacitance: stray")
            .replace("bands: {", "# bands: {");
    Design design =
        DesignReader.read(
            text + "requirements: [{frequency: 7.1 MHz, swr: {max: 3}}]\n", "stray.yaml");
    double bare = transmitterSwr(design, "0 pF");
    double slope = (transmitterSwr(design, "0.3 pF") - bare) / 0.3;
    YieldResult.Outcome outcome = run(design, 50, 1, 2).outcomes().get(0);
    assertThat(Math.abs(slope)).isGreaterThan(1e-4);
    assertThat(outcome.influences().get(0).perSpread())
        .isCloseTo(30 * slope, within(0.02 * 30 * Math.abs(slope)));
  }

  private static double transmitterSwr(Design design, String stray) {
    return Installation.of(design.with("stray", stray))
        .solve(new Solver(SolverOptions.defaults().withTolerance(1e-5)), 7.1e6)
        .feed("main")
        .at(Plane.TRANSMITTER)
        .swr();
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
