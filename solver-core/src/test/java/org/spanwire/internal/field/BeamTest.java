package org.spanwire.internal.field;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import org.apache.commons.math3.complex.Complex;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.spanwire.internal.basis.CurrentExpansion;
import org.spanwire.medium.Ground;
import org.spanwire.result.Direction;
import org.spanwire.result.PeakGain;
import org.spanwire.result.RadiatedField;
import org.spanwire.unit.PhysicalConstants;

/**
 * Beamwidths, front-to-back ratio and polarization of prescribed currents. The wavelength is 1 m.
 */
class BeamTest {

  private static final double ONE_METRE = PhysicalConstants.SPEED_OF_LIGHT;
  private static final double[] UP = {0, 0, 1};

  private static Beam beam(CurrentExpansion current, Ground ground) {
    FarField field = new FarField(current, ONE_METRE, ground);
    return new Beam(field, new GainPattern(field, 1).peak());
  }

  /** Balanis, Antenna Theory (2016), section 4.5.6, by quadrature and root finding to 1e-9. */
  @ParameterizedTest
  @CsvSource({
    "0.001, 89.99995288",
    "0.25, 87.0354721",
    "0.5, 78.07771889",
    "0.75, 64.00726317",
    "1, 47.83506391",
    "1.25, 32.60664835"
  })
  void straightDipoles(double length, double expected) {
    Beam standing = beam(PrescribedCurrent.dipole(length, new double[3], UP), Ground.freeSpace());
    assertThat(standing.elevationBeamwidthDegrees().orElseThrow())
        .isCloseTo(expected, within(1e-6));
    assertThat(standing.azimuthBeamwidthDegrees()).isEmpty();
    assertThat(standing.frontToBackDb()).isEmpty();
    Beam lying =
        beam(
            PrescribedCurrent.dipole(length, new double[3], new double[] {1, 0, 0}),
            Ground.freeSpace());
    assertThat(lying.azimuthBeamwidthDegrees().orElseThrow()).isCloseTo(expected, within(1e-6));
    assertThat(lying.elevationBeamwidthDegrees()).isEmpty();
    assertThat(lying.frontToBackDb().orElseThrow()).isCloseTo(0, within(1e-9));
  }

  @Test
  void aGroundCutsTheLobeOff() {
    // Image theory: upper half of the dipole's lobe, which is 78.07771889 degrees wide.
    Beam monopole = beam(PrescribedCurrent.dipole(0.5, new double[3], UP), Ground.perfect());
    assertThat(monopole.elevationBeamwidthDegrees().orElseThrow())
        .isCloseTo(39.038859445, within(1e-6));
  }

  @Test
  void unequalCardioidPair() {
    // Quarter-wave spacing, lagging element of current a: front to back (1 + a)/(1 − a) (Kraus,
    // Antennas, chapter 4).
    CurrentExpansion current =
        new PrescribedCurrent()
            .add(0.5, new double[] {0, 0, 0}, UP, Complex.ONE)
            .add(0.5, new double[] {0.25, 0, 0}, UP, new Complex(0, -0.8))
            .expansion();
    assertThat(beam(current, Ground.freeSpace()).frontToBackDb().orElseThrow())
        .isCloseTo(20 * Math.log10(1.8 / 0.2), within(1e-6));
  }

  @Test
  void turnstilePolarization() {
    // Crossed short dipoles in quadrature, Kraus, Antennas, chapter 16: circular at the zenith,
    // axial ratio 1/sin(elevation),
    // linear and horizontal at the horizon. Currents x, −jy turn from x to y: right-handed toward
    // +z, left-handed toward −z.
    double length = 1e-4;
    CurrentExpansion current =
        new PrescribedCurrent()
            .wire(new double[] {-length, 0, 0}, new double[] {length, 0, 0}, 1, s -> Complex.ONE)
            .wire(
                new double[] {0, -length, 0},
                new double[] {0, length, 0},
                1,
                s -> new Complex(0, -1))
            .expansion();
    FarField field = new FarField(current, ONE_METRE, Ground.freeSpace());
    for (double elevation : new double[] {90, 50, 10, -30}) {
      RadiatedField there = field.at(new Direction(elevation, 123));
      assertThat(there.axialRatio())
          .isCloseTo(1 / Math.abs(Math.sin(Math.toRadians(elevation))), within(1e-6));
      assertThat(there.isRightHanded()).isEqualTo(elevation > 0);
      if (elevation < 90) {
        assertThat(there.tiltDegrees() % 180)
            .satisfiesAnyOf(
                tilt -> assertThat(tilt).isCloseTo(0, within(1e-4)),
                tilt -> assertThat(tilt).isCloseTo(180, within(1e-4)));
      }
    }
    assertThat(field.at(new Direction(0, 45)).axialRatio()).isGreaterThan(1e12);
  }

  @Test
  void tiltFollowsTheWire() {
    // A short dipole seen broadside from +x: the field lies along it. Up and increasing azimuth
    // (+y): 30 degrees of tilt.
    double cos = Math.cos(Math.toRadians(30));
    CurrentExpansion current =
        PrescribedCurrent.dipole(0.01, new double[3], new double[] {0, cos, 0.5});
    RadiatedField there =
        new FarField(current, ONE_METRE, Ground.freeSpace()).at(new Direction(0, 0));
    assertThat(there.tiltDegrees()).isCloseTo(30, within(1e-9));
    assertThat(there.axialRatio()).isGreaterThan(1e12);
    assertThat(new RadiatedField(Complex.ZERO, Complex.ZERO).axialRatio()).isEqualTo(1);
  }

  @Test
  void aDeadFieldHasNoBeam() {
    CurrentExpansion current =
        new PrescribedCurrent().wire(new double[3], UP, 1, s -> Complex.ZERO).expansion();
    FarField field = new FarField(current, ONE_METRE, Ground.freeSpace());
    PeakGain none = new GainPattern(field, 1).peak();
    assertThat(new Beam(field, none).elevationBeamwidthDegrees()).isEmpty();
    assertThat(new Beam(field, none).azimuthBeamwidthDegrees()).isEmpty();
  }
}
