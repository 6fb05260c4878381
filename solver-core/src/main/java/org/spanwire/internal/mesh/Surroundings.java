package org.spanwire.internal.mesh;

import java.util.ArrayList;
import java.util.List;
import org.spanwire.geometry.Point;
import org.spanwire.geometry.Wire;
import org.spanwire.medium.FreeSpace;
import org.spanwire.medium.Ground;

/**
 * What makes a wire differ from an infinitely long straight one in free space, and how far it is.
 */
final class Surroundings {

  /** Window over the distance along the wire to an end, bend or gap. */
  private static final double ALONG = 0.9;

  /** Window over the distance to another stretch of wire or to an image. */
  private static final double ASIDE = 0.75;

  /** Of a distance along a wire. */
  private static final double ROUNDING = 1e-9;

  private final List<Wire> wires;
  private final Ground ground;
  private final int wire;
  private final double gap;
  private final double[] marks;

  /**
   * Looks around.
   *
   * @param others gaps that stay where they are
   * @param feed the feed that moves along its wire
   */
  Surroundings(List<Wire> wires, List<Port> others, Ground ground, Port feed) {
    this.wires = wires;
    this.ground = ground;
    wire = PlacedGap.index(wires, feed);
    gap = feed.gap(wires.get(wire));
    Junctions junctions = new Junctions(wires, ground);
    List<Double> found = new ArrayList<>();
    List<Point> path = wires.get(wire).path();
    double along = 0;
    for (int i = 0; i < path.size(); i++) {
      along += i == 0 ? 0 : path.get(i - 1).distance(path.get(i));
      boolean end = i == 0 || i == path.size() - 1;
      if (end || junctions.isSingular(junctions.node(wire, i))) {
        found.add(along);
      }
    }
    for (PlacedGap other : PlacedGap.place(wires, others, junctions)) {
      other.addEdges(wire, (edge, width) -> found.add(edge));
    }
    marks = found.stream().mapToDouble(Double::doubleValue).sorted().toArray();
  }

  /** Index of the wire. */
  int wire() {
    return wire;
  }

  /** Width of the feed's gap in metres. */
  double gap() {
    return gap;
  }

  /** Outer radius of the wire in metres. */
  double radius() {
    return wires.get(wire).conductor().outerRadius();
  }

  /** Where along the wire there is an end, a bend, a junction or a gap's edge, rising. */
  double[] marks() {
    return marks;
  }

  /** Half-width of the widest window that there is room for at a place, 0 or less for none. */
  double clearance(double place) {
    double free = Double.POSITIVE_INFINITY;
    for (double mark : marks) {
      free = Math.min(free, ALONG * Math.abs(place - mark));
    }
    if (place <= marks[0] || place >= marks[marks.length - 1]) {
      return 0;
    }
    Point point = point(place);
    if (!(ground instanceof FreeSpace)) {
      free = Math.min(free, ASIDE * 2 * point.z());
    }
    for (int w = 0; w < wires.size(); w++) {
      double along = 0;
      List<Point> path = wires.get(w).path();
      for (int i = 1; i < path.size(); i++) {
        Stretch stretch = new Stretch(path.get(i - 1), path.get(i));
        double closest = stretch.closestParameter(point);
        double distance = stretch.at(closest).distance(point);
        double apart = Math.abs(along + closest * stretch.length() - place);
        if (w != wire || distance < ALONG * apart - ROUNDING * place) {
          free = Math.min(free, ASIDE * distance);
        }
        along += stretch.length();
      }
    }
    return free;
  }

  private Point point(double place) {
    double left = place;
    List<Point> path = wires.get(wire).path();
    for (int i = 1; ; i++) {
      Stretch stretch = new Stretch(path.get(i - 1), path.get(i));
      if (left <= stretch.length() || i == path.size() - 1) {
        return stretch.at(Math.min(1, left / stretch.length()));
      }
      left -= stretch.length();
    }
  }
}
