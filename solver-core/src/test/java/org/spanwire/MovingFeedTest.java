package org.spanwire;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.Random;
import java.util.stream.IntStream;
import org.apache.commons.math3.complex.Complex;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.spanwire.geometry.Feed;
import org.spanwire.geometry.Fitting;
import org.spanwire.geometry.GeometryException;
import org.spanwire.geometry.LumpedImpedance;
import org.spanwire.geometry.Point;
import org.spanwire.geometry.Position;
import org.spanwire.medium.Conductor;
import org.spanwire.medium.Ground;
import org.spanwire.medium.Insulation;
import org.spanwire.medium.Materials;
import org.spanwire.medium.Soils;
import org.spanwire.result.InputImpedance;

/** The judge is the same antenna with its feed really there, solved to a finer tolerance. */
class MovingFeedTest {

  private static final Solver JUDGE = new Solver(SolverOptions.defaults().withTolerance(1e-5));

  private static Antenna.Builder wire(Conductor conductor, double height) {
    return Antenna.builder()
        .wire("radiator", conductor, new Point(0, 0, height), new Point(40, 0, height))
        .feed("main", "radiator", Position.fraction(0.5));
  }

  private static Conductor conductor(String kind) {
    return switch (kind) {
      case "copper" -> Conductor.bare(Materials.COPPER, 1e-3);
      case "steel" -> Conductor.bare(Materials.find("steel").orElseThrow(), 1e-3);
      case "coated" ->
          Conductor.bare(Materials.COPPER, 1e-3).withInsulation(new Insulation(0.8e-3, 2.5, 0.001));
      default -> Conductor.bare(Materials.PERFECT, 1e-3);
    };
  }

  private static List<Position> random(int count, double from, double to, long number) {
    Random random = new Random(number);
    List<Position> places = new ArrayList<>();
    for (int i = 0; i < count; i++) {
      places.add(Position.fraction(from + (to - from) * random.nextDouble()));
    }
    return places;
  }

  private static List<Optional<InputImpedance>> at(
      Solver solver, Antenna antenna, List<Position> places, double frequencyHz) {
    return solver
        .movingFeed(antenna, places, new double[] {frequencyHz}, new double[1], 1)
        .solve(frequencyHz, 0);
  }

  /** Largest difference from the judge over the judge's magnitude. */
  private static double worst(
      Antenna antenna, List<Position> places, List<InputImpedance> got, double frequencyHz) {
    double worst = 0;
    for (int i = 0; i < places.size(); i++) {
      Complex right = JUDGE.solve(antenna.withFeedAt(places.get(i)), frequencyHz).impedance();
      double error = got.get(i).ohm().subtract(right).abs();
      assertThat(error).as("stated error at %s", places.get(i)).isLessThan(got.get(i).errorOhm());
      worst = Math.max(worst, error / right.abs());
    }
    return worst;
  }

  @ParameterizedTest
  @CsvSource({
    "perfect, 3.65, 9, free-space",
    "copper, 7.1, 12, medium-dry",
    "coated, 7.1, 5, wet-ground",
    "steel, 14.2, 6, perfect",
    "coated, 14.2, 11, very-dry",
    "copper, 28.5, 8, medium-dry"
  })
  void everyPlaceIsWhatSolvingItAloneGives(
      String kind, double megahertz, double height, String below) {
    Ground ground =
        switch (below) {
          case "free-space" -> Ground.freeSpace();
          case "perfect" -> Ground.perfect();
          default -> Soils.find(below).orElseThrow();
        };
    Antenna antenna = wire(conductor(kind), height).ground(ground).build();
    List<Position> places = random(6, 0.03, 0.97, 7);
    List<InputImpedance> got = new Solver().solveAlong(antenna, places, megahertz * 1e6);
    assertThat(worst(antenna, places, got, megahertz * 1e6)).isLessThan(1e-3);
  }

  /**
   * The windows are the same for gaps of 2 mm and 60 mm; what these differ by is the correction of
   * an infinitely long wire alone.
   */
  @Test
  void theWidthOfTheGapCounts() {
    Antenna antenna = wire(conductor("perfect"), 8).build();
    List<Position> place = List.of(Position.fraction(0.49));
    Complex[] got = new Complex[2];
    Complex[] right = new Complex[2];
    for (int i = 0; i < 2; i++) {
      Antenna.Builder builder = Antenna.builder().wire(antenna.wires().get(0));
      Feed feed = antenna.feeds().get(0).withGap(i == 0 ? 2e-3 : 60e-3);
      Antenna changed = builder.feed(feed).build();
      got[i] = new Solver().solveAlong(changed, place, 7.1e6).get(0).ohm().reciprocal();
      right[i] = JUDGE.solve(changed.withFeedAt(place.get(0)), 7.1e6).impedance().reciprocal();
    }
    Complex difference = right[0].subtract(right[1]);
    assertThat(difference.abs()).isGreaterThan(0.05 * right[0].abs());
    assertThat(got[0].subtract(got[1]).subtract(difference).abs())
        .isLessThan(2e-3 * difference.abs());
  }

  @Test
  void bentWiresWithATrapAndATerminalCapacitanceToo() {
    Antenna antenna =
        Antenna.builder()
            .wire(
                "vee",
                conductor("copper"),
                new Point(0, 0, 4),
                new Point(13, 0, 10),
                new Point(25, 5, 4))
            .feed(
                new Feed(
                    "main",
                    "vee",
                    Position.fraction(0.3),
                    OptionalDouble.of(0.05),
                    Complex.ONE,
                    5e-12))
            .fitting(
                new Fitting(
                    "trap",
                    "vee",
                    Position.distance(20),
                    OptionalDouble.of(0.04),
                    LumpedImpedance.series(2, 3e-6, 80e-12)))
            .ground(Ground.perfect())
            .build();
    List<Position> places =
        List.of(Position.distance(4), Position.distance(9.3), Position.distance(17.5));
    List<InputImpedance> got = new Solver().solveAlong(antenna, places, 10.1e6);
    assertThat(worst(antenna, places, got, 10.1e6)).isLessThan(1e-3);
  }

  /** Beside ends, bends and traps there is no room for a window; those places are solved alone. */
  @Test
  void crampedPlacesAreLeftToBeSolvedAlone() {
    Antenna antenna = wire(conductor("copper"), 8).build();
    List<Position> places =
        List.of(Position.distance(0.01), Position.fraction(0.3), Position.distance(41));
    List<Optional<InputImpedance>> got = at(new Solver(), antenna, places, 7.1e6);
    assertThat(got.get(0)).isEmpty();
    assertThat(got.get(1)).isPresent();
    assertThat(got.get(2)).isEmpty();
    List<InputImpedance> all = new Solver().solveAlong(antenna, places.subList(0, 2), 7.1e6);
    assertThat(all.get(0).ohm())
        .isEqualTo(new Solver().solve(antenna.withFeedAt(places.get(0)), 7.1e6).impedance());
    assertThatThrownBy(() -> new Solver().solveAlong(antenna, places, 7.1e6))
        .isInstanceOf(GeometryException.class)
        .hasMessageContaining("beyond the end");
  }

  @Test
  void oneMeshServesAllFrequenciesOfABandAndAllHeights() {
    Ground soil = Soils.find("medium-dry").orElseThrow();
    Antenna low = wire(conductor("copper"), 5).ground(soil).build();
    List<Position> places = random(4, 0.1, 0.5, 3);
    double[] frequencies = {14.0e6, 14.05e6, 14.1e6, 14.2e6, 14.35e6};
    MovingFeed moving =
        new Solver().movingFeed(low, places, frequencies, new double[] {-1, 0, 2, 4, 7}, 2);
    for (double lift : new double[] {-1, 4}) {
      Antenna there = wire(conductor("copper"), 5 + lift).ground(soil).build();
      List<InputImpedance> got =
          moving.solve(14.05e6, lift).stream().map(Optional::orElseThrow).toList();
      assertThat(worst(there, places, got, 14.05e6)).isLessThan(1e-3);
    }
  }

  @Test
  void theBitsDoNotDependOnTheNumberOfThreads() {
    Antenna antenna = wire(conductor("copper"), 5).ground(Ground.perfect()).build();
    List<Position> places = random(20, 0.1, 0.5, 3);
    double[] frequencies = {7.0e6, 7.1e6, 7.2e6};
    double[] lifts = {0, 1, 2, 3};
    assertThat(new Solver().movingFeed(antenna, places, frequencies, lifts, 8).solve(7.1e6, 2))
        .isEqualTo(new Solver().movingFeed(antenna, places, frequencies, lifts, 1).solve(7.1e6, 2));
  }

  @Test
  void finerTolerancesAreMet() {
    Antenna antenna = wire(conductor("coated"), 8).build();
    List<Position> places = random(3, 0.1, 0.5, 5);
    Solver fine = new Solver(SolverOptions.defaults().withTolerance(1e-4));
    List<Optional<InputImpedance>> got = at(fine, antenna, places, 14.2e6);
    assertThat(worst(antenna, places, got.stream().map(Optional::orElseThrow).toList(), 14.2e6))
        .isLessThan(1e-4);
  }

  @Test
  void thePlacesDoNotDependOnEachOtherBeyondTheirErrors() {
    Antenna antenna = wire(conductor("copper"), 8).build();
    List<Position> many =
        IntStream.rangeClosed(5, 95).mapToObj(i -> Position.fraction(i / 100.0)).toList();
    InputImpedance one = new Solver().solveAlong(antenna, List.of(many.get(31)), 7.1e6).get(0);
    InputImpedance amongMany = new Solver().solveAlong(antenna, many, 7.1e6).get(31);
    assertThat(one.ohm().subtract(amongMany.ohm()).abs())
        .isLessThan(one.errorOhm() + amongMany.errorOhm());
  }

  @Test
  void severalFeedsAreRefused() {
    Antenna antenna =
        wire(conductor("copper"), 8).feed("second", "radiator", Position.fraction(0.2)).build();
    assertThatThrownBy(() -> at(new Solver(), antenna, List.of(Position.fraction(0.3)), 7e6))
        .hasMessageContaining("must be the only one");
  }
}
