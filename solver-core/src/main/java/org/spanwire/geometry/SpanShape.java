package org.spanwire.geometry;

import java.util.ArrayList;
import java.util.List;
import org.apache.commons.math3.geometry.euclidean.threed.Vector3D;

/** The shape that a wire takes under load, and its tension. Made by {@link Span}. Immutable. */
public final class SpanShape {

  private static final int MOST_CHORDS = 1000;

  private final Span span;
  private final double unstretched;
  private final List<SpanStretch> stretches;

  SpanShape(Span span, double unstretched, List<SpanStretch> stretches) {
    this.span = span;
    this.unstretched = unstretched;
    this.stretches = List.copyOf(stretches);
  }

  /** The span it belongs to. */
  public Span span() {
    return span;
  }

  /** Length in metres without tension. */
  public double unstretchedLength() {
    return unstretched;
  }

  /** Length in metres along the wire as it hangs. */
  public double length() {
    return stretches.stream().mapToDouble(SpanStretch::stretchedLength).sum();
  }

  /** Pull at the first support in newtons. */
  public double firstTension() {
    return stretches.get(0).start().getNorm();
  }

  /** Pull at the second support in newtons. */
  public double lastTension() {
    return stretches.get(stretches.size() - 1).end().getNorm();
  }

  /** The larger of the two pulls at the supports in newtons. */
  public double largestSupportTension() {
    return Math.max(firstTension(), lastTension());
  }

  /**
   * The largest tension anywhere in newtons. Along an evenly loaded stretch tension is convex, so
   * it is found at supports and loads.
   */
  public double largestTension() {
    return stretches.stream()
        .mapToDouble(s -> Math.max(s.start().getNorm(), s.end().getNorm()))
        .max()
        .orElseThrow();
  }

  /**
   * Horizontal part of the pull at the first support in newtons; without wind it is the same all
   * along.
   */
  public double horizontalTension() {
    Vector3D pull = stretches.get(0).start();
    return Math.hypot(pull.getX(), pull.getY());
  }

  /** Place at a fraction, 0 to 1, of the unstretched length from the first support. */
  public Point at(double fraction) {
    if (!(fraction >= 0 && fraction <= 1)) {
      throw new IllegalArgumentException("fraction " + fraction + " must lie between 0 and 1");
    }
    double left = fraction * unstretched;
    Vector3D place = Span.vector(span.first());
    for (SpanStretch stretch : stretches) {
      double s = Math.min(left, stretch.length());
      place = place.add(stretch.way(s));
      left -= s;
    }
    return fraction == 1 ? span.last() : point(place);
  }

  /** Largest vertical distance in metres below the straight line between the supports. */
  public double sag() {
    Vector3D way = Span.vector(span.last()).subtract(Span.vector(span.first()));
    double across = Math.hypot(way.getX(), way.getY());
    Vector3D along = new Vector3D(way.getX() / across, way.getY() / across, 0);
    return largest(along.scalarMultiply(way.getZ() / across).subtract(Vector3D.PLUS_K));
  }

  /** Largest horizontal distance in metres from the vertical plane through the supports. */
  public double swing() {
    Vector3D way = Span.vector(span.last()).subtract(Span.vector(span.first()));
    Vector3D side = new Vector3D(-way.getY(), way.getX(), 0).normalize();
    return Math.max(largest(side), largest(side.negate()));
  }

  /** Height in metres of the lowest place. */
  public double lowest() {
    return span.first().z() - largest(Vector3D.MINUS_K);
  }

  /** Largest way in a direction from the first support, at least 0. */
  private double largest(Vector3D direction) {
    double most = 0;
    Vector3D origin = Vector3D.ZERO;
    for (SpanStretch stretch : stretches) {
      double s = stretch.crossing(direction);
      if (!Double.isNaN(s)) {
        most = Math.max(most, origin.add(stretch.way(s)).dotProduct(direction));
      }
      origin = origin.add(stretch.way(stretch.length()));
      most = Math.max(most, origin.dotProduct(direction));
    }
    return most;
  }

  /**
   * Points along the wire such that the straight lines between them stay close to it. Every load
   * lies on a point; the first and the last point are the supports.
   *
   * <p>The polyline is shorter than the wire by less than 8 d²/3 over the length of a chord for
   * each chord: for a sag f over a length L in all 8 d f/(3 L), half a millimetre at f = L/10 and d
   * = 2 mm.
   *
   * @param deviation largest distance in metres of the wire from the straight lines, positive
   */
  public List<Point> path(double deviation) {
    if (!(deviation > 0)) {
      throw new IllegalArgumentException("deviation " + deviation + " m must be positive");
    }
    List<Point> path = new ArrayList<>();
    path.add(span.first());
    Vector3D origin = Span.vector(span.first());
    for (SpanStretch stretch : stretches) {
      int chords = chords(stretch, deviation);
      for (int i = 1; i <= chords; i++) {
        path.add(point(origin.add(stretch.way(stretch.length() * i / chords))));
      }
      origin = origin.add(stretch.way(stretch.length()));
    }
    path.set(path.size() - 1, span.last());
    return List.copyOf(path);
  }

  private static int chords(SpanStretch stretch, double deviation) {
    int chords = 1;
    for (double worst = worst(stretch, chords); worst > deviation; worst = worst(stretch, chords)) {
      chords = Math.max(chords + 1, (int) Math.ceil(0.95 * chords * Math.sqrt(worst / deviation)));
      if (chords > MOST_CHORDS) {
        throw new IllegalArgumentException(
            "deviation " + deviation + " m takes more than " + MOST_CHORDS + " chords; allow more");
      }
    }
    return chords;
  }

  private static double worst(SpanStretch stretch, int chords) {
    double worst = 0;
    double length = stretch.length();
    for (int i = 0; i < chords; i++) {
      worst = Math.max(worst, stretch.deviation(length * i / chords, length * (i + 1) / chords));
    }
    return worst;
  }

  private static Point point(Vector3D v) {
    return new Point(v.getX(), v.getY(), v.getZ());
  }
}
