package org.spanwire;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.assertj.core.api.Assertions.within;

import java.util.OptionalDouble;
import org.apache.commons.math3.complex.Complex;
import org.junit.jupiter.api.Test;
import org.spanwire.geometry.Fitting;
import org.spanwire.geometry.LumpedImpedance;
import org.spanwire.geometry.Position;
import org.spanwire.medium.Conductor;
import org.spanwire.unit.PhysicalConstants;

/** Charge per length is bound to the current by conservation of charge, dI/ds = −jωq. */
class ChargeTest {

  private static final double OMEGA = 2 * Math.PI * LawAntennas.FREQUENCY;

  private static Solution solve(Antenna antenna) {
    return new Solver().solve(antenna, LawAntennas.FREQUENCY);
  }

  /** Trapezium rule from a distance to another. */
  private static Complex integral(Solution solution, String wire, double from, double to) {
    int steps = 20_000;
    Complex sum = Complex.ZERO;
    for (int i = 0; i <= steps; i++) {
      Complex q = solution.charge(wire, from + (to - from) * i / steps);
      sum = sum.add(q.multiply(i == 0 || i == steps ? 0.5 : 1));
    }
    return sum.multiply((to - from) / steps);
  }

  @Test
  void chargeBetweenTwoPlacesIsWhatTheCurrentsLeaveThere() {
    Solution solution = solve(LawAntennas.dipole(LawAntennas.THIN, 0.3));
    double from = 0.17;
    double to = 0.41;
    Complex left = solution.current("dipole", from).subtract(solution.current("dipole", to));
    Complex charge = integral(solution, "dipole", from, to).multiply(new Complex(0, OMEGA));
    assertThat(charge.subtract(left).abs()).isLessThan(1e-6 * left.abs());
  }

  @Test
  void anIsolatedWireHoldsNoChargeInAll() {
    Solution solution = solve(LawAntennas.dipole(LawAntennas.THIN, 0.3));
    double most = 0;
    Complex total = Complex.ZERO;
    // Fine steps at the ends and at the feed, where the charge varies on the scale of the radius.
    double[] places = {0, 0.01, 0.134, 0.154, 0.47, 0.48};
    for (int i = 1; i < places.length; i++) {
      Complex part = integral(solution, "dipole", places[i - 1], places[i]);
      total = total.add(part);
      most = Math.max(most, part.abs());
    }
    assertThat(total.abs()).isLessThan(1e-4 * most);
  }

  @Test
  void chargeHasOppositeSignsOnTheArmsAndIsLargestAtTheEnds() {
    Solution solution = solve(LawAntennas.dipole(LawAntennas.THIN, 0.5));
    Complex one = solution.charge("dipole", 0.02);
    Complex other = solution.charge("dipole", 0.46);
    assertThat(one.add(other).abs()).isLessThan(1e-6 * one.abs());
    assertThat(solution.charge("dipole", 0.001).abs()).isGreaterThan(one.abs());
    assertThat(solution.charge("dipole", 0.15).abs()).isLessThan(one.abs());
  }

  /**
   * A short wire's arms are charged like a capacitor: static charge per length C'V/2 with C' =
   * 2πε0/(ln(h/a) − 1) for arms of length h (Schelkunoff and Friis 1952, chapter 10: mean of the
   * potential of a uniform charge), good to about a percent in the mean.
   */
  @Test
  void shortWireIsACapacitor() {
    double h = 0.005;
    double a = 1e-6;
    Antenna antenna =
        Antenna.builder()
            .wire("short", Conductor.perfect(a), LawAntennas.p(-h, 0, 0), LawAntennas.p(h, 0, 0))
            .feed("feed", "short", Position.fraction(0.5))
            .build();
    Solution solution = solve(antenna);
    Complex mean = integral(solution, "short", 1.001 * h, 1.999 * h).divide(0.998 * h);
    double expected = Math.PI * PhysicalConstants.ELECTRIC_CONSTANT / (Math.log(h / a) - 1);
    assertThat(mean.abs()).isCloseTo(expected, within(0.03 * expected));
    // A positive feed drives charge toward the far end.
    assertThat(mean.getReal()).isPositive();
  }

  @Test
  void fittingVoltageIsCurrentTimesImpedance() {
    double ohms = 70;
    Antenna antenna =
        LawAntennas.dipole(LawAntennas.THIN, 0.3).toBuilder()
            .fitting(
                new Fitting(
                    "resistor",
                    "dipole",
                    Position.fraction(0.6),
                    OptionalDouble.of(2e-4),
                    LumpedImpedance.series(ohms, 0, Double.POSITIVE_INFINITY)))
            .build();
    Solution solution = solve(antenna);
    Complex across = solution.fittingVoltage("resistor");
    Complex current = solution.current("dipole", 0.6 * 0.48);
    // The voltage opposes the current that it hinders.
    assertThat(across.add(current.multiply(ohms)).abs()).isLessThan(1e-3 * across.abs());
  }

  @Test
  void aPlaceOffTheWireIsRefused() {
    Solution solution = solve(LawAntennas.dipole(LawAntennas.THIN, 0.5));
    assertThatThrownBy(() -> solution.charge("dipole", 0.5))
        .hasMessageContaining("must lie on wire 'dipole'");
  }
}
