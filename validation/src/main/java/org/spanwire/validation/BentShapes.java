package org.spanwire.validation;

import org.spanwire.Antenna;
import org.spanwire.geometry.Feed;
import org.spanwire.geometry.Point;
import org.spanwire.geometry.Position;
import org.spanwire.medium.Conductor;

/** Structures of bent or joined wires. */
final class BentShapes {

  private BentShapes() {}

  static Antenna loop(Parameters p) {
    int sides = (int) p.number("sides");
    double circleRadius = p.metres("circumference") / (2 * Math.PI);
    double halfAngle = Math.PI / sides;
    // Corners on a circle chosen so that the polygon keeps the circle's area or else its length.
    double cornerRadius =
        p.flag("sameArea")
            ? circleRadius * Math.sqrt(2 * halfAngle / Math.sin(2 * halfAngle))
            : circleRadius * halfAngle / Math.sin(halfAngle);
    Point[] path = new Point[sides + 1];
    for (int i = 0; i < sides; i++) {
      double angle = (2 * i - 1) * halfAngle;
      path[i] = new Point(cornerRadius * Math.cos(angle), cornerRadius * Math.sin(angle), 0);
    }
    path[sides] = path[0];
    double side = 2 * cornerRadius * Math.sin(halfAngle);
    Conductor conductor =
        p.has("radiusRatio")
            ? Parts.conductor(p, p.number("radiusRatio") * circleRadius)
            : Parts.conductor(p);
    return Antenna.builder()
        .ground(Parts.ground(p))
        .wire("loop", conductor, path)
        .feed(Feed.of("feed", "loop", Position.distance(side / 2)).withGap(Parts.gap(conductor)))
        .build();
  }

  static Antenna vee(Parameters p) {
    double arm = p.metres("arm");
    double halfApex = Math.toRadians(p.number("apexDegrees")) / 2;
    double x = arm * Math.sin(halfApex);
    double z = -arm * Math.cos(halfApex);
    return Antenna.builder()
        .ground(Parts.ground(p))
        .wire(
            "vee", Parts.conductor(p), new Point(-x, 0, z), new Point(0, 0, 0), new Point(x, 0, z))
        .feed(Feed.of("feed", "vee", Position.distance(arm)).withGap(Parts.gap(Parts.conductor(p))))
        .build();
  }

  static Antenna folded(Parameters p) {
    double half = p.metres("length") / 2;
    double spacing = p.metres("spacing");
    Point bottom = new Point(0, 0, -half);
    Point top = new Point(0, 0, half);
    return Antenna.builder()
        .ground(Parts.ground(p))
        .wire("fed", Parts.conductor(p), bottom, top)
        .wire(
            "return",
            Parts.secondConductor(p),
            bottom,
            new Point(spacing, 0, -half),
            new Point(spacing, 0, half),
            top)
        .feed(Feed.of("feed", "fed", Position.fraction(0.5)).withGap(Parts.gap(Parts.conductor(p))))
        .build();
  }
}
