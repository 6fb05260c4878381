package org.spanwire.cli.chart;

import java.awt.Color;
import java.awt.Graphics2D;
import java.awt.geom.Rectangle2D;
import java.util.ArrayList;
import java.util.List;
import java.util.function.ToDoubleFunction;
import org.jfree.chart.axis.NumberAxis;
import org.jfree.chart.plot.ValueMarker;
import org.jfree.chart.plot.XYPlot;
import org.jfree.chart.renderer.xy.XYLineAndShapeRenderer;
import org.jfree.chart.ui.Layer;
import org.jfree.chart.ui.RectangleInsets;
import org.jfree.data.xy.XYSeries;
import org.jfree.data.xy.XYSeriesCollection;
import org.spanwire.cli.output.Numbers;
import org.spanwire.study.Verdict;
import org.spanwire.study.YieldResult;

/**
 * SWR over a band that 10, 50 and 90 % of the installations stay below.
 *
 * @param envelope what is drawn
 */
public record EnvelopeChart(YieldResult.Envelope envelope) implements Chart {

  /** One of the curves. */
  private record Curve(String name, ToDoubleFunction<YieldResult.Percentiles> swr) {}

  private static final List<Curve> CURVES =
      List.of(
          new Curve("10 % below", YieldResult.Percentiles::p10),
          new Curve("50 % below", YieldResult.Percentiles::p50),
          new Curve("90 % below", YieldResult.Percentiles::p90));

  private static final List<Color> INKS = List.of(Ink.GREEN, Ink.BLUE, Ink.VERMILION);

  @Override
  public String title() {
    return "SWR of the installations, " + envelope.band();
  }

  @Override
  public String description() {
    StringBuilder text = new StringBuilder("SWR at the transmitter against frequency.");
    for (Curve curve : CURVES) {
      text.append(' ')
          .append(curve.name())
          .append(" an SWR of ")
          .append(Numbers.swr(extreme(curve, true)))
          .append(" to ")
          .append(Numbers.swr(extreme(curve, false)))
          .append('.');
    }
    return text.toString();
  }

  private double extreme(Curve curve, boolean least) {
    var values = envelope.points().stream().map(YieldResult.Point::swr).mapToDouble(curve.swr());
    return (least ? values.min() : values.max()).orElseThrow();
  }

  @Override
  public int width() {
    return 350;
  }

  @Override
  public int height() {
    return 250;
  }

  @Override
  public List<Mark> draw(Graphics2D g, Rectangle2D area) {
    XYSeriesCollection data = new XYSeriesCollection();
    XYLineAndShapeRenderer renderer = new XYLineAndShapeRenderer(true, false);
    renderer.setDrawSeriesLineAsPath(true);
    List<XyChart.Reading> readings = new ArrayList<>();
    for (int i = 0; i < CURVES.size(); i++) {
      XYSeries series = new XYSeries(CURVES.get(i).name(), false);
      for (YieldResult.Point point : envelope.points()) {
        double megahertz = point.frequencyHz() / 1e6;
        double swr = CURVES.get(i).swr().applyAsDouble(point.swr());
        series.add(megahertz, SwrAxis.place(swr));
        readings.add(
            new XyChart.Reading(
                megahertz,
                SwrAxis.place(swr),
                Numbers.megahertz(point.frequencyHz())
                    + " MHz: "
                    + CURVES.get(i).name()
                    + " SWR "
                    + Numbers.swr(swr)));
      }
      data.addSeries(series);
      renderer.setSeriesPaint(i, INKS.get(i));
      renderer.setSeriesStroke(i, Ink.curve(i));
    }
    List<YieldResult.Point> points = envelope.points();
    NumberAxis across =
        XyChart.axis(
            "frequency, MHz",
            points.get(0).frequencyHz() / 1e6,
            points.get(points.size() - 1).frequencyHz() / 1e6);
    XYPlot plot = XyChart.plot(across, new SwrAxis(extreme(CURVES.get(2), false)));
    // The last number of the axis stands half beyond its end.
    plot.setInsets(new RectangleInsets(4, 2, 2, 20));
    plot.setDataset(data);
    plot.setRenderer(renderer);
    for (Verdict verdict : Verdict.values()) {
      if (Double.isFinite(verdict.limit())) {
        ValueMarker limit = new ValueMarker(SwrAxis.place(verdict.limit()), Ink.SOFT, Ink.limit());
        limit.setAlpha(1);
        plot.addRangeMarker(limit, Layer.BACKGROUND);
      }
    }
    return XyChart.draw(plot, true, readings, g, area);
  }
}
