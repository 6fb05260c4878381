package org.spanwire;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;
import static org.assertj.core.api.Assertions.withinPercentage;
import static org.spanwire.LawAntennas.FREQUENCY;
import static org.spanwire.LawAntennas.THIN;
import static org.spanwire.LawAntennas.difference;
import static org.spanwire.LawAntennas.p;

import java.util.Optional;
import java.util.OptionalDouble;
import java.util.stream.Stream;
import org.apache.commons.math3.complex.Complex;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.Arguments;
import org.junit.jupiter.params.provider.MethodSource;
import org.spanwire.geometry.Feed;
import org.spanwire.geometry.Fitting;
import org.spanwire.geometry.LumpedImpedance;
import org.spanwire.geometry.Position;
import org.spanwire.medium.Conductor;
import org.spanwire.medium.Ground;
import org.spanwire.medium.Insulation;
import org.spanwire.medium.Materials;
import org.spanwire.result.PowerBudget;

/**
 * Power accepted is power radiated plus power lost; what fittings do. Galerkin testing keeps this
 * balance on any mesh, so it is held to the accuracy of the integrals, not of the mesh.
 */
class PowerBalanceTest {

  private static final Conductor COPPER = Conductor.bare(Materials.COPPER, 1e-4);
  private static final Conductor COATED =
      new Conductor(
          "coated", 1e-4, Materials.COPPER, Optional.of(new Insulation(0.8e-4, 2.3, 0.01)));

  static Stream<Arguments> structures() {
    return Stream.of(THIN, COPPER, COATED)
        .flatMap(
            c ->
                Stream.of(
                    Arguments.of("dipole", LawAntennas.dipole(c, 0.3)),
                    Arguments.of("vee", LawAntennas.vee(c)),
                    Arguments.of("loop", LawAntennas.loop(c)),
                    Arguments.of("star", LawAntennas.star(c)),
                    Arguments.of("folded", LawAntennas.foldedDipole(c)),
                    Arguments.of("yagi", LawAntennas.yagi(c))));
  }

  @ParameterizedTest
  @MethodSource("structures")
  void powerIsConserved(String name, Antenna antenna) {
    Solution solution = new Solver().solve(antenna, FREQUENCY);
    assertThat(solution.powerBalance().orElseThrow()).as(name).isCloseTo(1, within(1e-6));
    PowerBudget budget = solution.powerBudget();
    if (antenna.wires().get(0).conductor().material().isPerfect()) {
      assertThat(budget.conductorLoss()).isZero();
    } else {
      assertThat(budget.conductorLoss()).isGreaterThan(1e-4 * budget.accepted());
    }
  }

  @ParameterizedTest
  @MethodSource("fittings")
  void powerIsConservedWithFittings(String name, LumpedImpedance impedance) {
    Antenna antenna = withFitting(LawAntennas.star(COPPER), "three", 0.4, impedance);
    assertThat(new Solver().solve(antenna, FREQUENCY).powerBalance().orElseThrow())
        .as(name)
        .isCloseTo(1, within(1e-6));
  }

  static Stream<Arguments> fittings() {
    double omega = 2 * Math.PI * FREQUENCY;
    return Stream.of(
        Arguments.of("R", LumpedImpedance.series(50, 0, Double.POSITIVE_INFINITY)),
        Arguments.of("L", LumpedImpedance.series(1, 300 / omega, Double.POSITIVE_INFINITY)),
        Arguments.of("C", LumpedImpedance.series(0, 0, 1 / (200 * omega))),
        Arguments.of("trap", LumpedImpedance.parallel(3, 200 / omega, 1 / (210 * omega))));
  }

  private static Antenna withFitting(
      Antenna antenna, String wire, double fraction, LumpedImpedance impedance) {
    return antenna.toBuilder()
        .fitting(
            new Fitting(
                "fitting", wire, Position.fraction(fraction), OptionalDouble.empty(), impedance))
        .build();
  }

  @Test
  void powerIsConservedOverPerfectGround() {
    Antenna antenna =
        Antenna.builder()
            .wire("up", COPPER, p(0, 0, 0), p(0.02, 0, 0.2))
            .wire("out", COPPER, p(0.02, 0, 0.2), p(0.2, 0.1, 0.15))
            .feed("feed", "up", Position.fraction(0))
            .ground(Ground.perfect())
            .build();
    assertThat(new Solver().solve(antenna, FREQUENCY).powerBalance().orElseThrow())
        .isCloseTo(1, within(1e-6));
  }

  /** Two driven feeds, one of which may take power up. */
  @Test
  void powerIsConservedWithSeveralFeeds() {
    for (Complex second : new Complex[] {Complex.ONE, new Complex(0, 2), new Complex(-1, 0.3)}) {
      Solution solution =
          new Solver(new SolverOptions(1e-4))
              .solve(LawAntennas.pair(Complex.ONE, second), FREQUENCY);
      assertThat(solution.powerBalance().orElseThrow()).isCloseTo(1, within(1e-6));
    }
  }

  /** A resistor next to the feed, where the current is nearly the feed's, adds itself. */
  @Test
  void resistorAtTheFeedAddsItsResistance() {
    Antenna bare = LawAntennas.dipole(THIN, 0.5);
    Solver solver = new Solver(new SolverOptions(1e-4));
    Complex z = solver.solve(bare, FREQUENCY).impedance();
    double ohms = 20;
    Solution loaded =
        solver.solve(
            bare.toBuilder()
                .fitting(
                    new Fitting(
                        "r",
                        "dipole",
                        Position.distance(0.24 + 4e-4),
                        OptionalDouble.of(4e-4),
                        LumpedImpedance.series(ohms, 0, Double.POSITIVE_INFINITY)))
                .build(),
            FREQUENCY);
    assertThat(loaded.impedance().getReal() - z.getReal()).isCloseTo(ohms, withinPercentage(1));
    double current = loaded.feedCurrent("feed").abs();
    assertThat(loaded.powerBudget().fittingLoss())
        .isCloseTo(ohms * current * current, withinPercentage(1));
  }

  /** An open fitting cuts the wire: as good as no current there; a short does nothing. */
  @Test
  void openFittingCutsTheWireAndAShortDoesNothing() {
    Antenna bare = LawAntennas.dipole(THIN, 0.3);
    Solver solver = new Solver(new SolverOptions(1e-4));
    Solution open = solver.solve(withFitting(bare, "dipole", 0.6, f -> Complex.INF), FREQUENCY);
    assertThat(open.current("dipole", 0.6 * 0.48).abs())
        .isLessThan(0.02 * open.feedCurrent("feed").abs());
    Solution large =
        solver.solve(withFitting(bare, "dipole", 0.6, f -> new Complex(1e12, 0)), FREQUENCY);
    assertThat(difference(large.impedance(), open.impedance())).isLessThan(1e-6);
    Solution shorted = solver.solve(withFitting(bare, "dipole", 0.6, f -> Complex.ZERO), FREQUENCY);
    assertThat(difference(shorted.impedance(), solver.solve(bare, FREQUENCY).impedance()))
        .isLessThan(1e-4);
    Solution small =
        solver.solve(withFitting(bare, "dipole", 0.6, f -> new Complex(1e-9, 0)), FREQUENCY);
    assertThat(difference(small.impedance(), shorted.impedance())).isLessThan(1e-9);
  }

  /** A fitting in front of a feed is the same as a generator of that internal impedance. */
  @Test
  void fittingActsLikeThePortMatrixSays() {
    Complex load = new Complex(30, -70);
    Antenna pair = LawAntennas.pair(Complex.ONE, Complex.ZERO);
    Solver solver = new Solver();
    Complex[][] z = solver.solve(pair, FREQUENCY).portMatrix();
    Feed second = pair.feeds().get(1);
    Antenna.Builder builder = Antenna.builder().feed(pair.feeds().get(0));
    pair.wires().forEach(builder::wire);
    builder.fitting(
        new Fitting("load", second.wire(), second.at(), OptionalDouble.empty(), f -> load));
    Complex expected = z[0][0].subtract(z[0][1].multiply(z[1][0]).divide(z[1][1].add(load)));
    assertThat(difference(solver.solve(builder.build(), FREQUENCY).impedance(), expected))
        .isLessThan(1e-9);
  }
}
