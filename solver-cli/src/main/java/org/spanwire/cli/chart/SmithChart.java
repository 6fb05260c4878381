package org.spanwire.cli.chart;

import java.awt.Graphics2D;
import java.awt.geom.Point2D;
import java.awt.geom.Rectangle2D;
import java.util.ArrayList;
import java.util.List;
import java.util.stream.IntStream;
import org.apache.commons.math3.complex.Complex;
import org.spanwire.circuit.Mismatch;
import org.spanwire.cli.output.Numbers;
import org.spanwire.study.BandCurves;

/**
 * Impedances on a Smith chart (P. H. Smith, Electronics 12, January 1939): reflection coefficients
 * in the unit circle, over lines of constant resistance and reactance.
 *
 * @param title what it shows
 * @param referenceOhm impedance of its centre in ohms
 * @param traces curves, the main one first, then thinner ones
 */
public record SmithChart(String title, double referenceOhm, List<Trace> traces) implements Chart {

  private static final double[] LINES = {0.2, 0.5, 1, 2, 5};
  private static final int ARC_STEPS = 24;
  private static final int READINGS = 10;

  /**
   * A curve over frequency.
   *
   * @param frequenciesHz rising, at least one
   * @param reflections reflection coefficients there
   */
  public record Trace(List<Double> frequenciesHz, List<Complex> reflections) {
    /** Takes copies. */
    public Trace {
      frequenciesHz = List.copyOf(frequenciesHz);
      reflections = List.copyOf(reflections);
    }

    private int last() {
      return reflections.size() - 1;
    }
  }

  /** Takes a copy. */
  public SmithChart {
    traces = List.copyOf(traces);
  }

  /** A chart of the impedance at the feedpoint over a band, the ends of the spreads thinner. */
  public static SmithChart of(BandCurves curves, double referenceOhm) {
    List<Trace> traces = new ArrayList<>();
    traces.add(inBand(curves, curves.nominal()));
    curves.extremes().forEach(curve -> traces.add(inBand(curves, curve)));
    return new SmithChart("Impedance, " + curves.band().name(), referenceOhm, traces);
  }

  private static Trace inBand(BandCurves curves, BandCurves.Curve curve) {
    List<Integer> inside =
        IntStream.range(0, curves.frequenciesHz().size())
            .filter(i -> curves.band().contains(curves.frequenciesHz().get(i)))
            .boxed()
            .toList();
    return new Trace(
        inside.stream().map(curves.frequenciesHz()::get).toList(),
        inside.stream().map(curve.feedpoint()::get).toList());
  }

  @Override
  public String description() {
    Trace main = traces.get(0);
    return "Smith chart with "
        + Numbers.significant(referenceOhm, 4)
        + " ohm at its centre. "
        + reading(main, 0)
        + (main.last() == 0 ? "." : "; " + reading(main, main.last()) + ".");
  }

  @Override
  public int width() {
    return 320;
  }

  @Override
  public int height() {
    return 296;
  }

  @Override
  public List<Mark> draw(Graphics2D g, Rectangle2D area) {
    Disc disc = new Disc(g, area.getCenterX(), area.getCenterY(), 0.5 * area.getWidth() - 30);
    grid(disc);
    List<Mark> marks = new ArrayList<>();
    for (int t = traces.size() - 1; t >= 0; t--) {
      Trace trace = traces.get(t);
      List<Point2D> points = new ArrayList<>();
      trace
          .reflections()
          .forEach(r -> points.add(new Point2D.Double(r.getReal(), r.getImaginary())));
      if (t > 0) {
        disc.curve(points, Ink.GREY, Ink.LINE);
        continue;
      }
      disc.curve(points, Ink.BLUE, Ink.curve(0));
      ends(disc, points);
      int step = Math.max(1, trace.last() / READINGS);
      for (int i = 0; i <= trace.last(); i += step) {
        Point2D p = disc.at(points.get(i).getX(), points.get(i).getY());
        marks.add(new Mark(p.getX() - area.getX(), p.getY() - area.getY(), reading(trace, i)));
      }
    }
    return marks;
  }

  private static void ends(Disc disc, List<Point2D> points) {
    Point2D low = points.get(0);
    Point2D high = points.get(points.size() - 1);
    disc.dot(high.getX(), high.getY(), 3.5, Ink.BLUE, true);
    disc.dot(low.getX(), low.getY(), 3.5, Ink.PAPER, true);
    disc.dot(low.getX(), low.getY(), 3.5, Ink.BLUE, false);
  }

  private void grid(Disc disc) {
    disc.line(-1, 0, 1, 0, Ink.GRID, Ink.HAIR);
    for (double value : LINES) {
      disc.circle(value / (1 + value), 0, 1 / (1 + value), Ink.GRID, Ink.HAIR);
      disc.curve(reactance(value), Ink.GRID, Ink.HAIR);
      disc.curve(reactance(-value), Ink.GRID, Ink.HAIR);
    }
    disc.circle(0, 0, 1, Ink.SOFT, Ink.LINE);
    disc.circle(0, 0, SwrAxis.place(2), Ink.SOFT, Ink.limit());
    disc.circle(0, 0, SwrAxis.place(3), Ink.SOFT, Ink.limit());
    for (double value : LINES) {
      String ohms = Numbers.significant(value * referenceOhm, 3);
      disc.text(ohms, (value - 1) / (value + 1), 0, 0, 1, Ink.SOFT);
      Complex edge = reflection(0, value);
      int side = Double.compare(edge.getReal(), 0);
      disc.text("+" + ohms, edge.getReal(), edge.getImaginary(), side, 1, Ink.SOFT);
      disc.text("-" + ohms, edge.getReal(), -edge.getImaginary(), side, -1, Ink.SOFT);
    }
  }

  /** The line of a reactance, from no resistance to all of it. */
  private static List<Point2D> reactance(double x) {
    List<Point2D> arc = new ArrayList<>();
    for (int i = 0; i <= ARC_STEPS; i++) {
      double share = (double) i / ARC_STEPS;
      // Even steps of the angle around the arc's centre (1, 1/x).
      double whole = 2 * Math.atan(Math.abs(x));
      double angle = whole * (1 - share);
      arc.add(
          new Point2D.Double(
              1 - Math.sin(angle) / Math.abs(x),
              Math.signum(x) * (1 - Math.cos(angle)) / Math.abs(x)));
    }
    return arc;
  }

  private static Complex reflection(double r, double x) {
    Complex z = new Complex(r, x);
    return z.subtract(1).divide(z.add(1));
  }

  private String reading(Trace trace, int i) {
    Complex z = Mismatch.ofReflection(trace.reflections().get(i), referenceOhm).impedance();
    String ohms = Numbers.rectangular(z) + (z.isInfinite() || z.isNaN() ? "" : " ohm");
    return Numbers.fixed(trace.frequenciesHz().get(i) / 1e6, 4)
        + " MHz: "
        + ohms
        + ", SWR "
        + Numbers.swr(Mismatch.ofReflection(trace.reflections().get(i), referenceOhm).swr());
  }
}
