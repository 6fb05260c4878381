package org.spanwire.study;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.assertj.core.api.Assertions.within;

import java.util.List;
import java.util.function.ToDoubleFunction;
import org.junit.jupiter.api.Test;
import org.spanwire.study.MinimumSearch.Minimum;
import org.spanwire.study.MinimumSearch.Variable;

/** On functions whose minima are known. */
class MinimumSearchTest {

  private static final double EULER = 0.57721566490153286;

  /**
   * Feed resistance in ohms of a thin wire of n half waves in free space, fed at a fraction p of
   * its length: 30 (γ + ln 2πn − Ci(2πn)) / sin²(nπp), from the sinusoidal current (C. A. Balanis,
   * Antenna Theory, 3rd edition, section 8.5, from memory). Ci by its asymptotic series, good to
   * 1e-4 from 2π on.
   */
  private static double feedResistance(int n, double p) {
    double x = 2 * Math.PI * n;
    double f = (1 - 2 / (x * x) + 24 / Math.pow(x, 4) - 720 / Math.pow(x, 6)) / x;
    double g = (1 - 6 / (x * x) + 120 / Math.pow(x, 4) - 5040 / Math.pow(x, 6)) / (x * x);
    double ci = Math.sin(x) * f - Math.cos(x) * g;
    double sine = Math.sin(n * Math.PI * p);
    return 30 * (EULER + Math.log(x) - ci) / (sine * sine);
  }

  /** Worst SWR of p and of the reference impedance over bands of n half waves. */
  private static ToDoubleFunction<double[]> worstSwr(double reference, int... halfWaves) {
    return place -> {
      double worst = 1;
      for (int n : halfWaves) {
        double r = feedResistance(n, place[0]);
        worst = Math.max(worst, Math.max(r / reference, reference / r));
      }
      return Math.min(worst, 1000);
    };
  }

  private static List<Minimum> offsets(ToDoubleFunction<double[]> function) {
    return new MinimumSearch(List.of(Variable.between("p", 0.05, 0.45)), 401, 20, 1)
        .run(function, 2);
  }

  private static double place(Minimum minimum) {
    return minimum.place().get(0);
  }

  @Test
  void findsTheFeedPositionForFourBands() {
    List<Minimum> found = offsets(worstSwr(200, 1, 2, 4, 8));
    assertThat(place(found.get(0))).isCloseTo(0.162, within(0.001));
    assertThat(found.get(0).value()).isCloseTo(1.55, within(0.01));
  }

  /** sin²(nπp) is the same at p and 1/2 − p for even n: a tie as long as n = 1 does not bind. */
  @Test
  void twoPlacesWithOneWorstCaseAreATie() {
    List<Minimum> found = offsets(worstSwr(200, 1, 2, 4, 6, 8));
    assertThat(found.subList(0, 2).stream().map(MinimumSearchTest::place).sorted().toList())
        .satisfiesExactly(
            low -> assertThat(low).isCloseTo(0.199, within(0.001)),
            high -> assertThat(high).isCloseTo(0.301, within(0.001)));
    assertThat(found.get(1).value()).isCloseTo(found.get(0).value(), within(1e-4));
    assertThat(found.get(2).value()).isGreaterThan(found.get(0).value() + 0.05);
  }

  @Test
  void nearTieIsFoundToo() {
    List<Minimum> found = offsets(worstSwr(200, 1, 2, 3, 4));
    assertThat(place(found.get(0))).isCloseTo(0.187, within(0.001));
    assertThat(found.get(0).value()).isCloseTo(1.8, within(0.05));
    assertThat(place(found.get(1))).isCloseTo(0.147, within(0.001));
    assertThat(found.get(1).value() - found.get(0).value()).isBetween(0.0, 0.05);
  }

  /** Offset and ratio together do at least as well as each ratio alone. */
  @Test
  void discreteRatiosAreSearchedTogether() {
    ToDoubleFunction<double[]> both =
        place -> worstSwr(50 * place[1], 1, 2, 4, 8).applyAsDouble(place);
    List<Minimum> found =
        new MinimumSearch(
                List.of(
                    Variable.between("p", 0.05, 0.45),
                    Variable.oneOf("ratio", List.of(1.0, 2.0, 4.0, 6.0))),
                401,
                5,
                1)
            .run(both, 2);
    double alone =
        List.of(50.0, 100.0, 200.0, 300.0).stream()
            .mapToDouble(r -> offsets(worstSwr(r, 1, 2, 4, 8)).get(0).value())
            .min()
            .orElseThrow();
    assertThat(found.get(0).value()).isCloseTo(alone, within(1e-4));
    assertThat(List.of(1.0, 2.0, 4.0, 6.0)).contains(found.get(0).place().get(1));
  }

  /** The kinked maximum of two planes and a bowl, whose lowest point is known. */
  @Test
  void severalVariablesWithKinks() {
    ToDoubleFunction<double[]> kinked =
        x -> Math.max(Math.abs(x[0] - 0.3), Math.abs(x[1] + x[0] - 1)) + (x[2] - 2) * (x[2] - 2);
    MinimumSearch search =
        new MinimumSearch(
            List.of(
                Variable.between("a", 0, 1),
                Variable.between("b", 0, 1),
                Variable.between("c", 0, 5)),
            300,
            3,
            7);
    List<Minimum> found = search.run(kinked, 2);
    assertThat(found.get(0).value()).isLessThan(1e-3);
    assertThat(found.get(0).place().get(0)).isCloseTo(0.3, within(2e-3));
    assertThat(found.get(0).place().get(1)).isCloseTo(0.7, within(4e-3));
    assertThat(search.run(kinked, 1)).isEqualTo(found);
  }

  @Test
  void minimumAtABoundIsFound() {
    List<Minimum> found = offsets(place -> place[0]);
    assertThat(place(found.get(0))).isCloseTo(0.05, within(1e-6));
  }

  @Test
  void emptySearchIsRefused() {
    assertThatThrownBy(() -> new MinimumSearch(List.of(), 10, 1, 1))
        .isInstanceOf(IllegalArgumentException.class);
    assertThatThrownBy(() -> Variable.between("p", 1, 0)).hasMessageContaining("no range");
  }
}
