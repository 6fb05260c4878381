package org.spanwire;

import static org.assertj.core.api.Assertions.assertThat;
import static org.spanwire.LawAntennas.THIN;
import static org.spanwire.LawAntennas.difference;
import static org.spanwire.LawAntennas.impedance;
import static org.spanwire.LawAntennas.p;

import java.util.ArrayList;
import java.util.List;
import java.util.OptionalDouble;
import java.util.stream.Stream;
import org.apache.commons.math3.complex.Complex;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.Arguments;
import org.junit.jupiter.params.provider.MethodSource;
import org.spanwire.geometry.Feed;
import org.spanwire.geometry.Point;
import org.spanwire.geometry.Position;
import org.spanwire.geometry.Wire;
import org.spanwire.medium.Ground;

/** Image theory over perfect ground. */
class GroundLawsTest {

  private static final double TOLERANCE = 1e-4;

  static Stream<Arguments> wires() {
    return Stream.of(
        Arguments.of("horizontal", List.of(p(-0.24, 0, 0.1), p(0.24, 0, 0.1))),
        Arguments.of("low", List.of(p(-0.24, 0, 0.005), p(0.24, 0, 0.005))),
        Arguments.of("vertical", List.of(p(0, 0, 0.05), p(0, 0, 0.5))),
        Arguments.of("slanted", List.of(p(-0.1, 0.05, 0.02), p(0.2, 0.1, 0.4))),
        Arguments.of("bent", List.of(p(-0.2, 0, 0.1), p(0, 0.03, 0.3), p(0.15, 0.1, 0.08))));
  }

  /**
   * A wire over perfect ground and the same with its image in free space, the image driven so that
   * charges are opposite: its current, run along the mirrored path, is reversed.
   */
  @ParameterizedTest
  @MethodSource("wires")
  void wireOverPerfectGroundIsAPairInFreeSpace(String name, List<Point> path) {
    Antenna over =
        Antenna.builder()
            .wire(new Wire("real", THIN, path))
            .feed("feed", "real", Position.fraction(0.35))
            .ground(Ground.perfect())
            .build();
    List<Point> mirrored = new ArrayList<>();
    path.forEach(q -> mirrored.add(p(q.x(), q.y(), -q.z())));
    Antenna pair =
        Antenna.builder()
            .wire(new Wire("real", THIN, path))
            .wire(new Wire("image", THIN, mirrored))
            .feed("feed", "real", Position.fraction(0.35))
            .feed(
                Feed.of("mirror", "image", Position.fraction(0.35))
                    .withVoltage(Complex.ONE.negate()))
            .build();
    assertThat(difference(impedance(over, TOLERANCE), impedance(pair, TOLERANCE)))
        .as(name)
        .isLessThan(1e-6);
  }

  /** A wire that stands on perfect ground, fed at its base, is half of the wire and its image. */
  @ParameterizedTest
  @MethodSource("monopoles")
  void monopoleIsHalfOfADipole(String name, List<Point> path) {
    double gap = 4e-4;
    Feed base = new Feed("feed", "wire", Position.fraction(0), OptionalDouble.of(gap), Complex.ONE);
    Antenna monopole =
        Antenna.builder()
            .wire(new Wire("wire", THIN, path))
            .feed(base)
            .ground(Ground.perfect())
            .build();
    List<Point> both = new ArrayList<>();
    for (int i = path.size() - 1; i > 0; i--) {
      both.add(p(path.get(i).x(), path.get(i).y(), -path.get(i).z()));
    }
    both.addAll(path);
    Antenna dipole =
        Antenna.builder()
            .wire(new Wire("wire", THIN, both))
            .feed(
                new Feed(
                    "feed", "wire", Position.fraction(0.5), OptionalDouble.of(gap), Complex.ONE))
            .build();
    assertThat(difference(impedance(monopole, TOLERANCE).multiply(2), impedance(dipole, TOLERANCE)))
        .as(name)
        .isLessThan(1e-6);
  }

  static Stream<Arguments> monopoles() {
    return Stream.of(
        Arguments.of("vertical", List.of(p(0, 0, 0), p(0, 0, 0.24))),
        Arguments.of("slanted", List.of(p(0, 0, 0), p(0.1, 0.05, 0.24))),
        Arguments.of("inverted L", List.of(p(0, 0, 0), p(0, 0, 0.1), p(0.15, 0, 0.1))));
  }

  /** Far above the ground its effect fades. */
  @Test
  void highWireForgetsTheGround() {
    Antenna low = LawAntennas.dipole(THIN, 0.5);
    Antenna high =
        LawAntennas.moved(low, q -> p(q.x(), q.y(), q.z() + 200)).toBuilder()
            .ground(Ground.perfect())
            .build();
    assertThat(difference(impedance(high, TOLERANCE), impedance(low, TOLERANCE)))
        .isBetween(1e-7, 2e-3);
  }

  /** Turned about the vertical, or moved along the surface, nothing changes. */
  @Test
  void turningAboutTheVerticalChangesNothing() {
    Antenna antenna =
        Antenna.builder()
            .wire("wire", THIN, p(-0.1, 0.05, 0.02), p(0.2, 0.1, 0.4))
            .feed("feed", "wire", Position.fraction(0.35))
            .ground(Ground.perfect())
            .build();
    Antenna turned =
        LawAntennas.moved(
            antenna,
            q ->
                p(
                    5 + Math.cos(1) * q.x() - Math.sin(1) * q.y(),
                    -2 + Math.sin(1) * q.x() + Math.cos(1) * q.y(),
                    q.z()));
    assertThat(difference(impedance(turned, TOLERANCE), impedance(antenna, TOLERANCE)))
        .isLessThan(1e-9);
  }
}
