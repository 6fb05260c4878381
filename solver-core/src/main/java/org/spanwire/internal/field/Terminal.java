package org.spanwire.internal.field;

import java.util.ArrayList;
import java.util.List;
import org.spanwire.internal.mesh.Piece;

/**
 * What is left at an end of a piece after integration by parts: the current I that leaves the piece
 * there and its derivative I' along the outward direction. Where pieces of one line and one radius
 * meet, they share a terminal, and a current that is continuous leaves exactly nothing.
 */
record Terminal(
    double x,
    double y,
    double z,
    double ux,
    double uy,
    double uz,
    double radius,
    double currentRe,
    double currentIm,
    double slopeRe,
    double slopeIm) {

  /** Places closer than this share of a piece's length coincide. */
  private static final double SAME_PLACE = 1e-7;

  /** A smaller share of the largest current is rounding. */
  private static final double ROUNDING = 1e-12;

  /** The terminals of pieces, shared on straight runs; {@code largest} is the largest current. */
  static List<Terminal> alongAxes(List<SourcePiece> sources, double largest) {
    return merge(sources, largest, true);
  }

  /** The places where current ends, whatever the directions of the pieces; slopes are left out. */
  static List<Terminal> charges(List<SourcePiece> sources, double largest) {
    return merge(sources, largest, false).stream()
        .filter(t -> t.currentRe != 0 || t.currentIm != 0)
        .toList();
  }

  private static List<Terminal> merge(List<SourcePiece> sources, double largest, boolean axial) {
    List<Terminal> open = new ArrayList<>();
    List<Double> reach = new ArrayList<>();
    for (SourcePiece source : sources) {
      for (int side = -1; side <= 1; side += 2) {
        Terminal end = of(source, side);
        double length = source.piece().length();
        int partner = -1;
        for (int i = 0; i < open.size() && partner < 0; i++) {
          double near = SAME_PLACE * Math.min(length, reach.get(i));
          if (open.get(i).near(end, near) && (!axial || open.get(i).opposes(end))) {
            partner = i;
          }
        }
        if (partner < 0) {
          open.add(end);
          reach.add(length);
        } else {
          open.set(partner, open.get(partner).plus(end));
          reach.set(partner, Math.min(length, reach.get(partner)));
        }
      }
    }
    double least = ROUNDING * largest;
    return open.stream().map(t -> t.rounded(least)).toList();
  }

  private static Terminal of(SourcePiece source, int side) {
    Piece p = source.piece();
    return new Terminal(
        p.x(side),
        p.y(side),
        p.z(side),
        side * p.ux(),
        side * p.uy(),
        side * p.uz(),
        p.radius(),
        side * source.endRe(0, side),
        side * source.endIm(0, side),
        source.endRe(1, side),
        source.endIm(1, side));
  }

  private boolean near(Terminal other, double distance) {
    double dx = x - other.x;
    double dy = y - other.y;
    double dz = z - other.z;
    return dx * dx + dy * dy + dz * dz <= distance * distance;
  }

  private boolean opposes(Terminal other) {
    return radius == other.radius
        && ux * other.ux + uy * other.uy + uz * other.uz < -1 + 1e-13
        && Math.abs(ux + other.ux) + Math.abs(uy + other.uy) + Math.abs(uz + other.uz) < 1e-9;
  }

  private Terminal plus(Terminal other) {
    return new Terminal(
        x,
        y,
        z,
        ux,
        uy,
        uz,
        radius,
        currentRe + other.currentRe,
        currentIm + other.currentIm,
        slopeRe - other.slopeRe,
        slopeIm - other.slopeIm);
  }

  private Terminal rounded(double least) {
    boolean nothing = Math.abs(currentRe) + Math.abs(currentIm) <= least;
    return nothing ? new Terminal(x, y, z, ux, uy, uz, radius, 0, 0, slopeRe, slopeIm) : this;
  }
}
