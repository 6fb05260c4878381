package org.spanwire;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.withinPercentage;
import static org.spanwire.LawAntennas.p;

import org.apache.commons.math3.analysis.solvers.BrentSolver;
import org.apache.commons.math3.complex.Complex;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.spanwire.geometry.Position;
import org.spanwire.medium.Conductor;
import org.spanwire.medium.Insulation;
import org.spanwire.unit.PhysicalConstants;

/** Insulation slows a wave on a wire. */
class CoatedWireTest {

  /** Length of the wire in wavelengths. */
  private static final int LENGTH = 20;

  /** Current samples per wavelength. */
  private static final int DENSITY = 64;

  private static Conductor wire(double a, double b, double permittivity) {
    return Conductor.perfect(a).withInsulation(new Insulation(b - a, permittivity, 0));
  }

  /**
   * Velocity over that of light of the exact axial surface wave on an infinite coated wire (Goubau,
   * Journal of Applied Physics 21, 1950; root of the characteristic equation) against the solved
   * current of a wire of 20 wavelengths, fed a quarter wavelength from its end. Radii in
   * millimetres, megahertz.
   */
  @ParameterizedTest
  @CsvSource({
    "1, 1.8, 2.3, 7.1, 0.9842737",
    "1, 1.8, 3.5, 7.1, 0.9798401",
    "1, 1.8, 2.3, 28.5, 0.9817382",
    "1, 1.8, 2.3, 300, 0.9747332",
    "0.8, 1.6, 4.0, 14.2, 0.9734053",
    "1, 1.005, 2.5, 3300, 0.9997746"
  })
  void waveOnALongWireHasTheVelocityOfGoubau(
      double a, double b, double permittivity, double megahertz, double velocity) {
    double measured = velocity(wire(a * 1e-3, b * 1e-3, permittivity), megahertz * 1e6);
    assertThat(measured).isCloseTo(velocity, withinPercentage(0.1));
  }

  /**
   * From the current away from feed and ends, where two waves exp(±jβz) obey I(z + h) + I(z − h) =
   * 2 cos(βh) I(z); h is a quarter wavelength, where the cosine tells most.
   */
  private static double velocity(Conductor conductor, double hertz) {
    double wavelength = PhysicalConstants.wavelength(hertz);
    double length = LENGTH * wavelength;
    Solution solution =
        new Solver()
            .solve(
                Antenna.builder()
                    .wire("wire", conductor, p(0, 0, 0), p(length, 0, 0))
                    .feed("feed", "wire", Position.distance(0.25 * wavelength))
                    .build(),
                hertz);
    Complex[] current =
        solution.currents(LENGTH * DENSITY + 1).stream()
            .map(sample -> sample.current())
            .toArray(Complex[]::new);
    int quarter = DENSITY / 4;
    double product = 0;
    double square = 0;
    for (int i = LENGTH * DENSITY / 5; i < LENGTH * DENSITY * 4 / 5; i++) {
      Complex sides = current[i + quarter].add(current[i - quarter]);
      product += sides.multiply(current[i].conjugate()).getReal();
      square += Math.pow(current[i].abs(), 2);
    }
    double phase = Math.acos(product / (2 * square));
    return 2 * Math.PI * quarter / (DENSITY * phase);
  }

  /** A bare wire carries its current at the velocity of light, so the test above sees the coat. */
  @Test
  void waveOnABareWireTravelsAtTheVelocityOfLight() {
    assertThat(velocity(Conductor.perfect(1e-3), 28.5e6)).isCloseTo(1, withinPercentage(0.1));
  }

  /**
   * A half-wave dipole for 7.1 MHz of 2 mm wire in 0.8 mm of polyethylene resonates 1.8 to 2.3 per
   * cent shorter than the bare one. First order: the coat's reactance (η/4)(1 − 1/ε) ln(b/a) = 31.3
   * Ω over the slope of the dipole's reactance, 2760 Ω per wavelength by the induced EMF method at
   * a radius of 1e-4 wavelengths, more at a smaller one.
   */
  @Test
  void coatedHalfWaveDipoleIsShorter() {
    double hertz = 7.1e6;
    double bare = resonantLength(Conductor.perfect(1e-3), hertz);
    double coated = resonantLength(wire(1e-3, 1.8e-3, 2.3), hertz);
    assertThat(100 * (bare - coated) / bare).isBetween(1.8, 2.3);
  }

  private static double resonantLength(Conductor conductor, double hertz) {
    double wavelength = PhysicalConstants.wavelength(hertz);
    Solver solver = new Solver();
    return new BrentSolver(1e-5)
        .solve(
            30,
            waves -> {
              double half = 0.5 * waves * wavelength;
              Antenna dipole =
                  Antenna.builder()
                      .wire("dipole", conductor, p(-half, 0, 0), p(half, 0, 0))
                      .feed("feed", "dipole", Position.fraction(0.5))
                      .build();
              return solver.solve(dipole, hertz).impedance().getImaginary();
            },
            0.47,
            0.49);
  }
}
