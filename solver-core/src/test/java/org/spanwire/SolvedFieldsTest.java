package org.spanwire;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.assertj.core.api.Assertions.within;

import java.util.List;
import org.apache.commons.math3.complex.Complex;
import org.junit.jupiter.api.Test;
import org.spanwire.geometry.Feed;
import org.spanwire.geometry.Point;
import org.spanwire.geometry.Position;
import org.spanwire.internal.math.GaussLegendre;
import org.spanwire.medium.Conductor;
import org.spanwire.medium.Ground;
import org.spanwire.medium.Soil;
import org.spanwire.result.Direction;
import org.spanwire.result.EffectiveLength;
import org.spanwire.result.NearField;
import org.spanwire.result.RadiatedField;
import org.spanwire.unit.PhysicalConstants;

/** Fields and reception of solved antennas by the laws they must keep. */
class SolvedFieldsTest {

  private static final double HERTZ = 14.2e6;
  private static final double RADIUS = 1e-3;
  private static final double GAP = 4e-3;
  private static final double ETA = PhysicalConstants.IMPEDANCE_OF_FREE_SPACE;

  private static Antenna dipole() {
    return Antenna.builder()
        .wire("dipole", Conductor.perfect(RADIUS), new Point(0, 0, -5), new Point(0, 0, 5))
        .feed(Feed.of("main", "dipole", Position.fraction(0.5)).withGap(GAP))
        .build();
  }

  /** On the metal the current's own field cancels the generator's: −V/g in the gap, 0 elsewhere. */
  @Test
  void theMetalSeesNoTangentialField() {
    Solution solution = new Solver(new SolverOptions(1e-5)).solve(dipole(), HERTZ);
    GaussLegendre rule = GaussLegendre.of(40);
    double volts = 0;
    for (int i = 0; i < rule.size(); i++) {
      double z = 0.5 * GAP * rule.node(i);
      volts +=
          0.5 * GAP * rule.weight(i) * solution.nearField(new Point(RADIUS, 0, z)).ez().getReal();
    }
    assertThat(volts).isCloseTo(-1, within(1e-3));
    for (double z : new double[] {0.0105, 0.3, 1, 2.5, 4, -4.5}) {
      NearField there = solution.nearField(new Point(0, RADIUS, z));
      assertThat(there.ez().abs()).isLessThan(1e-4 * there.electric());
      // Ampère: 2πa H = I.
      double current = solution.current("dipole", 5 + z).abs();
      assertThat(2 * Math.PI * RADIUS * there.magnetic())
          .isCloseTo(current, within(1e-4 * current));
    }
  }

  @Test
  void insideTheMetalIsRefused() {
    Solution solution = new Solver().solve(dipole(), HERTZ);
    assertThatThrownBy(() -> solution.nearFields(List.of(new Point(RADIUS / 2, 0, 1))))
        .isInstanceOf(IllegalArgumentException.class)
        .hasMessageContaining("choose a point outside the conductors");
    assertThat(solution.nearFields(List.of(new Point(1, 0, 1), new Point(2, 0, 1))))
        .extracting(f -> f.point().x())
        .containsExactly(1.0, 2.0);
  }

  private static Antenna invertedV(Ground ground) {
    return Antenna.builder()
        .wire(
            "v",
            Conductor.perfect(RADIUS),
            new Point(-4, 0, 5),
            new Point(0, 1, 9),
            new Point(4, 0, 6))
        .feed("main", "v", Position.fraction(0.4))
        .ground(ground)
        .build();
  }

  @Test
  void nearMeetsFar() {
    for (Ground ground : new Ground[] {Ground.freeSpace(), Ground.perfect(), Soil.of(13, 0.005)}) {
      Solution solution = new Solver().solve(invertedV(ground), HERTZ);
      double r = 3e5;
      double elevation = Math.toRadians(35);
      double azimuth = Math.toRadians(20);
      NearField near =
          solution.nearField(
              new Point(
                  r * Math.cos(elevation) * Math.cos(azimuth),
                  r * Math.cos(elevation) * Math.sin(azimuth),
                  r * Math.sin(elevation)));
      RadiatedField far = solution.farField(new Direction(35, 20));
      double expected = Math.hypot(far.theta().abs(), far.phi().abs());
      assertThat(r * near.electric()).isCloseTo(expected, within(1e-4 * expected));
      double gain = 4 * Math.PI * expected * expected / (ETA * solution.powerBudget().accepted());
      assertThat(solution.gainDbi(new Direction(35, 20)))
          .isCloseTo(10 * Math.log10(gain), within(1e-9));
    }
  }

  /**
   * Power matched to a receiving antenna: |h|²|E|²/4R equals the plane wave's density times λ²/4π
   * times gain (Friis 1946).
   */
  @Test
  void receptionHasTheApertureOfTheGain() {
    for (Ground ground : new Ground[] {Ground.freeSpace(), Soil.of(13, 0.005)}) {
      Solution solution = new Solver().solve(invertedV(ground), HERTZ);
      Direction direction = new Direction(25, 70);
      EffectiveLength length = solution.effectiveLength("main", direction);
      double lambda = PhysicalConstants.wavelength(HERTZ);
      double aperture =
          length.magnitude() * length.magnitude() * ETA / (4 * length.sourceImpedance().getReal());
      double gain = Math.pow(10, 0.1 * solution.gainDbi(direction));
      assertThat(aperture)
          .isCloseTo(gain * lambda * lambda / (4 * Math.PI), within(1e-9 * aperture));
      assertThat(length.sourceImpedance().subtract(solution.impedance()).abs())
          .isLessThan(1e-9 * solution.impedance().abs());
    }
  }

  /**
   * A plane wave is the field of a far short dipole: what it induces at the open feed follows from
   * the mutual impedance of the two as solved together.
   */
  @Test
  void receptionAgreesWithTheMutualImpedance() {
    double distance = 3000;
    double length = 0.2;
    Antenna both =
        invertedV(Ground.freeSpace()).toBuilder()
            .wire(
                "far",
                Conductor.perfect(RADIUS),
                new Point(distance, -0.5 * length, 0),
                new Point(distance, 0.5 * length, 0))
            .feed("far", "far", Position.fraction(0.5))
            .build();
    Solution solved = new Solver(new SolverOptions(1e-4)).solve(both, HERTZ);
    Complex mutual = solved.portMatrix()[0][1];
    // The far dipole's effective length gives its field at the origin for 1 A: E = −jkη h/(4πr).
    EffectiveLength alone = solved.effectiveLength("main", new Direction(0, 0));
    double k = PhysicalConstants.wavenumber(HERTZ);
    Solution far =
        new Solver(new SolverOptions(1e-4))
            .solve(
                Antenna.builder()
                    .wire(
                        "far",
                        Conductor.perfect(RADIUS),
                        new Point(0, -0.5 * length, 0),
                        new Point(0, 0.5 * length, 0))
                    .feed("far", "far", Position.fraction(0.5))
                    .build(),
                HERTZ);
    // From the far dipole the origin lies towards azimuth 180°, where φ points to −y.
    Complex phi = far.effectiveLength("far", new Direction(0, 180)).phi().negate();
    Complex field =
        new Complex(0, -k * ETA / (4 * Math.PI * distance))
            .multiply(new Complex(0, -k * distance).exp())
            .multiply(phi);
    Complex voltage = alone.openCircuitVoltage(Complex.ZERO, field);
    // Z12 = V1/I2 with V1 across the open feed against the generator's sense.
    assertThat(voltage.add(mutual).abs()).isLessThan(5e-3 * mutual.abs());
  }

  @Test
  void lobesOfALongWire() {
    double lambda = PhysicalConstants.wavelength(HERTZ);
    Solution solution =
        new Solver()
            .solve(
                Antenna.builder()
                    .wire(
                        "long",
                        Conductor.perfect(RADIUS),
                        new Point(0, 0, 0.5 * lambda),
                        new Point(2 * lambda, 0, 0.5 * lambda))
                    .feed("main", "long", Position.fraction(0.12))
                    .ground(Ground.perfect())
                    .build(),
                HERTZ);
    assertThat(solution.lobes()).isNotEmpty();
    assertThat(solution.lobes().get(0).gainDbi())
        .isCloseTo(solution.peakGain().gainDbi(), within(1e-6));
    assertThat(solution.lobes()).isSortedAccordingTo((a, b) -> gainOrder(a.gainDbi(), b.gainDbi()));
    // The structure is symmetric about its vertical plane: lobes off it come in pairs.
    long left =
        solution.lobes().stream().filter(l -> side(l.azimuthDegrees().orElse(0)) > 0).count();
    long right =
        solution.lobes().stream().filter(l -> side(l.azimuthDegrees().orElse(0)) < 0).count();
    assertThat(left).isEqualTo(right).isPositive();
    assertThat(solution.directivityDbi())
        .isGreaterThanOrEqualTo(solution.peakGain().gainDbi() - 1e-3);
  }

  private static int gainOrder(double a, double b) {
    return Math.abs(a - b) < 1e-6 ? 0 : Double.compare(b, a);
  }

  private static int side(double azimuth) {
    double sine = Math.sin(Math.toRadians(azimuth));
    return Math.abs(sine) < 1e-4 ? 0 : (int) Math.signum(sine);
  }
}
