package org.spanwire.geometry;

import java.util.List;
import java.util.Objects;
import org.spanwire.medium.Conductor;

/**
 * A named polyline of thin wire made of one conductor. Positive current runs toward increasing
 * distance along the path.
 *
 * @param name unique name within an antenna
 * @param conductor what the wire is made of
 * @param path at least two points, consecutive ones apart; equal first and last points make a
 *     closed loop
 */
public record Wire(String name, Conductor conductor, List<Point> path) {

  /** Checks that there are two points at least. */
  public Wire {
    Objects.requireNonNull(name, "name");
    Objects.requireNonNull(conductor, "conductor");
    path = List.copyOf(path);
    if (path.size() < 2) {
      throw new IllegalArgumentException(
          "wire '" + name + "' has " + path.size() + " path point(s), needs at least 2");
    }
  }

  /** A wire through points. */
  public static Wire of(String name, Conductor conductor, Point... path) {
    return new Wire(name, conductor, List.of(path));
  }

  /** The same wire farther up; metres, negative for down. */
  public Wire lifted(double metres) {
    return new Wire(
        name, conductor, path.stream().map(p -> new Point(p.x(), p.y(), p.z() + metres)).toList());
  }

  /** Length along the path in metres. */
  public double length() {
    double sum = 0;
    for (int i = 1; i < path.size(); i++) {
      sum += path.get(i - 1).distance(path.get(i));
    }
    return sum;
  }

  /**
   * The place at a distance along the path.
   *
   * @param distance metres from the first point, 0 to {@link #length} but for rounding
   */
  public Point at(double distance) {
    if (!(distance >= 0 && distance <= length() * (1 + 1e-12))) {
      throw new IllegalArgumentException(
          "distance " + distance + " m must lie on wire '" + name + "', 0 to " + length() + " m");
    }
    double left = distance;
    for (int i = 1; i < path.size() - 1; i++) {
      double step = path.get(i - 1).distance(path.get(i));
      if (left <= step) {
        return between(path.get(i - 1), path.get(i), left / step);
      }
      left -= step;
    }
    Point start = path.get(path.size() - 2);
    Point end = path.get(path.size() - 1);
    return between(start, end, Math.min(1, left / start.distance(end)));
  }

  private static Point between(Point a, Point b, double t) {
    return new Point(
        a.x() + t * (b.x() - a.x()), a.y() + t * (b.y() - a.y()), a.z() + t * (b.z() - a.z()));
  }
}
