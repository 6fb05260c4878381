package org.spanwire.internal.field;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.assertj.core.api.Assertions.within;

import java.util.List;
import org.apache.commons.math3.complex.Complex;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.MethodSource;
import org.spanwire.geometry.Point;
import org.spanwire.internal.basis.CurrentExpansion;
import org.spanwire.internal.mesh.Piece;
import org.spanwire.medium.Ground;
import org.spanwire.medium.Soil;
import org.spanwire.result.Direction;
import org.spanwire.result.NearField;
import org.spanwire.result.RadiatedField;
import org.spanwire.unit.PhysicalConstants;

/** Near fields of prescribed currents: closed forms and Maxwell's laws. */
class FieldAtPointTest {

  private static final double HERTZ = 14.2e6;
  private static final double K = PhysicalConstants.wavenumber(HERTZ);
  private static final double ETA = PhysicalConstants.IMPEDANCE_OF_FREE_SPACE;

  private static List<Ground> grounds() {
    return List.of(
        Ground.freeSpace(), Ground.perfect(), Soil.of(13, 0.005), Soil.of(70, 5), Soil.of(3, 1e-4));
  }

  /** A slanted wire with a current that ends nowhere at zero. */
  private static CurrentExpansion slanted() {
    return new PrescribedCurrent()
        .wire(
            new double[] {0, 0, 2},
            new double[] {3, 4, 7},
            2,
            s -> new Complex(Math.sin(K * s + 0.5), 0.3 * s))
        .expansion();
  }

  private static double[] field(FieldAtPoint source, double x, double y, double z) {
    double[] out = new double[DirectField.VALUES];
    source.evaluate(x, y, z, out);
    return out;
  }

  /**
   * Half-wave dipole of 100 W, sinusoidal current, closed form of the near field (Schelkunoff;
   * Balanis 2016, section 8.5), λ = 21.1121 m; ρ, z in metres, rms fields.
   */
  @ParameterizedTest
  @CsvSource({
    "0.5, 0, 13.22945565, 0.3723520925",
    "1, 0, 13.05640958, 0.1861760463",
    "10, 0, 6.202846, 0.0186176",
    "1, 4, 60.225942, 0.07653659",
    "1, 5.278, 47.297528, 0.02630729",
    "0.5, 5.278, 96.844364, 0.02702640",
    "3, 8, 7.699677, 0.00914728"
  })
  void halfWaveDipole(double rho, double z, double electric, double magnetic) {
    double half = 0.25 * PhysicalConstants.wavelength(HERTZ);
    double amperes = Math.sqrt(100 / 73.07901029);
    CurrentExpansion dipole =
        new PrescribedCurrent()
            .wire(
                new double[] {0, 0, -half},
                new double[] {0, 0, half},
                2,
                s -> new Complex(amperes * Math.sin(K * (half - Math.abs(s - half)))))
            .expansion();
    NearField there =
        new FieldAtPoint(dipole, HERTZ, Ground.freeSpace(), 1e-6)
            .at(new Point(0.6 * rho, 0.8 * rho, z));
    // The table gives seven digits or a little fewer.
    assertThat(there.electric()).isCloseTo(electric, within(1e-6 * electric));
    assertThat(there.magnetic()).isCloseTo(magnetic, within(1e-6 * magnetic));
  }

  /** Balanis 2016, eq. 4-8 and 4-10: E_θ/H_φ = η |1 + 1/jx − 1/x²|/|1 + 1/jx| at x = kr. */
  @ParameterizedTest
  @CsvSource({
    "0.1, 3730.004971",
    "0.5, 607.4593781",
    "1, 266.389",
    "2, 303.730",
    "5, 362.252",
    "10, 373.000"
  })
  void hertzDipole(double x, double ohms) {
    double half = 1e-5 / K;
    CurrentExpansion dipole =
        new PrescribedCurrent()
            .wire(new double[] {0, 0, -half}, new double[] {0, 0, half}, 1, s -> Complex.ONE)
            .expansion();
    NearField there =
        new FieldAtPoint(dipole, HERTZ, Ground.freeSpace(), 1e-6).at(new Point(x / K, 0, 0));
    assertThat(there.ez().abs() / there.hy().abs()).isCloseTo(ohms, within(2e-6 * ohms));
    Complex expected =
        new Complex(1, -1 / x)
            .multiply(new Complex(0, -x).exp())
            .multiply(new Complex(0, -K * K * 2 * half / (4 * Math.PI * x)));
    // H_φ = jkIl sinθ/(4πr) (1 + 1/jkr) e^{−jkr}; at azimuth 0 φ is +y.
    assertThat(there.hy().add(expected).abs()).isLessThan(1e-6 * expected.abs());
  }

  /** ∇×E = −jωμH, ∇×H = jωεE, ∇·E = 0, ∇·H = 0 by differences of fourth order. */
  @ParameterizedTest
  @MethodSource("grounds")
  void maxwellsLaws(Ground ground) {
    FieldAtPoint source = new FieldAtPoint(slanted(), HERTZ, ground, 1e-9);
    for (double[] p : new double[][] {{2, -1, 3}, {1, 1.5, 0.5}, {200, 150, 1.5}}) {
      double h = 0.02;
      double[][] slope = new double[3][];
      for (int axis = 0; axis < 3; axis++) {
        slope[axis] = slope(source, p, axis, h);
      }
      double[] here = field(source, p[0], p[1], p[2]);
      double electric = K * size(here, 0);
      double magnetic = K * size(here, 6);
      double limit = 2e-7;
      for (int part = 0; part < 2; part++) {
        for (int a = 0; a < 3; a++) {
          int b = (a + 1) % 3;
          int c = (a + 2) % 3;
          double curlE = slope[b][2 * c + part] - slope[c][2 * b + part];
          double curlH = slope[b][6 + 2 * c + part] - slope[c][6 + 2 * b + part];
          double sign = part == 0 ? 1 : -1;
          double h0 = here[6 + 2 * a + 1 - part];
          double e0 = here[2 * a + 1 - part];
          assertThat(curlE)
              .isCloseTo(sign * K * ETA * h0, within(limit * (electric + ETA * magnetic)));
          assertThat(curlH)
              .isCloseTo(-sign * K / ETA * e0, within(limit * (electric / ETA + magnetic)));
        }
        assertThat(slope[0][part] + slope[1][2 + part] + slope[2][4 + part])
            .isCloseTo(0, within(limit * electric));
        assertThat(slope[0][6 + part] + slope[1][8 + part] + slope[2][10 + part])
            .isCloseTo(0, within(limit * magnetic));
      }
    }
  }

  private static double[] slope(FieldAtPoint source, double[] p, int axis, double h) {
    double[] result = new double[DirectField.VALUES];
    double[] weight = {1, -8, 8, -1};
    double[] shift = {-2, -1, 1, 2};
    for (int i = 0; i < 4; i++) {
      double[] q = p.clone();
      q[axis] += shift[i] * h;
      double[] there = field(source, q[0], q[1], q[2]);
      for (int j = 0; j < result.length; j++) {
        result[j] += weight[i] * there[j] / (12 * h);
      }
    }
    return result;
  }

  private static double size(double[] values, int from) {
    double sum = 0;
    for (int i = from; i < from + 6; i++) {
      sum += values[i] * values[i];
    }
    return Math.sqrt(sum);
  }

  @ParameterizedTest
  @MethodSource("grounds")
  void farAwayItIsTheFarField(Ground ground) {
    CurrentExpansion current = slanted();
    Direction direction = new Direction(20, 50);
    RadiatedField far = new FarField(current, HERTZ, ground).at(direction);
    double expected = Math.hypot(far.theta().abs(), far.phi().abs());
    double r = 1e6;
    double elevation = Math.toRadians(20);
    double azimuth = Math.toRadians(50);
    NearField near =
        new FieldAtPoint(current, HERTZ, ground, 1e-6)
            .at(
                new Point(
                    r * Math.cos(elevation) * Math.cos(azimuth),
                    r * Math.cos(elevation) * Math.sin(azimuth),
                    r * Math.sin(elevation)));
    // What is left falls like 1/r².
    assertThat(r * near.electric()).isCloseTo(expected, within(1e-4 * expected));
    assertThat(near.electric() / near.magnetic()).isCloseTo(ETA, within(1e-4 * ETA));
  }

  @Test
  void perfectGroundLeavesNoTangentialField() {
    FieldAtPoint source = new FieldAtPoint(slanted(), HERTZ, Ground.perfect(), 1e-9);
    for (double x : new double[] {-3, 0.2, 5}) {
      NearField there = source.at(new Point(x, 1, 0));
      assertThat(there.ex().abs() + there.ey().abs() + ETA * there.hz().abs())
          .isLessThan(1e-9 * there.electric());
    }
  }

  @Test
  void soilOfGreatConductivityIsPerfectGround() {
    // The surface impedance is η/√|ε| = 8.9e-5 η at 1e5 S/m.
    CurrentExpansion current = slanted();
    Point there = new Point(4, -2, 1);
    NearField perfect = new FieldAtPoint(current, HERTZ, Ground.perfect(), 1e-6).at(there);
    NearField soil = new FieldAtPoint(current, HERTZ, Soil.of(10, 1e5), 1e-6).at(there);
    assertThat(soil.ez().subtract(perfect.ez()).abs()).isLessThan(3e-4 * perfect.electric());
    assertThat(soil.hx().subtract(perfect.hx()).abs()).isLessThan(3e-4 * perfect.magnetic());
    NearField air = new FieldAtPoint(current, HERTZ, Soil.of(1, 0), 1e-6).at(there);
    NearField free = new FieldAtPoint(current, HERTZ, Ground.freeSpace(), 1e-6).at(there);
    assertThat(air.ex()).isEqualTo(free.ex());
  }

  /**
   * Current spread evenly around a tube against 400 lines on its surface, and the limit on the
   * surface by Ampère's and Gauss's laws.
   */
  @ParameterizedTest
  @CsvSource({"1.03", "1.5", "4", "30"})
  void tubes(double radii) {
    double a = 0.05;
    double[] re = {1, 0.2, -0.3};
    double[] im = {0.1, 0.5, 0.05};
    CurrentExpansion tube =
        new CurrentExpansion(
            List.of(new Piece(0, 0, -0.5, 0, 0, 1, 1.2, a)),
            new double[][] {re},
            new double[][] {im});
    double[] actual =
        field(new FieldAtPoint(tube, HERTZ, Ground.freeSpace(), 1e-6), radii * a, 0, 0.1);
    double[] expected = new double[DirectField.VALUES];
    int lines = 400;
    for (int i = 0; i < lines; i++) {
      double phi = 2 * Math.PI * (i + 0.5) / lines;
      CurrentExpansion line =
          new CurrentExpansion(
              List.of(new Piece(a * Math.cos(phi), a * Math.sin(phi), -0.5, 0, 0, 1, 1.2, 0)),
              new double[][] {re},
              new double[][] {im});
      double[] one =
          field(new FieldAtPoint(line, HERTZ, Ground.freeSpace(), 1e-6), radii * a, 0, 0.1);
      for (int j = 0; j < one.length; j++) {
        expected[j] += one[j] / lines;
      }
    }
    // The mean over lines errs by radii^−400.
    double limit = 1e-9 + 2 * Math.pow(radii, -lines);
    for (int i = 0; i < 6; i++) {
      assertThat(actual[i]).isCloseTo(expected[i], within(limit * size(expected, 0)));
      assertThat(actual[6 + i]).isCloseTo(expected[6 + i], within(limit * size(expected, 6)));
    }
  }

  @Test
  void belowGroundIsRefused() {
    FieldAtPoint source = new FieldAtPoint(slanted(), HERTZ, Soil.of(13, 0.005), 1e-6);
    assertThatThrownBy(() -> source.at(new Point(1, 2, -0.1)))
        .isInstanceOf(IllegalArgumentException.class)
        .hasMessageContaining("below the ground surface");
  }
}
