package org.spanwire.design;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.assertj.core.api.Assertions.within;

import java.util.OptionalDouble;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.ValueSource;
import org.spanwire.circuit.bench.OperatingMode;

/**
 * What surrounds an antenna: weather, ratings of parts, what is packed, whom it must not expose.
 */
class InstallationReaderTest {

  private static Design design(String more) {
    return DesignReader.read(Designs.SMALL + more, "site.yaml");
  }

  @Test
  void weather() {
    Design design =
        design(
            "weather: {gale: {wind: 25 m/s}, glaze: {wind: 5 m/s, ice: 8 mm, temperature-change:"
                + " -20 K}}\n");
    assertThat(design.weather().keySet()).containsExactly("gale", "glaze");
    assertThat(design.weather().get("gale")).isEqualTo(new Weather(25, 0, 0));
    assertThat(design.weather().get("glaze")).isEqualTo(new Weather(5, 8e-3, -20));
  }

  /** By hand: ½ 1.225 kg/m³ (10 m/s)² 1.2 (2 mm + 2 · 9 mm), and 900 kg/m³ of a ring. */
  @Test
  void windAndIceOnAWire() {
    Weather ice = new Weather(10, 9e-3, 0);
    assertThat(ice.windForce(2e-3)).isCloseTo(1.47, within(1e-12));
    double ring = Math.PI / 4 * (0.02 * 0.02 - 0.002 * 0.002);
    assertThat(ice.iceMass(2e-3)).isCloseTo(900 * ring, within(1e-12));
    assertThat(Weather.STILL.windForce(2e-3)).isZero();
    assertThat(Weather.STILL.iceMass(2e-3)).isZero();
  }

  @Test
  void ratingsOfPartsAndFittings() {
    String fitting = "fittings: {coil: {wire: radiator, at: 20 %, series: {l: 5 uH}}}\n";
    Design design =
        design(
            fitting
                + "ratings: {ends: {voltage: 5 kV}, transformer: {heat: 25 W, voltage: 1 kV},"
                + " fittings: {coil: {heat: 4 W}}}\n");
    assertThat(design.ratings().keySet()).containsExactly("transformer", "ends", "coil");
    assertThat(design.ratings().get("transformer"))
        .isEqualTo(new PartRating(OptionalDouble.of(25), OptionalDouble.of(1000)));
    assertThat(design.ratings().get("ends"))
        .isEqualTo(new PartRating(OptionalDouble.empty(), OptionalDouble.of(5000)));
    assertThat(design.ratings().get("coil"))
        .isEqualTo(new PartRating(OptionalDouble.of(4), OptionalDouble.empty()));
    assertThatThrownBy(() -> design(fitting + "ratings: {fittings: {cool: {heat: 4 W}}}\n"))
        .isInstanceOf(DesignException.class)
        .hasMessageContaining("did you mean coil");
  }

  @Test
  void whatIsPacked() {
    Design design =
        design(
            "kit: [{item: end insulator, count: 2, mass: 40 g, hangs: true, note: glazed}, {item:"
                + " halyard, hangs: false}, {item: line}]\n");
    assertThat(design.kit())
        .containsExactly(
            new KitItem("end insulator", 2, OptionalDouble.of(0.04), true, "glazed"),
            new KitItem("halyard", 1, OptionalDouble.empty(), false, ""),
            new KitItem("line", 1, OptionalDouble.empty(), false, ""));
    assertThatThrownBy(() -> design("kit: [{item: rope}, {item: rope}]\n"))
        .hasMessageContaining("is in the kit twice");
    assertThat(design("kit: [{item: rope, count: 10000}]\n").kit().get(0).count())
        .isEqualTo(10_000);
    for (String count : new String[] {"10001", "1.5", "0"}) {
      assertThatThrownBy(() -> design("kit: [{item: rope, count: " + count + "}]\n"))
          .isInstanceOf(DesignException.class)
          .hasMessageContaining("site.yaml:");
    }
  }

  @Test
  void whatExposureIsJudgedBy() {
    ExposureRules rules =
        design(
                "exposure: {limits: [icnirp-1998-public], mode: carrier, transmitting: 50 %,"
                    + " floors: [0 m, 2.5 m]}\n")
            .exposureRules()
            .orElseThrow();
    assertThat(rules.limits())
        .extracting(ExposureLimit::name)
        .containsExactly("icnirp-1998-public");
    assertThat(rules.mode()).isEqualTo(OperatingMode.CARRIER);
    assertThat(rules.floors()).containsExactly(0.0, 2.5);
    assertThat(rules.duty()).isEqualTo(0.5);
    ExposureRules usual = design("exposure: {transmitting: 20 %}\n").exposureRules().orElseThrow();
    assertThat(usual.limits()).isEqualTo(ExposureRules.STRICT.limits());
    assertThat(usual.mode()).isEqualTo(ExposureRules.STRICT.mode());
    assertThat(usual.floors()).isEqualTo(ExposureRules.STRICT.floors());
    assertThat(usual.transmitting()).isEqualTo(0.2);
    assertThat(design("").exposureRules()).isEmpty();
  }

  /** Where nothing is stated the limits are those for everybody, over the whole body. */
  @Test
  void strictRulesAreThoseForThePublic() {
    assertThat(ExposureRules.STRICT.limits())
        .isNotEmpty()
        .allMatch(limit -> limit.population() == ExposureLimit.Population.PUBLIC)
        .noneMatch(limit -> limit.name().contains("local"));
    assertThat(ExposureRules.STRICT.duty()).isEqualTo(1);
  }

  @ParameterizedTest
  @CsvSource(
      delimiter = '|',
      value = {
        "weather: {} | is empty",
        "weather: {gale: {wind: -1 m/s}} | wind",
        "weather: {gale: {ice: -1 mm}} | ice",
        "exposure: {limits: [icnirp-2021-public]} | unknown limit",
        "exposure: {mode: whistle} | unknown mode",
        "exposure: {transmitting: 101 %} | at most 1",
        "exposure: {limits: []} | at least one limit",
        "exposure: {floors: []} | floor",
        "ratings: {choke: {}} | heat or voltage",
        "ratings: {choke: {heat: 0 W}} | heat",
      })
  void whatMakesNoSenseIsRefusedWithItsPlace(String text, String message) {
    assertThatThrownBy(() -> design(text + "\n"))
        .isInstanceOf(DesignException.class)
        .hasMessageContaining("site.yaml:")
        .hasMessageContaining(message);
  }

  @ParameterizedTest
  @ValueSource(doubles = {7.0, 7.1, 7.2})
  void aBandHoldsItsEdges(double megahertz) {
    Band band = design("").bands().get(0);
    assertThat(band.contains(megahertz * 1e6)).isTrue();
    assertThat(band.contains(Math.nextDown(band.lowHz()))).isFalse();
    assertThat(band.contains(Math.nextUp(band.highHz()))).isFalse();
  }
}
