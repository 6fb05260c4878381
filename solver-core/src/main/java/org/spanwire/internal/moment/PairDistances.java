package org.spanwire.internal.moment;

import org.spanwire.internal.mesh.Piece;

/** Distances between the centres of two pieces. */
final class PairDistances {

  private PairDistances() {}

  /** In free space, in metres. */
  static double direct(Piece a, Piece b) {
    return distance(a, b, a.z(0) - b.z(0));
  }

  /** From one to the image of the other in the plane z = 0, with both lifted. */
  static double reflected(Piece a, Piece b, double lift) {
    return distance(a, b, a.z(0) + b.z(0) + 2 * lift);
  }

  private static double distance(Piece a, Piece b, double dz) {
    double dx = a.x(0) - b.x(0);
    double dy = a.y(0) - b.y(0);
    return Math.sqrt(dx * dx + dy * dy + dz * dz);
  }
}
