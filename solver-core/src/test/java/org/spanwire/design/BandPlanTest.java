package org.spanwire.design;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import java.util.List;
import java.util.Optional;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

class BandPlanTest {

  private static final List<String> NAMES =
      List.of(
          "160 m", "80 m", "60 m", "40 m", "30 m", "20 m", "17 m", "15 m", "12 m", "10 m", "6 m");

  @Test
  void everyRegionHasItsPlan() {
    assertThat(BandPlan.all())
        .extracting(BandPlan::name)
        .containsExactly("iaru-region-1", "iaru-region-2", "iaru-region-3");
    for (BandPlan plan : BandPlan.all()) {
      assertThat(plan.bands()).extracting(Band::name).isEqualTo(NAMES);
      assertThat(plan.date()).matches("\\d{4}-\\d{2}-\\d{2}");
      assertThat(plan.source()).isNotBlank();
    }
  }

  @Test
  void bandsRiseAndDoNotOverlap() {
    for (BandPlan plan : BandPlan.all()) {
      double end = 0;
      for (Band band : plan.bands()) {
        assertThat(band.lowHz()).isGreaterThan(end);
        end = band.highHz();
      }
    }
  }

  /** A band is called after its wavelength: c/f at the middle lies within a quarter of the name. */
  @Test
  void namesFitTheWavelengths() {
    for (BandPlan plan : BandPlan.all()) {
      for (Band band : plan.bands()) {
        double metres = Double.parseDouble(band.name().replace(" m", ""));
        assertThat(299_792_458 / band.middleHz() / metres).isBetween(0.8, 1.25);
      }
    }
  }

  /**
   * Radio Regulations article 5 and the national lists of the three regions, as marked in the data
   * file.
   */
  @ParameterizedTest
  @CsvSource({
    "iaru-region-1, 160 m, 1810, 2000",
    "iaru-region-1, 80 m, 3500, 3800",
    "iaru-region-1, 40 m, 7000, 7200",
    "iaru-region-2, 160 m, 1800, 2000",
    "iaru-region-2, 80 m, 3500, 4000",
    "iaru-region-2, 40 m, 7000, 7300",
    "iaru-region-2, 20 m, 14000, 14350",
    "iaru-region-3, 80 m, 3500, 3900",
    "iaru-region-3, 40 m, 7000, 7200",
    "iaru-region-1, 60 m, 5351.5, 5366.5",
    "iaru-region-1, 30 m, 10100, 10150",
    "iaru-region-1, 10 m, 28000, 29700",
    "iaru-region-1, 6 m, 50000, 52000"
  })
  void edges(String plan, String band, double lowKhz, double highKhz) {
    assertThat(BandPlan.find(plan).orElseThrow().band(band))
        .contains(new Band(band, lowKhz * 1e3, highKhz * 1e3));
  }

  @Test
  void anEditedPlanIsCheckedLikeADesign() {
    String text =
        """
        format: spanwire-band-plans/1
        date: 2026-01-31
        plans:
          hut:
            source: test
            bands:
              40 m: [7200 kHz, 7000 kHz]
        """;
    assertThatThrownBy(
            () -> BandPlan.plans(Document.parse(text, "plans.yaml", Optional.empty()).root()))
        .isInstanceOf(DesignException.class)
        .hasMessageStartingWith("plans.yaml:7:13: band '40 m'");
  }
}
