package org.spanwire.cli.chart;

import java.awt.Graphics2D;
import java.awt.geom.Rectangle2D;
import java.util.ArrayList;
import java.util.List;
import org.jfree.chart.ChartRenderingInfo;
import org.jfree.chart.JFreeChart;
import org.jfree.chart.axis.NumberAxis;
import org.jfree.chart.axis.ValueAxis;
import org.jfree.chart.block.BlockBorder;
import org.jfree.chart.plot.Plot;
import org.jfree.chart.plot.XYPlot;
import org.jfree.chart.title.LegendTitle;
import org.jfree.chart.ui.RectangleEdge;
import org.jfree.chart.ui.RectangleInsets;

/** Draws plots of the chart library in the style of all charts here. */
final class XyChart {

  private XyChart() {}

  /** A plot without background, with a fine grid. */
  static XYPlot plot(ValueAxis across, ValueAxis up) {
    XYPlot plot = new XYPlot(null, style(across), style(up), null);
    plain(plot);
    plot.setDomainGridlinePaint(Ink.GRID);
    plot.setRangeGridlinePaint(Ink.GRID);
    plot.setDomainGridlineStroke(Ink.HAIR);
    plot.setRangeGridlineStroke(Ink.HAIR);
    plot.setAxisOffset(RectangleInsets.ZERO_INSETS);
    return plot;
  }

  static void plain(Plot plot) {
    plot.setBackgroundPaint(null);
    plot.setOutlineVisible(false);
    plot.setInsets(new RectangleInsets(4, 2, 2, 10));
  }

  static <T extends ValueAxis> T style(T axis) {
    axis.setLabelFont(Ink.FONT);
    axis.setLabelPaint(Ink.TEXT);
    axis.setTickLabelFont(Ink.FONT);
    axis.setTickLabelPaint(Ink.TEXT);
    axis.setAxisLinePaint(Ink.SOFT);
    axis.setTickMarkPaint(Ink.SOFT);
    return axis;
  }

  /** An axis of numbers that ends where its range ends. */
  static NumberAxis axis(String label, double low, double high) {
    NumberAxis axis = new NumberAxis(label);
    axis.setAutoRangeIncludesZero(false);
    axis.setRange(low, high);
    return axis;
  }

  /** A value to be read out, in the units of the axes. */
  record Reading(double x, double y, String text) {}

  /** Draws a plot, and finds its readings on the picture. */
  static List<Mark> draw(
      XYPlot plot, boolean legend, List<Reading> readings, Graphics2D g, Rectangle2D area) {
    Rectangle2D data = draw(plot, legend, g, area);
    List<Mark> marks = new ArrayList<>();
    for (Reading reading : readings) {
      if (plot.getRangeAxis().getRange().contains(reading.y())) {
        marks.add(
            new Mark(
                plot.getDomainAxis().valueToJava2D(reading.x(), data, RectangleEdge.BOTTOM)
                    - area.getX(),
                plot.getRangeAxis().valueToJava2D(reading.y(), data, RectangleEdge.LEFT)
                    - area.getY(),
                reading.text()));
      }
    }
    return marks;
  }

  /** Draws a plot; the area that its data take. */
  static Rectangle2D draw(Plot plot, boolean legend, Graphics2D g, Rectangle2D area) {
    JFreeChart chart = new JFreeChart(null, Ink.FONT, plot, legend);
    chart.setBackgroundPaint(null);
    chart.setPadding(RectangleInsets.ZERO_INSETS);
    LegendTitle key = chart.getLegend();
    if (key != null) {
      key.setItemFont(Ink.FONT);
      key.setItemPaint(Ink.TEXT);
      key.setBackgroundPaint(null);
      key.setFrame(BlockBorder.NONE);
    }
    ChartRenderingInfo info = new ChartRenderingInfo();
    chart.draw(g, area, info);
    return info.getPlotInfo().getDataArea();
  }
}
