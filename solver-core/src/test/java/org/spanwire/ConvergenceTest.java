package org.spanwire;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;
import static org.spanwire.LawAntennas.FREQUENCY;
import static org.spanwire.LawAntennas.THIN;
import static org.spanwire.LawAntennas.difference;
import static org.spanwire.LawAntennas.p;

import java.util.stream.Stream;
import org.apache.commons.math3.complex.Complex;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.Arguments;
import org.junit.jupiter.params.provider.MethodSource;
import org.spanwire.geometry.Feed;
import org.spanwire.geometry.Position;
import org.spanwire.medium.Conductor;

/** The stated error holds, and the tolerance asked for is kept. */
class ConvergenceTest {

  static Stream<Arguments> structures() {
    return Stream.of(
        Arguments.of("dipole", LawAntennas.dipole(THIN, 0.5)),
        Arguments.of("offset", LawAntennas.dipole(THIN, 0.15)),
        Arguments.of("thick", LawAntennas.dipole(Conductor.perfect(3e-3), 0.36)),
        Arguments.of("vee", LawAntennas.vee(THIN)),
        Arguments.of("loop", LawAntennas.loop(THIN)),
        Arguments.of("star", LawAntennas.star(THIN)),
        Arguments.of("folded", LawAntennas.foldedDipole(THIN)),
        Arguments.of("yagi", LawAntennas.yagi(THIN)));
  }

  @ParameterizedTest
  @MethodSource("structures")
  void answersAgreeWithinTheStatedError(String name, Antenna antenna) {
    Solution best = new Solver(new SolverOptions(1e-6)).solve(antenna, FREQUENCY);
    double bestError = best.impedanceErrorOhm("feed");
    for (double tolerance : new double[] {1e-2, 1e-3, 1e-4, 1e-5}) {
      Solution solution = new Solver(new SolverOptions(tolerance)).solve(antenna, FREQUENCY);
      double stated = solution.impedanceErrorOhm("feed");
      double actual = solution.impedance().subtract(best.impedance()).abs();
      assertThat(stated).isLessThanOrEqualTo(tolerance * solution.impedance().abs());
      assertThat(actual)
          .as("%s at tolerance %g, |Z| %g", name, tolerance, best.impedance().abs())
          .isLessThanOrEqualTo(stated + bestError);
    }
  }

  /** 20.10 m of wire, 2 mm thick, fed in the centre over a gap of 4 mm, at 7.1 MHz. */
  @Test
  void fortyMetreDipoleIsConvergedInItself() {
    Antenna antenna =
        Antenna.builder()
            .wire("dipole", Conductor.perfect(1e-3), p(-10.05, 0, 0), p(10.05, 0, 0))
            .feed(Feed.of("feed", "dipole", Position.fraction(0.5)).withGap(4e-3))
            .build();
    Solution solution = new Solver().solve(antenna, 7.1e6);
    Complex tight = new Solver(new SolverOptions(1e-4)).solve(antenna, 7.1e6).impedance();
    assertThat(difference(solution.impedance(), tight)).isLessThan(5e-4);
    assertThat(solution.powerBalance().orElseThrow()).isCloseTo(1, within(1e-4));
  }
}
