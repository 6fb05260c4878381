package org.spanwire.internal.mesh;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.stream.IntStream;
import org.spanwire.geometry.Wire;
import org.spanwire.medium.Ground;

/**
 * Places along one wire where a feed may be put in turn. Where the wire's surroundings leave room,
 * a window stands in for the feed's gap. The places are gathered into panels; within a panel all
 * windows have one width, and where a panel holds many places, windows at its Chebyshev nodes serve
 * them by interpolation. Immutable.
 */
public final class FeedTrack {

  /** Widest window over the shortest wavelength. */
  private static final double WIDEST = 0.19;

  /** Windows come in steps of this ratio, so that one correction serves many panels. */
  private static final double STEP = 0.85;

  /** Least window over gap or diameter. */
  private static final double LEAST = 20;

  /** By what a finer track multiplies all windows. */
  private static final double FINER = 0.8;

  /** Polynomial order where the coarsest track resolves windows, on long and short pieces alike. */
  private static final int ORDER = 8;

  /** Longest piece over the half-width of the widest window on it. */
  private static final double PIECE = 1.2;

  /** Length of a piece over its distance from an end or bend, and the growth that follows. */
  private static final double SIZE = 1;

  /** Share of the nearest place's distance from an end or bend that is left to that end's mesh. */
  private static final double CLEAR = 0.75;

  /**
   * Longest panel over the shortest wavelength. With nine nodes a wave there and back errs by 6e-7.
   */
  private static final double PANEL = 0.25;

  /** Longest panel over its distance from an end or bend: what that does errs by 7.6^−9. */
  private static final double NEAR = 0.7;

  private static final int NODES = 9;
  private static final double[] CHEBYSHEV = new double[NODES];
  private static final double[] BARYCENTRIC = new double[NODES];

  static {
    for (int n = 0; n < NODES; n++) {
      double angle = Math.PI * (n + 0.5) / NODES;
      CHEBYSHEV[n] = -Math.cos(angle);
      BARYCENTRIC[n] = (n % 2 == 0 ? 1 : -1) * Math.sin(angle);
    }
  }

  private final int wire;
  private final double gap;
  private final double widest;
  private final List<Refinement> refinements = new ArrayList<>();
  private final List<Node> nodes = new ArrayList<>();
  private final int[] firstNode;
  private final double[][] weights;

  /**
   * A window.
   *
   * @param at its middle in metres from the wire's first point
   * @param step number of its width, for {@link FeedTrack#halfWidth}
   */
  public record Node(double at, int step) {}

  private FeedTrack(Surroundings around, int places, double wavelength, int finer) {
    wire = around.wire();
    gap = around.gap();
    widest = WIDEST * Math.pow(FINER, finer) * wavelength;
    firstNode = new int[places];
    Arrays.fill(firstNode, -1);
    weights = new double[places][];
  }

  /**
   * Lays out windows.
   *
   * @param wires all wires, at the lowest height they will be solved at
   * @param others gaps that stay where they are
   * @param feed the moving feed at one of its places
   * @param places distances of its gap's middle from the wire's first point in metres
   * @param wavelength shortest wavelength that will be solved
   * @param finer 0 for a tolerance of a thousandth, and more for finer windows and pieces
   */
  public static FeedTrack of(
      List<Wire> wires,
      List<Port> others,
      Ground ground,
      Port feed,
      double[] places,
      double wavelength,
      int finer) {
    Surroundings around = new Surroundings(wires, others, ground, feed);
    FeedTrack track = new FeedTrack(around, places.length, wavelength, finer);
    double scale = Math.pow(FINER, finer);
    double[] window = new double[places.length];
    double least = LEAST * Math.max(track.gap, 2 * around.radius());
    for (int i = 0; i < places.length; i++) {
      double free = track.halfWidth(track.step(scale * around.clearance(places[i])));
      window[i] = free >= least ? free : 0;
    }
    double[] marks = around.marks();
    for (int m = 1; m < marks.length; m++) {
      double from = marks[m - 1];
      double to = marks[m];
      int[] inside =
          IntStream.range(0, places.length)
              .filter(i -> window[i] > 0 && places[i] > from && places[i] < to)
              .boxed()
              .sorted((a, b) -> Double.compare(places[a], places[b]))
              .mapToInt(Integer::intValue)
              .toArray();
      if (inside.length > 0) {
        track.panels(inside, places, window, from, to, wavelength);
        track.refine(inside, places, window, from, to, wavelength, ORDER + finer);
      }
    }
    return track;
  }

  /** The widest step that fits into a half-width. */
  private int step(double room) {
    double free = Math.min(widest, Math.max(room, 0));
    return (int) Math.ceil(Math.log(free / widest) / Math.log(STEP) - 1e-9);
  }

  /** Gathers the places between two marks, rising, into panels. */
  private void panels(
      int[] inside, double[] places, double[] window, double from, double to, double wavelength) {
    int first = 0;
    while (first < inside.length) {
      double start = places[inside[first]];
      double longest = Math.min(PANEL * wavelength, NEAR * (start - from));
      int end = first;
      double narrowest = Double.POSITIVE_INFINITY;
      while (end < inside.length) {
        double at = places[inside[end]];
        if (at - start > Math.min(longest, NEAR * (to - at))) {
          break;
        }
        narrowest = Math.min(narrowest, window[inside[end]]);
        end++;
      }
      panel(Arrays.copyOfRange(inside, first, end), places, narrowest);
      first = end;
    }
  }

  private void panel(int[] inside, double[] places, double window) {
    int step = step(window);
    double start = places[inside[0]];
    double end = places[inside[inside.length - 1]];
    int begin = nodes.size();
    if (inside.length <= NODES) {
      for (int i = 0; i < inside.length; i++) {
        firstNode[inside[i]] = begin + i;
        weights[inside[i]] = new double[] {1};
        nodes.add(new Node(places[inside[i]], step));
      }
      return;
    }
    for (int n = 0; n < NODES; n++) {
      nodes.add(new Node(0.5 * (start + end) + 0.5 * (end - start) * CHEBYSHEV[n], step));
    }
    for (int place : inside) {
      firstNode[place] = begin;
      weights[place] = interpolation((2 * places[place] - start - end) / (end - start));
    }
  }

  /** Barycentric weights (Berrut and Trefethen, SIAM Review 46, 2004, section 5). */
  private static double[] interpolation(double x) {
    double[] factor = new double[NODES];
    double sum = 0;
    for (int n = 0; n < NODES; n++) {
      double distance = x - CHEBYSHEV[n];
      if (distance == 0) {
        double[] alone = new double[NODES];
        alone[n] = 1;
        return alone;
      }
      factor[n] = BARYCENTRIC[n] / distance;
      sum += factor[n];
    }
    for (int n = 0; n < NODES; n++) {
      factor[n] /= sum;
    }
    return factor;
  }

  /** Has the mesh resolve the windows of the places between two marks. */
  private void refine(
      int[] inside,
      double[] places,
      double[] window,
      double mark,
      double nextMark,
      double wavelength,
      int order) {
    double first = places[inside[0]];
    double last = places[inside[inside.length - 1]];
    double from = first;
    double to = last;
    double largest = 0;
    for (int i : inside) {
      from = Math.min(from, places[i] - window[i]);
      to = Math.max(to, places[i] + window[i]);
      largest = Math.max(largest, PIECE * window[i]);
    }
    double begin = Math.max(from, mark + CLEAR * (first - mark));
    double end = Math.min(to, nextMark - CLEAR * (nextMark - last));
    refinements.add(
        new Refinement(
            wire,
            begin,
            end,
            Math.min(largest, SIZE * (begin - mark)),
            Math.min(largest, SIZE * (nextMark - end)),
            largest,
            1 + SIZE,
            order));
  }

  List<Refinement> refinements() {
    return refinements;
  }

  /** Number of places. */
  public int size() {
    return firstNode.length;
  }

  /** Index of the wire. */
  public int wire() {
    return wire;
  }

  /** Width of the feed's gap in metres. */
  public double gap() {
    return gap;
  }

  /** All windows. */
  public List<Node> nodes() {
    return nodes;
  }

  /** Half-width in metres of the windows of a step, falling as the step rises. */
  public double halfWidth(int step) {
    return widest * Math.pow(STEP, step);
  }

  /** Whether a place is too near to something for a window, or the feed cannot be there. */
  public boolean isCramped(int place) {
    return firstNode[place] < 0;
  }

  /** Number of places that are not cramped. */
  public int roomy() {
    return (int) Arrays.stream(firstNode).filter(first -> first >= 0).count();
  }

  /** The first of the windows that a place is interpolated from; the others follow it. */
  public int firstNode(int place) {
    return firstNode[place];
  }

  /** Weights of the windows that a place is interpolated from. Not to be changed. */
  public double[] weights(int place) {
    return weights[place];
  }
}
