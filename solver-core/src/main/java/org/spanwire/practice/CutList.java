package org.spanwire.practice;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.OptionalDouble;
import org.spanwire.Antenna;
import org.spanwire.design.CutRules;
import org.spanwire.geometry.Feed;
import org.spanwire.geometry.Fitting;
import org.spanwire.geometry.Point;
import org.spanwire.geometry.Position;
import org.spanwire.geometry.Wire;
import org.spanwire.medium.FreeSpace;

/**
 * The legs that an antenna's wires are cut into.
 *
 * <p>An insulated wire needs no further factor: its coat is part of the antenna that was solved,
 * and the lengths are those of the coated wire.
 */
public final class CutList {

  private CutList() {}

  /** A feed or fitting on a wire: its place, its width, and what it is to the legs beside it. */
  private record Interruption(double at, double gap, Leg.End end) {}

  /** The legs of all wires, in the order of the wires and along them. */
  public static List<Leg> of(Antenna antenna, CutRules rules) {
    List<Leg> legs = new ArrayList<>();
    for (Wire wire : antenna.wires()) {
      double start = 0;
      double length = wire.length();
      Leg.End from = end(antenna, wire, wire.path().get(0));
      for (Interruption cut : interruptions(antenna, wire)) {
        double until = cut.at - cut.gap / 2;
        if (until > start + 1e-9 * length) {
          legs.add(new Leg(wire.name(), from, cut.end, until - start, rules));
        }
        start = cut.at + cut.gap / 2;
        from = cut.end;
      }
      if (length > start + 1e-9 * length) {
        Leg.End to = end(antenna, wire, wire.path().get(wire.path().size() - 1));
        legs.add(new Leg(wire.name(), from, to, length - start, rules));
      }
    }
    return legs;
  }

  private static List<Interruption> interruptions(Antenna antenna, Wire wire) {
    List<Interruption> all = new ArrayList<>();
    for (Feed feed : antenna.feeds()) {
      if (feed.wire().equals(wire.name())) {
        all.add(
            interruption(wire, feed.at(), feed.gap(), new Leg.End(Leg.End.Kind.FEED, feed.name())));
      }
    }
    for (Fitting fitting : antenna.fittings()) {
      if (fitting.wire().equals(wire.name())) {
        all.add(
            interruption(
                wire,
                fitting.at(),
                fitting.gap(),
                new Leg.End(Leg.End.Kind.FITTING, fitting.name())));
      }
    }
    all.sort(Comparator.comparingDouble(Interruption::at));
    return all;
  }

  private static Interruption interruption(
      Wire wire, Position at, OptionalDouble gap, Leg.End end) {
    return new Interruption(
        at.distanceAlong(wire.length()), gap.orElse(4 * wire.conductor().radius()), end);
  }

  /** What a wire's end is: joined where another path point, or its own other end, coincides. */
  static Leg.End end(Antenna antenna, Wire wire, Point place) {
    boolean grounded = !(antenna.ground() instanceof FreeSpace) && place.z() == 0;
    int meeting = 0;
    for (Wire other : antenna.wires()) {
      double near = 0.1 * Math.min(wire.conductor().radius(), other.conductor().radius());
      for (Point point : other.path()) {
        meeting += point.distance(place) <= near ? 1 : 0;
      }
    }
    return new Leg.End(grounded || meeting > 1 ? Leg.End.Kind.JOINT : Leg.End.Kind.FREE, "");
  }
}
