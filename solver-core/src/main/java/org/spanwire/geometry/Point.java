package org.spanwire.geometry;

/**
 * A point in right-handed Cartesian coordinates, z up, ground surface at z = 0.
 *
 * @param x metres
 * @param y metres
 * @param z metres above ground
 */
public record Point(double x, double y, double z) {

  /** Refuses coordinates that are not finite. */
  public Point {
    if (!Double.isFinite(x) || !Double.isFinite(y) || !Double.isFinite(z)) {
      throw new IllegalArgumentException(
          "point (" + x + ", " + y + ", " + z + ") must have finite coordinates");
    }
  }

  /** Distance to another point in metres. */
  public double distance(Point other) {
    double dx = x - other.x;
    double dy = y - other.y;
    double dz = z - other.z;
    return Math.sqrt(dx * dx + dy * dy + dz * dz);
  }
}
