package org.spanwire.validation.accuracy;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.List;
import org.apache.commons.math3.complex.Complex;
import org.junit.jupiter.api.Test;

/** A part of the honesty study, and its measure. */
class HonestyStudyTest {

  private static final int STRUCTURES = 40;

  private static HonestyCase withErrors(double trueOhm, double statedOhm, double referenceOhm) {
    return new HonestyCase(
        RandomStructure.of(1, 0),
        "f0",
        1e-3,
        50,
        new Complex(70 + trueOhm, 10),
        new Complex(70, 10),
        statedOhm,
        referenceOhm);
  }

  @Test
  void measureTellsTrueFromFalse() {
    assertThat(withErrors(0.1, 0.2, 0.001).isHonest()).isTrue();
    assertThat(withErrors(0.2, 0.1, 0.001).isHonest()).isFalse();
    assertThat(withErrors(0.2, 0.1, 0.05).isJudged()).isFalse();
    List<HonestyCase> cases =
        List.of(withErrors(1, 3, 0.1), withErrors(1, 0.5, 0.1), withErrors(1, 5, 0.1));
    assertThat(HonestyReport.shareHonest(cases)).isEqualTo(2.0 / 3);
    assertThat(HonestyReport.medianRatio(cases)).isBetween(2.999999, 3.000001);
  }

  @Test
  void sameSeedAndNumberGiveTheSameStructure() {
    RandomStructure one = RandomStructure.of(7, 11);
    RandomStructure two = RandomStructure.of(7, 11);
    assertThat(one.antenna().wires()).isEqualTo(two.antenna().wires());
    assertThat(one.antenna().feeds()).isEqualTo(two.antenna().feeds());
    assertThat(RandomStructure.of(7, 12).antenna().wires()).isNotEqualTo(one.antenna().wires());
  }

  @Test
  void statedErrorIsTrueAndNotFarTooLarge() {
    HonestyStudy study = HonestyStudy.run(HonestyReport.SEED, STRUCTURES);
    assertThat(study.outOfReach()).isEmpty();
    List<HonestyCase> judged = study.cases().stream().filter(HonestyCase::isJudged).toList();
    assertThat(judged).hasSizeGreaterThan(2 * STRUCTURES);
    assertThat(HonestyReport.shareHonest(judged)).isGreaterThanOrEqualTo(0.95);
    assertThat(HonestyReport.medianRatio(judged)).isBetween(1.0, 20.0);
  }
}
