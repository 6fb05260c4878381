package org.spanwire.validation.accuracy;

import java.awt.BasicStroke;
import java.awt.Color;
import java.awt.Dimension;
import java.awt.Font;
import java.awt.geom.Line2D;
import java.awt.geom.Rectangle2D;
import java.io.IOException;
import java.io.Writer;
import java.nio.file.Files;
import java.nio.file.Path;
import java.text.DecimalFormat;
import java.util.List;
import java.util.function.ToDoubleFunction;
import javax.xml.parsers.DocumentBuilderFactory;
import javax.xml.parsers.ParserConfigurationException;
import org.apache.batik.svggen.SVGGeneratorContext;
import org.apache.batik.svggen.SVGGraphics2D;
import org.jfree.chart.ChartFactory;
import org.jfree.chart.JFreeChart;
import org.jfree.chart.axis.LogAxis;
import org.jfree.chart.axis.NumberAxis;
import org.jfree.chart.axis.NumberTickUnit;
import org.jfree.chart.block.BlockBorder;
import org.jfree.chart.plot.XYPlot;
import org.jfree.chart.renderer.xy.XYLineAndShapeRenderer;
import org.jfree.data.xy.XYSeries;
import org.jfree.data.xy.XYSeriesCollection;
import org.w3c.dom.Document;

/** Draws the figures of the theory notes: impedance and gain of a level wire against its height. */
public final class HeightPlots {

  private static final int WIDTH = 720;
  private static final int HEIGHT = 400;

  /** In dBi; the null over sea water at one wavelength would take half of the picture. */
  private static final double LOWEST_GAIN = -15;

  private static final Font FONT = new Font(Font.SANS_SERIF, Font.PLAIN, 13);

  /** Colours that can be told apart whatever one's sight (Okabe and Ito, 2008). */
  private static final List<Color> COLOURS =
      List.of(
          new Color(0x00, 0x72, 0xb2),
          new Color(0x00, 0x9e, 0x73),
          new Color(0xd5, 0x5e, 0x00),
          new Color(0x33, 0x33, 0x33));

  private static final List<float[]> DASHES =
      List.of(new float[] {1, 0}, new float[] {9, 3}, new float[] {5, 3}, new float[] {2, 3});

  private HeightPlots() {}

  /**
   * Solves the curves and draws them.
   *
   * @param arguments the directory for the data, and the one for the figures
   */
  public static void main(String[] arguments) throws IOException {
    HeightCurves curves = HeightCurves.solve();
    curves.write(Path.of(arguments[0]));
    draw(curves, Path.of(arguments[1]));
  }

  /** Draws the three figures. */
  static void draw(HeightCurves curves, Path directory) throws IOException {
    Files.createDirectories(directory);
    draw(
        curves,
        HeightCurves.Place::resistance,
        "input resistance, ohm",
        directory.resolve("height-resistance.svg"));
    draw(
        curves,
        HeightCurves.Place::reactance,
        "input reactance, ohm",
        directory.resolve("height-reactance.svg"));
    draw(
        curves,
        HeightCurves.Place::gainDbi,
        "gain at 30° elevation, dBi",
        directory.resolve("height-gain.svg"));
  }

  private static void draw(
      HeightCurves curves, ToDoubleFunction<HeightCurves.Place> value, String label, Path file)
      throws IOException {
    XYSeriesCollection data = new XYSeriesCollection();
    for (String soil : HeightCurves.SOILS) {
      XYSeries series = new XYSeries(soil);
      curves.over(soil).forEach(p -> series.add(p.height(), value.applyAsDouble(p)));
      data.addSeries(series);
    }
    JFreeChart chart = ChartFactory.createXYLineChart(null, null, null, data);
    chart.setBackgroundPaint(Color.WHITE);
    chart.getLegend().setItemFont(FONT);
    chart.getLegend().setFrame(BlockBorder.NONE);
    style(chart.getXYPlot(), label);
    if (file.endsWith("height-gain.svg")) {
      chart.getXYPlot().getRangeAxis().setLowerBound(LOWEST_GAIN);
    }
    write(chart, file);
  }

  private static void style(XYPlot plot, String label) {
    LogAxis across = new LogAxis("height, wavelengths");
    across.setRange(0.0099, 1.01);
    across.setMinorTickMarksVisible(true);
    across.setMinorTickCount(9);
    across.setTickUnit(new NumberTickUnit(1));
    across.setNumberFormatOverride(new DecimalFormat("0.##"));
    NumberAxis up = new NumberAxis(label);
    up.setAutoRangeIncludesZero(false);
    plot.setDomainAxis(across);
    plot.setRangeAxis(up);
    across.setLabelFont(FONT);
    across.setTickLabelFont(FONT);
    up.setLabelFont(FONT);
    up.setTickLabelFont(FONT);
    plot.setBackgroundPaint(Color.WHITE);
    plot.setDomainGridlinePaint(Color.LIGHT_GRAY);
    plot.setRangeGridlinePaint(Color.LIGHT_GRAY);
    plot.setDomainMinorGridlinesVisible(true);
    plot.setDomainMinorGridlinePaint(new Color(0xe8, 0xe8, 0xe8));
    XYLineAndShapeRenderer lines = new XYLineAndShapeRenderer(true, false);
    lines.setDrawSeriesLineAsPath(true);
    for (int i = 0; i < COLOURS.size(); i++) {
      lines.setSeriesPaint(i, COLOURS.get(i));
      lines.setSeriesStroke(
          i,
          new BasicStroke(2, BasicStroke.CAP_BUTT, BasicStroke.JOIN_ROUND, 10, DASHES.get(i), 0));
      lines.setLegendLine(new Line2D.Double(-16, 0, 16, 0));
    }
    plot.setRenderer(lines);
  }

  private static void write(JFreeChart chart, Path file) throws IOException {
    SVGGeneratorContext context = SVGGeneratorContext.createDefault(document());
    context.setComment(null);
    context.setPrecision(1);
    SVGGraphics2D graphics = new SVGGraphics2D(context, false);
    graphics.setSVGCanvasSize(new Dimension(WIDTH, HEIGHT));
    chart.draw(graphics, new Rectangle2D.Double(0, 0, WIDTH, HEIGHT));
    try (Writer out = Files.newBufferedWriter(file)) {
      graphics.stream(out);
    }
  }

  private static Document document() {
    try {
      return DocumentBuilderFactory.newNSInstance()
          .newDocumentBuilder()
          .getDOMImplementation()
          .createDocument("http://www.w3.org/2000/svg", "svg", null);
    } catch (ParserConfigurationException e) {
      throw new IllegalStateException(e);
    }
  }
}
