package org.spanwire.cli.output;

import static org.assertj.core.api.Assertions.assertThat;
import static org.spanwire.cli.output.MadeUpCheck.AT_7_1_MHZ;
import static org.spanwire.cli.output.MadeUpCheck.IN_40_M;
import static org.spanwire.cli.output.MadeUpCheck.exact;
import static org.spanwire.cli.output.MadeUpCheck.within;

import java.util.OptionalDouble;
import java.util.stream.Stream;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.Arguments;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.MethodSource;
import org.spanwire.design.Requirement;
import org.spanwire.design.Requirement.Plane;
import org.spanwire.design.Requirement.Usability;
import org.spanwire.study.CheckedRequirement;
import org.spanwire.study.CheckedRequirement.Quantity;

class RequirementTextTest {

  private static CheckedRequirement swr(double limit, double found) {
    return exact(MadeUpCheck.SWR, Quantity.SWR_TRANSMITTER, limit, found);
  }

  private static CheckedRequirement efficiency(double limit, double found) {
    return exact(MadeUpCheck.EFFICIENCY, Quantity.EFFICIENCY, limit, found);
  }

  private static CheckedRequirement bandwidth(double limitHz, double foundHz) {
    return exact(
        new Requirement.MinimumBandwidth(IN_40_M, limitHz, 1.5, Plane.TRANSMITTER),
        Quantity.BANDWIDTH,
        limitHz,
        foundHz);
  }

  private static CheckedRequirement verdict(Usability lowest, double limit) {
    return exact(new Requirement.LowestVerdict(IN_40_M, lowest), Quantity.VERDICT, limit, 1.5);
  }

  private static CheckedRequirement gain(OptionalDouble azimuthDegrees) {
    return exact(
        new Requirement.MinimumGain(IN_40_M, 5, 60, azimuthDegrees), Quantity.GAIN, 5, 6.25);
  }

  static Stream<Arguments> everyKind() {
    return Stream.of(
        Arguments.of(swr(2, 1.5), "7.1 MHz: SWR at the transmitter <= 2.00"),
        Arguments.of(
            exact(
                new Requirement.MaximumSwr(AT_7_1_MHZ, 3, Plane.FEEDPOINT),
                Quantity.SWR_FEEDPOINT,
                3,
                1.5),
            "7.1 MHz: SWR at the feedpoint <= 3.00"),
        Arguments.of(verdict(Usability.DIRECT, 2), "40 m: verdict direct, by SWR <= 2.00"),
        Arguments.of(
            verdict(Usability.TUNABLE, 3), "40 m: verdict tunable or better, by SWR <= 3.00"),
        Arguments.of(
            verdict(Usability.WIDE_TUNER, 10),
            "40 m: verdict wide-tuner or better, by SWR <= 10.00"),
        Arguments.of(gain(OptionalDouble.empty()), "40 m: gain, elevation 60 deg >= 5.00 dBi"),
        Arguments.of(
            gain(OptionalDouble.of(22.5)),
            "40 m: gain, elevation 60 deg, azimuth 22.5 deg >= 5.00 dBi"),
        Arguments.of(efficiency(0.95, 0.97), "40 m: radiation efficiency >= 95.0 %"),
        Arguments.of(
            exact(new Requirement.MaximumChokeHeat(AT_7_1_MHZ, 8), Quantity.CHOKE_HEAT, 8, 6.5),
            "7.1 MHz: heat of the choke <= 8.0 W"),
        Arguments.of(
            bandwidth(100e3, 150e3), "40 m: bandwidth within SWR 1.5, transmitter >= 100.0 kHz"),
        Arguments.of(
            exact(MadeUpCheck.DISTANCE, Quantity.EXPOSURE_DISTANCE, 0.5, 0.25),
            "40 m: distance to keep <= 0.50 m"),
        Arguments.of(
            exact(MadeUpCheck.YIELD, Quantity.YIELD, 0.9, 0.96), "design: yield >= 90.0 %"));
  }

  @ParameterizedTest
  @MethodSource("everyKind")
  void aRequirementIsToldWholeWithSideAndUnit(CheckedRequirement checked, String text) {
    assertThat(RequirementText.whole(checked)).isEqualTo(text);
  }

  @Test
  void sharesAreShownInPercentAndWidthsInKilohertz() {
    assertThat(RequirementText.found(efficiency(0.95, 0.875))).isEqualTo("87.5");
    assertThat(RequirementText.found(exact(MadeUpCheck.YIELD, Quantity.YIELD, 0.9, 0.975)))
        .isEqualTo("97.5");
    assertThat(RequirementText.found(bandwidth(100e3, 123.5e3))).isEqualTo("123.5");
    assertThat(RequirementText.margin(bandwidth(100e3, 123.5e3))).isEqualTo("+23.5");
    assertThat(RequirementText.withUnit(swr(2, 1.5), "1.50")).isEqualTo("1.50");
    assertThat(RequirementText.withUnit(efficiency(0.95, 0.875), "87.5")).isEqualTo("87.5 %");
  }

  @ParameterizedTest
  @CsvSource({"2, 1.5, +0.50", "2, 3.5, -1.50", "2, 2, 0.00", "2, Infinity, -inf"})
  void roomHasAPlusAndExcessAMinusBelowALargestValue(double limit, double found, String margin) {
    assertThat(RequirementText.margin(swr(limit, found))).isEqualTo(margin);
  }

  @ParameterizedTest
  @CsvSource({"0.5, 0.75, +25.0", "0.5, 0.25, -25.0", "0.5, 0.5, 0.0"})
  void roomHasAPlusAndExcessAMinusAboveASmallestValue(double limit, double found, String margin) {
    assertThat(RequirementText.margin(efficiency(limit, found))).isEqualTo(margin);
  }

  @ParameterizedTest
  @CsvSource({
    "2, 2.003, 2.000, 2.003, -0.003",
    "2, 1.997, 2.000, 1.997, +0.003",
    "2, 2.00004, 2.00000, 2.00004, -0.00004",
    // A ten-millionth is beyond what is shown.
    "2, 2.0000001, 2.000000, 2.000000, 0.000000",
    "2, 2, 2.00, 2.00, 0.00"
  })
  void decimalsTellTheValueFromItsLimit(
      double limit, double found, String limitText, String foundText, String margin) {
    CheckedRequirement checked = swr(limit, found);
    assertThat(RequirementText.limit(checked)).isEqualTo("<= " + limitText);
    assertThat(RequirementText.found(checked)).isEqualTo(foundText);
    assertThat(RequirementText.margin(checked).replaceAll("^[+-](?=[0.]*$)", "")).isEqualTo(margin);
  }

  /** What counts is the difference as it is shown: 0.02 % of an efficiency, 10 Hz in kilohertz. */
  @Test
  void decimalsCountInTheUnitShown() {
    CheckedRequirement share = efficiency(0.95, 0.9502);
    assertThat(RequirementText.limit(share)).isEqualTo(">= 95.00");
    assertThat(RequirementText.found(share)).isEqualTo("95.02");
    CheckedRequirement width = bandwidth(100e3, 99_990);
    assertThat(RequirementText.limit(width)).isEqualTo(">= 100.00");
    assertThat(RequirementText.found(width)).isEqualTo("99.99");
  }

  @Test
  void aDifferenceOfTheLastUsualDecimalNeedsNoMore() {
    CheckedRequirement distance = exact(MadeUpCheck.DISTANCE, Quantity.EXPOSURE_DISTANCE, 0.01, 0);
    assertThat(RequirementText.limit(distance)).isEqualTo("<= 0.01");
    assertThat(RequirementText.found(distance)).isEqualTo("0.00");
  }

  @ParameterizedTest
  @CsvSource({
    "1.5, 1.4375, 1.75, 0.25",
    "1.5, 1.25, 1.625, 0.25",
    "1.5, 1.5, 1.5, 0",
    "1.5, 1.25, Infinity, inf",
    // How far infinity reaches from infinity is not known.
    "Infinity, 5, Infinity, -"
  })
  void theErrorIsTheLongerReachFromTheValue(double found, double low, double high, String error) {
    assertThat(
            RequirementText.error(
                within(MadeUpCheck.SWR, Quantity.SWR_TRANSMITTER, 2, found, low, high)))
        .isEqualTo(error);
  }

  @Test
  void theErrorHasTheUnitOfTheValue() {
    assertThat(
            RequirementText.error(
                within(MadeUpCheck.EFFICIENCY, Quantity.EFFICIENCY, 0.9, 0.75, 0.71875, 0.765625)))
        .as("0.03125 to two digits, in percent")
        .isEqualTo("3.1");
  }
}
