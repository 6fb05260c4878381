package org.spanwire.internal.mesh;

import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import org.spanwire.geometry.Point;
import org.spanwire.geometry.Wire;

/** A gap as stretches along its wire, checked. */
final class PlacedGap {

  /** Least gap in radii. */
  private static final double NARROWEST = 1e-3;

  private final Port port;
  private final int wire;
  private final double nominal;
  private final List<double[]> stretches = new ArrayList<>();

  private PlacedGap(Port port, int wire, double nominal) {
    this.port = port;
    this.wire = wire;
    this.nominal = nominal;
  }

  /** Receives the edges of a gap. */
  @FunctionalInterface
  interface Edges {
    void edge(double at, double width);
  }

  static List<PlacedGap> place(List<Wire> wires, List<Port> ports, Junctions junctions) {
    List<PlacedGap> placed = new ArrayList<>();
    for (Port port : ports) {
      PlacedGap gap = place(wires, port, junctions);
      for (PlacedGap other : placed) {
        if (gap.overlaps(other)) {
          throw port.fault(
              "its gap overlaps that of '"
                  + other.port.name()
                  + "' on wire '"
                  + port.wire()
                  + "'; move one of them or make the gaps narrower");
        }
      }
      placed.add(gap);
    }
    return placed;
  }

  private static PlacedGap place(List<Wire> wires, Port port, Junctions junctions) {
    int index = index(wires, port);
    Wire wire = wires.get(index);
    double length = wire.length();
    double centre = port.at().distanceAlong(length);
    if (centre > length * (1 + 1e-12)) {
      throw port.fault(
          metres(centre)
              + " from the first point lies beyond the end of wire '"
              + wire.name()
              + "', which is "
              + metres(length)
              + " long; place it between 0 m and "
              + metres(length));
    }
    double width = port.gap(wire);
    if (width < NARROWEST * wire.conductor().radius()) {
      throw port.fault(
          "its gap of "
              + metres(width)
              + " is below a thousandth of the wire's radius, "
              + metres(NARROWEST * wire.conductor().radius())
              + "; widen it");
    }
    PlacedGap gap = new PlacedGap(port, index, width);
    int first = junctions.node(index, 0);
    int last = junctions.node(index, wire.path().size() - 1);
    boolean loop = first == last && junctions.degree(first) == 2;
    double half = 0.5 * width;
    double tolerance = 1e-9 * width;
    if (centre - half < -tolerance) {
      gap.atStart(junctions, loop, centre, half, length, first, wire);
    } else if (centre + half > length + tolerance) {
      gap.atEnd(junctions, loop, centre, half, length, last, wire);
    } else {
      gap.stretches.add(new double[] {Math.max(0, centre - half), Math.min(length, centre + half)});
    }
    gap.refuseJunctionInside(junctions, wire);
    return gap;
  }

  private void atStart(
      Junctions junctions,
      boolean loop,
      double centre,
      double half,
      double length,
      int node,
      Wire wire) {
    if (loop) {
      stretches.add(new double[] {0, centre + half});
      stretches.add(new double[] {length + centre - half, length});
    } else if (junctions.isGrounded(node)
        && junctions.degree(node) == 1
        && centre <= 1e-9 * length) {
      stretches.add(new double[] {0, half});
    } else {
      throw beyondEnd(junctions, node, wire, half - centre, "first");
    }
  }

  private void atEnd(
      Junctions junctions,
      boolean loop,
      double centre,
      double half,
      double length,
      int node,
      Wire wire) {
    if (loop) {
      stretches.add(new double[] {centre - half, length});
      stretches.add(new double[] {0, centre + half - length});
    } else if (junctions.isGrounded(node)
        && junctions.degree(node) == 1
        && centre >= length * (1 - 1e-9)) {
      stretches.add(new double[] {length - half, length});
    } else {
      throw beyondEnd(junctions, node, wire, centre + half - length, "last");
    }
  }

  private org.spanwire.geometry.GeometryException beyondEnd(
      Junctions junctions, int node, Wire wire, double excess, String which) {
    if (junctions.isFreeEnd(node)) {
      return port.fault(
          "its gap of "
              + metres(nominal)
              + " reaches "
              + metres(excess)
              + " beyond the free end at the "
              + which
              + " point of wire '"
              + wire.name()
              + "', where no current can flow; move it at least "
              + metres(excess)
              + " inward");
    }
    return port.fault(
        "its gap of "
            + metres(nominal)
            + " contains the junction at the "
            + which
            + " point of wire '"
            + wire.name()
            + "'; move it "
            + metres(excess)
            + " away so that the gap ends at the junction");
  }

  private void refuseJunctionInside(Junctions junctions, Wire mesh) {
    double along = 0;
    List<Point> path = mesh.path();
    for (int i = 1; i < path.size() - 1; i++) {
      along += path.get(i - 1).distance(path.get(i));
      if (junctions.degree(junctions.node(wire, i)) > 2) {
        for (double[] s : stretches) {
          if (along > s[0] + 1e-9 * nominal && along < s[1] - 1e-9 * nominal) {
            throw port.fault(
                "its gap of "
                    + metres(nominal)
                    + " contains the junction at "
                    + metres(along)
                    + " of wire '"
                    + mesh.name()
                    + "'; move it "
                    + metres(Math.min(along - s[0], s[1] - along))
                    + " so that the gap ends at the junction");
          }
        }
      }
    }
  }

  static int index(List<Wire> wires, Port port) {
    List<String> names = new ArrayList<>();
    for (int w = 0; w < wires.size(); w++) {
      if (wires.get(w).name().equals(port.wire())) {
        return w;
      }
      names.add(wires.get(w).name());
    }
    throw port.fault(
        "there is no wire '" + port.wire() + "'; the wires are " + String.join(", ", names));
  }

  private boolean overlaps(PlacedGap other) {
    if (wire != other.wire) {
      return false;
    }
    double tolerance = 1e-9 * Math.min(nominal, other.nominal);
    for (double[] mine : stretches) {
      for (double[] its : other.stretches) {
        if (mine[0] < its[1] - tolerance && its[0] < mine[1] - tolerance) {
          return true;
        }
      }
    }
    return false;
  }

  void addEdges(int wireIndex, Edges edges) {
    if (wireIndex == wire) {
      for (double[] s : stretches) {
        edges.edge(s[0], s[1] - s[0]);
        edges.edge(s[1], s[1] - s[0]);
      }
    }
  }

  /** Where the gap's middle lies. */
  Point centre(List<Wire> wires) {
    double left = port.at().distanceAlong(wires.get(wire).length());
    List<Point> path = wires.get(wire).path();
    for (int i = 1; ; i++) {
      Stretch stretch = new Stretch(path.get(i - 1), path.get(i));
      if (left <= stretch.length() || i == path.size() - 1) {
        return stretch.at(Math.min(1, left / stretch.length()));
      }
      left -= stretch.length();
    }
  }

  boolean covers(int wireIndex, double at) {
    return wireIndex == wire && stretches.stream().anyMatch(s -> at > s[0] && at < s[1]);
  }

  String name() {
    return port.name();
  }

  int wire() {
    return wire;
  }

  double nominal() {
    return nominal;
  }

  private static String metres(double value) {
    return String.format(Locale.ROOT, "%.4g m", value);
  }
}
