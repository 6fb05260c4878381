package org.spanwire.validation.accuracy;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.io.IOException;
import java.io.Reader;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.LocalDate;
import java.util.List;
import org.apache.commons.math3.complex.Complex;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/** The measure of the honesty study, and the file that keeps it. */
class HonestyStudyTest {

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

  /** Three structures run in full; the kept run and its part solved anew are in the report. */
  @Test
  void keptRunIsReadAsItWasWritten(@TempDir Path directory) throws IOException {
    HonestyStudy study = HonestyStudy.run(HonestyReport.SEED, 3);
    assertThat(study.outOfReach()).isEmpty();
    HonestyRecord record = new HonestyRecord(LocalDate.of(2026, 1, 2), study);
    record.write(directory);
    HonestyRecord read;
    try (Reader in = Files.newBufferedReader(directory.resolve(HonestyRecord.FILE))) {
      read = HonestyRecord.read(in);
    }
    assertThat(read.date()).isEqualTo(record.date());
    assertThat(read.study().seed()).isEqualTo(study.seed());
    assertThat(read.study().structures()).isEqualTo(3);
    assertThat(read.study().cases()).hasSameSizeAs(study.cases()).hasSizeGreaterThanOrEqualTo(6);
    for (HonestyCase one : read.study().cases()) {
      HonestyCase written = one.among(study.cases());
      assertThat(one.impedance().subtract(written.impedance()).abs())
          .isLessThan(1e-8 * one.impedance().abs());
      assertThat(one.ratio()).isCloseTo(written.ratio(), within(1e-2 * one.ratio()));
      assertThat(one.isHonest()).isEqualTo(written.isHonest());
      assertThat(one.structure().frequencyHz()).isEqualTo(written.structure().frequencyHz());
      HonestyCase kept = one.among(HonestyRecord.kept().study().cases());
      assertThat(kept.reference().subtract(one.reference()).abs())
          .isLessThanOrEqualTo(2 * (kept.referenceOhm() + one.referenceOhm()));
    }
  }

  @Test
  void keptRunIsLong() {
    HonestyStudy kept = HonestyRecord.kept().study();
    assertThat(kept.structures()).isGreaterThanOrEqualTo(300);
    assertThat(kept.seed()).isEqualTo(HonestyReport.SEED);
  }
}
