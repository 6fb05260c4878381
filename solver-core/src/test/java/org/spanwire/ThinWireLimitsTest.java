package org.spanwire;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.withinPercentage;
import static org.spanwire.LawAntennas.FREQUENCY;
import static org.spanwire.LawAntennas.p;

import java.util.List;
import org.apache.commons.math3.analysis.solvers.BrentSolver;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.spanwire.geometry.Feed;
import org.spanwire.geometry.Point;
import org.spanwire.geometry.Position;
import org.spanwire.medium.Conductor;
import org.spanwire.medium.Ground;
import org.spanwire.medium.Insulation;
import org.spanwire.medium.Soil;
import org.spanwire.result.Warning;

class ThinWireLimitsTest {

  private static final double RADIUS = 1e-3;
  private static final Conductor WIRE = Conductor.perfect(RADIUS);

  private static List<Warning> warnings(Antenna.Builder antenna) {
    return ThinWireLimits.warnings(antenna.build(), FREQUENCY);
  }

  private static List<String> names(Antenna.Builder antenna) {
    return warnings(antenna).stream().map(Warning::name).toList();
  }

  private static Antenna.Builder wire(Conductor conductor, Point... path) {
    return Antenna.builder().wire("wire", conductor, path);
  }

  @Test
  void ordinaryAntennasAreFreeOfWarnings() {
    for (Antenna antenna :
        List.of(
            LawAntennas.dipole(WIRE, 0.3),
            LawAntennas.vee(WIRE),
            LawAntennas.loop(WIRE),
            LawAntennas.star(WIRE),
            LawAntennas.yagi(WIRE))) {
      assertThat(ThinWireLimits.warnings(antenna, FREQUENCY)).isEmpty();
    }
  }

  @Test
  void radiusOverWavelength() {
    assertThat(names(wire(Conductor.perfect(0.0099), p(0, 0, 0), p(1, 0, 0)))).isEmpty();
    assertThat(names(wire(Conductor.perfect(0.0101), p(0, 0, 0), p(1, 0, 0))))
        .containsExactly("radius-over-wavelength");
  }

  @Test
  void lengthOverRadius() {
    assertThat(names(wire(WIRE, p(0, 0, 0), p(0.0201, 0, 0)))).isEmpty();
    assertThat(names(wire(WIRE, p(0, 0, 0), p(0.0199, 0, 0))))
        .containsExactly("length-over-radius");
  }

  /** k b √ε = 0.1: b = 0.1/(2π · 2) wavelengths for permittivity 4. */
  @Test
  void coatOverWavelength() {
    double limit = 0.1 / (4 * Math.PI);
    for (double factor : new double[] {0.99, 1.01}) {
      Conductor coated = WIRE.withInsulation(new Insulation(factor * limit - RADIUS, 4, 0));
      List<String> names = names(wire(coated, p(0, 0, 0), p(1, 0, 0)));
      assertThat(names.contains("coat-over-wavelength")).isEqualTo(factor > 1);
    }
  }

  private static Antenna.Builder pair(double spacing) {
    return wire(WIRE, p(0, 0, 0), p(0.3, 0, 0))
        .wire("other", WIRE, p(0.05, spacing, 0), p(0.35, spacing, 0));
  }

  /**
   * Two-wire line: exact impedance (η/π) arcosh(D/d), check values for D/d = 2.5, 5 and 10, against
   * (η/π) ln(2D/d); the limit, 0.1 %, lies at D/d = 9.3.
   */
  @ParameterizedTest
  @CsvSource({"2.5, 187.8858379", "5, 274.9014902"})
  void spacingOverRadiusStatesTheErrorOfTheLine(double ratio, double exact) {
    double thin = 376.730313668 / Math.PI * Math.log(2 * ratio);
    List<Warning> warnings = warnings(pair(2 * RADIUS * ratio));
    assertThat(warnings).hasSize(1);
    assertThat(warnings.get(0).name()).isEqualTo("spacing-over-radius");
    assertThat(warnings.get(0).message())
        .contains("wires 'wire' and 'other'")
        .contains(
            String.format(java.util.Locale.ROOT, "%.2g %% too high", 100 * (thin / exact - 1)));
  }

  /**
   * The solver's line is indeed that of an evenly spread current. Reactance of a shorted pair of
   * length L, fed across its other end, Z0 tan k(L + d), at three lengths: Z0 with the end effect d
   * taken out.
   */
  @Test
  void solvedLineHasTheImpedanceThatTheWarningSays() {
    double[] lengths = {0.03, 0.08, 0.13};
    double[] x = new double[3];
    for (int i = 0; i < 3; i++) {
      x[i] = shortedPair(lengths[i]);
    }
    double end =
        new BrentSolver(1e-9)
            .solve(
                100,
                d ->
                    (x[1] - x[0]) / (tan(lengths[1], d) - tan(lengths[0], d))
                        - (x[2] - x[1]) / (tan(lengths[2], d) - tan(lengths[1], d)),
                -0.01,
                0.02);
    double impedance = (x[2] - x[0]) / (tan(lengths[2], end) - tan(lengths[0], end));
    double thin = 376.730313668 / Math.PI * Math.log(10);
    assertThat(impedance).isCloseTo(thin, withinPercentage(0.01));
  }

  private static double tan(double length, double end) {
    return Math.tan(2 * Math.PI * (length + end));
  }

  /** Wires of 1e-5 wavelengths radius at a spacing of 5 diameters. */
  private static double shortedPair(double length) {
    double d = 1e-4;
    Antenna antenna =
        wire(
                Conductor.perfect(1e-5),
                p(0, 0, 0),
                p(length, 0, 0),
                p(length, d, 0),
                p(0, d, 0),
                p(0, 0, 0))
            .feed(
                Feed.of("feed", "wire", Position.distance(2 * length + 1.5 * d)).withGap(0.25 * d))
            .build();
    return new Solver(new SolverOptions(1e-4)).solve(antenna, FREQUENCY).impedance().getImaginary();
  }

  @Test
  void spacingOverRadiusHasItsLimit() {
    assertThat(names(pair(2 * RADIUS * 9.2))).containsExactly("spacing-over-radius");
    assertThat(names(pair(2 * RADIUS * 9.4))).isEmpty();
    double thin = 376.730313668 / Math.PI * Math.log(20);
    assertThat(thin / 358.9382539 - 1).isLessThan(1e-3);
  }

  @Test
  void stretchesOfOneWireCountToo() {
    double d = 10 * RADIUS;
    assertThat(names(wire(WIRE, p(0, 0, 0), p(1, 0, 0), p(1, d, 0), p(0, d, 0))))
        .containsExactly("spacing-over-radius");
  }

  @Test
  void wiresThatCrossOrFollowEachOtherDoNotLieSideBySide() {
    double d = 10 * RADIUS;
    assertThat(
            names(
                wire(WIRE, p(0, 0, 0), p(1, 0, 0))
                    .wire("across", WIRE, p(0.5, -0.5, d), p(0.5, 0.5, d))
                    .wire("behind", WIRE, p(1.1, d, 0), p(2, d, 0))))
        .isEmpty();
  }

  @Test
  void heightOverRadius() {
    double low = RADIUS * 9.2;
    double high = RADIUS * 9.4;
    for (Ground ground : List.of(Ground.perfect(), Soil.of(13, 0.005))) {
      assertThat(names(wire(WIRE, p(0, 0, low), p(1, 0, low)).ground(ground)))
          .containsExactly("height-over-radius");
      assertThat(names(wire(WIRE, p(0, 0, high), p(1, 0, high)).ground(ground))).isEmpty();
    }
    assertThat(names(wire(WIRE, p(0, 0, low), p(1, 0, low)))).isEmpty();
    assertThat(names(wire(WIRE, p(0, 0, low), p(0, 0, 1)).ground(Ground.perfect()))).isEmpty();
  }

  @Test
  void sharpBend() {
    for (double degrees : new double[] {14.9, 15.1, 170}) {
      double angle = Math.toRadians(degrees);
      Point end = p(Math.cos(angle), Math.sin(angle), 0);
      List<String> expected = degrees < 15 ? List.of("sharp-bend") : List.of();
      assertThat(names(wire(WIRE, p(1, 0, 0), p(0, 0, 0), end))).isEqualTo(expected);
      Antenna.Builder joined = wire(WIRE, p(0, 0, 0), p(1, 0, 0));
      assertThat(names(joined.wire("other", WIRE, p(0, 0, 0), end))).isEqualTo(expected);
    }
  }

  @Test
  void warningsComeWithTheSolution() {
    Antenna antenna = pair(10 * RADIUS).feed("feed", "wire", Position.fraction(0.5)).build();
    assertThat(new Solver().solve(antenna, FREQUENCY).warnings())
        .isEqualTo(ThinWireLimits.warnings(antenna, FREQUENCY))
        .hasSize(1);
  }
}
