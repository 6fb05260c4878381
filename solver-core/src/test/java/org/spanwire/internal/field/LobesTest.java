package org.spanwire.internal.field;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.util.List;
import org.junit.jupiter.api.Test;
import org.spanwire.medium.Ground;
import org.spanwire.result.Lobe;
import org.spanwire.unit.PhysicalConstants;

/** Lists of lobes of prescribed currents. The wavelength is 1 m. */
class LobesTest {

  private static List<Lobe> lobes(double length, double[] centre, double[] unit, Ground ground) {
    FarField field =
        new FarField(
            PrescribedCurrent.dipole(length, centre, unit),
            PhysicalConstants.SPEED_OF_LIGHT,
            ground);
    return new GainPattern(field, RadiatedPower.of(field, 1e-8).watts()).lobes(1e-4, 100);
  }

  /** Four half-waves in a row by the current sin k(h − |z|): two cones, whatever the direction. */
  @Test
  void aConeIsOneLobe() {
    for (double[] unit : new double[][] {{0, 0, 1}, {1, 0, 0}, {0.8, 0.36, 0.48}}) {
      List<Lobe> lobes = lobes(2, new double[3], unit, Ground.freeSpace());
      assertThat(lobes).hasSize(2);
      assertThat(lobes.get(0).gainDbi()).isCloseTo(lobes.get(1).gainDbi(), within(1e-9));
      // Broadside the halves cancel; numerical maximum of (cos(kh cosθ) − cos kh)/sinθ.
      assertThat(lobes.get(0).gainDbi()).isCloseTo(4.02873, within(1e-5));
      for (Lobe lobe : lobes) {
        double elevation = Math.toRadians(lobe.elevationDegrees());
        double azimuth = Math.toRadians(lobe.azimuthDegrees().orElse(0));
        double cosine =
            Math.cos(elevation) * (Math.cos(azimuth) * unit[0] + Math.sin(azimuth) * unit[1])
                + Math.sin(elevation) * unit[2];
        assertThat(Math.toDegrees(Math.asin(Math.abs(cosine)))).isCloseTo(32.5611, within(1e-3));
      }
    }
  }

  /** Image theory: a horizontal dipole one wavelength up has its lobes at sin ψ = 1/4 and 3/4. */
  @Test
  void elevatedDipoleOverPerfectGround() {
    List<Lobe> lobes =
        lobes(1e-3, new double[] {0, 0, 1}, new double[] {1, 0, 0}, Ground.perfect());
    List<Lobe> broadside =
        lobes.stream()
            .filter(l -> l.azimuthDegrees().isPresent())
            .filter(
                l -> Math.abs(Math.cos(Math.toRadians(l.azimuthDegrees().getAsDouble()))) < 1e-4)
            .toList();
    assertThat(broadside).hasSize(4);
    assertThat(broadside.get(0).elevationDegrees())
        .isCloseTo(Math.toDegrees(Math.asin(0.25)), within(1e-3));
    assertThat(broadside.get(3).elevationDegrees())
        .isCloseTo(Math.toDegrees(Math.asin(0.75)), within(1e-3));
  }
}
