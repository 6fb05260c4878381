package org.spanwire.cli.chart;

import java.awt.Graphics2D;
import java.awt.geom.Ellipse2D;
import java.awt.geom.Rectangle2D;
import java.util.ArrayList;
import java.util.List;
import java.util.function.ToDoubleFunction;
import org.jfree.chart.plot.XYPlot;
import org.jfree.chart.renderer.xy.XYLineAndShapeRenderer;
import org.jfree.data.xy.XYSeries;
import org.jfree.data.xy.XYSeriesCollection;
import org.spanwire.cli.output.Numbers;
import org.spanwire.study.FitResult;

/**
 * SWR as it was read, of the design as it is, and with the estimates.
 *
 * @param comparisons the readings, rising in frequency
 */
public record FitChart(List<FitResult.Comparison> comparisons) implements Chart {

  private static final double DOT = 3.5;

  /** Readings farther apart, as from band to band, are not joined by a line. */
  private static final double WIDEST_RATIO = 1.15;

  /** Takes a copy. */
  public FitChart {
    comparisons = List.copyOf(comparisons);
  }

  @Override
  public String title() {
    return "SWR, reading by reading";
  }

  @Override
  public String description() {
    return "SWR against frequency at "
        + comparisons.size()
        + " readings: as read, as designed, and with the estimates.";
  }

  @Override
  public int width() {
    return 700;
  }

  @Override
  public int height() {
    return 320;
  }

  @Override
  public List<Mark> draw(Graphics2D g, Rectangle2D area) {
    XYSeriesCollection data = new XYSeriesCollection();
    data.addSeries(series("as read", FitResult.Comparison::readSwr));
    data.addSeries(series("as designed", FitResult.Comparison::designedSwr));
    data.addSeries(series("with the estimates", FitResult.Comparison::estimatedSwr));
    XYLineAndShapeRenderer renderer = new XYLineAndShapeRenderer(true, false);
    renderer.setDrawSeriesLineAsPath(true);
    renderer.setSeriesLinesVisible(0, false);
    renderer.setSeriesShapesVisible(0, true);
    renderer.setSeriesShape(0, new Ellipse2D.Double(-DOT, -DOT, 2 * DOT, 2 * DOT));
    renderer.setSeriesPaint(0, Ink.TEXT);
    renderer.setSeriesPaint(1, Ink.VERMILION);
    renderer.setSeriesStroke(1, Ink.curve(1));
    renderer.setSeriesPaint(2, Ink.BLUE);
    renderer.setSeriesStroke(2, Ink.curve(0));
    double least = comparisons.get(0).frequencyHz() * 1e-6;
    double most = comparisons.get(comparisons.size() - 1).frequencyHz() * 1e-6;
    double room = Math.max(0.02 * (most - least), 1e-3 * most);
    XYPlot plot =
        XyChart.plot(XyChart.axis("frequency, MHz", least - room, most + room), SwrAxis.whole());
    plot.setDataset(data);
    plot.setRenderer(renderer);
    List<XyChart.Reading> readings = new ArrayList<>();
    for (FitResult.Comparison each : comparisons) {
      readings.add(
          new XyChart.Reading(
              each.frequencyHz() * 1e-6, SwrAxis.place(each.readSwr()), reading(each)));
    }
    return XyChart.draw(plot, true, readings, g, area);
  }

  private XYSeries series(String name, ToDoubleFunction<FitResult.Comparison> swr) {
    XYSeries series = new XYSeries(name, false);
    double before = comparisons.get(0).frequencyHz();
    for (FitResult.Comparison each : comparisons) {
      if (each.frequencyHz() > WIDEST_RATIO * before) {
        series.add(0.5e-6 * (before + each.frequencyHz()), Double.NaN);
      }
      series.add(each.frequencyHz() * 1e-6, SwrAxis.place(swr.applyAsDouble(each)));
      before = each.frequencyHz();
    }
    return series;
  }

  private static String reading(FitResult.Comparison each) {
    return Numbers.fixed(each.frequencyHz() * 1e-6, 4)
        + " MHz: read "
        + Numbers.swr(each.readSwr())
        + ", as designed "
        + Numbers.swr(each.designedSwr())
        + ", with the estimates "
        + Numbers.swr(each.estimatedSwr());
  }
}
