package org.spanwire.cli.chart;

import java.awt.Graphics2D;
import java.awt.geom.Path2D;
import java.awt.geom.Point2D;
import java.awt.geom.Rectangle2D;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.function.ToDoubleFunction;
import org.spanwire.cli.output.Numbers;
import org.spanwire.geometry.Point;
import org.spanwire.study.WireState;

/**
 * Current and charge drawn on the antenna, to scale: the current as an area on one side of each
 * wire, the charge as a dashed line on the other.
 *
 * @param title what it shows
 * @param view from where
 * @param states current and charge along the wires
 * @param feed where the antenna is fed
 * @param ground whether there is a ground at z = 0
 */
public record WireChart(String title, View view, List<WireState> states, Point feed, boolean ground)
    implements Chart {

  /** Share of the picture's width that the largest current or charge stands off. */
  private static final double REACH = 0.11;

  private static final double MARGIN = 44;
  private static final double GROUND_MARGIN = 20;
  private static final int KEY_HEIGHT = 36;
  private static final int READINGS = 4;
  private static final double LONGEST_BAR = 70;
  private static final double[] BARS = {0.5, 1, 2, 5, 10, 20, 50, 100, 200, 500};

  /** Cosine of the largest turn that is drawn as one run. */
  private static final double STRAIGHT = Math.cos(Math.toRadians(20));

  /** From where the antenna is seen. */
  public enum View {
    /** From the side, at right angles to its longest way along the ground. */
    SIDE,
    /** From above. */
    PLAN
  }

  /** Takes a copy. */
  public WireChart {
    states = List.copyOf(states);
  }

  @Override
  public String description() {
    return (view == View.SIDE ? "Side view." : "Plan view.")
        + " Largest current "
        + Numbers.significant(largest(s -> s.current().abs()), 3)
        + " A on "
        + where(s -> s.current().abs())
        + "; largest charge on "
        + where(s -> s.charge().abs())
        + ".";
  }

  private double largest(ToDoubleFunction<WireState> quantity) {
    return states.stream().mapToDouble(quantity).max().orElseThrow();
  }

  private String where(ToDoubleFunction<WireState> quantity) {
    WireState most =
        states.stream().max(java.util.Comparator.comparingDouble(quantity)).orElseThrow();
    return most.wire() + " at " + Numbers.fixed(most.distance(), 1) + " m";
  }

  @Override
  public int width() {
    return 350;
  }

  @Override
  public int height() {
    return view == View.SIDE ? 220 : 160;
  }

  /** The antenna turned so that its longest way along the ground runs across the picture. */
  private Point2D flat(Point point) {
    double[] along = direction();
    double across = point.x() * along[0] + point.y() * along[1];
    return view == View.SIDE
        ? new Point2D.Double(across, point.z())
        : new Point2D.Double(across, point.y() * along[0] - point.x() * along[1]);
  }

  private double[] direction() {
    double longest = 0;
    double[] direction = {1, 0};
    for (WireState a : states) {
      double dx = a.place().x() - states.get(0).place().x();
      double dy = a.place().y() - states.get(0).place().y();
      double length = Math.hypot(dx, dy);
      if (length > longest * (1 + 1e-9)) {
        longest = length;
        direction = new double[] {dx / length, dy / length};
      }
    }
    // From left to right along +x, or along +y where the wire lies across.
    double sign =
        direction[0] < -1e-9 || Math.abs(direction[0]) <= 1e-9 && direction[1] < 0 ? -1 : 1;
    return new double[] {sign * direction[0], sign * direction[1]};
  }

  @Override
  public List<Mark> draw(Graphics2D g, Rectangle2D area) {
    Disc disc = fit(g, area);
    ground(disc, area);
    double reach = REACH * area.getWidth() / disc.radius();
    List<Mark> marks = new ArrayList<>();
    Map<String, List<WireState>> wires = new LinkedHashMap<>();
    states.forEach(s -> wires.computeIfAbsent(s.wire(), w -> new ArrayList<>()).add(s));
    double current = largest(s -> s.current().abs());
    double charge = largest(s -> s.charge().abs());
    for (List<WireState> wire : wires.values()) {
      List<Point2D> path = wire.stream().map(s -> flat(s.place())).toList();
      for (int[] run : runs(path)) {
        List<WireState> states = wire.subList(run[0], run[1] + 1);
        List<Point2D> line = path.subList(run[0], run[1] + 1);
        List<Point2D> currents = offset(states, line, s -> reach * s.current().abs() / current);
        fill(disc, line, currents);
        disc.curve(currents, Ink.BLUE, Ink.LINE);
        disc.curve(
            offset(states, line, s -> -reach * s.charge().abs() / charge),
            Ink.VERMILION,
            Ink.limit());
      }
      disc.curve(path, Ink.TEXT, Ink.curve(0));
      for (int i = 0; i < wire.size(); i += READINGS) {
        Point2D p = disc.at(path.get(i).getX(), path.get(i).getY());
        marks.add(new Mark(p.getX() - area.getX(), p.getY() - area.getY(), reading(wire.get(i))));
      }
    }
    Point2D at = flat(feed);
    disc.dot(at.getX(), at.getY(), 4, Ink.PAPER, true);
    disc.dot(at.getX(), at.getY(), 4, Ink.TEXT, false);
    key(g, area, current, charge);
    scaleBar(disc, area);
    return marks;
  }

  private String reading(WireState state) {
    return state.wire()
        + ", "
        + Numbers.fixed(state.distance(), 2)
        + " m: "
        + Numbers.significant(state.current().abs(), 3)
        + " A, "
        + Numbers.significant(state.charge().abs() * 1e9, 3)
        + " nC/m";
  }

  /** A scale that fits the antenna into the picture. */
  private Disc fit(Graphics2D g, Rectangle2D area) {
    double left = Double.POSITIVE_INFINITY;
    double right = Double.NEGATIVE_INFINITY;
    double low = ground && view == View.SIDE ? 0 : Double.POSITIVE_INFINITY;
    double high = Double.NEGATIVE_INFINITY;
    for (WireState state : states) {
      Point2D p = flat(state.place());
      left = Math.min(left, p.getX());
      right = Math.max(right, p.getX());
      low = Math.min(low, p.getY());
      high = Math.max(high, p.getY());
    }
    double below = view == View.SIDE && ground ? GROUND_MARGIN : MARGIN;
    double free = area.getHeight() - KEY_HEIGHT - MARGIN - below;
    double scale =
        Math.min(
            (area.getWidth() - 2 * MARGIN) / Math.max(right - left, 1e-9),
            free / Math.max(high - low, 1e-9));
    double x = area.getCenterX() - scale * (left + right) / 2;
    double y = area.getY() + MARGIN + free / 2 + scale * (low + high) / 2;
    return new Disc(g, x, y, scale);
  }

  private void ground(Disc disc, Rectangle2D area) {
    if (ground && view == View.SIDE) {
      double left = (area.getX() + 8 - disc.centreX()) / disc.radius();
      double right = (area.getMaxX() - 8 - disc.centreX()) / disc.radius();
      disc.line(left, 0, right, 0, Ink.SOFT, Ink.LINE);
      disc.text("ground", left, 0, 1, -1, Ink.SOFT);
    }
  }

  /** First and last places of the stretches between bends. */
  private static List<int[]> runs(List<Point2D> path) {
    List<int[]> runs = new ArrayList<>();
    int start = 0;
    for (int i = 1; i < path.size(); i++) {
      if (i == path.size() - 1 || bends(path.get(i - 1), path.get(i), path.get(i + 1))) {
        runs.add(new int[] {start, i});
        start = i;
      }
    }
    return runs;
  }

  private static boolean bends(Point2D a, Point2D b, Point2D c) {
    double dx = b.getX() - a.getX();
    double dy = b.getY() - a.getY();
    double ex = c.getX() - b.getX();
    double ey = c.getY() - b.getY();
    double lengths = Math.hypot(dx, dy) * Math.hypot(ex, ey);
    return lengths > 0 && dx * ex + dy * ey < STRAIGHT * lengths;
  }

  /** Points that stand off the wire, at right angles to it as it is seen. */
  private static List<Point2D> offset(
      List<WireState> wire, List<Point2D> path, ToDoubleFunction<WireState> distance) {
    List<Point2D> points = new ArrayList<>();
    for (int i = 0; i < path.size(); i++) {
      Point2D before = path.get(Math.max(0, i - 1));
      Point2D after = path.get(Math.min(path.size() - 1, i + 1));
      double dx = after.getX() - before.getX();
      double dy = after.getY() - before.getY();
      double length = Math.hypot(dx, dy);
      double off = length < 1e-6 ? 0 : distance.applyAsDouble(wire.get(i)) / length;
      points.add(new Point2D.Double(path.get(i).getX() - off * dy, path.get(i).getY() + off * dx));
    }
    return points;
  }

  private static void fill(Disc disc, List<Point2D> path, List<Point2D> offset) {
    Path2D outline = new Path2D.Double();
    Point2D first = disc.at(path.get(0).getX(), path.get(0).getY());
    outline.moveTo(first.getX(), first.getY());
    for (Point2D point : offset) {
      Point2D p = disc.at(point.getX(), point.getY());
      outline.lineTo(p.getX(), p.getY());
    }
    for (int i = path.size() - 1; i > 0; i--) {
      Point2D p = disc.at(path.get(i).getX(), path.get(i).getY());
      outline.lineTo(p.getX(), p.getY());
    }
    outline.closePath();
    disc.g().setPaint(Ink.SKY);
    disc.g().fill(outline);
  }

  private void key(Graphics2D g, Rectangle2D area, double current, double charge) {
    double y = area.getMaxY() - KEY_HEIGHT;
    Disc plain = new Disc(g, area.getX(), y, 1);
    plain.line(10, -10, 34, -10, Ink.BLUE, Ink.curve(0));
    plain.text(
        "current, largest " + Numbers.significant(current, 3) + " A", 36, -10, 1, 0, Ink.TEXT);
    plain.line(10, -26, 34, -26, Ink.VERMILION, Ink.limit());
    plain.text(
        "charge, largest " + Numbers.significant(charge * 1e9, 3) + " nC/m",
        36,
        -26,
        1,
        0,
        Ink.TEXT);
    plain.dot(250, -10, 4, Ink.TEXT, false);
    plain.text("feedpoint", 256, -10, 1, 0, Ink.TEXT);
  }

  /** The longest round length that has its place. */
  private static void scaleBar(Disc disc, Rectangle2D area) {
    double metres = BARS[0];
    for (double bar : BARS) {
      metres = bar * disc.radius() <= LONGEST_BAR ? bar : metres;
    }
    Disc plain = new Disc(disc.g(), area.getX(), area.getMaxY() - KEY_HEIGHT, 1);
    double end = 246 + metres * disc.radius();
    plain.line(246, -26, end, -26, Ink.TEXT, Ink.curve(0));
    plain.text(Numbers.significant(metres, 3) + " m", end + 2, -26, 1, 0, Ink.TEXT);
  }
}
