package org.spanwire.study;

import java.util.ArrayList;
import java.util.List;
import java.util.OptionalDouble;
import org.apache.commons.math3.complex.Complex;
import org.spanwire.Antenna;
import org.spanwire.Solution;
import org.spanwire.design.FeedLine;
import org.spanwire.geometry.Feed;
import org.spanwire.geometry.Fitting;
import org.spanwire.geometry.GeometryException;
import org.spanwire.geometry.Point;
import org.spanwire.geometry.Position;
import org.spanwire.geometry.Wire;

/**
 * An antenna whose fed wire is cut at the feedpoint into two arms, with the outside of the feed
 * line as a third wire from there: a node of three wires, with half the feed's gap at the end of
 * each arm and a gap at the top of the line. Its feeds are, in this order, that of the arm towards
 * the wire's first point, that of the arm towards its last, and that of the line.
 *
 * @param original the antenna without the line, with a single feed
 * @param antenna the cut antenna
 * @param cut distance in metres of the feedpoint from the wire's first point
 * @param line the line
 */
record SplitAntenna(Antenna original, Antenna antenna, double cut, FeedLine line) {

  private static final String FIRST = ", arm to its first point";
  private static final String LAST = ", arm to its last point";

  static SplitAntenna of(Antenna original, FeedLine line) {
    if (original.feeds().size() != 1) {
      throw new GeometryException(
          GeometryException.Subject.WIRE,
          FeedLine.NAME,
          "feed-line needs a single feed that it leads to; the design has "
              + original.feeds().size()
              + "; remove the others");
    }
    Feed feed = original.feeds().get(0);
    Wire fed =
        original
            .wire(feed.wire())
            .orElseThrow(
                () ->
                    new GeometryException(
                        GeometryException.Subject.FEED,
                        feed.name(),
                        "there is no wire '" + feed.wire() + "'"));
    double length = fed.length();
    double cut = toPathPoint(fed, feed.at().distanceAlong(length));
    double half = feed.gap().orElse(4 * fed.conductor().radius()) / 2;
    if (!(cut >= half && length - cut >= half)) {
      throw new GeometryException(
          GeometryException.Subject.FEED,
          feed.name(),
          "a feed line needs an arm on each side of the feed of at least half the gap, "
              + half
              + " m; move the feed along wire '"
              + fed.name()
              + "'");
    }
    Antenna.Builder builder = Antenna.builder().ground(original.ground());
    for (Wire wire : original.wires()) {
      if (wire == fed) {
        builder.wire(new Wire(fed.name() + FIRST, fed.conductor(), before(fed, cut)));
        builder.wire(new Wire(fed.name() + LAST, fed.conductor(), after(fed, cut)));
      } else {
        builder.wire(wire);
      }
    }
    List<Point> route = new ArrayList<>();
    route.add(after(fed, cut).get(0));
    route.addAll(line.path());
    builder.wire(new Wire(FeedLine.NAME, line.conductor(), route));
    addFeeds(builder, feed, fed, cut, half, line);
    for (Fitting fitting : original.fittings()) {
      builder.fitting(fitting.wire().equals(fed.name()) ? moved(fitting, fed, cut) : fitting);
    }
    for (int i = 0; i < line.chokes().size(); i++) {
      FeedLine.Choke choke = line.chokes().get(i);
      builder.fitting(
          new Fitting(
              choke(i), FeedLine.NAME, choke.at(), OptionalDouble.empty(), choke.impedance()));
    }
    return new SplitAntenna(original, builder.build(), cut, line);
  }

  /**
   * A path point less than the wire's diameter away is meant: a transformer hangs from a point of
   * the wire that its chords are measured to a little differently.
   */
  private static double toPathPoint(Wire wire, double cut) {
    double along = 0;
    for (int i = 1; i < wire.path().size(); i++) {
      along += wire.path().get(i - 1).distance(wire.path().get(i));
      if (Math.abs(along - cut) < 2 * wire.conductor().outerRadius()) {
        return along;
      }
    }
    return cut;
  }

  /** Driven for meshing and error estimates as the feed alone would drive it: half on each arm. */
  private static void addFeeds(
      Antenna.Builder builder, Feed feed, Wire fed, double cut, double half, FeedLine line) {
    Complex share = feed.voltage().multiply(0.5);
    builder.feed(
        new Feed(
            feed.name(),
            fed.name() + FIRST,
            Position.distance(cut - half / 2),
            OptionalDouble.of(half),
            share));
    builder.feed(
        new Feed(
            feed.name() + LAST,
            fed.name() + LAST,
            Position.distance(half / 2),
            OptionalDouble.of(half),
            share));
    double top = Math.max(half, 2 * line.conductor().radius());
    builder.feed(
        new Feed(
            FeedLine.NAME,
            FeedLine.NAME,
            Position.distance(top / 2),
            OptionalDouble.of(top),
            Complex.ZERO));
  }

  private static Fitting moved(Fitting fitting, Wire fed, double cut) {
    double at = fitting.at().distanceAlong(fed.length());
    return at < cut
        ? onArm(fitting, fed.name() + FIRST, at)
        : onArm(fitting, fed.name() + LAST, at - cut);
  }

  private static Fitting onArm(Fitting fitting, String arm, double at) {
    return new Fitting(
        fitting.name(), arm, Position.distance(at), fitting.gap(), fitting.impedance());
  }

  private static List<Point> before(Wire wire, double cut) {
    List<Point> points = new ArrayList<>();
    double along = 0;
    List<Point> path = wire.path();
    for (int i = 0; i < path.size(); i++) {
      double step = i == 0 ? 0 : path.get(i - 1).distance(path.get(i));
      if (along + step >= cut * (1 - 1e-12)) {
        points.add(between(path.get(i - 1), path.get(i), (cut - along) / step));
        return points;
      }
      along += step;
      points.add(path.get(i));
    }
    throw new IllegalStateException("cut lies beyond the wire");
  }

  private static List<Point> after(Wire wire, double cut) {
    List<Point> points = new ArrayList<>();
    List<Point> start = before(wire, cut);
    points.add(start.get(start.size() - 1));
    double along = 0;
    for (int i = 1; i < wire.path().size(); i++) {
      along += wire.path().get(i - 1).distance(wire.path().get(i));
      if (along > cut * (1 + 1e-12)) {
        points.add(wire.path().get(i));
      }
    }
    return points;
  }

  private static Point between(Point a, Point b, double t) {
    if (t >= 1 - 1e-12) {
      return b;
    }
    return new Point(
        a.x() + t * (b.x() - a.x()), a.y() + t * (b.y() - a.y()), a.z() + t * (b.z() - a.z()));
  }

  /** The outside of the line, from the feedpoint. */
  Wire lineWire() {
    return antenna.wire(FeedLine.NAME).orElseThrow();
  }

  /** Name of a choke along the line among the fittings, counted from 0. */
  static String choke(int index) {
    return FeedLine.NAME + " choke " + (index + 1);
  }

  /** Width of the feed's gap in metres, both halves together. */
  double gap() {
    return 2 * antenna.feeds().get(0).gap().orElseThrow();
  }

  Feed feed() {
    return original.feeds().get(0);
  }

  /** The wires of the design, and the line. */
  List<Wire> wires() {
    List<Wire> wires = new ArrayList<>(original.wires());
    wires.add(lineWire());
    return wires;
  }

  /** A quantity along the wires of the cut antenna. */
  @FunctionalInterface
  interface Along {
    Complex at(String wire, double distance);
  }

  /** What a quantity is at a place of a wire of the design or of the line. */
  Complex at(Along quantity, String wire, double distance) {
    if (!wire.equals(feed().wire())) {
      return quantity.at(wire, distance);
    }
    return distance < cut
        ? quantity.at(wire + FIRST, distance)
        : quantity.at(
            wire + LAST,
            Math.min(distance - cut, antenna.wire(wire + LAST).orElseThrow().length()));
  }

  /** Sum of the currents that leave the node, over the largest of them. */
  double kirchhoff(Solution solution) {
    Wire arm = antenna.wire(feed().wire() + FIRST).orElseThrow();
    Complex first = solution.current(arm.name(), arm.length());
    Complex last = solution.current(feed().wire() + LAST, 0);
    Complex down = solution.current(FeedLine.NAME, 0);
    double largest = Math.max(first.abs(), Math.max(last.abs(), down.abs()));
    return first.subtract(last).subtract(down).abs() / largest;
  }
}
