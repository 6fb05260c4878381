package org.spanwire.internal.mesh;

import java.util.ArrayList;
import java.util.List;
import org.spanwire.geometry.Point;
import org.spanwire.geometry.Wire;
import org.spanwire.medium.Conductor;
import org.spanwire.medium.Ground;
import org.spanwire.medium.PerfectGround;

/** Path points that coincide, gathered into nodes. */
final class Junctions {

  /** Points closer than this fraction of the smaller radius are one node. */
  static final double COINCIDENCE = 0.1;

  /** Deviation from straight, in radians, above which a bend gets small pieces of its own. */
  private static final double SHARP = 0.1;

  private final List<Wire> wires;
  private final int[][] nodeOf;
  private final List<Point> place = new ArrayList<>();
  private final List<List<End>> ends = new ArrayList<>();
  private final List<Boolean> grounded = new ArrayList<>();

  /** One end of a straight stretch at a node, seen from the node outward. */
  private record End(double ux, double uy, double uz, Conductor conductor) {}

  Junctions(List<Wire> wires, Ground ground) {
    this.wires = wires;
    nodeOf = new int[wires.size()][];
    for (int w = 0; w < wires.size(); w++) {
      Wire wire = wires.get(w);
      nodeOf[w] = new int[wire.path().size()];
      for (int i = 0; i < nodeOf[w].length; i++) {
        nodeOf[w][i] = find(wire.path().get(i), wire.conductor().radius(), ground);
      }
      for (int i = 1; i < nodeOf[w].length; i++) {
        Point from = wire.path().get(i - 1);
        Point to = wire.path().get(i);
        double length = from.distance(to);
        double ux = (to.x() - from.x()) / length;
        double uy = (to.y() - from.y()) / length;
        double uz = (to.z() - from.z()) / length;
        ends.get(nodeOf[w][i - 1]).add(new End(ux, uy, uz, wire.conductor()));
        ends.get(nodeOf[w][i]).add(new End(-ux, -uy, -uz, wire.conductor()));
      }
    }
  }

  private int find(Point point, double radius, Ground ground) {
    for (int n = 0; n < place.size(); n++) {
      double limit = COINCIDENCE * Math.min(radius, smallestRadius(n, radius));
      if (place.get(n).distance(point) <= limit) {
        return n;
      }
    }
    place.add(point);
    ends.add(new ArrayList<>());
    grounded.add(ground instanceof PerfectGround && Math.abs(point.z()) <= COINCIDENCE * radius);
    return place.size() - 1;
  }

  private double smallestRadius(int node, double other) {
    return ends.get(node).stream().mapToDouble(e -> e.conductor.radius()).min().orElse(other);
  }

  int count() {
    return place.size();
  }

  int node(int wire, int pathIndex) {
    return nodeOf[wire][pathIndex];
  }

  boolean isGrounded(int node) {
    return grounded.get(node);
  }

  /** Number of straight stretches that end at a node. */
  int degree(int node) {
    return ends.get(node).size();
  }

  boolean isFreeEnd(int node) {
    return degree(node) == 1 && !isGrounded(node);
  }

  Point place(int node) {
    return place.get(node);
  }

  /** Whether current or charge vary there on the scale of the radius. */
  boolean isSingular(int node) {
    List<End> list = ends.get(node);
    if (list.size() == 1) {
      return !isGrounded(node) || Math.abs(list.get(0).uz) < Math.cos(SHARP);
    }
    if (list.size() > 2 || isGrounded(node)) {
      return true;
    }
    End a = list.get(0);
    End b = list.get(1);
    if (!a.conductor.equals(b.conductor)) {
      return true;
    }
    return -(a.ux * b.ux + a.uy * b.uy + a.uz * b.uz) < Math.cos(SHARP);
  }

  List<Wire> wires() {
    return wires;
  }
}
