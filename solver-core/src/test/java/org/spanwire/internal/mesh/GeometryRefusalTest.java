package org.spanwire.internal.mesh;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatExceptionOfType;
import static org.assertj.core.api.Assertions.assertThatIllegalArgumentException;

import java.util.List;
import java.util.Optional;
import java.util.stream.Stream;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.Arguments;
import org.junit.jupiter.params.provider.MethodSource;
import org.junit.jupiter.params.provider.ValueSource;
import org.spanwire.geometry.GeometryException;
import org.spanwire.geometry.GeometryException.Subject;
import org.spanwire.geometry.Point;
import org.spanwire.geometry.Position;
import org.spanwire.geometry.Wire;
import org.spanwire.medium.Conductor;
import org.spanwire.medium.Ground;
import org.spanwire.medium.Insulation;
import org.spanwire.medium.Materials;
import org.spanwire.medium.Soil;

/** What the geometry check refuses, with its message, and what it must not refuse. */
class GeometryRefusalTest {

  private static final double MHZ = 1e6;
  private static final Conductor THIN = Conductor.perfect(1e-3);
  private static final Conductor COATED =
      new Conductor("coated", 1e-3, Materials.COPPER, Optional.of(new Insulation(1e-3, 2.3, 0)));
  private static final Ground FREE = Ground.freeSpace();
  private static final Ground PERFECT = Ground.perfect();
  private static final Ground SOIL = Soil.of(13, 5e-3);

  private static Point p(double x, double y, double z) {
    return new Point(x, y, z);
  }

  private static Wire wire(String name, Point... path) {
    return Wire.of(name, THIN, path);
  }

  private static Mesh mesh(List<Wire> wires, Ground ground, Port... ports) {
    return Mesher.mesh(wires, List.of(ports), ground, 7.1 * MHZ, MeshDensity.level(0));
  }

  private static Port feed(String name, String wire, Position at, double gap) {
    return new Port(Subject.FEED, name, wire, at, gap);
  }

  static Stream<Arguments> refusals() {
    Wire span = wire("span", p(0, 0, 10), p(20, 0, 10));
    return Stream.of(
        Arguments.of(
            "zero length",
            FREE,
            List.of(wire("w", p(0, 0, 5), p(0, 0, 5), p(1, 0, 5))),
            List.of("'w'", "path points 1 and 2 coincide", "remove one")),
        Arguments.of(
            "short stretch",
            FREE,
            List.of(wire("w", p(0, 0, 5), p(1, 0, 5), p(1.0019, 0, 5))),
            List.of("'w'", "path point 2 to 3", "0.001900 m", "0.002000 m", "thinner")),
        Arguments.of(
            "short stretch of a coated wire",
            FREE,
            List.of(Wire.of("w", COATED, p(0, 0, 5), p(1, 0, 5), p(1.003, 0, 5))),
            List.of("'w'", "path point 2 to 3", "0.003000 m", "0.004000 m")),
        Arguments.of(
            "below perfect ground",
            PERFECT,
            List.of(wire("w", p(0, 0, 5), p(1, 0, -0.5))),
            List.of("path point 2", "0.5000 m below the ground", "raise it")),
        Arguments.of(
            "just above perfect ground",
            PERFECT,
            List.of(wire("w", p(0, 0, 5), p(1, 0, 1.5e-3))),
            List.of("path point 2", "0.001500 m above the ground", "0.002000 m", "z = 0 m")),
        Arguments.of(
            "in the surface of perfect ground",
            PERFECT,
            List.of(wire("w", p(0, 0, 5), p(0, 0, 0), p(1, 0, 0))),
            List.of("path point 2 to 3", "lies in the ground surface", "raise it")),
        Arguments.of(
            "buried",
            SOIL,
            List.of(wire("w", p(0, 0, 5), p(1, 0, -0.5))),
            List.of("path point 2", "0.5000 m below the ground", "buried wires are not modelled")),
        Arguments.of(
            "too close to soil",
            SOIL,
            List.of(wire("w", p(0, 0, 5), p(1, 0, 0.01))),
            List.of("path point 2", "0.01000 m above the soil", "0.04222 m", "raise it")),
        Arguments.of(
            "touching without a shared point",
            FREE,
            List.of(span, wire("drop", p(7, 0, 10), p(7, 0, 2))),
            List.of(
                "'span'",
                "'drop'",
                "without a shared path point",
                "[7.00000, 0.00000, 10.0000]",
                "0.002000 m")),
        Arguments.of(
            "crossing without a shared point",
            FREE,
            List.of(span, wire("cross", p(5, -3, 10.001), p(5, 3, 10.001))),
            List.of(
                "'span'", "'cross'", "without a shared path point", "[5.00000, 0.00000, 10.0000]")),
        Arguments.of(
            "a wire that touches itself",
            FREE,
            List.of(wire("w", p(0, 0, 5), p(4, 0, 5), p(4, 4, 5), p(2, 4, 5), p(2, -1, 5))),
            List.of(
                "'w'", "path point 1 to 2", "path point 4 to 5", "[2.00000, 0.00000, 5.00000]")),
        Arguments.of(
            "parallel and too close",
            FREE,
            List.of(span, wire("twin", p(3, 1.9e-3, 10), p(9, 1.9e-3, 10))),
            List.of("'span'", "'twin'", "at least 0.002000 m apart")),
        Arguments.of(
            "overlapping from a shared point",
            FREE,
            List.of(span, wire("twin", p(0, 0, 10), p(9, 0, 10))),
            List.of("'span'", "'twin'", "overlaps", "5 deg")),
        Arguments.of(
            "same wire twice",
            FREE,
            List.of(span, wire("twin", p(20, 0, 10), p(0, 0, 10))),
            List.of("'span'", "'twin'", "overlaps")),
        Arguments.of(
            "folded back",
            FREE,
            List.of(wire("w", p(0, 0, 5), p(4, 0, 5), p(0, 4 * Math.tan(Math.toRadians(4.9)), 5))),
            List.of("'w'", "path point 1 to 2", "path point 2 to 3", "less than 5 deg")),
        Arguments.of(
            "name used twice",
            FREE,
            List.of(span, wire("span", p(0, 0, 5), p(1, 0, 5))),
            List.of("'span'", "used twice")));
  }

  @ParameterizedTest
  @MethodSource("refusals")
  void refusesWithPlaceAndRemedy(
      String name, Ground ground, List<Wire> wires, List<String> fragments) {
    assertThatExceptionOfType(GeometryException.class)
        .as(name)
        .isThrownBy(() -> mesh(wires, ground))
        .satisfies(
            e -> {
              assertThat(e.getMessage()).contains(fragments).doesNotContain("\n");
              assertThat(e.subject()).isEqualTo(Subject.WIRE);
              assertThat(e.getMessage()).contains("'" + e.subjectName() + "'");
            });
  }

  static Stream<Arguments> portRefusals() {
    return Stream.of(
        Arguments.of(
            feed("f", "span", Position.distance(21), 0.01),
            List.of("21.00 m", "beyond the end of wire 'span'", "20.00 m")),
        Arguments.of(
            feed("f", "span", Position.fraction(0), 0.01),
            List.of("0.01000 m", "0.005000 m beyond the free end", "first point", "no current")),
        Arguments.of(
            feed("f", "span", Position.fraction(1), Double.NaN),
            List.of("0.004000 m", "0.002000 m beyond the free end", "last point")),
        Arguments.of(
            feed("f", "span", Position.distance(8.001), 0.01),
            List.of("0.01000 m", "contains the junction at 8.000 m of wire 'span'", "0.004000 m")),
        Arguments.of(
            feed("f", "drop", Position.fraction(0), 0.01),
            List.of("contains the junction at the first point of wire 'drop'", "0.005000 m")),
        Arguments.of(
            feed("f", "spam", Position.fraction(0.5), 0.01),
            List.of("no wire 'spam'", "span, drop")));
  }

  @ParameterizedTest
  @MethodSource("portRefusals")
  void refusesPorts(Port port, List<String> fragments) {
    List<Wire> wires =
        List.of(
            wire("span", p(0, 0, 10), p(8, 0, 10), p(20, 0, 10)),
            wire("drop", p(8, 0, 10), p(8, 0, 2)));
    assertThatExceptionOfType(GeometryException.class)
        .isThrownBy(() -> mesh(wires, FREE, port))
        .satisfies(
            e -> {
              assertThat(e.getMessage()).contains("feed 'f'").contains(fragments);
              assertThat(e.subject()).isEqualTo(Subject.FEED);
              assertThat(e.subjectName()).isEqualTo("f");
            });
  }

  @Test
  void refusesGapsThatOverlap() {
    List<Wire> wires = List.of(wire("span", p(0, 0, 10), p(20, 0, 10)));
    Port first = feed("one", "span", Position.distance(5), 0.02);
    Port second = new Port(Subject.FITTING, "two", "span", Position.distance(5.015), 0.02);
    assertThatExceptionOfType(GeometryException.class)
        .isThrownBy(() -> mesh(wires, FREE, first, second))
        .withMessageContainingAll("fitting 'two'", "overlaps that of 'one'", "'span'");
    Port beside = new Port(Subject.FITTING, "two", "span", Position.distance(5.02), 0.02);
    assertThat(mesh(wires, FREE, first, beside).gaps()).hasSize(2);
  }

  @Test
  void refusesAnAntennaWithoutWire() {
    assertThatExceptionOfType(GeometryException.class)
        .isThrownBy(() -> mesh(List.of(), FREE))
        .withMessageContaining("no wire")
        .satisfies(e -> assertThat(e.subject()).isEqualTo(Subject.ANTENNA));
  }

  @ParameterizedTest
  @ValueSource(doubles = {0, -1, Double.NaN, Double.POSITIVE_INFINITY})
  void refusesAFrequencyThatCannotBe(double hertz) {
    List<Wire> wires = List.of(wire("span", p(0, 0, 10), p(20, 0, 10)));
    assertThatIllegalArgumentException()
        .isThrownBy(() -> Mesher.mesh(wires, List.of(), FREE, hertz, MeshDensity.level(0)))
        .withMessageContaining("frequency");
  }

  static Stream<Arguments> accepted() {
    return Stream.of(
        Arguments.of(
            "T at a path point",
            FREE,
            List.of(
                wire("span", p(0, 0, 10), p(8, 0, 10), p(20, 0, 10)),
                wire("drop", p(8, 0, 2), p(8, 0, 10)))),
        Arguments.of(
            "X at a shared point",
            FREE,
            List.of(
                wire("span", p(0, 0, 10), p(8, 0, 10), p(20, 0, 10)),
                wire("cross", p(8, -5, 10), p(8, 0, 10), p(8, 5, 10)))),
        Arguments.of(
            "closed loop",
            FREE,
            List.of(wire("loop", p(0, 0, 1), p(5, 0, 1), p(5, 0, 6), p(0, 0, 6), p(0, 0, 1)))),
        Arguments.of(
            "triangle",
            FREE,
            List.of(wire("loop", p(0, 0, 1), p(5, 0, 1), p(2, 0, 6), p(0, 0, 1)))),
        Arguments.of(
            "two wires with both ends in common",
            FREE,
            List.of(
                wire("lower", p(0, 0, 1), p(5, 0, 1)),
                wire("upper", p(0, 0, 1), p(2.5, 0, 2), p(5, 0, 1)))),
        Arguments.of(
            "wires at 6 degrees",
            FREE,
            List.of(
                wire("one", p(0, 0, 5), p(10, 0, 5)),
                wire("two", p(0, 0, 5), p(10, 10 * Math.tan(Math.toRadians(6)), 5)))),
        Arguments.of(
            "fold-back of 6 degrees",
            FREE,
            List.of(wire("w", p(0, 0, 5), p(4, 0, 5), p(0, 4 * Math.tan(Math.toRadians(6)), 5)))),
        Arguments.of(
            "straight path point", FREE, List.of(wire("w", p(0, 0, 5), p(4, 0, 5), p(8, 0, 5)))),
        Arguments.of(
            "parallel at four radii",
            FREE,
            List.of(
                wire("one", p(0, 0, 5), p(10, 0, 5)), wire("two", p(0, 4e-3, 5), p(10, 4e-3, 5)))),
        Arguments.of("monopole", PERFECT, List.of(wire("up", p(0, 0, 0), p(0, 0, 10)))),
        Arguments.of("slanted to ground", PERFECT, List.of(wire("up", p(0, 0, 0), p(5, 0, 10)))),
        Arguments.of(
            "half loop on ground",
            PERFECT,
            List.of(wire("arch", p(0, 0, 0), p(0, 0, 5), p(8, 0, 5), p(8, 0, 0)))),
        Arguments.of(
            "two slanted wires from one ground point",
            PERFECT,
            List.of(wire("one", p(0, 0, 0), p(5, 0, 10)), wire("two", p(0, 0, 0), p(-5, 0, 10)))),
        Arguments.of(
            "at the height limit over soil",
            SOIL,
            List.of(wire("w", p(0, 0, 0.0423), p(10, 0, 0.0423)))));
  }

  @ParameterizedTest
  @MethodSource("accepted")
  void acceptsWhatCanBeModelled(String name, Ground ground, List<Wire> wires) {
    Mesh mesh = mesh(wires, ground);
    assertThat(mesh.size()).as(name).isPositive();
    for (Piece piece : mesh.pieces()) {
      assertThat(piece.length()).isPositive();
    }
  }
}
