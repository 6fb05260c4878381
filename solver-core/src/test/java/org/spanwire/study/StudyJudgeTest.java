package org.spanwire.study;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.List;
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

  @Test
  void theDistanceIsThatOfTheStudyWithItsUncertainty() {
    String asked = "  - {band: 40 m, exposure-distance: {max: 30 m}}\n";
    CheckedRequirement kept = check(asked).get(0);
    Design design = design(asked);
    BandExposure.Row row =
        new ExposureStudy(design, design.exposureRules().orElseThrow())
            .run(SOLVER, design.bands(), 1)
            .get(0)
            .rows()
            .get(0);
    assertThat(kept.outcome()).isEqualTo(Outcome.MET);
    assertThat(kept.found()).isEqualTo(row.keepOut().distance()).isGreaterThan(0.2);
    assertThat(kept.low()).isEqualTo(row.keepOut().shortest()).isLessThanOrEqualTo(kept.found());
    assertThat(kept.high()).isEqualTo(row.keepOut().longest()).isGreaterThanOrEqualTo(kept.found());
    assertThat(kept.frequencyHz()).hasValue(row.keepOut().frequencyHz());
    CheckedRequirement failed = check("  - {band: 40 m, exposure-distance: {max: 1 mm}}\n").get(0);
    assertThat(failed.outcome()).isEqualTo(Outcome.FAILED);
    assertThat(failed.cause()).startsWith("icnirp-2020-public, ").contains(" field, people on a");
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
        .contains("least often met, at 7.1000 MHz, is met by", "the spread of span");
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
