package org.spanwire;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import java.util.ArrayList;
import java.util.Collections;
import java.util.List;
import java.util.function.Function;
import org.apache.commons.math3.complex.Complex;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.MethodSource;
import org.spanwire.geometry.Point;
import org.spanwire.geometry.Position;
import org.spanwire.medium.Conductor;
import org.spanwire.medium.Ground;
import org.spanwire.medium.Materials;
import org.spanwire.medium.Soil;
import org.spanwire.result.NearField;

/** The map of near fields against the field at single points. */
class NearFieldMapTest {

  private static final double TOLERANCE = 1e-3;

  private static List<Ground> grounds() {
    return List.of(
        Ground.freeSpace(), Ground.perfect(), Soil.of(13, 0.005), Soil.of(80, 4), Soil.of(3, 1e-4));
  }

  /** An inverted L, so that both potentials and the charges at the bend are in it. */
  private static Solution solve(Ground ground) {
    Antenna antenna =
        Antenna.builder()
            .wire(
                "l",
                Conductor.bare(Materials.COPPER, 0.001),
                new Point(0, 0, 1),
                new Point(0, 0, 6),
                new Point(9, 2, 6))
            .feed("main", "l", Position.fraction(0.3))
            .ground(ground)
            .build();
    return new Solver().solve(antenna, 14.1e6);
  }

  /** From beside the tube to many wavelengths away, on the ground and above the wire. */
  private static List<Point> places() {
    List<Point> places = new ArrayList<>();
    for (double distance : new double[] {0.01, 0.05, 0.2, 1, 5, 20, 150}) {
      for (double z : new double[] {0, 0.5, 2, 5.99, 12}) {
        places.add(new Point(-distance, 0.3 * distance, z));
        places.add(new Point(4 + 0.4 * distance, 1 + distance, z));
      }
    }
    return places;
  }

  private static double difference(Complex[] a, Complex[] b) {
    double sum = 0;
    double size = 0;
    for (int i = 0; i < 3; i++) {
      sum += Math.pow(a[i].subtract(b[i]).abs(), 2);
      size += Math.pow(b[i].abs(), 2);
    }
    return Math.sqrt(sum / size);
  }

  @ParameterizedTest
  @MethodSource("grounds")
  void agreesWithTheFieldAtPoints(Ground ground) {
    Solution solution = solve(ground);
    Function<Point, NearField> map = solution.nearFieldMap(TOLERANCE);
    for (Point place : places()) {
      NearField exact = solution.nearField(place);
      NearField found = map.apply(place);
      double electric =
          difference(
              new Complex[] {found.ex(), found.ey(), found.ez()},
              new Complex[] {exact.ex(), exact.ey(), exact.ez()});
      double magnetic =
          difference(
              new Complex[] {found.hx(), found.hy(), found.hz()},
              new Complex[] {exact.hx(), exact.hy(), exact.hz()});
      assertThat(Math.max(electric, magnetic)).as(place.toString()).isLessThan(TOLERANCE);
    }
  }

  @Test
  void valuesDoNotDependOnWhatWasAskedForBefore() {
    Solution solution = solve(Soil.of(13, 0.005));
    List<Point> places = places();
    Function<Point, NearField> forward = solution.nearFieldMap(TOLERANCE);
    List<NearField> first = places.stream().map(forward).toList();
    Collections.reverse(places);
    Function<Point, NearField> backward = solution.nearFieldMap(TOLERANCE);
    List<NearField> second = new ArrayList<>(places.stream().map(backward).toList());
    Collections.reverse(second);
    assertThat(second).isEqualTo(first);
  }

  @Test
  void refusesTheInsideOfAConductorAndTheGround() {
    Function<Point, NearField> map = solve(Soil.of(13, 0.005)).nearFieldMap(TOLERANCE);
    assertThatThrownBy(() -> map.apply(new Point(0, 0, 3)))
        .hasMessageContaining("inside its radius");
    assertThatThrownBy(() -> map.apply(new Point(1, 0, -1))).hasMessageContaining("below");
  }
}
