package org.spanwire.study;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.List;
import java.util.Locale;
import org.junit.jupiter.api.Test;
import org.spanwire.Solver;
import org.spanwire.SolverOptions;
import org.spanwire.design.Design;
import org.spanwire.design.DesignReader;
import org.spanwire.study.CheckedRequirement.Outcome;

/** The distance to keep and the yield as requirements, held to the studies that they come from. */
class StudyJudgeTest {

  private static final Solver SOLVER = new Solver(new SolverOptions(2e-3));

  private static Design design(String requirements) {
    return DesignReader.read(
        """
        format: spanwire-design/1
        title: Low hut dipole
        parameters: {span: {value: 20.2 m, spread: 0.1 m}}
        conductors: {strand: {material: copper, diameter: 2 mm}}
        wires: {radiator: {conductor: strand, path: [[0, 0, 3], [span, 0, 3]]}}
        feeds: {main: {wire: radiator, at: 50 %}}
        ground: perfect
        bands: {plan: iaru-region-1, use: [40 m]}
        power: 400 W
        exposure: {limits: [icnirp-2020-public], mode: carrier, floors: [1 m]}
        requirements:
        """
            + requirements,
        "low.yaml");
  }

  private static List<CheckedRequirement> check(String requirements) {
    return new RequirementCheck(design(requirements)).run(SOLVER, 2);
  }

  /** The yield, which is the second requirement, from fewer installations than a check draws. */
  private static CheckedRequirement yieldOfFew(String requirements) {
    Design design = design(requirements);
    return new StudyJudge(design, new Solver(new SolverOptions(1e-2)), 2, 100)
        .check(design.requirements().get(1));
  }

  private static BandExposure.Row exposure(Design design) {
    return new ExposureStudy(design, design.exposureRules().orElseThrow())
        .run(SOLVER, design.bands(), 1)
        .get(0)
        .rows()
        .get(0);
  }

  @Test
  void theDistanceIsThatOfTheStudyWithItsUncertainty() {
    String asked = "  - {band: 40 m, exposure-distance: {max: 30 m}}\n";
    CheckedRequirement kept = check(asked).get(0);
    BandExposure.Row row = exposure(design(asked));
    assertThat(kept.outcome()).isEqualTo(Outcome.MET);
    assertThat(kept.found()).isEqualTo(row.keepOut().distance()).isGreaterThan(0.2);
    assertThat(kept.low()).isEqualTo(row.keepOut().shortest()).isLessThanOrEqualTo(kept.found());
    assertThat(kept.high()).isEqualTo(row.keepOut().longest()).isGreaterThanOrEqualTo(kept.found());
    assertThat(kept.frequencyHz()).hasValue(row.keepOut().frequencyHz());
    CheckedRequirement failed = check("  - {band: 40 m, exposure-distance: {max: 1 mm}}\n").get(0);
    assertThat(failed.outcome()).isEqualTo(Outcome.FAILED);
    BandExposure.Row broken =
        exposure(design("  - {band: 40 m, exposure-distance: {max: 1 mm}}\n"));
    assertThat(failed.cause())
        .isEqualTo(
            String.format(
                Locale.ROOT,
                "icnirp-2020-public, %s field, people on a floor 1.00 m above ground at %.4f MHz",
                broken.keepOut().electricDecides() ? "electric" : "magnetic",
                broken.keepOut().frequencyHz() / 1e6));
  }

  @Test
  void theYieldIsThatOfTheOtherRequirements() {
    String swr = "  - {frequency: 7.1 MHz, swr: {max: 6}}\n";
    double nominal = check(swr).get(0).found();
    List<CheckedRequirement> easy = check(swr + "  - {yield: {min: 90 %}}\n");
    assertThat(easy.get(1).outcome()).isEqualTo(Outcome.MET);
    assertThat(easy.get(1).found()).isEqualTo(1);
    assertThat(easy.get(1).frequencyHz()).isEmpty();
    // With the limit at the nominal value about half of the installations lie on either side.
    List<CheckedRequirement> half =
        check(swr.replace("max: 6", "max: " + (nominal + 0.005)) + "  - {yield: {min: 90 %}}\n");
    assertThat(half.get(1).outcome()).isEqualTo(Outcome.FAILED);
    assertThat(half.get(1).found()).isBetween(0.3, 0.7);
    assertThat(half.get(1).low()).isLessThan(half.get(1).found());
    assertThat(half.get(1).high()).isGreaterThan(half.get(1).found()).isLessThan(0.9);
    assertThat(half.get(1).cause())
        .isEqualTo(
            String.format(
                Locale.ROOT,
                "the requirement least often met, at 7.1000 MHz, is met by %.1f %% of the"
                    + " installations; what moves it most is the spread of span",
                100 * half.get(1).found()));
  }

  /** What lies closer to the limit than the model's error may fall on either side. */
  @Test
  void theIntervalOfAYieldHoldsWhatIsUndecided() {
    double nominal = check("  - {frequency: 7.1 MHz, swr: {max: 6}}\n").get(0).found();
    Design design =
        design("  - {frequency: 7.1 MHz, swr: {max: " + nominal + "}}\n  - {yield: {min: 90 %}}\n");
    Solver rough = new Solver(new SolverOptions(1e-2));
    CheckedRequirement judged =
        new StudyJudge(design, rough, 2, 1000).check(design.requirements().get(1));
    YieldResult result = new YieldStudy(design, 1000, 1, YieldStudy.DEFAULT_ACCURACY).run(rough, 2);
    double undecided = result.outcomes().get(0).undecided();
    assertThat(undecided).isPositive();
    assertThat(judged.found()).isEqualTo(result.all().value());
    assertThat(judged.low()).isEqualTo(result.all().low() - undecided);
    assertThat(judged.high()).isEqualTo(result.all().high() + undecided);
  }

  /** A share within the interval of 1,000 installations is looked at again with 20,000. */
  @Test
  void aYieldInDoubtIsDrawnAgain() {
    double nominal = check("  - {frequency: 7.1 MHz, swr: {max: 6}}\n").get(0).found();
    String swr = "  - {frequency: 7.1 MHz, swr: {max: " + nominal + "}}\n";
    CheckedRequirement open = check(swr + "  - {yield: {min: 48 %}}\n").get(1);
    assertThat(open.tolerance()).isEqualTo(2e-4);
    assertThat(open.high() - open.low()).isLessThan(0.02);
  }

  @Test
  void theCauseOfAYieldNamesTheBand() {
    CheckedRequirement share =
        yieldOfFew(
            """
              - {band: 40 m, swr: {max: 1.01}}
              - {yield: {min: 90 %}}
            """);
    assertThat(share.cause())
        .startsWith("the requirement least often met, on 40 m, is met by 0.0 %");
  }

  @Test
  void aYieldCountsBandwidthsAndDistances() {
    String rest = "  - {frequency: 7.1 MHz, swr: {max: 99}}\n  - {yield: {min: 90 %}}\n";
    String wide = "  - {band: 40 m, bandwidth: {min: 1 kHz, swr: 99}}\n";
    String far = "  - {band: 40 m, exposure-distance: {max: 30 m}}\n";
    CheckedRequirement kept = yieldOfFew(rest + wide + far);
    assertThat(kept.outcome()).isEqualTo(Outcome.MET);
    assertThat(kept.found()).isEqualTo(1);
    for (String broken :
        List.of(
            rest + wide.replace("1 kHz, swr: 99", "190 kHz, swr: 1.01"),
            rest + far.replace("30 m", "1 mm"))) {
      CheckedRequirement share = yieldOfFew(broken);
      assertThat(share.outcome()).isEqualTo(Outcome.FAILED);
      assertThat(share.found()).isZero();
    }
  }
}
