package org.spanwire.practice;

import java.util.ArrayList;
import java.util.Collections;
import java.util.List;
import org.spanwire.Antenna;
import org.spanwire.geometry.Feed;
import org.spanwire.geometry.Fitting;
import org.spanwire.geometry.Point;
import org.spanwire.geometry.Position;
import org.spanwire.geometry.Wire;

/**
 * Taking wire off the free ends of a fed wire, shared in the ratio of its legs so that the feed
 * stays at the same fraction of the wire.
 *
 * @param wire name of the wire
 * @param firstShare share of the length taken off at the wire's first point, 0 to 1
 * @param lastShare share taken off at its last point; the two add up to 1
 */
public record Trim(String wire, double firstShare, double lastShare) {

  /**
   * The trim of the wire that a feed is on.
   *
   * @throws IllegalArgumentException if that wire has no free end
   */
  public static Trim of(Antenna antenna, Feed feed) {
    Wire wire = antenna.wire(feed.wire()).orElseThrow();
    List<Point> path = wire.path();
    double at = feed.at().distanceAlong(wire.length());
    double first = isFree(antenna, wire, path.get(0)) ? at : 0;
    double last = isFree(antenna, wire, path.get(path.size() - 1)) ? wire.length() - at : 0;
    if (!(first + last > 0)) {
      throw new IllegalArgumentException(
          "wire '"
              + wire.name()
              + "' has no free end to trim; change its path or the wires joined to it in the"
              + " design, and compare");
    }
    return new Trim(wire.name(), first / (first + last), last / (first + last));
  }

  private static boolean isFree(Antenna antenna, Wire wire, Point place) {
    return CutList.end(antenna, wire, place).kind() == Leg.End.Kind.FREE;
  }

  /**
   * The antenna with wire taken off.
   *
   * @param metres length taken off in all; negative to add wire straight on
   */
  public Antenna apply(Antenna antenna, double metres) {
    double first = metres * firstShare;
    Antenna.Builder builder = Antenna.builder().ground(antenna.ground());
    for (Wire each : antenna.wires()) {
      builder.wire(
          each.name().equals(wire)
              ? new Wire(wire, each.conductor(), shortened(each.path(), first, metres * lastShare))
              : each);
    }
    double length = antenna.wire(wire).orElseThrow().length();
    for (Feed feed : antenna.feeds()) {
      builder.feed(
          feed.wire().equals(wire)
              ? new Feed(
                  feed.name(),
                  wire,
                  moved(feed.at(), length, first),
                  feed.gap(),
                  feed.voltage(),
                  feed.capacitance())
              : feed);
    }
    for (Fitting fitting : antenna.fittings()) {
      builder.fitting(
          fitting.wire().equals(wire)
              ? new Fitting(
                  fitting.name(),
                  wire,
                  moved(fitting.at(), length, first),
                  fitting.gap(),
                  fitting.impedance())
              : fitting);
    }
    return builder.build();
  }

  private static Position moved(Position at, double length, double by) {
    return Position.distance(at.distanceAlong(length) - by);
  }

  private static List<Point> shortened(List<Point> path, double first, double last) {
    List<Point> turned = new ArrayList<>(shortened(path, first));
    Collections.reverse(turned);
    List<Point> result = new ArrayList<>(shortened(turned, last));
    Collections.reverse(result);
    return result;
  }

  /** Cuts a length off the beginning, or adds it. */
  private static List<Point> shortened(List<Point> path, double length) {
    double left = length;
    int i = 0;
    while (i < path.size() - 2 && left >= path.get(i).distance(path.get(i + 1))) {
      left -= path.get(i).distance(path.get(i + 1));
      i++;
    }
    Point a = path.get(i);
    Point b = path.get(i + 1);
    double t = left / a.distance(b);
    if (!(t < 1)) {
      throw new IllegalArgumentException("cannot take " + length + " m off: nothing would be left");
    }
    List<Point> result = new ArrayList<>();
    result.add(
        new Point(
            a.x() + t * (b.x() - a.x()), a.y() + t * (b.y() - a.y()), a.z() + t * (b.z() - a.z())));
    result.addAll(path.subList(i + 1, path.size()));
    return result;
  }
}
