package org.spanwire.cli.chart;

import java.awt.Graphics2D;
import java.awt.geom.Point2D;
import java.awt.geom.Rectangle2D;
import java.util.ArrayList;
import java.util.List;
import org.spanwire.cli.output.Numbers;
import org.spanwire.study.PatternCut;

/**
 * Gain by direction, in decibels outwards: cuts of one kind, half a circle for elevation, a whole
 * one for azimuth.
 *
 * @param title what it shows
 * @param cuts cuts of the same kind
 * @param topDbi gain at the rim; 30 dB less at the centre
 */
public record PatternChart(String title, List<PatternCut> cuts, double topDbi) implements Chart {

  private static final double SPAN_DB = 30;
  private static final double RING_DB = 10;
  private static final int READINGS = 6;
  private static final int KEY_HEIGHT = 16;

  /** Takes a copy. */
  public PatternChart {
    cuts = List.copyOf(cuts);
  }

  /** The rim for several charts that are to be compared: the next 5 dB above all gains. */
  public static double top(List<PatternCut> cuts) {
    double highest =
        cuts.stream()
            .flatMap(cut -> cut.samples().stream())
            .mapToDouble(PatternCut.Sample::gainDbi)
            .max()
            .orElseThrow();
    return 5 * Math.ceil(highest / 5);
  }

  private boolean half() {
    return cuts.get(0).kind() == PatternCut.Kind.ELEVATION;
  }

  @Override
  public String description() {
    StringBuilder text =
        new StringBuilder(half() ? "Gain by elevation" : "Gain by azimuth")
            .append(", rim ")
            .append(Numbers.significant(topDbi, 3))
            .append(" dBi, rings every 10 dB.");
    for (PatternCut cut : cuts) {
      PatternCut.Sample best =
          cut.samples().stream()
              .max(java.util.Comparator.comparingDouble(PatternCut.Sample::gainDbi))
              .orElseThrow();
      text.append(' ')
          .append(name(cut))
          .append(": largest ")
          .append(Numbers.fixed(best.gainDbi(), 1))
          .append(" dBi at ")
          .append(where(best.angleDegrees()))
          .append('.');
    }
    return text.toString();
  }

  private String where(double angle) {
    if (!half()) {
      return "azimuth " + Numbers.fixed(angle % 360, 0) + " deg";
    }
    return "elevation "
        + Numbers.fixed(Math.min(angle, 180 - angle), 0)
        + " deg"
        + (angle > 90 ? " on the far side" : "");
  }

  private String name(PatternCut cut) {
    return half()
        ? "azimuth " + degrees(cut.fixedDegrees()) + " / " + degrees(cut.fixedDegrees() + 180)
        : "elevation " + degrees(cut.fixedDegrees());
  }

  private static String degrees(double value) {
    return Numbers.fixed(((value % 360) + 360) % 360, 0) + "°";
  }

  @Override
  public int width() {
    return 300;
  }

  @Override
  public int height() {
    return (half() ? 176 : 300) + KEY_HEIGHT * cuts.size();
  }

  @Override
  public List<Mark> draw(Graphics2D g, Rectangle2D area) {
    double radius = 0.5 * area.getWidth() - 22;
    double top = area.getY() + 16;
    Disc disc = new Disc(g, area.getCenterX(), top + radius, radius);
    grid(disc);
    List<Mark> marks = new ArrayList<>();
    for (int i = 0; i < cuts.size(); i++) {
      List<PatternCut.Sample> samples = cuts.get(i).samples();
      List<Point2D> points = samples.stream().map(this::place).toList();
      disc.curve(points, Ink.series(i), Ink.curve(i));
      for (int s = 0; s < samples.size(); s += READINGS) {
        Point2D p = disc.at(points.get(s).getX(), points.get(s).getY());
        marks.add(
            new Mark(
                p.getX() - area.getX(),
                p.getY() - area.getY(),
                name(cuts.get(i))
                    + ", "
                    + where(samples.get(s).angleDegrees())
                    + ": "
                    + Numbers.fixed(samples.get(s).gainDbi(), 1)
                    + " dBi"));
      }
      key(g, area, i);
    }
    return marks;
  }

  private void key(Graphics2D g, Rectangle2D area, int i) {
    double y = area.getMaxY() - KEY_HEIGHT * (cuts.size() - i) + 8;
    Disc plain = new Disc(g, area.getX(), y, 1);
    plain.line(22, 0, 50, 0, Ink.series(i), Ink.curve(i));
    plain.text(name(cuts.get(i)), 52, 0, 1, 0, Ink.TEXT);
  }

  private double reach(double gainDbi) {
    return Math.max(0, 1 - (topDbi - gainDbi) / SPAN_DB);
  }

  private Point2D place(PatternCut.Sample sample) {
    double angle = Math.toRadians(sample.angleDegrees());
    double r = reach(sample.gainDbi());
    return new Point2D.Double(r * Math.cos(angle), r * Math.sin(angle));
  }

  private void grid(Disc disc) {
    int end = half() ? 180 : 360;
    for (double ring = topDbi; reach(ring) > 0; ring -= RING_DB) {
      disc.curve(arc(reach(ring), end), ring == topDbi ? Ink.SOFT : Ink.GRID, Ink.HAIR);
    }
    for (int angle = 0; angle < 360 && angle <= end; angle += 30) {
      double x = Math.cos(Math.toRadians(angle));
      double y = Math.sin(Math.toRadians(angle));
      disc.line(0, 0, x, y, Ink.GRID, Ink.HAIR);
      int label = half() ? Math.min(angle, 180 - angle) : angle;
      disc.text(
          label + "°",
          x,
          y,
          Math.abs(x) < 1e-9 ? 0 : (int) Math.signum(x),
          // Above the line, where half a circle has its gains below.
          half() && Math.abs(y) < 0.1 ? 1 : Math.abs(y) < 0.1 ? 0 : (int) Math.signum(y),
          Ink.SOFT);
    }
    for (double ring = topDbi; reach(ring) > 0; ring -= RING_DB) {
      // Half a circle has room below it; in a whole one they stand where main lobes seldom are.
      double tilt = half() ? 0 : Math.toRadians(285);
      double r = ring == topDbi && half() ? reach(ring - 2) : reach(ring);
      disc.text(
          Numbers.fixed(ring, 0) + (ring == topDbi ? " dBi" : ""),
          r * Math.cos(tilt),
          r * Math.sin(tilt),
          0,
          half() || ring == topDbi ? -1 : 0,
          Ink.SOFT);
    }
  }

  private static List<Point2D> arc(double radius, int end) {
    List<Point2D> points = new ArrayList<>();
    for (int angle = 0; angle <= end; angle += 4) {
      double a = Math.toRadians(angle);
      points.add(new Point2D.Double(radius * Math.cos(a), radius * Math.sin(a)));
    }
    return points;
  }
}
