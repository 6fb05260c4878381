package org.spanwire.design;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.assertj.core.api.Assertions.within;

import java.util.Optional;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

/** Limits of exposure as their texts have them. */
class ExposureLimitTest {

  private static ExposureLimit limit(String name) {
    return ExposureLimit.find(name).orElseThrow();
  }

  /**
   * Table arithmetic: 47 CFR 1.1310 table 1; ICNIRP 1998 table 7; ICNIRP 2020 table 6 (local).
   * Worked for 7.1 MHz and 28.5 MHz.
   */
  @ParameterizedTest
  @CsvSource({
    "fcc-public, 7.1, 116.06, 0.30845",
    "fcc-occupational, 7.1, 259.44, 0.68873",
    "icnirp-1998-public, 7.1, 32.65, 0.10282",
    "icnirp-2020-public, 7.1, 76.07, 0.30986",
    "fcc-public, 28.5, 28.912, 0.076842",
    "icnirp-2020-public, 28.5, 28.756, 0.077193"
  })
  void fieldStrengths(String name, double megahertz, double electric, double magnetic) {
    double hertz = megahertz * 1e6;
    assertThat(limit(name).electric(hertz)).isCloseTo(electric, within(1e-3 * electric));
    assertThat(limit(name).magnetic(hertz).orElseThrow())
        .isCloseTo(magnetic, within(1e-3 * magnetic));
  }

  @Test
  void planeWaveDensityIsThatOfTheStricterField() {
    ExposureLimit fcc = limit("fcc-public");
    assertThat(fcc.powerDensity(7.1e6).orElseThrow()).isCloseTo(35.71, within(0.01));
    // 824/2.19 is 376.26 ohm, a little less than that of free space: E is the stricter.
    assertThat(fcc.planeWaveDensity(7.1e6)).isCloseTo(116.0563 * 116.0563 / 376.730, within(1e-3));
    assertThat(limit("icnirp-1998-public").planeWaveDensity(20e6))
        .isCloseTo(0.073 * 0.073 * 376.730, within(1e-4));
  }

  @Test
  void pausesCountOnlyWhereTheFieldIsAveraged() {
    assertThat(limit("fcc-public").share(0.2)).isEqualTo(0.2);
    assertThat(limit("icnirp-2010-public").share(0.2)).isEqualTo(1);
  }

  @Test
  void saysNothingOutsideItsRange() {
    assertThat(limit("icnirp-2010-public").covers(14e6)).isFalse();
    assertThatThrownBy(() -> limit("icnirp-2010-public").electric(14e6))
        .hasMessageContaining("no value at 14.0 MHz");
    assertThat(limit("eu-2013-35-worker").magnetic(7e6)).isEmpty();
  }

  @Test
  void everyLimitCoversItsRangeWithoutAGapAndTellsItsSource() {
    for (ExposureLimit limit : ExposureLimit.all()) {
      assertThat(limit.source()).as(limit.name()).isNotBlank();
      for (int i = 1; i < limit.rows().size(); i++) {
        assertThat(limit.rows().get(i).fromHz()).isEqualTo(limit.rows().get(i - 1).toHz());
      }
    }
  }

  @Test
  void aFaultInTheDataIsPlaced() {
    String text =
        """
        format: spanwire-exposure-limits/1
        date: 2026-01-31
        limits:
          mine:
            title: t
            population: public
            averaging-minutes: 6
            source: s
            rows:
              - {frequency: [1 MHz], e: 87}
        """;
    assertThatThrownBy(
            () -> ExposureLimit.limits(Document.parse(text, "mine.yaml", Optional.empty()).root()))
        .hasMessageContaining("mine.yaml:10:")
        .hasMessageContaining("expected two");
  }
}
