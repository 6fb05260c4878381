package org.spanwire;

import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import org.spanwire.geometry.Point;
import org.spanwire.geometry.Wire;
import org.spanwire.medium.FreeSpace;
import org.spanwire.medium.Ground;
import org.spanwire.result.Warning;

/**
 * Named warnings for straight stretches so close to each other or to the ground that the current
 * crowds to one side of the wire, which the thin-wire model leaves out.
 *
 * <p>Between two parallel round wires of radii a and b at centre spacing D the exact wave impedance
 * is (η/2π) arcosh((D² − a² − b²)/2ab); with the current spread evenly around each wire it comes
 * out as (η/2π) ln(D²/ab) (Ramo, Whinnery and Van Duzer 1994, section 3.17). A wire at height h
 * over a conducting plane is half of such a pair, D = 2h.
 */
final class NearbyStretches {

  /** Relative error of the line's impedance above which the current around a wire is uneven. */
  private static final double UNEVEN = 1e-3;

  /** Angle in degrees below which stretches run side by side, and a bend is sharp. */
  private static final double NARROW = 15;

  private final Map<String, Side> sides = new LinkedHashMap<>();
  private final Map<String, Warning> bends = new LinkedHashMap<>();
  private final List<Stretch> stretches = new ArrayList<>();

  /** The worst side-by-side run of two wires, or of a wire and the ground. */
  private record Side(Warning warning, double excess) {}

  private record Stretch(Wire wire, Point from, Point to) {
    double length() {
      return from.distance(to);
    }

    double radius() {
      return wire.conductor().radius();
    }

    double[] direction() {
      double length = length();
      return new double[] {
        (to.x() - from.x()) / length, (to.y() - from.y()) / length, (to.z() - from.z()) / length
      };
    }
  }

  private NearbyStretches(List<Wire> wires) {
    for (Wire wire : wires) {
      for (int i = 1; i < wire.path().size(); i++) {
        Stretch stretch = new Stretch(wire, wire.path().get(i - 1), wire.path().get(i));
        if (stretch.length() > 0) {
          stretches.add(stretch);
        }
      }
    }
  }

  static List<Warning> warnings(List<Wire> wires, Ground ground) {
    NearbyStretches nearby = new NearbyStretches(wires);
    for (int i = 0; i < nearby.stretches.size(); i++) {
      Stretch one = nearby.stretches.get(i);
      for (int j = i + 1; j < nearby.stretches.size(); j++) {
        nearby.compare(one, nearby.stretches.get(j));
      }
      if (!(ground instanceof FreeSpace)) {
        nearby.overGround(one);
      }
    }
    List<Warning> all = new ArrayList<>();
    nearby.sides.values().forEach(side -> all.add(side.warning()));
    all.addAll(nearby.bends.values());
    return all;
  }

  /** What even spreading of the current adds to a line's impedance, relative. */
  private static double excess(double spacing, double a, double b) {
    double x = (spacing * spacing - a * a - b * b) / (2 * a * b);
    if (!(x > 1)) {
      return 0; // The surfaces touch: refused with the geometry.
    }
    return Math.log(spacing * spacing / (a * b)) / Math.log(x + Math.sqrt(x * x - 1)) - 1;
  }

  private void compare(Stretch one, Stretch two) {
    double[] u = one.direction();
    double[] v = two.direction();
    double cosine = u[0] * v[0] + u[1] * v[1] + u[2] * v[2];
    if (Math.abs(cosine) <= Math.cos(Math.toRadians(NARROW))) {
      return;
    }
    double join = 0.1 * Math.min(one.radius(), two.radius());
    boolean tail = one.to().distance(two.from()) < join || one.from().distance(two.to()) < join;
    boolean same = one.from().distance(two.from()) < join || one.to().distance(two.to()) < join;
    if (tail || same) {
      if (same ? cosine > 0 : cosine < 0) {
        bend(one, two, Math.abs(cosine));
      }
      return;
    }
    sideBySide(one, two, u);
  }

  private void bend(Stretch one, Stretch two, double cosine) {
    double angle = Math.acos(Math.min(1, cosine));
    String names = names(one, two);
    bends.putIfAbsent(
        names,
        new Warning(
            "sharp-bend",
            String.format(
                Locale.ROOT,
                "%s: stretches meet at %.3g deg, limit %.0f deg; their surfaces overlap over the"
                    + " first %.3g m, which the thin-wire model does not see; open the angle or"
                    + " join them by a short stretch across",
                names,
                Math.toDegrees(angle),
                NARROW,
                (one.radius() + two.radius()) / (2 * Math.sin(0.5 * angle)))));
  }

  /** Compares where both lie beside each other, at the ends of that common length. */
  private void sideBySide(Stretch one, Stretch two, double[] u) {
    double first = along(one, u, two.from());
    double last = along(one, u, two.to());
    double low = Math.max(0, Math.min(first, last));
    double high = Math.min(one.length(), Math.max(first, last));
    if (high <= low) {
      return;
    }
    double spacing =
        Math.min(
            spacing(one, two, u, low, (low - first) / (last - first)),
            spacing(one, two, u, high, (high - first) / (last - first)));
    double excess = excess(spacing, one.radius(), two.radius());
    if (high - low > 2 * spacing && excess > UNEVEN) {
      String names = names(one, two);
      put(
          names,
          excess,
          "spacing-over-radius",
          String.format(
              Locale.ROOT,
              "%s: spacing %.4g m is %.3g radii; uneven current around the wires is left out,"
                  + " which makes the impedance of the line they form %.2g %% too high (limit"
                  + " %.1g %%); space them farther apart, or allow for it",
              names,
              spacing,
              spacing / Math.max(one.radius(), two.radius()),
              100 * excess,
              100 * UNEVEN));
    }
  }

  private void overGround(Stretch one) {
    double height = Math.min(one.from().z(), one.to().z());
    double rise = Math.abs(one.direction()[2]);
    double excess = excess(2 * height, one.radius(), one.radius());
    if (rise < Math.sin(Math.toRadians(NARROW)) && one.length() > 4 * height && excess > UNEVEN) {
      put(
          "wire '" + one.wire().name() + "' over ground",
          excess,
          "height-over-radius",
          String.format(
              Locale.ROOT,
              "wire '%s': height %.4g m is %.3g radii; uneven current around the wire is left out,"
                  + " which makes the impedance of the line with its image %.2g %% too high over"
                  + " a perfect conductor (limit %.1g %%); raise the wire, or allow for it",
              one.wire().name(),
              height,
              height / one.radius(),
              100 * excess,
              100 * UNEVEN));
    }
  }

  private void put(String subject, double excess, String name, String message) {
    Side known = sides.get(subject);
    if (known == null || known.excess() < excess) {
      sides.put(subject, new Side(new Warning(name, message), excess));
    }
  }

  private static String names(Stretch one, Stretch two) {
    return one.wire() == two.wire()
        ? "wire '" + one.wire().name() + "'"
        : "wires '" + one.wire().name() + "' and '" + two.wire().name() + "'";
  }

  private static double along(Stretch one, double[] u, Point point) {
    return (point.x() - one.from().x()) * u[0]
        + (point.y() - one.from().y()) * u[1]
        + (point.z() - one.from().z()) * u[2];
  }

  /** Distance of the points of both stretches in a plane across the first one. */
  private static double spacing(Stretch one, Stretch two, double[] u, double at, double share) {
    double x = one.from().x() + at * u[0] - mix(two.from().x(), two.to().x(), share);
    double y = one.from().y() + at * u[1] - mix(two.from().y(), two.to().y(), share);
    double z = one.from().z() + at * u[2] - mix(two.from().z(), two.to().z(), share);
    return Math.sqrt(x * x + y * y + z * z);
  }

  private static double mix(double from, double to, double share) {
    return from + share * (to - from);
  }
}
