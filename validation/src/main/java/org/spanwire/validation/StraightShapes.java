package org.spanwire.validation;

import java.util.List;
import org.spanwire.Antenna;
import org.spanwire.geometry.Feed;
import org.spanwire.geometry.Point;
import org.spanwire.geometry.Position;
import org.spanwire.geometry.Wire;
import org.spanwire.medium.Conductor;

/** Structures of straight wires. */
final class StraightShapes {

  private StraightShapes() {}

  static Antenna dipole(Parameters p) {
    double half = p.metres("length") / 2;
    double tilt = p.number("tiltDegrees", 0);
    double azimuth = Math.toRadians(p.number("azimuthDegrees", 0));
    // A wire that is meant to be level is level to the last bit.
    double rise = tilt == 90 ? 0 : Math.cos(Math.toRadians(tilt));
    double run = Math.sin(Math.toRadians(tilt));
    double x = half * run * Math.cos(azimuth);
    double y = half * run * Math.sin(azimuth);
    double z = half * rise;
    double shift = p.metres("shift", 0);
    double height = p.metres("height", 0);
    Point start = new Point(shift - x, shift - y, height - z);
    Point end = new Point(shift + x, shift + y, height + z);
    double fraction = p.number("feedFraction", 0.5);
    boolean reversed = p.flag("reversed");
    return start(p)
        .wire("dipole", Parts.conductor(p), reversed ? end : start, reversed ? start : end)
        .feed(feed(p, "feed", "dipole", reversed ? 1 - fraction : fraction))
        .build();
  }

  static Antenna pair(Parameters p) {
    double half = p.metres("length") / 2;
    double spacing = p.metres("spacing");
    double offset = p.metres("offset", 0);
    Conductor first = Parts.conductor(p);
    Conductor second = Parts.secondConductor(p);
    return start(p)
        .wire("first", first, new Point(0, 0, -half), new Point(0, 0, half))
        .wire(
            "second",
            second,
            new Point(spacing, 0, offset - half),
            new Point(spacing, 0, offset + half))
        .feed(feed(p, "first feed", "first", 0.5))
        .feed(feed(p, "second feed", "second", 0.5))
        .build();
  }

  static Antenna monopole(Parameters p) {
    Wire wire =
        Wire.of(
            "monopole",
            Parts.conductor(p),
            new Point(0, 0, 0),
            new Point(0, 0, p.metres("length")));
    return start(p).wire(wire).feed(feed(p, "foot", "monopole", 0)).build();
  }

  static Antenna yagi(Parameters p) {
    List<Double> lengths = p.numbers("lengths");
    List<Double> spacings = p.numbers("spacings");
    if (spacings.size() != lengths.size() - 1) {
      throw new IllegalArgumentException(
          lengths.size() + " elements need one spacing less, got " + spacings.size());
    }
    Conductor conductor = Parts.conductor(p);
    Antenna.Builder builder = start(p);
    double x = 0;
    for (int i = 0; i < lengths.size(); i++) {
      double half = p.wavelengths(lengths.get(i)) / 2;
      builder.wire(elementName(i), conductor, new Point(x, 0, -half), new Point(x, 0, half));
      if (i < spacings.size()) {
        x += p.wavelengths(spacings.get(i));
      }
    }
    int driven = (int) p.number("driven");
    return builder.feed(feed(p, "feed", elementName(driven), 0.5)).build();
  }

  private static String elementName(int index) {
    return "element " + index;
  }

  private static Antenna.Builder start(Parameters p) {
    return Antenna.builder().ground(Parts.ground(p));
  }

  private static Feed feed(Parameters p, String name, String wire, double fraction) {
    return Feed.of(name, wire, Position.fraction(fraction)).withGap(Parts.gap(Parts.conductor(p)));
  }
}
