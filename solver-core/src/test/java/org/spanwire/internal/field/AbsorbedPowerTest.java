package org.spanwire.internal.field;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.assertj.core.api.Assertions.within;

import org.apache.commons.math3.complex.Complex;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvFileSource;
import org.junit.jupiter.params.provider.CsvSource;
import org.spanwire.internal.basis.CurrentExpansion;
import org.spanwire.medium.Ground;
import org.spanwire.medium.Soil;
import org.spanwire.unit.PhysicalConstants;

/**
 * Sky and soil powers of prescribed currents of 1 A rms, each on its own, against resistances from
 * Sommerfeld integrals.
 */
class AbsorbedPowerTest {

  private static CurrentExpansion hertz(double wavelength, double height, double[] unit) {
    double half = 5e-6 * wavelength;
    double z = height * wavelength;
    return new PrescribedCurrent()
        .wire(
            new double[] {-half * unit[0], -half * unit[1], z - half * unit[2]},
            new double[] {half * unit[0], half * unit[1], z + half * unit[2]},
            1,
            s -> Complex.ONE)
        .expansion();
  }

  private static double hertzInFreeSpace() {
    return PhysicalConstants.IMPEDANCE_OF_FREE_SPACE * 2 * Math.PI / 3 * 1e-10;
  }

  private static double sky(CurrentExpansion current, double frequencyHz, Ground ground) {
    PowerIntegral power = RadiatedPower.of(new FarField(current, frequencyHz, ground), 1e-8);
    assertThat(power.errorWatts()).isLessThan(1e-8 * power.watts());
    return power.watts();
  }

  private static double soil(CurrentExpansion current, double frequencyHz, Soil soil) {
    PowerIntegral power = AbsorbedPower.of(current, frequencyHz, soil, 1e-8);
    assertThat(power.errorWatts()).isLessThan(1e-8 * power.watts());
    return power.watts();
  }

  @ParameterizedTest
  @CsvFileSource(resources = "hertz-dipole-over-soil.csv", useHeadersInDisplayName = true)
  void hertzDipoles(
      double permittivity,
      double conductivity,
      double frequencyHz,
      double height,
      double verticalRatio,
      double verticalShare,
      double horizontalRatio,
      double horizontalShare) {
    Soil soil = Soil.of(permittivity, conductivity);
    double wavelength = PhysicalConstants.wavelength(frequencyHz);
    CurrentExpansion vertical = hertz(wavelength, height, new double[] {0, 0, 1});
    CurrentExpansion horizontal = hertz(wavelength, height, new double[] {0.6, 0.8, 0});
    double free = hertzInFreeSpace();
    assertThat(sky(vertical, frequencyHz, soil) / free)
        .isCloseTo(verticalRatio * verticalShare, within(1e-7 * verticalRatio));
    assertThat(soil(vertical, frequencyHz, soil) / free)
        .isCloseTo(verticalRatio * (1 - verticalShare), within(1e-7 * verticalRatio));
    assertThat(sky(horizontal, frequencyHz, soil) / free)
        .isCloseTo(horizontalRatio * horizontalShare, within(1e-7 * horizontalRatio));
    assertThat(soil(horizontal, frequencyHz, soil) / free)
        .isCloseTo(horizontalRatio * (1 - horizontalShare), within(1e-7 * horizontalRatio));
  }

  /**
   * Resistance of the cosine current from Sommerfeld integrals = power to the sky + power to the
   * soil.
   */
  @ParameterizedTest
  @CsvFileSource(resources = "half-wave-dipole-gain-over-soil.csv", useHeadersInDisplayName = true)
  void horizontalHalfWaveDipoles(
      double permittivity,
      double conductivity,
      double frequencyHz,
      double height,
      double resistance) {
    Soil soil = Soil.of(permittivity, conductivity);
    CurrentExpansion current =
        PrescribedAtFrequency.halfWave(frequencyHz, height, new double[] {0.8, -0.6, 0});
    assertThat(sky(current, frequencyHz, soil) + soil(current, frequencyHz, soil))
        .isCloseTo(resistance, within(2e-7 * resistance));
  }

  /**
   * Vertical half-wave dipoles, centre 0.3 wavelengths up: same integrals (Vogler and Noble 1964).
   */
  @ParameterizedTest
  @CsvSource({
    "13, 0.005, 7.1e6, 83.51571157",
    "70, 5, 7.1e6, 87.63091885",
    "30, 0.01, 7.1e6, 84.82755159",
    "15, 0.001, 7.1e6, 82.98423698",
    "3, 0.0001, 14.2e6, 78.25327553"
  })
  void verticalHalfWaveDipoles(
      double permittivity, double conductivity, double frequencyHz, double resistance) {
    Soil soil = Soil.of(permittivity, conductivity);
    CurrentExpansion current =
        PrescribedAtFrequency.halfWave(frequencyHz, 0.3, new double[] {0, 0, 1});
    assertThat(sky(current, frequencyHz, soil) + soil(current, frequencyHz, soil))
        .isCloseTo(resistance, within(1e-7 * resistance));
  }

  @Test
  void soilLikeAirTakesThePowerThatFreeSpaceTakesBelow() {
    CurrentExpansion current =
        PrescribedCurrent.dipole(0.8, new double[] {0, 0, 0.6}, new double[] {0.6, 0, 0.8});
    double f = PhysicalConstants.SPEED_OF_LIGHT;
    Soil air = Soil.of(1, 0);
    double free = sky(current, f, Ground.freeSpace());
    assertThat(sky(current, f, air) + soil(current, f, air)).isCloseTo(free, within(1e-7 * free));
    // A centred dipole sends as much down as up.
    assertThat(soil(current, f, air)).isCloseTo(0.5 * free, within(1e-7 * free));
  }

  @Test
  void soilLikeMetalTakesNothing() {
    CurrentExpansion current =
        PrescribedCurrent.dipole(0.5, new double[] {0, 0, 0.3}, new double[] {1, 0, 0});
    double f = PhysicalConstants.SPEED_OF_LIGHT;
    double perfect = sky(current, f, Ground.perfect());
    double last = perfect;
    for (double conductivity : new double[] {1e4, 1e6, 1e8}) {
      double taken = soil(current, f, Soil.of(1, conductivity));
      // Falls like the surface resistance, 1/√σ.
      assertThat(taken).isLessThan(0.12 * last);
      last = taken;
    }
    assertThat(last).isLessThan(1e-4 * perfect).isPositive();
  }

  @Test
  void aSlopingWireOfManyWavelengthsIsTheSameWhicheverWayItPoints() {
    double f = PhysicalConstants.SPEED_OF_LIGHT;
    Soil soil = Soil.of(13, 0.09);
    double[] powers = new double[2];
    double[][] ends = {{4, 0, 1.5}, {4 * Math.cos(1), 4 * Math.sin(1), 1.5}};
    for (int i = 0; i < 2; i++) {
      CurrentExpansion current =
          new PrescribedCurrent()
              .wire(new double[] {0, 0, 0.02}, ends[i], 9, s -> new Complex(0, -6.1 * s).exp())
              .expansion();
      powers[i] = soil(current, f, soil);
    }
    assertThat(powers[1]).isCloseTo(powers[0], within(1e-8 * powers[0]));
  }

  @Test
  void aCurrentInTheSurfaceIsRefused() {
    CurrentExpansion current =
        PrescribedCurrent.dipole(0.5, new double[] {0, 0, 0}, new double[] {1, 0, 0});
    Soil soil = Soil.of(13, 0.005);
    assertThatThrownBy(() -> AbsorbedPower.of(current, 7e6, soil, 1e-6))
        .isInstanceOf(IllegalArgumentException.class)
        .hasMessageContaining("must lie above the soil");
  }
}
