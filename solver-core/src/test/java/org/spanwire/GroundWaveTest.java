package org.spanwire;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import org.apache.commons.math3.complex.Complex;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.spanwire.geometry.Point;
import org.spanwire.geometry.Wire;
import org.spanwire.medium.Conductor;
import org.spanwire.medium.Soil;
import org.spanwire.medium.SurfaceWave;
import org.spanwire.unit.PhysicalConstants;

/** The field along the ground, far from a short vertical, against the flat-earth formula. */
class GroundWaveTest {

  private static final double ETA = PhysicalConstants.IMPEDANCE_OF_FREE_SPACE;

  /**
   * Field of a short vertical near the surface, normalised to a cymomotive force of 300 V (ITU-R
   * P.341), against the flat-earth formula with F(p) (Sommerfeld 1926, Norton 1936): mV/m at 1 km
   * and 10 km, MHz. Tolerance 0.2 dB from 10 to 20 wavelengths, 0.1 dB beyond.
   */
  @ParameterizedTest
  @CsvSource({
    "70, 5, 1.9, 299.8336, 29.93289",
    "70, 5, 3.65, 299.6660, 29.78091",
    "70, 5, 7.1, 299.0266, 29.20837",
    "70, 5, 28.5, 286.2371, 19.79202",
    "30, 0.01, 1.9, 244.8265, 10.30364",
    "30, 0.01, 3.65, 164.2485, 2.74602",
    "30, 0.01, 7.1, 78.6766, 0.84639",
    "30, 0.01, 28.5, 15.9473, 0.15945",
    "22, 0.003, 1.9, 166.2952, 3.25024",
    "22, 0.003, 3.65, 90.5590, 1.12585",
    "22, 0.003, 7.1, 46.0525, 0.49517",
    "22, 0.003, 28.5, 11.5440, 0.11619",
    "15, 0.001, 1.9, 104.4583, 1.47778",
    "15, 0.001, 3.65, 57.9109, 0.66806",
    "15, 0.001, 7.1, 31.1817, 0.32907",
    "15, 0.001, 28.5, 8.0406, 0.08077",
    "7, 0.0003, 1.9, 57.8152, 0.65815",
    "7, 0.0003, 3.65, 31.0633, 0.32617",
    "7, 0.0003, 7.1, 16.2810, 0.16540",
    "7, 0.0003, 28.5, 4.0970, 0.04102",
    "3, 0.0001, 1.9, 32.0476, 0.33830",
    "3, 0.0001, 3.65, 17.2741, 0.17611",
    "3, 0.0001, 7.1, 9.0121, 0.09064",
    "3, 0.0001, 28.5, 2.2584, 0.02259"
  })
  void groundWave(double epsilon, double sigma, double megahertz, double atOne, double atTen) {
    PrescribedCurrent source = cymomotive(Soil.of(epsilon, sigma), 1e6 * megahertz);
    double wavelength = PhysicalConstants.wavelength(1e6 * megahertz);
    double[] distance = {1e3, 1e4};
    double[] expected = {atOne, atTen};
    for (int i = 0; i < 2; i++) {
      double decibels =
          20
              * Math.log10(
                  1e3 * source.nearField(new Point(distance[i], 0, 0)).ez().abs() / expected[i]);
      if (distance[i] >= 10 * wavelength) {
        assertThat(decibels).isCloseTo(0, within(distance[i] < 20 * wavelength ? 0.2 : 0.1));
      }
    }
  }

  /** Current of a short vertical, five thousandths of a wavelength up, for 300 V. */
  private static PrescribedCurrent cymomotive(Soil soil, double hertz) {
    double k = PhysicalConstants.wavenumber(hertz);
    double length = 5e-3 * PhysicalConstants.wavelength(hertz);
    double amperes = 300 * 4 * Math.PI / (2 * ETA * k * length);
    Wire wire =
        Wire.of(
            "short",
            Conductor.perfect(1e-2 * length),
            new Point(0, 0, length),
            new Point(0, 0, 2 * length));
    return PrescribedCurrent.builder(hertz)
        .ground(soil)
        .wire(wire, s -> new Complex(amperes))
        .build();
  }

  /** A hundred kilometres: flat earth, beyond the reach of real paths, but a test of the path. */
  @ParameterizedTest
  @CsvSource({"70, 5, 28.5e6", "13, 0.005, 7.1e6", "3, 0.0001, 28.5e6", "22, 0.003, 1.9e6"})
  void groundWaveAtHundredKilometres(double epsilon, double sigma, double hertz) {
    Soil soil = Soil.of(epsilon, sigma);
    double expected = SurfaceWave.fieldStrength(soil, hertz, 1e5, 300);
    double actual = cymomotive(soil, hertz).nearField(new Point(6e4, 8e4, 0)).ez().abs();
    // The formula's own error is of relative order 1/|ε|, and the source is not at the surface.
    assertThat(20 * Math.log10(actual / expected)).isCloseTo(0, within(0.1));
  }
}
