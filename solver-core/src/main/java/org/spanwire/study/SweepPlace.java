package org.spanwire.study;

import java.util.ArrayList;
import java.util.List;
import org.spanwire.Antenna;
import org.spanwire.geometry.Feed;
import org.spanwire.geometry.Fitting;
import org.spanwire.geometry.Point;
import org.spanwire.geometry.Wire;
import org.spanwire.medium.PerfectGround;

/**
 * An antenna taken apart into what a structure is and what may vary on it for little.
 *
 * @param structure equal for places that can share a mesh
 * @param height of the lowest point of all wires in metres
 * @param along distance of the only feed from its wire's first point in metres; 0 with several
 */
record SweepPlace(List<Object> structure, double height, double along) {

  /** Places of points are compared to this many metres: heights come from expressions. */
  private static final double GRID = 1e-9;

  /** Wires that come so near to perfect ground may join it, and then nothing else may move. */
  private static final double JOINED = 1e-3;

  /**
   * Takes an antenna apart.
   *
   * @param frequenciesHz frequencies at which fittings must be equal
   */
  static SweepPlace of(Antenna antenna, List<Double> frequenciesHz) {
    double height = Double.POSITIVE_INFINITY;
    for (Wire wire : antenna.wires()) {
      for (Point point : wire.path()) {
        height = Math.min(height, point.z());
      }
    }
    List<Object> structure = new ArrayList<>();
    structure.add(antenna.ground());
    if (antenna.ground() instanceof PerfectGround && height < JOINED) {
      structure.add(height);
    }
    for (Wire wire : antenna.wires()) {
      structure.add(wire.name());
      structure.add(wire.conductor());
      for (Point point : wire.path()) {
        structure.add(Math.rint(point.x() / GRID));
        structure.add(Math.rint(point.y() / GRID));
        structure.add(Math.rint((point.z() - height) / GRID));
      }
    }
    boolean one = antenna.feeds().size() == 1;
    for (Feed feed : antenna.feeds()) {
      structure.add(
          List.of(feed.name(), feed.wire(), feed.gap(), feed.voltage(), feed.capacitance()));
      if (!one) {
        structure.add(feed.at());
      }
    }
    for (Fitting fitting : antenna.fittings()) {
      structure.add(List.of(fitting.name(), fitting.wire(), fitting.at(), fitting.gap()));
      frequenciesHz.forEach(f -> structure.add(fitting.impedance().at(f)));
    }
    double along = one ? along(antenna, antenna.feeds().get(0)) : 0;
    return new SweepPlace(structure, height, along);
  }

  private static double along(Antenna antenna, Feed feed) {
    // A feed on a wire that does not exist is refused when it is solved.
    return antenna.wire(feed.wire()).map(w -> feed.at().distanceAlong(w.length())).orElse(0.0);
  }
}
