package org.spanwire.internal.mesh;

import org.spanwire.geometry.Point;

/** A straight stretch between two path points. */
record Stretch(Point from, Point to) {

  private static final double LEAST_ANGLE = Math.toRadians(5) * (1 - 1e-9);

  double length() {
    return from.distance(to);
  }

  /** Parameter in [0, 1] of the point closest to a place. */
  double closestParameter(Point place) {
    return clamp(dot(from, to, from, place) / dot(from, to, from, to));
  }

  double distance(Stretch other) {
    double[] s = closestParameters(other);
    return at(s[0]).distance(other.at(s[1]));
  }

  /** The point of this stretch that comes closest to another. */
  Point closest(Stretch other) {
    return at(closestParameters(other)[0]);
  }

  /**
   * For stretches that share an end: whether they run on top of each other or leave it at less than
   * 5 degrees.
   */
  boolean overlaps(Stretch other) {
    double fromGap = Math.min(from.distance(other.from), from.distance(other.to));
    double toGap = Math.min(to.distance(other.from), to.distance(other.to));
    Point corner = fromGap <= toGap ? from : to;
    Point end = fromGap <= toGap ? to : from;
    Point otherEnd =
        corner.distance(other.from) <= corner.distance(other.to) ? other.to : other.from;
    double cosine =
        dot(corner, end, corner, otherEnd) / (corner.distance(end) * corner.distance(otherEnd));
    return cosine > Math.cos(LEAST_ANGLE);
  }

  /** The point at parameter s. */
  Point at(double s) {
    return new Point(
        from.x() + s * (to.x() - from.x()),
        from.y() + s * (to.y() - from.y()),
        from.z() + s * (to.z() - from.z()));
  }

  private static double dot(Point a, Point b, Point c, Point d) {
    return (b.x() - a.x()) * (d.x() - c.x())
        + (b.y() - a.y()) * (d.y() - c.y())
        + (b.z() - a.z()) * (d.z() - c.z());
  }

  /**
   * Parameters in [0, 1] of the two closest points (Ericson, Real-Time Collision Detection, 2005,
   * section 5.1.9).
   */
  double[] closestParameters(Stretch other) {
    double a = dot(from, to, from, to);
    double e = dot(other.from, other.to, other.from, other.to);
    double b = dot(from, to, other.from, other.to);
    double c = dot(from, to, other.from, from);
    double f = dot(other.from, other.to, other.from, from);
    double denominator = a * e - b * b;
    double s = denominator > 1e-12 * a * e ? clamp((b * f - c * e) / denominator) : 0;
    double t = (b * s + f) / e;
    if (t < 0) {
      t = 0;
      s = clamp(-c / a);
    } else if (t > 1) {
      t = 1;
      s = clamp((b - c) / a);
    }
    return new double[] {s, t};
  }

  private static double clamp(double value) {
    return Math.max(0, Math.min(1, value));
  }
}
