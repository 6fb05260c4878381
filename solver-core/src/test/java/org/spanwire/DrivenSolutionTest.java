package org.spanwire;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.assertj.core.api.Assertions.within;

import java.util.List;
import org.apache.commons.math3.complex.Complex;
import org.junit.jupiter.api.Test;
import org.spanwire.geometry.Feed;
import org.spanwire.geometry.Fitting;
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

  /** Against a fitting that was there from the start; the meshes may differ. */
  @Test
  void aClosedFeedIsAFitting() {
    Complex z = new Complex(300, -120);
    Solver solver = new Solver();
    Solution closed = solver.solve(antenna(Complex.ONE, Complex.ONE), 14e6).closed(f -> z);
    Antenna both = antenna(Complex.ONE, Complex.ONE);
    Antenna.Builder fitted = Antenna.builder().feed(both.feeds().get(0));
    both.wires().forEach(fitted::wire);
    Feed second = both.feeds().get(1);
    fitted.fitting(new Fitting(second.name(), second.wire(), second.at(), second.gap(), f -> z));
    Solution direct = solver.solve(fitted.build(), 14e6);
    assertThat(closed.impedance().subtract(direct.impedance()).abs())
        .isLessThan(2e-3 * direct.impedance().abs());
    assertThat(closed.fittingVoltage("two").subtract(direct.fittingVoltage("two")).abs())
        .isLessThan(2e-3 * direct.fittingVoltage("two").abs());
    assertThat(closed.powerBudget().fittingLoss()).isPositive();
    assertThat(closed.powerBalance().getAsDouble()).isCloseTo(1, within(1e-6));
    assertThatThrownBy(() -> closed.closed(f -> z))
        .isInstanceOf(IllegalArgumentException.class)
        .hasMessageContaining("one of several");
  }

  @Test
  void refusesAnotherNumberOfVoltages() {
    Solution solution = new Solver().solve(antenna(Complex.ONE, Complex.ONE), 14e6);
    assertThatThrownBy(() -> solution.driven(List.of(Complex.ONE)))
        .isInstanceOf(IllegalArgumentException.class)
        .hasMessageContaining("number of voltages 1");
  }
}
