package org.spanwire.cli.chart;

import java.awt.Graphics2D;
import java.awt.geom.Rectangle2D;
import java.util.ArrayList;
import java.util.List;
import org.jfree.chart.axis.NumberAxis;
import org.jfree.chart.plot.XYPlot;
import org.jfree.chart.renderer.xy.XYLineAndShapeRenderer;
import org.jfree.data.xy.XYSeries;
import org.jfree.data.xy.XYSeriesCollection;
import org.spanwire.cli.output.Numbers;

/**
 * Quantities against another as lines through given values.
 *
 * @param title what it shows
 * @param across name and unit of the quantity across
 * @param up name and unit of the quantity upwards
 * @param lines the lines; a value that is not finite leaves a gap
 */
public record LineChart(String title, String across, String up, List<Line> lines) implements Chart {

  private static final double DOT = 2.5;

  /** Values of a line that each get a dot; more would run into one another. */
  private static final int MOST_DOTS = 80;

  /**
   * A line.
   *
   * @param name what tells it from the others; empty if there is one only
   * @param x values across
   * @param y values upwards
   */
  public record Line(String name, List<Double> x, List<Double> y) {
    /** Takes copies. */
    public Line {
      x = List.copyOf(x);
      y = List.copyOf(y);
    }
  }

  /** Takes a copy. */
  public LineChart {
    lines = List.copyOf(lines);
  }

  @Override
  public String description() {
    StringBuilder text = new StringBuilder(up + " against " + across + ".");
    for (Line line : lines) {
      double[] finite =
          line.y().stream().mapToDouble(Double::doubleValue).filter(Double::isFinite).toArray();
      if (finite.length > 0) {
        text.append(line.name().isEmpty() ? " From " : " " + line.name() + ": from ")
            .append(Numbers.significant(java.util.Arrays.stream(finite).min().orElseThrow(), 3))
            .append(" to ")
            .append(Numbers.significant(java.util.Arrays.stream(finite).max().orElseThrow(), 3))
            .append('.');
      }
    }
    return text.toString();
  }

  @Override
  public int width() {
    return 420;
  }

  @Override
  public int height() {
    return 270;
  }

  @Override
  public List<Mark> draw(Graphics2D g, Rectangle2D area) {
    XYSeriesCollection data = new XYSeriesCollection();
    XYLineAndShapeRenderer renderer =
        new XYLineAndShapeRenderer(
            true, lines.stream().allMatch(line -> line.x().size() <= MOST_DOTS));
    renderer.setDrawSeriesLineAsPath(true);
    List<XyChart.Reading> readings = new ArrayList<>();
    for (int i = 0; i < lines.size(); i++) {
      Line line = lines.get(i);
      XYSeries series = new XYSeries(i + " " + line.name(), false);
      for (int k = 0; k < line.x().size(); k++) {
        double y = line.y().get(k);
        series.add((double) line.x().get(k), Double.isFinite(y) ? y : Double.NaN);
        if (Double.isFinite(y)) {
          readings.add(new XyChart.Reading(line.x().get(k), y, reading(line, k)));
        }
      }
      data.addSeries(series);
      renderer.setSeriesPaint(i, Ink.series(i));
      renderer.setSeriesStroke(i, Ink.curve(i));
      renderer.setSeriesShape(i, new java.awt.geom.Ellipse2D.Double(-DOT, -DOT, 2 * DOT, 2 * DOT));
    }
    renderer.setLegendItemLabelGenerator((set, series) -> lines.get(series).name());
    XYPlot plot = XyChart.plot(axis(across), axis(up));
    plot.setDataset(data);
    plot.setRenderer(renderer);
    return XyChart.draw(plot, lines.size() > 1, readings, g, area);
  }

  private static NumberAxis axis(String label) {
    NumberAxis axis = new NumberAxis(label);
    axis.setAutoRangeIncludesZero(false);
    return axis;
  }

  private String reading(Line line, int k) {
    return (line.name().isEmpty() ? "" : line.name() + ", ")
        + across
        + " "
        + Numbers.significant(line.x().get(k), 6)
        + ": "
        + up
        + " "
        + Numbers.significant(line.y().get(k), 4);
  }
}
