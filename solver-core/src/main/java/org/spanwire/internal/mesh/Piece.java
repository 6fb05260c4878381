package org.spanwire.internal.mesh;

/**
 * A straight stretch of wire that carries one set of basis functions. Its local coordinate t runs
 * from −1 at the start to +1 at the end; positive current runs toward increasing t.
 *
 * @param x start, metres
 * @param y start, metres
 * @param z start, metres above ground
 * @param ux unit vector from start to end
 * @param uy unit vector from start to end
 * @param uz unit vector from start to end
 * @param length metres
 * @param radius of the metal, metres
 */
public record Piece(
    double x, double y, double z, double ux, double uy, double uz, double length, double radius) {

  /** x of the point at local coordinate t. */
  public double x(double t) {
    return x + 0.5 * (1 + t) * length * ux;
  }

  /** y of the point at local coordinate t. */
  public double y(double t) {
    return y + 0.5 * (1 + t) * length * uy;
  }

  /** z of the point at local coordinate t. */
  public double z(double t) {
    return z + 0.5 * (1 + t) * length * uz;
  }

  /** Distance in metres of a point from the axis between the ends. */
  public double distance(double px, double py, double pz) {
    double along = (px - x) * ux + (py - y) * uy + (pz - z) * uz;
    double t = 2 * Math.max(0, Math.min(length, along)) / length - 1;
    double dx = px - x(t);
    double dy = py - y(t);
    double dz = pz - z(t);
    return Math.sqrt(dx * dx + dy * dy + dz * dz);
  }

  /** The piece farther up. */
  Piece lifted(double metres) {
    return new Piece(x, y, z + metres, ux, uy, uz, length, radius);
  }

  /** The piece mirrored in the plane z = 0, its direction mirrored with it. */
  public Piece image() {
    return new Piece(x, y, -z, ux, uy, -uz, length, radius);
  }
}
