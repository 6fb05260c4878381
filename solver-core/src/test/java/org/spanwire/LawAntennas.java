package org.spanwire;

import java.util.ArrayList;
import java.util.List;
import java.util.function.UnaryOperator;
import org.apache.commons.math3.complex.Complex;
import org.spanwire.geometry.Feed;
import org.spanwire.geometry.Point;
import org.spanwire.geometry.Position;
import org.spanwire.geometry.Wire;
import org.spanwire.medium.Conductor;

/** Structures that the tests of laws share, in units of the wavelength at {@link #FREQUENCY}. */
final class LawAntennas {

  /** One metre is one wavelength. */
  static final double FREQUENCY = 299_792_458.0;

  static final Conductor THIN = Conductor.perfect(1e-4);

  private LawAntennas() {}

  static Point p(double x, double y, double z) {
    return new Point(x, y, z);
  }

  static Antenna dipole(Conductor conductor, double fraction) {
    return Antenna.builder()
        .wire("dipole", conductor, p(-0.24, 0, 0), p(0.24, 0, 0))
        .feed("feed", "dipole", Position.fraction(fraction))
        .build();
  }

  /** A 90° V fed at its corner, the gap around the bend. */
  static Antenna vee(Conductor conductor) {
    return Antenna.builder()
        .wire("vee", conductor, p(0.2, 0, 0), p(0, 0.05, 0.1), p(-0.1, 0.2, 0.05))
        .feed("feed", "vee", Position.fraction(0.4))
        .build();
  }

  static Antenna loop(Conductor conductor) {
    return Antenna.builder()
        .wire(
            "loop",
            conductor,
            p(0, 0, 0),
            p(0.25, 0, 0),
            p(0.25, 0, 0.26),
            p(0, 0, 0.26),
            p(0, 0, 0))
        .feed("feed", "loop", Position.fraction(0.1))
        .build();
  }

  /** Five wires from one node, fed on one of them. */
  static Antenna star(Conductor conductor) {
    Point node = p(0, 0, 0);
    return Antenna.builder()
        .wire("one", conductor, node, p(0.3, 0, 0))
        .wire("two", conductor, p(-0.1, 0.2, 0), node)
        .wire("three", conductor, node, p(0, 0, 0.25))
        .wire("four", conductor, node, p(-0.05, -0.2, -0.05))
        .wire("five", conductor, p(0.05, 0.1, -0.3), node)
        .feed("feed", "one", Position.fraction(0.3))
        .build();
  }

  /** Spacing 100 radii, closed at both ends. */
  static Antenna foldedDipole(Conductor conductor) {
    double s = 0.01;
    return Antenna.builder()
        .wire(
            "folded",
            conductor,
            p(0, 0, 0),
            p(0.24, 0, 0),
            p(0.24, 0, s),
            p(-0.24, 0, s),
            p(-0.24, 0, 0),
            p(0, 0, 0))
        .feed("feed", "folded", Position.fraction(0))
        .build();
  }

  static Antenna yagi(Conductor conductor) {
    return Antenna.builder()
        .wire("reflector", conductor, p(0, -0.25, 0), p(0, 0.25, 0))
        .wire("driven", conductor, p(0.2, -0.235, 0), p(0.2, 0.235, 0))
        .wire("director", conductor, p(0.4, -0.222, 0), p(0.4, 0.222, 0))
        .feed("feed", "driven", Position.fraction(0.5))
        .build();
  }

  /** Two feeds on two wires of different length, radius and direction. */
  static Antenna pair(Complex first, Complex second) {
    return Antenna.builder()
        .wire("long", THIN, p(0, 0, 0.3), p(0.6, 0.1, 0.4))
        .wire("short", Conductor.perfect(3e-4), p(0.1, 0.2, 0.25), p(0.15, 0.25, 0.6))
        .feed(Feed.of("a", "long", Position.fraction(0.3)).withVoltage(first))
        .feed(Feed.of("b", "short", Position.fraction(0.6)).withVoltage(second))
        .build();
  }

  /** The same antenna with every path point moved. */
  static Antenna moved(Antenna antenna, UnaryOperator<Point> motion) {
    return rewired(
        antenna,
        antenna.wires().stream()
            .map(w -> new Wire(w.name(), w.conductor(), w.path().stream().map(motion).toList()))
            .toList());
  }

  /** The same feeds, fittings and ground with other wires. */
  static Antenna rewired(Antenna antenna, List<Wire> wires) {
    Antenna.Builder builder = Antenna.builder().ground(antenna.ground());
    wires.forEach(builder::wire);
    antenna.feeds().forEach(builder::feed);
    antenna.fittings().forEach(builder::fitting);
    return builder.build();
  }

  static List<Wire> reversed(List<Wire> wires) {
    List<Wire> result = new ArrayList<>(wires);
    java.util.Collections.reverse(result);
    return result;
  }

  static Complex impedance(Antenna antenna, double tolerance) {
    return new Solver(new SolverOptions(tolerance)).solve(antenna, FREQUENCY).impedance();
  }

  /** |a − b| over |b|. */
  static double difference(Complex a, Complex b) {
    return a.subtract(b).abs() / b.abs();
  }
}
