package org.spanwire.unit;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.assertj.core.api.Assertions.within;

import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.ValueSource;

class QuantityTest {

  /**
   * Each value is the double nearest to the decimal number, so that no design depends on how a unit
   * is written.
   */
  @ParameterizedTest
  @CsvSource({
    "27.3 m, 27.3, LENGTH",
    "27.3m, 27.3, LENGTH",
    "20 mm, 0.02, LENGTH",
    "2.05mm, 0.00205, LENGTH",
    "3 cm, 0.03, LENGTH",
    "1.2 km, 1200, LENGTH",
    "7.1 MHz, 7.1e6, FREQUENCY",
    "7.1MHz, 7.1e6, FREQUENCY",
    "14.15 MHz, 14.15e6, FREQUENCY",
    "3573 kHz, 3573e3, FREQUENCY",
    "36 %, 0.36, NUMBER",
    "36%, 0.36, NUMBER",
    "0.36, 0.36, NUMBER",
    "-.5, -0.5, NUMBER",
    "1e-3, 1e-3, NUMBER",
    "4.2 uH, 4.2e-6, INDUCTANCE",
    "4.2 µH, 4.2e-6, INDUCTANCE",
    "4.2 μH, 4.2e-6, INDUCTANCE",
    "60 pF, 60e-12, CAPACITANCE",
    "3 kohm, 3000, RESISTANCE",
    "3 kΩ, 3000, RESISTANCE",
    "50 Ω, 50, RESISTANCE",
    "58 MS/m, 58e6, CONDUCTIVITY",
    "5mS/m, 0.005, CONDUCTIVITY",
    "28 g/m, 0.028, MASS_PER_LENGTH",
    "930 kg/m3, 930, DENSITY",
    "0.93 g/cm3, 930, DENSITY",
    "1.8 kg, 1.8, MASS",
    "100 N, 100, FORCE",
    "110 GPa, 110e9, PRESSURE",
    "17 ppm/K, 17e-6, EXPANSION",
    "100 W, 100, POWER",
    "1.5 kW, 1500, POWER",
    "1 V, 1, VOLTAGE",
    "2.2 dB, 2.2, LEVEL",
    "5.0 dBi, 5, GAIN"
  })
  void readsNumbersWithUnits(String text, double value, String dimension) throws Exception {
    Dimension wanted = (Dimension) Dimension.class.getField(dimension).get(null);
    assertThat(Quantity.parse(text)).isEqualTo(new Quantity(value, wanted));
  }

  /** The international foot and inch of 1959 are exactly 0.3048 m and 25.4 mm (NIST SP 811). */
  @ParameterizedTest
  @CsvSource({"6 ft, 1.8288", "3 in, 0.0762", "40 mil, 0.001016", "5ft + 6in, 1.6764"})
  void readsFeetAndInches(String text, double metres) {
    assertThat(Quantity.parse(text).in(Dimension.LENGTH)).isCloseTo(metres, within(1e-15));
  }

  /**
   * ASTM B258: AWG 36 is 0.005 in and AWG 0000 is 0.46 in by definition; AWG 14 is tabulated as
   * 0.0641 in.
   */
  @ParameterizedTest
  @CsvSource({
    "AWG 36, 0.005, 1e-15",
    "AWG 0000, 0.46, 1e-14",
    "AWG 14, 0.0641, 5e-5",
    "AWG 0, 0.3249, 5e-5"
  })
  void readsWireGauges(String text, double inches, double tolerance) {
    assertThat(Quantity.parse(text).in(Dimension.LENGTH) / 0.0254)
        .isCloseTo(inches, within(tolerance));
  }

  @Test
  void anglesAreRadiansInside() {
    assertThat(Quantity.parse("30 deg").in(Dimension.ANGLE)).isCloseTo(Math.PI / 6, within(1e-15));
    assertThat(Quantity.parse("30°")).isEqualTo(Quantity.parse("30 deg"));
  }

  @Test
  void degreesComeBackAsWritten() {
    for (int tenths = -3600; tenths <= 3600; tenths++) {
      double degrees = tenths / 10.0;
      assertThat(Quantity.parse(degrees + " deg").degrees()).isEqualTo(degrees);
    }
    assertThatThrownBy(() -> Quantity.parse("3 m").degrees()).isInstanceOf(UnitException.class);
  }

  @ParameterizedTest
  @CsvSource(
      delimiter = '|',
      value = {
        "7.1 mhz | did you mean MHz",
        "3 metres | unknown unit 'metres' after 3; expected one of m",
        "3 kOhm | did you mean kohm",
        "AWG | expected a wire gauge",
        "AWG 41 | whole number from 0000 to 40",
        "1e999 m | too large",
        "1e308 Gm | not a finite number",
        "7,1 MHz | cannot read",
        "'' | no quantity given",
        "span | unknown name 'span'",
        "NaN | unknown name 'NaN'",
        "Infinity m | cannot read"
      })
  void saysWhatIsNoQuantity(String text, String part) {
    assertThatThrownBy(() -> Quantity.parse(text))
        .isInstanceOf(UnitException.class)
        .hasMessageContaining(part);
  }

  @Test
  void saysWhichDimensionWasExpected() {
    Quantity frequency = Quantity.parse("7.1 MHz");
    assertThatThrownBy(() -> frequency.in(Dimension.LENGTH))
        .hasMessage("7.1 MHz is a frequency; expected a length such as 27.3 m");
  }

  @ParameterizedTest
  @ValueSource(
      strings = {
        "27.3 m",
        "20 mm",
        "7.1 MHz",
        "0.36",
        "4.2 uH",
        "60 pF",
        "3 kohm",
        "5 mS/m",
        "30 deg",
        "2.2 dB",
        "-5 dBi",
        "0 m",
        "999.9 kHz",
        "1 kHz",
        "1200 m"
      })
  void printsWhatItReads(String text) {
    assertThat(Quantity.parse(text)).hasToString(text);
  }
}
