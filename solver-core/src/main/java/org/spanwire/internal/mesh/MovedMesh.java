package org.spanwire.internal.mesh;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import org.spanwire.geometry.GeometryException;
import org.spanwire.geometry.Point;
import org.spanwire.geometry.Wire;
import org.spanwire.medium.Ground;

/**
 * The pieces of a mesh on wires that have moved a little: as many, joined alike and of the same
 * orders. Path points and the edges of gaps go where the moved antenna has them, the ends of pieces
 * between two of them keep their share of the way. What a mesh errs by then hardly changes between
 * two neighbouring antennas, which a mesh of each one's own would not grant.
 */
public final class MovedMesh {

  /** Places along a wire closer than this share of its length are one. */
  private static final double SAME = 1e-12;

  private final Mesh mesh;
  private final List<Wire> wires;
  private final List<List<Anchor>> anchors = new ArrayList<>();

  /** A place along a wire and where it goes. */
  private record Anchor(double from, double to) {}

  private MovedMesh(Mesh mesh, List<Wire> wires) {
    this.mesh = mesh;
    this.wires = wires;
  }

  /**
   * Moves a mesh.
   *
   * @param mesh cut from its own wires with the ports
   * @param ports the ports it was cut with
   * @param ground the ground it was cut over
   * @param wires the moved wires, in the same order
   * @param moved the moved ports, in the same order
   * @param movedGround the ground below them
   * @throws GeometryException if the moved antenna does not consist of the same parts in the same
   *     order
   */
  public static Mesh of(
      Mesh mesh,
      List<Port> ports,
      Ground ground,
      List<Wire> wires,
      List<Port> moved,
      Ground movedGround) {
    MovedMesh move = new MovedMesh(mesh, List.copyOf(wires));
    if (wires.size() != mesh.wires().size() || moved.size() != ports.size()) {
      throw fault("has other wires, feeds or fittings");
    }
    Junctions before = new Junctions(mesh.wires(), ground);
    Junctions after = new Junctions(wires, movedGround);
    List<PlacedGap> gaps = PlacedGap.place(mesh.wires(), ports, before);
    List<PlacedGap> movedGaps = PlacedGap.place(wires, moved, after);
    for (int w = 0; w < wires.size(); w++) {
      move.anchor(w, before, after, gaps, movedGaps);
    }
    return move.mesh(movedGaps);
  }

  private static GeometryException fault(String what) {
    return new GeometryException(
        GeometryException.Subject.ANTENNA,
        "",
        "the changed antenna " + what + " than the one solved; take a smaller change");
  }

  private void anchor(
      int w, Junctions before, Junctions after, List<PlacedGap> gaps, List<PlacedGap> movedGaps) {
    Wire wire = mesh.wires().get(w);
    Wire to = wires.get(w);
    if (to.path().size() != wire.path().size()) {
      throw fault("has another number of path points on wire '" + wire.name() + "'");
    }
    List<Anchor> all = new ArrayList<>();
    double along = 0;
    double alongMoved = 0;
    for (int i = 0; i < wire.path().size(); i++) {
      if (i > 0) {
        along += wire.path().get(i - 1).distance(wire.path().get(i));
        alongMoved += to.path().get(i - 1).distance(to.path().get(i));
      }
      int node = before.node(w, i);
      int movedNode = after.node(w, i);
      if (node != movedNode || before.isGrounded(node) != after.isGrounded(movedNode)) {
        throw fault("joins wire '" + wire.name() + "' otherwise");
      }
      all.add(new Anchor(along, alongMoved));
    }
    List<Double> edges = edges(w, gaps);
    List<Double> movedEdges = edges(w, movedGaps);
    if (edges.size() != movedEdges.size()) {
      throw fault("has other gaps on wire '" + wire.name() + "'");
    }
    for (int i = 0; i < edges.size(); i++) {
      all.add(new Anchor(edges.get(i), movedEdges.get(i)));
    }
    all.sort(Comparator.comparingDouble(Anchor::from));
    requireOrder(all, wire, along);
    anchors.add(all);
  }

  private static List<Double> edges(int wire, List<PlacedGap> gaps) {
    List<Double> edges = new ArrayList<>();
    gaps.forEach(gap -> gap.addEdges(wire, (at, width) -> edges.add(at)));
    return edges;
  }

  /** What was apart stays apart and in its order; what was one place stays one. */
  private static void requireOrder(List<Anchor> sorted, Wire wire, double length) {
    for (int i = 1; i < sorted.size(); i++) {
      double step = sorted.get(i).to - sorted.get(i - 1).to;
      boolean same = sorted.get(i).from - sorted.get(i - 1).from <= SAME * length;
      if (same ? Math.abs(step) > 10 * SAME * length : step <= 0) {
        throw fault("has path points and gaps of wire '" + wire.name() + "' in another order");
      }
    }
  }

  private double moved(int wire, double at) {
    List<Anchor> all = anchors.get(wire);
    int i = 1;
    while (i < all.size() - 1 && all.get(i).from <= at) {
      i++;
    }
    Anchor a = all.get(i - 1);
    Anchor b = all.get(i);
    double width = b.from - a.from;
    return width > 0 ? a.to + (at - a.from) / width * (b.to - a.to) : a.to;
  }

  private Mesh mesh(List<PlacedGap> movedGaps) {
    List<Piece> pieces = new ArrayList<>();
    double[] distance = new double[mesh.size()];
    for (int i = 0; i < mesh.size(); i++) {
      Piece piece = mesh.pieces().get(i);
      int wire = mesh.wire()[i];
      distance[i] = moved(wire, mesh.distance()[i]);
      double end = moved(wire, mesh.distance()[i] + piece.length());
      pieces.add(piece(wire, stretch(wire, i), distance[i], end));
    }
    List<Gap> gaps = new ArrayList<>();
    for (int g = 0; g < movedGaps.size(); g++) {
      Gap gap = mesh.gaps().get(g);
      double width = 0;
      for (int i : gap.pieces()) {
        width += pieces.get(i).length();
      }
      gaps.add(new Gap(gap.name(), gap.wire(), gap.pieces(), width, movedGaps.get(g).nominal()));
    }
    return new Mesh(
        wires,
        List.copyOf(pieces),
        mesh.order(),
        mesh.wire(),
        distance,
        mesh.startNode(),
        mesh.endNode(),
        mesh.nodes(),
        mesh.grounded(),
        List.copyOf(gaps));
  }

  /** Index of the straight stretch of a path that a piece lies on. */
  private int stretch(int wire, int piece) {
    List<Point> path = mesh.wires().get(wire).path();
    double left = mesh.distance()[piece] + 0.5 * mesh.pieces().get(piece).length();
    int stretch = 0;
    while (stretch < path.size() - 2) {
      double step = path.get(stretch).distance(path.get(stretch + 1));
      if (left <= step) {
        break;
      }
      left -= step;
      stretch++;
    }
    return stretch;
  }

  private Piece piece(int wire, int stretch, double from, double to) {
    List<Point> path = wires.get(wire).path();
    double start = 0;
    for (int i = 1; i <= stretch; i++) {
      start += path.get(i - 1).distance(path.get(i));
    }
    Point p = path.get(stretch);
    Point q = path.get(stretch + 1);
    double length = p.distance(q);
    double ux = (q.x() - p.x()) / length;
    double uy = (q.y() - p.y()) / length;
    double uz = (q.z() - p.z()) / length;
    double s = from - start;
    double radius = wires.get(wire).conductor().outerRadius();
    return new Piece(p.x() + s * ux, p.y() + s * uy, p.z() + s * uz, ux, uy, uz, to - from, radius);
  }
}
