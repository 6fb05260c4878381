package org.spanwire;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import java.util.ArrayList;
import java.util.List;
import java.util.stream.IntStream;
import org.apache.commons.math3.complex.Complex;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;
import org.spanwire.geometry.GeometryException;
import org.spanwire.geometry.Point;
import org.spanwire.geometry.Position;
import org.spanwire.medium.Conductor;
import org.spanwire.medium.Ground;
import org.spanwire.medium.Materials;
import org.spanwire.medium.Soil;

/** A family against single solutions, each on its own mesh. */
class SolutionFamilyTest {

  private static final Conductor COPPER = Conductor.bare(Materials.COPPER, 1e-3);

  private static final double[] BANDS =
      IntStream.rangeClosed(0, 13)
          .mapToDouble(i -> i < 7 ? 7e6 + i * 0.2e6 / 6 : 14e6 + (i - 7) * 0.35e6 / 6)
          .toArray();

  private static Antenna wire(Ground ground) {
    return Antenna.builder()
        .wire("radiator", COPPER, new Point(0, 0, 8), new Point(27, 0, 8))
        .feed("main", "radiator", Position.fraction(0.34))
        .ground(ground)
        .build();
  }

  private static Antenna withLine(Ground ground) {
    return Antenna.builder()
        .wire("arm", COPPER, new Point(-9, 0, 7), new Point(0, 0, 9))
        .wire("radiator", COPPER, new Point(0, 0, 9), new Point(13, 2, 8))
        .wire("line", COPPER, new Point(0, 0, 9), new Point(0, 0, 1.5))
        .feed("main", "radiator", Position.distance(0.02))
        .feed("other", "line", Position.fraction(0.4))
        .ground(ground)
        .build();
  }

  /** Every entry of the port matrix within both stated errors. */
  private static void agree(Antenna antenna, Solution found, double tolerance) {
    Solver solver = new Solver(SolverOptions.defaults().withTolerance(tolerance));
    Solution single = solver.solve(antenna, found.frequencyHz());
    antenna
        .feeds()
        .forEach(
            feed -> {
              Complex difference =
                  found.impedance(feed.name()).subtract(single.impedance(feed.name()));
              assertThat(difference.abs())
                  .as("feed %s at %g Hz", feed.name(), found.frequencyHz())
                  .isLessThan(
                      found.impedanceErrorOhm(feed.name()) + single.impedanceErrorOhm(feed.name()));
            });
  }

  @ParameterizedTest
  @ValueSource(doubles = {1e-3, 1e-4})
  void equalsSingleSolutionsWithinTheStatedErrors(double tolerance) {
    Solver solver = new Solver(SolverOptions.defaults().withTolerance(tolerance));
    for (Ground ground : List.of(Ground.freeSpace(), Ground.perfect(), Soil.of(13, 0.005))) {
      for (Antenna antenna : List.of(wire(ground), withLine(ground))) {
        SolutionFamily family = solver.family(antenna, BANDS, new double[1], 2);
        for (double frequency : new double[] {7e6, 7.1234e6, 14.0567e6, 14.35e6}) {
          agree(antenna, family.at(frequency), tolerance);
        }
      }
    }
  }

  @Test
  void solvesAtOtherHeights() {
    Antenna antenna = wire(Soil.of(13, 0.005));
    double[] lifts = IntStream.rangeClosed(0, 20).mapToDouble(i -> 0.5 * i - 3).toArray();
    SolutionFamily family = new Solver().family(antenna, new double[] {14.1e6}, lifts, 2);
    assertThat(family.fills()).isLessThan(lifts.length);
    for (double lift : new double[] {-3, 0, 3.21, 7}) {
      Solution solution = family.at(14.1e6, lift);
      agree(antenna.lifted(lift), solution, 1e-3);
    }
    Solution high = family.at(14.1e6, 7);
    Solution single = new Solver().solve(antenna.lifted(7), 14.1e6);
    assertThat(high.gainAtElevation(20).gainDbi())
        .isCloseTo(
            single.gainAtElevation(20).gainDbi(), org.assertj.core.api.Assertions.within(0.01));
  }

  /** A mesh made for the top of the range serves its bottom too. */
  @Test
  void solvesInTheOrderAsked() {
    Antenna antenna = wire(Ground.perfect());
    List<Solution> solutions = new Solver().solveAll(antenna, 28e6, 3.6e6, 14.2e6, 28e6);
    assertThat(solutions)
        .extracting(Solution::frequencyHz)
        .containsExactly(28e6, 3.6e6, 14.2e6, 28e6);
    solutions.forEach(solution -> agree(antenna, solution, 1e-3));
  }

  @Test
  void servesFrequenciesItWasNotMadeFor() {
    Antenna antenna = wire(Ground.perfect());
    SolutionFamily family = new Solver().family(antenna, BANDS, new double[1], 1);
    agree(antenna, family.at(21.2e6), 1e-3);
    assertThat(family.at(21.2e6).impedance())
        .isEqualTo(new Solver().solve(antenna, 21.2e6).impedance());
  }

  /** A mast on the ground is off it when lifted: every height is solved on its own. */
  @Test
  void liftsWhatStandsOnTheGround() {
    Antenna mast =
        Antenna.builder()
            .wire("mast", COPPER, new Point(0, 0, 0), new Point(0, 0, 10))
            .feed("main", "mast", Position.fraction(0.3))
            .ground(Ground.perfect())
            .build();
    SolutionFamily family =
        new Solver().family(mast, new double[] {7.1e6}, new double[] {0, 0.5}, 1);
    agree(mast, family.at(7.1e6, 0), 1e-3);
    agree(mast.lifted(0.5), family.at(7.1e6, 0.5), 1e-3);
  }

  @Test
  void givesTheSameBitsOnAnyNumberOfThreads() {
    Antenna antenna = withLine(Soil.of(13, 0.005));
    List<Complex> found = new ArrayList<>();
    for (int threads : new int[] {1, 2, 8}) {
      SolutionFamily family = new Solver().family(antenna, BANDS, new double[1], threads);
      found.add(family.at(7.0777e6).impedance());
    }
    assertThat(found).containsOnly(found.get(0));
  }

  @Test
  void refusesWhatASingleSolutionRefuses() {
    Antenna low =
        Antenna.builder()
            .wire("radiator", COPPER, new Point(0, 0, 1), new Point(20, 0, 1))
            .feed("main", "radiator", Position.fraction(0.5))
            .ground(Soil.of(13, 0.005))
            .build();
    assertThatThrownBy(
            () -> new Solver().family(low, new double[] {14e6}, new double[] {-0.999, 0}, 1))
        .isInstanceOf(GeometryException.class);
    assertThatThrownBy(() -> new Solver().solveAll(Antenna.builder().build(), 7e6))
        .isInstanceOf(GeometryException.class)
        .hasMessageContaining("no feed");
  }
}
