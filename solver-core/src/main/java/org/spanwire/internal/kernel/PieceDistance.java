package org.spanwire.internal.kernel;

import org.spanwire.internal.mesh.Piece;

/** Least distance between stretches of two pieces. */
final class PieceDistance {

  private PieceDistance() {}

  /**
   * Square of the least distance in m² between a from local coordinate a0 to a1 and b from b0 to
   * b1.
   */
  static double squared(Piece a, double a0, double a1, Piece b, double b0, double b1) {
    double rx = a.x(a0) - b.x(b0);
    double ry = a.y(a0) - b.y(b0);
    double rz = a.z(a0) - b.z(b0);
    double ha = 0.5 * (a1 - a0) * a.length();
    double hb = 0.5 * (b1 - b0) * b.length();
    double cosine = a.ux() * b.ux() + a.uy() * b.uy() + a.uz() * b.uz();
    double alongA = rx * a.ux() + ry * a.uy() + rz * a.uz();
    double alongB = rx * b.ux() + ry * b.uy() + rz * b.uz();
    double sine2 = 1 - cosine * cosine;
    double s = sine2 > 1e-12 ? clamp((cosine * alongB - alongA) / sine2, ha) : clamp(-alongA, ha);
    double t = clamp(s * cosine + alongB, hb);
    s = clamp(t * cosine - alongA, ha);
    t = clamp(s * cosine + alongB, hb);
    double dx = rx + s * a.ux() - t * b.ux();
    double dy = ry + s * a.uy() - t * b.uy();
    double dz = rz + s * a.uz() - t * b.uz();
    return dx * dx + dy * dy + dz * dz;
  }

  private static double clamp(double value, double upper) {
    return Math.max(0, Math.min(upper, value));
  }
}
