package org.spanwire.medium;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatIllegalArgumentException;
import static org.assertj.core.api.Assertions.withinPercentage;

import org.apache.commons.math3.complex.Complex;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.spanwire.unit.PhysicalConstants;

class ConductorTest {

  /**
   * Round wire of 2 mm diameter: frequency, conductivity, relative permeability, resistance and
   * internal reactance per metre. Closed form of Ramo, Whinnery and Van Duzer 1994, section 3.16,
   * evaluated by mpmath with 30 digits.
   */
  @ParameterizedTest
  @CsvSource({
    "100000, 58000000, 1, 0.01460731047, 0.01299560069",
    "1900000, 58000000, 1, 0.05863179946, 0.05720926012",
    "3650000, 58000000, 1, 0.08071889104, 0.07931065642",
    "7100000, 58000000, 1, 0.1120255475, 0.1106276847",
    "14200000, 58000000, 1, 0.1578507198, 0.15646049",
    "28500000, 58000000, 1, 0.2230491655, 0.2216643232",
    "100000, 37700000, 1, 0.01860448931, 0.01603752637",
    "1900000, 37700000, 1, 0.07314922096, 0.07094148441",
    "3650000, 37700000, 1, 0.1005403431, 0.09836015869",
    "7100000, 37700000, 1, 0.139368124, 0.1372078674",
    "14200000, 37700000, 1, 0.1962047646, 0.1940591458",
    "28500000, 37700000, 1, 0.2770717134, 0.2749364112",
    "100000, 5000000, 200, 0.6486708619, 0.6321395372",
    "1900000, 5000000, 200, 2.772794151, 2.756740037",
    "3650000, 5000000, 200, 3.836959846, 3.820944499",
    "7100000, 5000000, 200, 5.34511618, 5.329129175",
    "14200000, 5000000, 200, 7.552518174, 7.536552158",
    "28500000, 5000000, 200, 10.69301154, 10.67706041",
    "100000, 10000000, 1, 0.04007949885, 0.02742957407",
    "1900000, 10000000, 1, 0.1461391051, 0.1374532245",
    "3650000, 10000000, 1, 0.1992547674, 0.1907793121",
    "7100000, 10000000, 1, 0.2745937792, 0.2662689485",
    "14200000, 10000000, 1, 0.3849124989, 0.3766973666",
    "28500000, 10000000, 1, 0.5419005701, 0.5337622436"
  })
  void surfaceImpedanceOfARoundWire(
      double hertz, double conductivity, double permeability, double resistance, double reactance) {
    Material material = new Material("metal", conductivity, permeability, "check value");
    Complex z = Conductor.bare(material, 1e-3).surfaceImpedance(hertz);
    assertThat(z.getReal()).isCloseTo(resistance, withinPercentage(1e-7 * 100));
    assertThat(z.getImaginary()).isCloseTo(reactance, withinPercentage(1e-7 * 100));
  }

  /** At low frequency the resistance is that of direct current, the inductance μ0/8π per metre. */
  @Test
  void lowFrequencyLimit() {
    double radius = 0.5e-3;
    Complex z = Conductor.bare(Materials.COPPER, radius).surfaceImpedance(1);
    assertThat(z.getReal())
        .isCloseTo(
            1 / (Math.PI * radius * radius * Materials.COPPER.conductivity()),
            withinPercentage(1e-5));
    assertThat(z.getImaginary())
        .isCloseTo(
            2 * Math.PI * PhysicalConstants.MAGNETIC_CONSTANT / (8 * Math.PI),
            withinPercentage(1e-5));
  }

  /** Far above the skin effect's onset the wire is a plane: R = X = 1/(2πaσδ), to order δ/a. */
  @Test
  void highFrequencyLimit() {
    double radius = 5e-3;
    double hertz = 1e11;
    double sigma = Materials.COPPER.conductivity();
    double depth = Math.sqrt(1 / (Math.PI * hertz * PhysicalConstants.MAGNETIC_CONSTANT * sigma));
    Complex z = Conductor.bare(Materials.COPPER, radius).surfaceImpedance(hertz);
    double plane = 1 / (2 * Math.PI * radius * sigma * depth);
    assertThat(z.getReal()).isCloseTo(plane * (1 + 0.5 * depth / radius), withinPercentage(1e-6));
    assertThat(z.getImaginary()).isCloseTo(plane, withinPercentage(1e-6));
  }

  @Test
  void perfectConductorHasNone() {
    assertThat(Conductor.perfect(1e-3).surfaceImpedance(7.1e6)).isEqualTo(Complex.ZERO);
  }

  @Test
  void refusesARadiusThatIsNotPositive() {
    for (double radius : new double[] {0, -1e-3, Double.NaN, Double.POSITIVE_INFINITY}) {
      assertThatIllegalArgumentException()
          .isThrownBy(() -> Conductor.perfect(radius))
          .withMessageContaining("radius");
    }
  }

  @Test
  void insulationRefusesWhatCannotBe() {
    assertThatIllegalArgumentException()
        .isThrownBy(() -> new Insulation(0, 2.3, 0))
        .withMessageContaining("thickness");
    assertThatIllegalArgumentException()
        .isThrownBy(() -> new Insulation(1e-3, 0.9, 0))
        .withMessageContaining("permittivity");
    assertThatIllegalArgumentException()
        .isThrownBy(() -> new Insulation(1e-3, 2.3, -1e-3))
        .withMessageContaining("loss tangent");
  }
}
