package org.spanwire.internal.mesh;

import java.util.Comparator;
import java.util.HashSet;
import java.util.List;
import java.util.Locale;
import java.util.Set;
import java.util.stream.IntStream;
import org.spanwire.geometry.GeometryException;
import org.spanwire.geometry.GeometryException.Subject;
import org.spanwire.geometry.Point;
import org.spanwire.geometry.Wire;
import org.spanwire.medium.FreeSpace;
import org.spanwire.medium.Ground;
import org.spanwire.medium.PerfectGround;
import org.spanwire.medium.Soil;
import org.spanwire.unit.Dimension;
import org.spanwire.unit.PhysicalConstants;
import org.spanwire.unit.Quantity;

/** Refuses wires that a thin-wire model cannot take, each with its remedy. */
final class GeometryCheck {

  private static final double LOWEST_FREQUENCY = 1;
  private static final double HIGHEST_FREQUENCY = 1e12;

  /** Metres: coordinates beyond keep less than a micrometre. */
  private static final double FARTHEST = 1e9;

  /** Wavelengths along one wire: some 14 unknowns for each. */
  private static final double LONGEST = 300;

  /** Wavelengths: a thinner wire loses the digits of its own kernel. */
  private static final double THINNEST = 1e-9;

  private final List<Wire> wires;

  private GeometryCheck(List<Wire> wires) {
    this.wires = wires;
  }

  static void check(List<Wire> wires, Ground ground, double frequencyHz) {
    if (!(frequencyHz >= LOWEST_FREQUENCY && frequencyHz <= HIGHEST_FREQUENCY)) {
      throw new GeometryException(
          Subject.ANTENNA,
          "",
          String.format(
              Locale.ROOT,
              "frequency %.4g Hz is outside the solver's %.0g Hz to %.0g Hz; ask for another",
              frequencyHz,
              LOWEST_FREQUENCY,
              HIGHEST_FREQUENCY));
    }
    if (ground instanceof Soil soil
        && soil.table().filter(table -> !table.covers(frequencyHz)).isPresent()) {
      throw new GeometryException(
          Subject.ANTENNA,
          "",
          "frequency "
              + hertz(frequencyHz)
              + " lies outside the table of soil '"
              + soil.name()
              + "', which runs from "
              + hertz(soil.table().get().lowestHz())
              + " to "
              + hertz(soil.table().get().highestHz())
              + "; extend the table");
    }
    if (wires.isEmpty()) {
      throw new GeometryException(Subject.ANTENNA, "", "the antenna has no wire; add at least one");
    }
    GeometryCheck check = new GeometryCheck(wires);
    Set<String> names = new HashSet<>();
    for (Wire wire : wires) {
      if (!names.add(wire.name())) {
        throw fault(wire, "its name is used twice; give every wire a name of its own");
      }
      size(wire, PhysicalConstants.wavelength(frequencyHz));
      stretches(wire);
      height(wire, ground, PhysicalConstants.wavelength(frequencyHz));
    }
    check.contacts();
  }

  private static Quantity hertz(double frequency) {
    return new Quantity(frequency, Dimension.FREQUENCY);
  }

  /** Bounds within which nothing overflows or takes forever. */
  private static void size(Wire wire, double wavelength) {
    for (int i = 0; i < wire.path().size(); i++) {
      Point p = wire.path().get(i);
      double farthest = Math.max(Math.abs(p.x()), Math.max(Math.abs(p.y()), Math.abs(p.z())));
      if (farthest > FARTHEST) {
        throw fault(
            wire,
            String.format(
                Locale.ROOT,
                "path point %d lies %.4g m from the origin, limit %.0g m; move the origin nearer",
                i + 1,
                farthest,
                FARTHEST));
      }
    }
    if (wire.length() > LONGEST * wavelength) {
      throw fault(
          wire,
          String.format(
              Locale.ROOT,
              "length %.4g m is %.4g wavelengths, limit %.0f; shorten it or lower the frequency",
              wire.length(),
              wire.length() / wavelength,
              LONGEST));
    }
    double radius = wire.conductor().radius();
    if (radius < THINNEST * wavelength) {
      throw fault(
          wire,
          String.format(
              Locale.ROOT,
              "radius %.4g m is %.4g wavelengths at %.4g MHz, least %.0g; use a thicker conductor or"
                  + " a higher frequency",
              radius,
              radius / wavelength,
              PhysicalConstants.SPEED_OF_LIGHT / wavelength * 1e-6,
              THINNEST));
    }
  }

  private static void stretches(Wire wire) {
    double diameter = 2 * wire.conductor().outerRadius();
    for (int i = 1; i < wire.path().size(); i++) {
      double length = wire.path().get(i - 1).distance(wire.path().get(i));
      if (length == 0) {
        throw fault(
            wire,
            "path points " + i + " and " + (i + 1) + " coincide (length 0 m); remove one of them");
      }
      if (length < diameter) {
        throw fault(
            wire,
            String.format(
                Locale.ROOT,
                "the straight stretch from path point %d to %d is %.4g m long, shorter than the"
                    + " wire's outer diameter of %.4g m; use a thinner conductor or leave out a"
                    + " point",
                i,
                i + 1,
                length,
                diameter));
      }
    }
  }

  /** Indices of the path: what is said of the lowest point holds for the others as well. */
  private static List<Integer> fromTheLowest(Wire wire) {
    return IntStream.range(0, wire.path().size())
        .boxed()
        .sorted(Comparator.comparingDouble(i -> wire.path().get(i).z()))
        .toList();
  }

  private static void height(Wire wire, Ground ground, double wavelength) {
    if (ground instanceof FreeSpace) {
      return;
    }
    double radius = wire.conductor().outerRadius();
    for (int i : fromTheLowest(wire)) {
      double z = wire.path().get(i).z();
      if (ground instanceof PerfectGround) {
        double least = Junctions.COINCIDENCE * radius;
        if (z < -least) {
          throw fault(
              wire,
              String.format(
                  Locale.ROOT,
                  "path point %d lies %.4g m below the ground surface; raise it to z = 0 m or"
                      + " above",
                  i + 1,
                  -z));
        }
        boolean inner = i > 0 && i < wire.path().size() - 1;
        if (Math.abs(z) > least && z < 2 * radius) {
          throw fault(
              wire,
              String.format(
                  Locale.ROOT,
                  "path point %d is %.4g m above the ground, closer than the outer diameter of %.4g"
                      + " m; raise it or put it at z = 0 m to join the ground",
                  i + 1,
                  z,
                  2 * radius));
        }
        if (Math.abs(z) <= least && inner) {
          continue;
        }
      } else {
        double least = Math.max(5 * radius, 1e-3 * wavelength);
        if (z < 0) {
          throw fault(
              wire,
              String.format(
                  Locale.ROOT,
                  "path point %d lies %.4g m below the ground surface; buried wires are not"
                      + " modelled, raise it to at least %.4g m",
                  i + 1,
                  -z,
                  least));
        }
        if (z < least) {
          throw fault(
              wire,
              String.format(
                  Locale.ROOT,
                  "path point %d is %.4g m above the soil, limit %.4g m (five radii or a thousandth"
                      + " of a wavelength); raise it",
                  i + 1,
                  z,
                  least));
        }
      }
    }
    if (ground instanceof PerfectGround) {
      alongGround(wire, radius);
    }
  }

  private static void alongGround(Wire wire, double radius) {
    for (int i = 1; i < wire.path().size(); i++) {
      if (Math.abs(wire.path().get(i - 1).z()) <= radius
          && Math.abs(wire.path().get(i).z()) <= radius) {
        throw fault(
            wire,
            "the stretch from path point "
                + i
                + " to "
                + (i + 1)
                + " lies in the ground surface; raise it above z = 0 m");
      }
    }
  }

  private void contacts() {
    for (int w = 0; w < wires.size(); w++) {
      for (int v = w; v < wires.size(); v++) {
        contacts(wires.get(w), wires.get(v), w == v);
      }
    }
  }

  private static void contacts(Wire a, Wire b, boolean same) {
    double touch = a.conductor().outerRadius() + b.conductor().outerRadius();
    double join = Junctions.COINCIDENCE * Math.min(a.conductor().radius(), b.conductor().radius());
    for (int i = 1; i < a.path().size(); i++) {
      for (int j = same ? i + 1 : 1; j < b.path().size(); j++) {
        Stretch p = new Stretch(a.path().get(i - 1), a.path().get(i));
        Stretch q = new Stretch(b.path().get(j - 1), b.path().get(j));
        if (p.distance(q) < touch) {
          contact(a, b, i, j, p, q, touch, join);
        }
      }
    }
  }

  private static void contact(
      Wire a, Wire b, int i, int j, Stretch p, Stretch q, double touch, double join) {
    boolean joined =
        p.from().distance(q.from()) <= join
            || p.from().distance(q.to()) <= join
            || p.to().distance(q.from()) <= join
            || p.to().distance(q.to()) <= join;
    String stretch = "the stretch from path point " + i + " to " + (i + 1);
    String other =
        "the stretch from path point " + j + " to " + (j + 1) + " of wire '" + b.name() + "'";
    if (joined) {
      if (p.overlaps(q)) {
        throw fault(
            a,
            stretch
                + " overlaps "
                + other
                + " or leaves it at less than 5 deg; remove one or move it away");
      }
      return;
    }
    Point where = p.closest(q);
    throw fault(
        a,
        String.format(
            Locale.ROOT,
            "%s touches %s without a shared path point; add the point [%.6g, %.6g, %.6g] to both"
                + " paths to join them, or move them at least %.4g m apart",
            stretch,
            other,
            where.x(),
            where.y(),
            where.z(),
            touch));
  }

  private static GeometryException fault(Wire wire, String message) {
    return new GeometryException(
        Subject.WIRE, wire.name(), "wire '" + wire.name() + "': " + message);
  }
}
