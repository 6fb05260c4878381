package org.spanwire.medium;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.assertj.core.api.Assertions.within;

import java.util.List;
import org.apache.commons.math3.complex.Complex;
import org.junit.jupiter.api.Test;
import org.spanwire.unit.PhysicalConstants;

/** Constants against frequency, and the size of layers that are left out. */
class SoilLayerTest {

  private static final double HERTZ = 7.1e6;
  private static final Soil MEDIUM = Soil.of(13, 0.005);

  private static SoilTable table() {
    return new SoilTable(
        List.of(
            new SoilTable.Row(1e6, 30, 0.01),
            new SoilTable.Row(4e6, 20, 0.02),
            new SoilTable.Row(30e6, 10, 0.05)));
  }

  @Test
  void tableIsLinearAgainstTheLogarithmOfFrequency() {
    Soil soil = Soil.of("meadow", table(), "measured");
    // 2 MHz lies half way from 1 MHz to 4 MHz.
    assertThat(soil.complexPermittivity(2e6))
        .isEqualTo(Soil.of(25, 0.015).complexPermittivity(2e6));
    assertThat(soil.complexPermittivity(4e6)).isEqualTo(Soil.of(20, 0.02).complexPermittivity(4e6));
    assertThat(soil.complexPermittivity(30e6))
        .isEqualTo(Soil.of(10, 0.05).complexPermittivity(30e6));
    assertThatThrownBy(() -> soil.complexPermittivity(31e6))
        .hasMessageContaining("must lie within the soil's table");
  }

  @Test
  void rowsAreChecked() {
    assertThatThrownBy(() -> new SoilTable(List.of())).hasMessageContaining("at least one row");
    assertThatThrownBy(
            () ->
                new SoilTable(List.of(new SoilTable.Row(2e6, 9, 0), new SoilTable.Row(2e6, 9, 0))))
        .hasMessageContaining("above the one before");
    assertThatThrownBy(() -> new SoilTable.Row(1e6, 0.5, 0)).hasMessageContaining("at least 1");
  }

  /** A layer of the soil's own stuff beneath it, or of air on it, changes nothing. */
  @Test
  void layerOfTheSameIsNoLayer() {
    Complex bare = SoilLayer.bareReflection(MEDIUM, HERTZ);
    Complex same =
        new SoilLayer(SoilLayer.Place.BENEATH_THE_SOIL, 2, 13, 0.005).reflection(MEDIUM, HERTZ);
    Complex air = new SoilLayer(SoilLayer.Place.ON_THE_SOIL, 2, 1, 0).reflection(MEDIUM, HERTZ);
    assertThat(same.subtract(bare).abs()).isLessThan(1e-12);
    assertThat(air.subtract(bare).abs()).isLessThan(1e-12);
  }

  /**
   * Half a wavelength of a layer without loss is no layer but for the thickness of air it takes.
   */
  @Test
  void halfWaveLayerIsSeenThrough() {
    double half = 0.5 * PhysicalConstants.wavelength(HERTZ) / Math.sqrt(1.6);
    Complex there =
        new SoilLayer(SoilLayer.Place.ON_THE_SOIL, half, 1.6, 0).reflection(MEDIUM, HERTZ);
    double phase = 2 * PhysicalConstants.wavenumber(HERTZ) * half;
    Complex expected =
        SoilLayer.bareReflection(MEDIUM, HERTZ)
            .multiply(new Complex(Math.cos(phase), Math.sin(phase)));
    assertThat(there.subtract(expected).abs()).isLessThan(1e-12);
  }

  /** Thin film: dΓ/dd by the wave in the film, first order; and soil so deep that it is all. */
  @Test
  void limits() {
    Complex bare = SoilLayer.bareReflection(MEDIUM, HERTZ);
    double d = 1e-4;
    double k = PhysicalConstants.wavenumber(HERTZ);
    Complex film = new SoilLayer(SoilLayer.Place.ON_THE_SOIL, d, 2.5, 0).reflection(MEDIUM, HERTZ);
    // A film's displacement current: ΔΓ = −jkd (ε − 1)(1 + Γ)²/2.
    Complex expected = bare.add(1).pow(2).multiply(new Complex(0, -0.5 * k * d * 1.5));
    assertThat(film.subtract(bare).subtract(expected).abs()).isLessThan(1e-3 * expected.abs());
    Complex deep =
        new SoilLayer(SoilLayer.Place.BENEATH_THE_SOIL, 60, 80, 5).reflection(MEDIUM, HERTZ);
    assertThat(deep.subtract(bare).abs()).isCloseTo(0, within(1e-9));
  }
}
