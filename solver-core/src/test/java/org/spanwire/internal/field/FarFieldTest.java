package org.spanwire.internal.field;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import org.apache.commons.math3.complex.Complex;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvFileSource;
import org.spanwire.internal.basis.CurrentExpansion;
import org.spanwire.medium.Ground;
import org.spanwire.medium.Soil;
import org.spanwire.result.Direction;
import org.spanwire.result.RadiatedField;
import org.spanwire.unit.PhysicalConstants;

/**
 * Fields of prescribed currents against closed forms and laws. The wavelength is 1 m unless a test
 * says otherwise.
 */
class FarFieldTest {

  private static final double ONE_METRE = PhysicalConstants.SPEED_OF_LIGHT;
  private static final double ETA = PhysicalConstants.IMPEDANCE_OF_FREE_SPACE;
  private static final double[] UP = {0, 0, 1};

  /** Three wires askew, complex currents, no symmetry at all. */
  private static CurrentExpansion irregular(double turnDegrees, double dx, double dy, double dz) {
    double[][] points = {{0.1, -0.2, 0.3}, {0.9, 0.3, 0.7}, {0.2, 0.6, 0.5}, {-0.4, 0.1, 1.1}};
    double turn = Math.toRadians(turnDegrees);
    PrescribedCurrent current = new PrescribedCurrent();
    for (int i = 0; i < 3; i++) {
      double phase = i;
      current.wire(
          moved(points[i], turn, dx, dy, dz),
          moved(points[i + 1], turn, dx, dy, dz),
          2,
          s -> new Complex(Math.cos(3 * s + phase), 0.5 - s * s));
    }
    return current.expansion();
  }

  private static double[] moved(double[] p, double turn, double dx, double dy, double dz) {
    return new double[] {
      p[0] * Math.cos(turn) - p[1] * Math.sin(turn) + dx,
      p[0] * Math.sin(turn) + p[1] * Math.cos(turn) + dy,
      p[2] + dz
    };
  }

  private static void assertClose(Complex actual, Complex expected, double tolerance) {
    assertThat(actual.subtract(expected).abs()).isLessThan(tolerance);
  }

  @Test
  void hertzDipole() {
    // E_θ = jη k I l sinθ/(4π r), Balanis, Antenna Theory (2016), eq. 4-26a
    double length = 1e-5;
    CurrentExpansion current =
        new PrescribedCurrent()
            .wire(
                new double[] {0, 0, -length / 2},
                new double[] {0, 0, length / 2},
                1,
                s -> Complex.ONE)
            .expansion();
    RadiatedField field =
        new FarField(current, ONE_METRE, Ground.freeSpace()).at(new Direction(30, 77));
    double expected = ETA * 2 * Math.PI * length / (4 * Math.PI) * Math.cos(Math.toRadians(30));
    assertClose(field.theta(), new Complex(0, expected), 1e-9 * expected);
    assertThat(field.phi()).isEqualTo(Complex.ZERO);
  }

  @Test
  void halfWaveDipole() {
    // E_θ = jη I/(2π r) cos(π/2 cosθ)/sinθ, Balanis (2016), eq. 4-84
    FarField far =
        new FarField(
            PrescribedCurrent.dipole(0.5, new double[3], UP), ONE_METRE, Ground.freeSpace());
    for (double elevation : new double[] {-71, -20, 0, 3, 45, 89}) {
      double theta = Math.toRadians(90 - elevation);
      double expected =
          ETA / (2 * Math.PI) * Math.cos(Math.PI / 2 * Math.cos(theta)) / Math.sin(theta);
      assertClose(
          far.at(new Direction(elevation, 10)).theta(), new Complex(0, expected), 1e-11 * ETA);
    }
  }

  @Test
  void aLongTravellingWaveIsExactOnOnePieceOrMany() {
    // E_θ ∝ sinθ (e^{jkL(cosθ−1)} − 1)/(cosθ − 1), Balanis (2016), eq. 10-2
    double length = 2.3;
    for (int count : new int[] {2, 3, 7}) {
      CurrentExpansion current =
          new PrescribedCurrent()
              .wire(
                  new double[3],
                  new double[] {0, 0, length},
                  count,
                  s -> new Complex(0, -2 * Math.PI * s).exp())
              .expansion();
      FarField far = new FarField(current, ONE_METRE, Ground.freeSpace());
      double cos = Math.sin(Math.toRadians(35));
      Complex sum =
          new Complex(0, 2 * Math.PI * length * (cos - 1))
              .exp()
              .subtract(1)
              .divide(new Complex(0, 2 * Math.PI * (cos - 1)));
      Complex expected = sum.multiply(new Complex(0, ETA / 2 * Math.cos(Math.toRadians(35))));
      assertClose(far.at(new Direction(35, 200)).theta(), expected, 1e-6 * expected.abs());
    }
  }

  @Test
  void turningTheStructureTurnsTheField() {
    for (Ground ground : new Ground[] {Ground.freeSpace(), Ground.perfect(), Soil.of(13, 0.005)}) {
      FarField one = new FarField(irregular(0, 0, 0, 0), ONE_METRE, ground);
      FarField two = new FarField(irregular(33, 0, 0, 0), ONE_METRE, ground);
      RadiatedField first = one.at(new Direction(20, 50));
      RadiatedField second = two.at(new Direction(20, 83));
      assertClose(first.theta(), second.theta(), 1e-11 * ETA);
      assertClose(first.phi(), second.phi(), 1e-11 * ETA);
    }
  }

  @Test
  void movingTheStructureTurnsThePhaseOnly() {
    // E' = E e^{+jk·d}; over a ground only along it
    double elevation = Math.toRadians(20);
    double azimuth = Math.toRadians(50);
    double along = Math.cos(elevation) * (0.7 * Math.cos(azimuth) - 1.9 * Math.sin(azimuth));
    for (Ground ground : new Ground[] {Ground.freeSpace(), Ground.perfect(), Soil.of(13, 0.005)}) {
      double up = ground.equals(Ground.freeSpace()) ? 5.3 : 0;
      FarField one = new FarField(irregular(0, 0, 0, 0), ONE_METRE, ground);
      FarField two = new FarField(irregular(0, 0.7, -1.9, up), ONE_METRE, ground);
      Complex phase = new Complex(0, 2 * Math.PI * (along + up * Math.sin(elevation))).exp();
      RadiatedField first = one.at(new Direction(20, 50));
      RadiatedField second = two.at(new Direction(20, 50));
      assertClose(first.theta().multiply(phase), second.theta(), 1e-11 * ETA);
      assertClose(first.phi().multiply(phase), second.phi(), 1e-11 * ETA);
    }
  }

  @Test
  void perfectGroundIsTheImage() {
    CurrentExpansion real = irregular(0, 0, 0, 0);
    CurrentExpansion image =
        new CurrentExpansion(
            real.pieces().stream().map(p -> p.image()).toList(),
            negated(real.re()),
            negated(real.im()));
    FarField above = new FarField(real, ONE_METRE, Ground.perfect());
    FarField source = new FarField(real, ONE_METRE, Ground.freeSpace());
    FarField mirrored = new FarField(image, ONE_METRE, Ground.freeSpace());
    for (double elevation : new double[] {0, 12, 47, 90}) {
      Direction direction = new Direction(elevation, 111);
      RadiatedField expected = above.at(direction);
      RadiatedField a = source.at(direction);
      RadiatedField b = mirrored.at(direction);
      assertClose(expected.theta(), a.theta().add(b.theta()), 1e-11 * ETA);
      assertClose(expected.phi(), a.phi().add(b.phi()), 1e-11 * ETA);
    }
    assertThat(above.intensity(new Direction(-1, 111))).isZero();
  }

  private static double[][] negated(double[][] rows) {
    double[][] out = new double[rows.length][];
    for (int i = 0; i < rows.length; i++) {
      out[i] = rows[i].clone();
      for (int n = 0; n < out[i].length; n++) {
        out[i][n] = -out[i][n];
      }
    }
    return out;
  }

  @Test
  void soilLikeAirIsFreeSpaceAndSoilLikeMetalIsPerfectGround() {
    CurrentExpansion current = irregular(0, 0, 0, 0);
    FarField free = new FarField(current, ONE_METRE, Ground.freeSpace());
    FarField air = new FarField(current, ONE_METRE, Soil.of(1, 0));
    FarField perfect = new FarField(current, ONE_METRE, Ground.perfect());
    FarField metal = new FarField(current, ONE_METRE, Soil.of(1, 1e16));
    for (double elevation : new double[] {0, 8, 60, 90}) {
      Direction direction = new Direction(elevation, 200);
      assertClose(air.at(direction).theta(), free.at(direction).theta(), 1e-11 * ETA);
      assertClose(air.at(direction).phi(), free.at(direction).phi(), 1e-11 * ETA);
      if (elevation > 0) {
        assertClose(metal.at(direction).theta(), perfect.at(direction).theta(), 1e-5 * ETA);
        assertClose(metal.at(direction).phi(), perfect.at(direction).phi(), 1e-5 * ETA);
      }
    }
  }

  @Test
  void nullsAreZero() {
    FarField vertical =
        new FarField(
            PrescribedCurrent.dipole(0.5, new double[] {3, 4, 1}, UP),
            ONE_METRE,
            Ground.freeSpace());
    assertThat(vertical.intensity(new Direction(90, 0))).isZero();
    assertThat(vertical.intensity(new Direction(-90, 123))).isZero();
    FarField soil = new FarField(irregular(0, 0, 0, 0), ONE_METRE, Soil.of(13, 0.005));
    assertThat(soil.intensity(new Direction(0, 17))).isZero();
    assertThat(soil.intensity(new Direction(0.001, 17))).isPositive();
  }

  @ParameterizedTest
  @CsvFileSource(resources = "fresnel.csv", useHeadersInDisplayName = true)
  void reflectionCoefficients(
      double permittivity,
      double conductivity,
      double frequencyHz,
      double elevation,
      double verticalRe,
      double verticalIm,
      double horizontalRe,
      double horizontalIm) {
    double[] r = new double[4];
    new Fresnel(Soil.of(permittivity, conductivity).complexPermittivity(frequencyHz))
        .coefficients(Math.sin(Math.toRadians(elevation)), r, 0);
    assertThat(r[0]).isCloseTo(verticalRe, within(1e-8));
    assertThat(r[1]).isCloseTo(verticalIm, within(1e-8));
    assertThat(r[2]).isCloseTo(horizontalRe, within(1e-8));
    assertThat(r[3]).isCloseTo(horizontalIm, within(1e-8));
  }
}
