package org.spanwire.medium;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatIllegalArgumentException;
import static org.assertj.core.api.Assertions.withinPercentage;

import org.apache.commons.math3.complex.Complex;
import org.junit.jupiter.api.Test;

class SoilTest {

  /** σ/(ωε0) = 60 λ σ to 1 part in 1500 (the rule of the books); here with the exact constants. */
  @Test
  void complexPermittivityHasNegativeImaginaryPart() {
    Complex epsilon = Soil.of(13, 0.005).complexPermittivity(7.1e6);
    assertThat(epsilon.getReal()).isEqualTo(13);
    assertThat(epsilon.getImaginary())
        .isCloseTo(
            -0.005 / (2 * Math.PI * 7.1e6 * 8.8541878128e-12),
            withinPercentage(1e-8)); // CODATA 2018
  }

  @Test
  void everySoilIsFoundByItsName() {
    assertThat(Soils.all()).extracting(Soil::name).doesNotHaveDuplicates();
    for (Soil soil : Soils.all()) {
      assertThat(Soils.find(soil.name())).contains(soil);
      assertThat(soil.source()).isNotBlank();
    }
    assertThat(Soils.find("custard")).isEmpty();
  }

  /** Recommendation ITU-R P.527-3 (1992), figure 1, low-frequency plateau; from memory. */
  @Test
  void namedSoilsCarryTheRecommendationsConstants() {
    assertThat(Soils.find("sea-water").orElseThrow().conductivity()).isEqualTo(5);
    assertThat(Soils.find("wet-ground").orElseThrow().relativePermittivity()).isEqualTo(30);
    assertThat(Soils.find("medium-dry").orElseThrow().conductivity()).isEqualTo(1e-3);
    assertThat(Soils.find("very-dry").orElseThrow().relativePermittivity()).isEqualTo(3);
  }

  @Test
  void refusesWhatCannotBe() {
    assertThatIllegalArgumentException()
        .isThrownBy(() -> Soil.of(0.99, 0))
        .withMessageContaining("permittivity");
    assertThatIllegalArgumentException()
        .isThrownBy(() -> Soil.of(Double.NaN, 0))
        .withMessageContaining("permittivity");
    assertThatIllegalArgumentException()
        .isThrownBy(() -> Soil.of(4, -1e-9))
        .withMessageContaining("conductivity");
    assertThatIllegalArgumentException()
        .isThrownBy(() -> Soil.of(4, Double.POSITIVE_INFINITY))
        .withMessageContaining("conductivity");
  }
}
