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
import org.spanwire.medium.Conductor;

/** One factorisation serves any voltages at the feeds. */
class DrivenSolutionTest {

  private static Antenna antenna(Complex first, Complex second) {
    return Antenna.builder()
        .wire("a", Conductor.perfect(1e-3), new Point(0, 0, 0), new Point(10, 0, 0))
        .wire("b", Conductor.perfect(1e-3), new Point(0, 3, 0), new Point(9, 3, 1))
        .feed(Feed.of("one", "a", Position.fraction(0.4)).withVoltage(first))
        .feed(Feed.of("two", "b", Position.fraction(0.5)).withVoltage(second))
        .build();
  }

  @Test
  void equalsASolutionDrivenSoFromTheStart() {
    Solver solver = new Solver();
    Complex first = new Complex(2, -1);
    Complex second = new Complex(0.3, 0.8);
    Solution direct = solver.solve(antenna(first, second), 14e6);
    Solution driven =
        solver.solve(antenna(Complex.ONE, Complex.ONE), 14e6).driven(List.of(first, second));
    assertThat(driven.feedCurrent("two").subtract(direct.feedCurrent("two")).abs())
        .isLessThan(1e-3 * direct.feedCurrent("two").abs());
    Complex[][] y = driven.admittanceMatrix();
    Complex sum = y[0][0].multiply(first).add(y[0][1].multiply(second));
    assertThat(sum.subtract(driven.feedCurrent("one")).abs()).isLessThan(1e-15);
    assertThat(driven.powerBalance().getAsDouble()).isCloseTo(1, within(1e-6));
  }

  @Test
  void refusesAnotherNumberOfVoltages() {
    Solution solution = new Solver().solve(antenna(Complex.ONE, Complex.ONE), 14e6);
    assertThatThrownBy(() -> solution.driven(List.of(Complex.ONE)))
        .isInstanceOf(IllegalArgumentException.class)
        .hasMessageContaining("number of voltages 1");
  }
}
