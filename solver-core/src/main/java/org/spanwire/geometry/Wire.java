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
}
