package org.spanwire.practice;

import java.util.ArrayList;
import java.util.List;
import org.spanwire.geometry.Point;
import org.spanwire.geometry.Wire;

/** The conductors of an antenna seen from above, and the ways that lead away from them. */
final class PlanView {

  /** Rays around an end or a corner lie no further apart than this, in radians. */
  private static final double TURN = Math.toRadians(15);

  private static final double SAME_PLACE = 1e-3;

  private final List<Wire> wires;

  PlanView(List<Wire> wires) {
    this.wires = List.copyOf(wires);
  }

  /** Height in metres of the highest conductor. */
  double highest() {
    return wires.stream()
        .flatMap(wire -> wire.path().stream())
        .mapToDouble(Point::z)
        .max()
        .orElseThrow();
  }

  /** Horizontal distance in metres to the nearest conductor in plan. */
  double away(Point place) {
    return nearest(place, 0);
  }

  /** Distance in metres to the nearest conductor in space. */
  double distance(Point place) {
    return nearest(place, 1);
  }

  private double nearest(Point place, double vertical) {
    double nearest2 = Double.POSITIVE_INFINITY;
    for (Wire wire : wires) {
      List<Point> path = wire.path();
      for (int i = 1; i < path.size(); i++) {
        Point a = path.get(i - 1);
        Point b = path.get(i);
        double ux = b.x() - a.x();
        double uy = b.y() - a.y();
        double uz = vertical * (b.z() - a.z());
        double px = place.x() - a.x();
        double py = place.y() - a.y();
        double pz = vertical * (place.z() - a.z());
        double length2 = ux * ux + uy * uy + uz * uz;
        double t = length2 > 0 ? (px * ux + py * uy + pz * uz) / length2 : 0;
        t = Math.max(0, Math.min(1, t));
        double dx = px - t * ux;
        double dy = py - t * uy;
        double dz = pz - t * uz;
        nearest2 = Math.min(nearest2, dx * dx + dy * dy + dz * dz);
      }
    }
    return Math.sqrt(nearest2);
  }

  /**
   * Rays around each wire, once around it: along one side, about its end, back along the other
   * side. Neighbours in a list are neighbours in space; the last goes on with the first.
   *
   * @param step largest distance in metres between rays along a side
   */
  List<List<Ray>> rays(double step) {
    return wires.stream().map(wire -> around(corners(wire), step)).toList();
  }

  /** The path in plan without points that stand above one another. */
  private static List<Point> corners(Wire wire) {
    List<Point> corners = new ArrayList<>();
    for (Point point : wire.path()) {
      Point flat = new Point(point.x(), point.y(), 0);
      if (corners.isEmpty() || corners.get(corners.size() - 1).distance(flat) > SAME_PLACE) {
        corners.add(flat);
      }
    }
    return corners;
  }

  private static List<Ray> around(List<Point> corners, double step) {
    List<Ray> rays = new ArrayList<>();
    int last = corners.size() - 1;
    if (last == 0) {
      turn(rays, corners.get(0), 0, 2 * Math.PI - TURN);
      return rays;
    }
    double azimuth = direction(corners.get(0), corners.get(1)) + Math.PI / 2;
    for (int i = 1; i < 2 * last + 1; i++) {
      Point from = corners.get(i <= last ? i - 1 : 2 * last - i + 1);
      Point to = corners.get(i <= last ? i : 2 * last - i);
      along(rays, from, to, azimuth, step);
      Point next = corners.get(i < last ? i + 1 : i == 2 * last ? 1 : 2 * last - i - 1);
      // About an end the way turns by half a circle, clockwise as the whole round does.
      double change =
          i == last || i == 2 * last
              ? -Math.PI
              : Math.IEEEremainder(direction(to, next) - direction(from, to), 2 * Math.PI);
      if (Math.abs(change) > TURN) {
        turn(rays, to, azimuth, azimuth + change);
      }
      azimuth += change;
    }
    return rays;
  }

  private static double direction(Point from, Point to) {
    return Math.atan2(to.y() - from.y(), to.x() - from.x());
  }

  private static void along(List<Ray> rays, Point from, Point to, double azimuth, double step) {
    int count = (int) Math.max(1, Math.ceil(from.distance(to) / step));
    for (int i = 0; i < count; i++) {
      double t = (i + 0.5) / count;
      rays.add(
          new Ray(from.x() + t * (to.x() - from.x()), from.y() + t * (to.y() - from.y()), azimuth));
    }
  }

  private static void turn(List<Ray> rays, Point at, double from, double to) {
    int count = (int) Math.ceil(Math.abs(to - from) / TURN - 1e-9);
    for (int i = 0; i <= count; i++) {
      rays.add(new Ray(at.x(), at.y(), from + (to - from) * i / count));
    }
  }
}
