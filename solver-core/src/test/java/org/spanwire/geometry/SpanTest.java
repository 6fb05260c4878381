package org.spanwire.geometry;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.assertj.core.api.Assertions.within;

import java.util.List;
import org.apache.commons.math3.geometry.euclidean.threed.Vector3D;
import org.assertj.core.data.Offset;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

/**
 * The catenary of level supports: sag = c (cosh(S/2c) − 1), length 2c sinh(S/2c), horizontal
 * tension w c, support tension w c cosh(S/2c) (Irvine, Cable Structures, 1981, section 1.2).
 */
class SpanTest {

  private static final double GRAVITY = 9.80665;
  private static final double RIGID = Double.POSITIVE_INFINITY;

  private static Offset<Double> relative(double value, double tolerance) {
    return within(Math.abs(value) * tolerance);
  }

  private static Span level(double span, double newtonsPerMetre) {
    return Span.ofWeight(new Point(0, 0, 10), new Point(span, 0, 10), newtonsPerMetre);
  }

  /** Reference values by mpmath, 10 digits, from the closed forms above. */
  @ParameterizedTest
  @CsvSource({
    "40, 0.5, 0.03, 117.7043085, 117.8514082, 40.01666181, 117.6798, 2.1e-4",
    "40, 1, 0.03, 58.88886803, 59.18306753, 40.06658907, 58.8399, 8.4e-4",
    "40, 2, 0.03, 29.51749852, 30.10589752, 40.26543385, 29.41995, 3.4e-3",
    "80, 4, 0.0278, 54.70576393, 55.79626341, 80.5308677, 54.524974, 3.4e-3",
  })
  void agreesWithTheCatenary(
      double span,
      double sag,
      double kgPerMetre,
      double horizontal,
      double end,
      double length,
      double parabola,
      double parabolaError) {
    double w = kgPerMetre * GRAVITY;
    Span wire = level(span, w);
    SpanShape bySag = wire.ofSag(sag);
    assertThat(bySag.horizontalTension()).isCloseTo(horizontal, relative(horizontal, 1e-9));
    assertThat(bySag.firstTension()).isCloseTo(end, relative(end, 1e-9));
    assertThat(bySag.lastTension()).isCloseTo(end, relative(end, 1e-9));
    assertThat(bySag.length()).isCloseTo(length, relative(length, 1e-9));
    assertThat(bySag.lowest()).isCloseTo(10 - sag, within(1e-9));
    assertThat(bySag.at(0.5).z()).isCloseTo(10 - sag, within(1e-9));

    assertThat(wire.ofTension(end).sag()).isCloseTo(sag, relative(sag, 1e-8));
    // Sag moves with the excess of a length given to ten digits.
    assertThat(wire.ofLength(length).sag()).isCloseTo(sag, relative(sag, 1e-6));

    // The flat parabola of the trade, H = w S²/(8 sag), is low by no more than its known error.
    assertThat(w * span * span / (8 * sag)).isCloseTo(parabola, relative(parabola, 1e-6));
    assertThat(bySag.horizontalTension() / parabola - 1).isBetween(0.0, parabolaError);
  }

  /** Pairs of depths that only a slack wire has: closed form again, c = S/2 and c = S/4. */
  @ParameterizedTest
  @CsvSource({"0.5", "0.25"})
  void deepCatenary(double cOverSpan) {
    double s = 30;
    double c = cOverSpan * s;
    SpanShape shape = level(s, 0.4).ofLength(2 * c * Math.sinh(s / (2 * c)));
    assertThat(shape.sag()).isCloseTo(c * (Math.cosh(s / (2 * c)) - 1), within(1e-9));
    assertThat(shape.horizontalTension()).isCloseTo(0.4 * c, within(1e-9));
  }

  /**
   * A wire between supports at different heights is a part of a longer level catenary: cut the
   * level one at any place and hang what remains from there.
   */
  @Test
  void supportsAtDifferentHeightsLieOnOneCatenary() {
    SpanShape level = level(60, 0.3).ofTension(50);
    double fraction = 0.3;
    Point from = level.at(fraction);
    SpanShape part =
        Span.ofWeight(from, level.span().last(), 0.3).ofLength((1 - fraction) * level.length());
    assertThat(part.horizontalTension()).isCloseTo(level.horizontalTension(), within(1e-7));
    assertThat(part.at(0.5).distance(level.at(0.65))).isLessThan(1e-8);
    assertThat(part.lastTension() - part.firstTension())
        .as("tension differs by weight times height")
        .isCloseTo(0.3 * (part.span().last().z() - from.z()), within(1e-9));
  }

  /** Moments about the load: sag at a point load W at p of the span is W p (1 − p) S/H. */
  @Test
  void weightlessWireWithALoadIsATriangle() {
    double p = 1.0 / 3;
    double w = 1.8 * GRAVITY;
    Span span =
        new Span(
            new Point(0, 0, 10),
            new Point(40, 0, 10),
            new SpanLoad(Vector3D.ZERO, List.of(new SpanLoad.PointLoad(p, new Vector3D(0, 0, -w)))),
            RIGID);
    SpanShape shape = span.ofTension(100);
    Point knot = shape.at(p);
    double atKnot = knot.x() / 40;
    assertThat(10 - knot.z())
        .isCloseTo(w * atKnot * (1 - atKnot) * 40 / shape.horizontalTension(), within(1e-8));
    assertThat(shape.sag()).isCloseTo(10 - knot.z(), within(1e-9));
    assertThat(shape.largestSupportTension()).isCloseTo(100, within(1e-7));
    assertThat(shape.path(1e-3)).hasSize(3);
  }

  /** Every part of the wire is in equilibrium, whatever hangs from it and blows at it. */
  @Test
  void wholeWireIsInEquilibriumInThreeDimensions() {
    SpanLoad load =
        new SpanLoad(
            new Vector3D(0.1, 0.9, -0.3),
            List.of(
                new SpanLoad.PointLoad(0.7, new Vector3D(0, 2, -5)),
                new SpanLoad.PointLoad(0.36, new Vector3D(0, 6, -17))));
    Point first = new Point(1, 2, 8);
    Point last = new Point(30, 20, 14);
    SpanShape shape = new Span(first, last, load, 20e3).ofLength(34.5);
    // Moments about the second support, with the first support's pull taken from the shape's slope.
    Point near = shape.at(1e-7);
    Vector3D pull = Span.vector(near).subtract(Span.vector(first)).normalize();
    Vector3D moment =
        Span.vector(first)
            .subtract(Span.vector(last))
            .crossProduct(pull.scalarMultiply(-shape.firstTension()));
    int steps = 4000;
    for (int i = 0; i < steps; i++) {
      moment =
          moment.add(
              moment(shape, (i + 0.5) / steps, load.perMetre().scalarMultiply(34.5 / steps)));
    }
    for (SpanLoad.PointLoad point : load.points()) {
      moment = moment.add(moment(shape, point.at(), point.force()));
    }
    assertThat(moment.getNorm()).isLessThan(1e-4 * shape.firstTension() * shape.length());
    assertThat(shape.at(1).distance(last)).isZero();
    assertThat(shape.at(1 - 1e-9).distance(last)).isLessThan(1e-6);
    assertThat(shape.swing()).isGreaterThan(0.5);
  }

  private static Vector3D moment(SpanShape shape, double at, Vector3D force) {
    return Span.vector(shape.at(at)).subtract(Span.vector(shape.span().last())).crossProduct(force);
  }

  /** Hooke: a nearly weightless wire between supports further apart than it is long. */
  @Test
  void stretchIsInProportionToTension() {
    double stiffness = 300e3;
    Span span = new Span(new Point(0, 0, 9), new Point(40, 0, 9), SpanLoad.weight(1e-6), stiffness);
    SpanShape shape = span.ofLength(39.99);
    double expected = stiffness * (40 / 39.99 - 1);
    assertThat(shape.firstTension()).isCloseTo(expected, relative(expected, 1e-6));
    assertThat(shape.length()).isCloseTo(40, within(1e-9));
    assertThat(span.ofTension(expected).unstretchedLength()).isCloseTo(39.99, within(1e-6));
  }

  @Test
  void sagOfAWireThatStretchesIsTheOneAskedFor() {
    Span span = new Span(new Point(0, 0, 9), new Point(40, 0, 11), SpanLoad.weight(0.3), 250e3);
    SpanShape shape = span.ofSag(0.5);
    assertThat(shape.sag()).isCloseTo(0.5, within(1e-8));
    assertThat(shape.unstretchedLength()).isLessThan(shape.length());
  }

  @Test
  void polylineKeepsToTheWire() {
    SpanShape shape = level(40, 0.3).ofSag(1.5);
    for (double deviation : new double[] {0.1, 0.005, 0.0005}) {
      List<Point> path = shape.path(deviation);
      double farthest = 0;
      double length = 0;
      for (int i = 1; i < path.size(); i++) {
        length += path.get(i - 1).distance(path.get(i));
      }
      for (double f = 0; f <= 1; f += 0.0005) {
        farthest = Math.max(farthest, distance(shape.at(f), path));
      }
      assertThat(farthest).isBetween(0.3 * deviation, deviation * (1 + 1e-9));
      double chord = shape.length() / (path.size() - 1);
      assertThat(shape.length() - length)
          .isBetween(0.0, (path.size() - 1) * 8 * deviation * deviation / (3 * chord) * 1.01);
    }
  }

  private static double distance(Point p, List<Point> path) {
    double least = Double.POSITIVE_INFINITY;
    for (int i = 1; i < path.size(); i++) {
      Vector3D a = Span.vector(path.get(i - 1));
      Vector3D d = Span.vector(path.get(i)).subtract(a);
      Vector3D r = Span.vector(p).subtract(a);
      double t = Math.max(0, Math.min(1, r.dotProduct(d) / d.getNormSq()));
      least = Math.min(least, r.subtract(t, d).getNorm());
    }
    return least;
  }

  @Test
  void tautWireKeepsItsAccuracy() {
    double w = 0.3;
    SpanShape shape = level(40, w).ofTension(20_000);
    double parabola = w * 40 * 40 / (8 * 20_000);
    assertThat(shape.sag()).isCloseTo(parabola, relative(parabola, 1e-5));
  }

  @Test
  void saysWhatCannotHang() {
    Span span = level(40, 0.3);
    assertThatThrownBy(() -> span.ofTension(3)).hasMessageContaining("too little to hold the load");
    // A level chain takes at least 0.7544 times its chord's weight (u tanh u = 1, cosh u / 2 u).
    assertThatThrownBy(() -> span.ofTension(0.01))
        .isInstanceOf(IllegalArgumentException.class)
        .hasMessageContaining("too little to hold the load, which takes at least about 9.");
    assertThatThrownBy(() -> span.ofLength(1e6))
        .isInstanceOf(IllegalArgumentException.class)
        .hasMessageContaining("too far from the 40.0000 m");
    assertThatThrownBy(() -> span.ofLength(40)).hasMessageContaining("does not reach");
    assertThatThrownBy(() -> span.ofSag(0)).hasMessageContaining("must be positive");
    assertThatThrownBy(() -> Span.ofWeight(new Point(0, 0, 1), new Point(0, 0, 9), 1))
        .hasMessageContaining("one above the other");
    assertThatThrownBy(() -> level(40, 0)).hasMessageContaining("no load");
  }
}
