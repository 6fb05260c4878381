package org.spanwire.study;

import java.util.ArrayList;
import java.util.List;
import org.spanwire.Antenna;
import org.spanwire.design.Design;
import org.spanwire.geometry.Feed;
import org.spanwire.geometry.Point;
import org.spanwire.geometry.Wire;

/**
 * What another value of a parameter means for an installation.
 *
 * @param kind what changes
 * @param by how much, in the unit of the kind; 0 for those without one
 */
public record PhysicalChange(Kind kind, double by) {

  /** What changes. */
  public enum Kind {
    /** Height of all wires; by metres. */
    HEIGHT,
    /** Length of the wires; by its share of the length of all of them. */
    LENGTH,
    /** Place of the feed along its wire; by metres. */
    FEED_PLACE,
    /** Capacitance across the feed; by farads. */
    FEED_CAPACITANCE,
    /** The ground. */
    GROUND,
    /** What follows the feedpoint. */
    FEED_CHAIN,
    /** Something else, or more than one of these. */
    OTHER
  }

  private static final double ROUNDING = 1e-9;

  /**
   * The change between a design and the same with other values of its parameters.
   *
   * @param frequencyHz where feed chains are compared
   */
  static PhysicalChange of(Design from, Design to, double frequencyHz) {
    Antenna a = from.antenna();
    Antenna b = to.antenna();
    List<PhysicalChange> found = new ArrayList<>();
    if (!a.wires().equals(b.wires())) {
      found.add(ofWires(a.wires(), b.wires()));
    } else {
      double moved = along(b) - along(a);
      if (moved != 0) {
        found.add(new PhysicalChange(Kind.FEED_PLACE, moved));
      }
    }
    double farads = b.feeds().get(0).capacitance() - a.feeds().get(0).capacitance();
    if (farads != 0) {
      found.add(new PhysicalChange(Kind.FEED_CAPACITANCE, farads));
    } else if (!signature(from, frequencyHz).equals(signature(to, frequencyHz))) {
      found.add(new PhysicalChange(Kind.FEED_CHAIN, 0));
    }
    if (!a.ground().equals(b.ground())) {
      found.add(new PhysicalChange(Kind.GROUND, 0));
    }
    return found.size() == 1 ? found.get(0) : new PhysicalChange(Kind.OTHER, 0);
  }

  private static List<Object> signature(Design design, double frequencyHz) {
    return Installation.of(design).chainSignature(frequencyHz);
  }

  private static double along(Antenna antenna) {
    Feed feed = antenna.feeds().get(0);
    return antenna.wire(feed.wire()).map(w -> feed.at().distanceAlong(w.length())).orElse(0.0);
  }

  private static PhysicalChange ofWires(List<Wire> from, List<Wire> to) {
    List<Point> before = points(from);
    List<Point> after = points(to);
    if (before.size() == after.size()) {
      double rise = after.get(0).z() - before.get(0).z();
      boolean level = rise != 0;
      for (int i = 0; i < before.size() && level; i++) {
        Point p = before.get(i);
        level = new Point(p.x(), p.y(), p.z() + rise).distance(after.get(i)) <= ROUNDING;
      }
      if (level) {
        return new PhysicalChange(Kind.HEIGHT, rise);
      }
    }
    double share = length(to) / length(from) - 1;
    return Math.abs(share) > ROUNDING
        ? new PhysicalChange(Kind.LENGTH, share)
        : new PhysicalChange(Kind.OTHER, 0);
  }

  private static List<Point> points(List<Wire> wires) {
    return wires.stream().flatMap(wire -> wire.path().stream()).toList();
  }

  private static double length(List<Wire> wires) {
    return wires.stream().mapToDouble(Wire::length).sum();
  }
}
