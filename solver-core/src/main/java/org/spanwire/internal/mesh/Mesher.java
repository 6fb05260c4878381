package org.spanwire.internal.mesh;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import org.spanwire.geometry.GeometryException;
import org.spanwire.geometry.Point;
import org.spanwire.geometry.Wire;
import org.spanwire.medium.Ground;
import org.spanwire.unit.PhysicalConstants;

/** Cuts wires into pieces. */
public final class Mesher {

  /** The matrix and its factors then take 1.5 GB. */
  private static final int MOST_UNKNOWNS = 8000;

  /** Halvings in the search for a growth; the sizes are made to fit exactly afterwards. */
  private static final int GROWTH_STEPS = 30;

  private final Junctions junctions;
  private final double wavelength;
  private final MeshDensity density;
  private final List<Refinement> refinements;
  private final List<Point> singularPlaces;
  private final List<Piece> pieces = new ArrayList<>();
  private final List<Integer> order = new ArrayList<>();
  private final List<Integer> wireOf = new ArrayList<>();
  private final List<Double> distance = new ArrayList<>();
  private final List<Integer> startNode = new ArrayList<>();
  private final List<Integer> endNode = new ArrayList<>();
  private int nodes;

  private Mesher(
      Junctions junctions,
      List<PlacedGap> placed,
      double wavelength,
      MeshDensity density,
      List<Refinement> refinements) {
    this.junctions = junctions;
    this.refinements = refinements;
    this.singularPlaces = singularPlaces(junctions, placed);
    this.wavelength = wavelength;
    this.density = density;
    this.nodes = junctions.count();
  }

  /**
   * Cuts wires into pieces.
   *
   * @throws org.spanwire.geometry.GeometryException if the geometry cannot be modelled
   */
  public static Mesh mesh(
      List<Wire> wires, List<Port> ports, Ground ground, double frequencyHz, MeshDensity density) {
    return mesh(wires, ports, ground, frequencyHz, density, List.of());
  }

  /**
   * Cuts wires into pieces that resolve the windows of a track as well.
   *
   * @param frequencyHz highest frequency that will be solved
   * @throws org.spanwire.geometry.GeometryException if the geometry cannot be modelled
   */
  public static Mesh mesh(
      List<Wire> wires,
      List<Port> ports,
      Ground ground,
      double frequencyHz,
      MeshDensity density,
      FeedTrack track) {
    return mesh(wires, ports, ground, frequencyHz, density, track.refinements());
  }

  private static Mesh mesh(
      List<Wire> wires,
      List<Port> ports,
      Ground ground,
      double frequencyHz,
      MeshDensity density,
      List<Refinement> refinements) {
    GeometryCheck.check(wires, ground, frequencyHz);
    Junctions junctions = new Junctions(wires, ground);
    List<PlacedGap> placed = PlacedGap.place(wires, ports, junctions);
    Mesher mesher =
        new Mesher(
            junctions, placed, PhysicalConstants.wavelength(frequencyHz), density, refinements);
    for (int w = 0; w < wires.size(); w++) {
      mesher.cut(w, placed);
    }
    int unknowns = mesher.order.stream().mapToInt(Integer::intValue).sum();
    if (unknowns > MOST_UNKNOWNS) {
      throw new GeometryException(
          GeometryException.Subject.ANTENNA,
          "",
          "the antenna needs "
              + unknowns
              + " unknowns, limit "
              + MOST_UNKNOWNS
              + "; shorten or simplify it, lower the frequency or ask for a larger tolerance");
    }
    return mesher.finish(placed);
  }

  private static List<Point> singularPlaces(Junctions junctions, List<PlacedGap> placed) {
    List<Point> places = new ArrayList<>();
    for (int n = 0; n < junctions.count(); n++) {
      if (junctions.isSingular(n)) {
        places.add(junctions.place(n));
      }
    }
    for (PlacedGap gap : placed) {
      places.add(gap.centre(junctions.wires()));
    }
    return places;
  }

  /** A place along a wire where pieces must end. */
  private record Break(double at, double size, int pathIndex) {}

  private void cut(int w, List<PlacedGap> placed) {
    Wire wire = junctions.wires().get(w);
    double radius = wire.conductor().outerRadius();
    List<Break> breaks = new ArrayList<>();
    double along = 0;
    for (int i = 0; i < wire.path().size(); i++) {
      if (i > 0) {
        along += wire.path().get(i - 1).distance(wire.path().get(i));
      }
      boolean singular = junctions.isSingular(junctions.node(w, i));
      breaks.add(
          new Break(along, singular ? density.smallest() * radius : Double.POSITIVE_INFINITY, i));
    }
    for (PlacedGap gap : placed) {
      gap.addEdges(
          w,
          (at, width) ->
              addBreak(breaks, at, Math.min(width, density.smallest() * radius), 1e-9 * width));
    }
    for (Refinement refined : refinements) {
      if (refined.wire() == w) {
        double within = 1e-9 * (refined.to() - refined.from());
        addBreak(breaks, refined.from(), refined.firstSize(), within);
        addBreak(breaks, refined.to(), refined.lastSize(), within);
      }
    }
    addNeighbours(w, breaks);
    breaks.sort((a, b) -> Double.compare(a.at, b.at));
    int stretch = 0;
    int node = junctions.node(w, 0);
    for (int i = 1; i < breaks.size(); i++) {
      Break from = breaks.get(i - 1);
      Break to = breaks.get(i);
      if (from.pathIndex >= 0) {
        stretch = from.pathIndex;
      }
      node =
          fill(
              w,
              stretch,
              from,
              to,
              node,
              to.pathIndex >= 0 ? junctions.node(w, to.pathIndex) : nodes++);
    }
  }

  /**
   * Opposite a singular place of another straight stretch, or where another stretch passes closest,
   * at distance d, current and charge vary on the scale d: pieces end there and are no longer than
   * d.
   */
  private void addNeighbours(int w, List<Break> breaks) {
    Wire wire = junctions.wires().get(w);
    double along = 0;
    for (int i = 1; i < wire.path().size(); i++) {
      Stretch stretch = new Stretch(wire.path().get(i - 1), wire.path().get(i));
      for (Point place : singularPlaces) {
        addNeighbour(wire, breaks, along, stretch, stretch.closestParameter(place), place);
      }
      for (Wire other : junctions.wires()) {
        for (int j = 1; j < other.path().size(); j++) {
          Stretch passing = new Stretch(other.path().get(j - 1), other.path().get(j));
          double[] closest = stretch.closestParameters(passing);
          addNeighbour(wire, breaks, along, stretch, closest[0], passing.at(closest[1]));
        }
      }
      along += stretch.length();
    }
  }

  private void addNeighbour(
      Wire wire, List<Break> breaks, double along, Stretch stretch, double parameter, Point place) {
    double at = along + parameter * stretch.length();
    double distance = stretch.at(parameter).distance(place);
    boolean off = distance > wire.conductor().outerRadius();
    if (off && distance < 0.5 * density.largest() * wavelength && !resolved(breaks, at, distance)) {
      addBreak(breaks, at, distance, 0.25 * distance);
    }
  }

  /** Whether pieces near a place are already no longer than about the distance to it. */
  private static boolean resolved(List<Break> breaks, double at, double distance) {
    return breaks.stream()
        .anyMatch(b -> Math.abs(b.at - at) < 0.5 * distance && b.size <= distance);
  }

  /** Adds a break, or makes pieces smaller at one that lies within a distance of the place. */
  private static void addBreak(List<Break> breaks, double at, double size, double within) {
    for (int i = 0; i < breaks.size(); i++) {
      Break known = breaks.get(i);
      if (Math.abs(known.at - at) <= within) {
        breaks.set(i, new Break(known.at, Math.min(known.size, size), known.pathIndex));
        return;
      }
    }
    breaks.add(new Break(at, size, -1));
  }

  /** Fills the stretch between two breaks; returns the node at its end. */
  private int fill(int w, int stretch, Break from, Break to, int firstNode, int lastNode) {
    double middle = 0.5 * (from.at + to.at);
    Optional<Refinement> refined =
        refinements.stream().filter(r -> r.covers(w, middle)).findFirst();
    double largest = refined.map(Refinement::largest).orElse(density.largest() * wavelength);
    double growth = refined.map(Refinement::growth).orElse(density.growth());
    List<Double> sizes = sizes(to.at - from.at, from.size, to.size, largest, growth);
    Wire wire = junctions.wires().get(w);
    Point p = wire.path().get(stretch);
    Point q = wire.path().get(stretch + 1);
    double stretchLength = p.distance(q);
    double ux = (q.x() - p.x()) / stretchLength;
    double uy = (q.y() - p.y()) / stretchLength;
    double uz = (q.z() - p.z()) / stretchLength;
    double stretchStart = stretchStart(wire, stretch);
    double radius = wire.conductor().outerRadius();
    double at = from.at;
    int node = firstNode;
    for (int i = 0; i < sizes.size(); i++) {
      double h = sizes.get(i);
      double s = at - stretchStart;
      pieces.add(new Piece(p.x() + s * ux, p.y() + s * uy, p.z() + s * uz, ux, uy, uz, h, radius));
      order.add(
          refined
              .map(Refinement::order)
              .orElseGet(() -> density.orderFor(2 * Math.PI * h / wavelength)));
      wireOf.add(w);
      distance.add(at);
      startNode.add(node);
      node = i == sizes.size() - 1 ? lastNode : nodes++;
      endNode.add(node);
      at += h;
    }
    return node;
  }

  private static double stretchStart(Wire wire, int stretch) {
    double start = 0;
    for (int i = 1; i <= stretch; i++) {
      start += wire.path().get(i - 1).distance(wire.path().get(i));
    }
    return start;
  }

  /**
   * Sizes that grow geometrically from both ends and add up to the length: as few pieces as the
   * largest allowed growth needs, then the smallest growth for which so many fill the length.
   */
  private static List<Double> sizes(
      double length, double fromSize, double toSize, double largest, double mostGrowth) {
    double left = Math.min(fromSize, largest);
    double right = Math.min(toSize, largest);
    if (length <= 2 * Math.min(left, right) * (1 + 1e-9)) {
      return List.of(length);
    }
    int count = 1;
    while (sum(sizes(count, left, right, mostGrowth, largest)) < length * (1 - 1e-9)) {
      count++;
    }
    double low = 1;
    double high = mostGrowth;
    for (int step = 0; step < GROWTH_STEPS; step++) {
      double growth = 0.5 * (low + high);
      if (sum(sizes(count, left, right, growth, largest)) < length) {
        low = growth;
      } else {
        high = growth;
      }
    }
    List<Double> sizes = sizes(count, left, right, high, largest);
    double scale = length / sum(sizes);
    sizes.replaceAll(h -> h * scale);
    return sizes;
  }

  private static List<Double> sizes(
      int count, double left, double right, double growth, double largest) {
    List<Double> sizes = new ArrayList<>(count);
    for (int i = 0; i < count; i++) {
      double fromLeft = left * Math.pow(growth, i);
      double fromRight = right * Math.pow(growth, count - 1 - i);
      sizes.add(Math.min(largest, Math.min(fromLeft, fromRight)));
    }
    return sizes;
  }

  private static double sum(List<Double> sizes) {
    double sum = 0;
    for (double size : sizes) {
      sum += size;
    }
    return sum;
  }

  private Mesh finish(List<PlacedGap> placed) {
    boolean[] grounded = new boolean[nodes];
    for (int n = 0; n < junctions.count(); n++) {
      grounded[n] = junctions.isGrounded(n);
    }
    double[] from = distance.stream().mapToDouble(Double::doubleValue).toArray();
    int[] wire = ints(wireOf);
    List<Gap> gaps = new ArrayList<>();
    for (PlacedGap gap : placed) {
      List<Integer> covered = new ArrayList<>();
      double width = 0;
      for (int i = 0; i < pieces.size(); i++) {
        if (gap.covers(wire[i], from[i] + 0.5 * pieces.get(i).length())) {
          covered.add(i);
          width += pieces.get(i).length();
        }
      }
      gaps.add(new Gap(gap.name(), gap.wire(), ints(covered), width, gap.nominal()));
    }
    return new Mesh(
        junctions.wires(),
        List.copyOf(pieces),
        ints(order),
        wire,
        from,
        ints(startNode),
        ints(endNode),
        nodes,
        grounded,
        List.copyOf(gaps));
  }

  private static int[] ints(List<Integer> list) {
    return list.stream().mapToInt(Integer::intValue).toArray();
  }
}
