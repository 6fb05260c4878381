package org.spanwire.practice;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.assertj.core.api.Assertions.within;

import java.util.List;
import java.util.OptionalDouble;
import org.apache.commons.math3.complex.Complex;
import org.junit.jupiter.api.BeforeAll;
import org.junit.jupiter.api.Test;
import org.spanwire.Antenna;
import org.spanwire.Solution;
import org.spanwire.Solver;
import org.spanwire.SolverOptions;
import org.spanwire.circuit.bench.OperatingMode;
import org.spanwire.geometry.Feed;
import org.spanwire.geometry.Fitting;
import org.spanwire.geometry.LumpedImpedance;
import org.spanwire.geometry.Point;
import org.spanwire.geometry.Position;
import org.spanwire.medium.Conductor;
import org.spanwire.medium.Ground;
import org.spanwire.medium.Materials;

class RatingsTest {

  private static final double FREQUENCY = 7.1e6;
  private static final Conductor COPPER = Conductor.bare(Materials.COPPER, 0.001);

  private static Antenna antenna;
  private static Solution solution;
  private static Ratings ratings;

  @BeforeAll
  static void solveOnce() {
    antenna =
        Antenna.builder()
            .wire("radiator", COPPER, new Point(0, 0, 10), new Point(20.4, 0, 10))
            .feed(Feed.of("main", "radiator", Position.fraction(0.36)).withGap(0.02))
            .ground(Ground.perfect())
            .build();
    solution = new Solver().solve(antenna, FREQUENCY);
    ratings = new Ratings(antenna, solution, 100);
  }

  /** V·I·cos φ at the feed is the power it was scaled to. */
  @Test
  void feedTakesTheStatedPower() {
    double amperes = ratings.feedAmperes("main");
    double resistance = solution.impedance("main").getReal();
    assertThat(amperes * amperes * resistance).isCloseTo(100, within(1e-9));
    assertThat(ratings.feedVolts("main"))
        .isCloseTo(amperes * solution.impedance("main").abs(), within(1e-9));
  }

  /** Heat along the wire adds up to the conductor loss of the power budget. */
  @Test
  void heatAddsUpToTheLossOfTheWire() {
    int count = 2000;
    double sum = 0;
    List<Ratings.Place> places = ratings.places(count);
    for (Ratings.Place place : places) {
      sum += place.heat();
    }
    double watts = sum / count * 20.4;
    var budget = solution.powerBudget();
    double expected = 100 * budget.conductorLoss() / budget.accepted();
    assertThat(watts).isCloseTo(expected, within(0.005 * expected));
  }

  /**
   * In the static limit a wire is an equipotential, and the arms of a dipole differ by the voltage
   * of the feed. Everything about the potential is in this: charge, kernel, quadrature, scale.
   */
  @Test
  void armsOfAShortDipoleDifferByTheFeedVoltage() {
    for (Ground ground : List.of(Ground.freeSpace(), Ground.perfect())) {
      Antenna dipole =
          Antenna.builder()
              .wire("short", COPPER, new Point(0, 0, 3), new Point(2, 0, 3))
              .feed(Feed.of("main", "short", Position.fraction(0.4)).withGap(0.01))
              .ground(ground)
              .build();
      Solution small = new Solver(new SolverOptions(1e-5)).solve(dipole, 100e3);
      ChargePotential potential = new ChargePotential(dipole, small);
      Complex first = potential.at(new Point(0.4, 0, 3));
      Complex near = potential.at(new Point(0.7, 0, 3));
      Complex second = potential.at(new Point(1.5, 0, 3));
      assertThat(first.subtract(near).abs()).as("one arm").isLessThan(2e-3);
      assertThat(second.subtract(first).subtract(Complex.ONE).abs()).isLessThan(2e-3);
    }
  }

  /**
   * The trade's V_end = 60 I (ln(2L/a) − 1) for a half-wave wire in free space with current I in
   * its middle (from memory), good to some ten percent.
   */
  @Test
  void endVoltageIsThatOfTheTrade() {
    Antenna free = antenna.toBuilder().ground(Ground.freeSpace()).build();
    Solution solved = new Solver().solve(free, FREQUENCY);
    Ratings rated = new Ratings(free, solved, 100);
    List<Ratings.Place> places = rated.places(101);
    double loop = places.stream().mapToDouble(Ratings.Place::amperes).max().orElseThrow();
    double trade = 60 * loop * (Math.log(2 * 20.4 / 0.001) - 1);
    assertThat(places.get(0).volts()).isCloseTo(trade, within(0.15 * trade));
    assertThat(places.get(0).peakVolts()).isBetween(900.0, 1300.0);
    assertThat(places.get(50).volts()).isLessThan(0.2 * places.get(0).volts());
  }

  /** Voltages and currents go with the root of the power; limits stay where they are. */
  @Test
  void limitsDoNotDependOnThePowerTheyAreComputedAt() {
    Ratings ten = new Ratings(antenna, solution, 1000);
    assertThat(ten.places(5).get(0).volts() / ratings.places(5).get(0).volts())
        .isCloseTo(Math.sqrt(10), within(1e-12));
    List<Ratings.Limit> one = limits(ratings);
    List<Ratings.Limit> other = limits(ten);
    for (int i = 0; i < one.size(); i++) {
      assertThat(other.get(i).watts())
          .isCloseTo(one.get(i).watts(), within(1e-9 * one.get(i).watts()));
    }
    assertThat(one).hasSize(2);
  }

  private static List<Ratings.Limit> limits(Ratings rated) {
    return rated.limits(41, Corona.WEATHERED, WireCooling.SUMMER, OperatingMode.DATA);
  }

  @Test
  void atItsLimitAWireIsAtItsOnset() {
    double corona =
        limits(ratings).stream()
            .filter(l -> l.cause() == Ratings.Limit.Cause.CORONA)
            .findFirst()
            .orElseThrow()
            .watts();
    double field =
        new Ratings(antenna, solution, corona)
            .places(41).stream().mapToDouble(Ratings.Place::surfaceField).max().orElseThrow();
    assertThat(field).isCloseTo(Corona.WEATHERED.onset(0.001), within(1.0));
  }

  @Test
  void dutyRelievesHeatOnly() {
    assertThat(
            new Ratings.Limit("w", Ratings.Limit.Cause.HEAT, 100).envelopeWatts(OperatingMode.SSB))
        .isEqualTo(500);
    assertThat(
            new Ratings.Limit("w", Ratings.Limit.Cause.CORONA, 100)
                .envelopeWatts(OperatingMode.SSB))
        .isEqualTo(100);
  }

  /** By hand: 30 · 0.8 · (1 + 0.301/√0.1) kV/cm for a radius of 1 mm. */
  @Test
  void coronaFollowsPeek() {
    assertThat(Corona.WEATHERED.onset(0.001))
        .isCloseTo(30e5 * 0.8 * (1 + 0.301 / Math.sqrt(0.1)), within(1e-3));
  }

  /**
   * By hand for 2 mm, 40 °C to 70 °C, with the air's table interpolated at 328.15 K (28.4 mW/mK,
   * 18.7 mm²/s, 26.7 mm²/s): Ra = 14.37, Nu = 1.211, 3.240 W/m by convection and 0.757 W/m by
   * radiation.
   */
  @Test
  void coolingAgreesWithTheCorrelationByHand() {
    assertThat(WireCooling.SUMMER.wattsPerMetre(0.002)).isCloseTo(3.997, within(0.02));
  }

  @Test
  void fittingIsRatedByItsOwnVoltageAndLoss() {
    Antenna loaded =
        antenna.toBuilder()
            .fitting(
                new Fitting(
                    "resistor",
                    "radiator",
                    Position.fraction(0.6),
                    OptionalDouble.of(0.02),
                    LumpedImpedance.series(20, 0, Double.POSITIVE_INFINITY)))
            .build();
    Solution solved = new Solver().solve(loaded, FREQUENCY);
    Ratings rated = new Ratings(loaded, solved, 100);
    var budget = solved.powerBudget();
    double expected = 100 * budget.fittingLoss() / budget.accepted();
    assertThat(rated.fittingWatts("resistor")).isCloseTo(expected, within(1e-9 * expected));
    assertThat(rated.fittingVolts("resistor"))
        .isCloseTo(Math.sqrt(expected * 20), within(1e-9 * expected * 20));
  }

  @Test
  void refusesWhatCannotBeRated() {
    assertThatThrownBy(() -> new Ratings(antenna, solution, 0))
        .hasMessageContaining("must be positive");
    assertThatThrownBy(() -> ratings.feedVolts("other")).hasMessageContaining("no feed 'other'");
  }
}
