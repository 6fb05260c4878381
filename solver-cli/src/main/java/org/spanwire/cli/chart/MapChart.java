package org.spanwire.cli.chart;

import java.awt.Color;
import java.awt.Graphics2D;
import java.awt.Paint;
import java.awt.geom.Rectangle2D;
import java.util.ArrayList;
import java.util.List;
import java.util.OptionalDouble;
import org.jfree.chart.annotations.XYBoxAnnotation;
import org.jfree.chart.annotations.XYTextAnnotation;
import org.jfree.chart.axis.SymbolAxis;
import org.jfree.chart.plot.XYPlot;
import org.jfree.chart.renderer.PaintScale;
import org.jfree.chart.renderer.xy.XYBlockRenderer;
import org.jfree.data.xy.DefaultXYZDataset;
import org.spanwire.cli.output.Numbers;
import org.spanwire.unit.Quantity;

/**
 * A quantity against two parameters: one cell for each pair of values, darker for more, the number
 * written in it where there is room, and below what the shades stand for.
 *
 * @param title what it shows
 * @param across name and values of the parameter drawn across
 * @param up name and values of the parameter drawn upwards
 * @param cells the quantity by up and across; empty where there is none
 * @param scale the quantity, and how it is shaded
 */
public record MapChart(
    String title, Axis across, Axis up, List<List<OptionalDouble>> cells, MapScale scale)
    implements Chart {

  private static final int CELL_WIDTH = 40;
  private static final int CELL_HEIGHT = 30;

  /** Largest extent; in cells smaller than above nothing can be written. */
  private static final int MOST = 800;

  private static final Color ON_LIGHT = new Color(17, 17, 17);

  /** Room for what the shades stand for. */
  private static final int KEY_HEIGHT = 22;

  private static final int KEY_INDENT = 8;
  private static final int SWATCH = 12;

  /**
   * One side of the map.
   *
   * @param name of the parameter
   * @param values its values, in order
   * @param nominal index of the design's own value, negative for none
   */
  public record Axis(String name, List<Quantity> values, int nominal) {
    /** Takes a copy. */
    public Axis {
      values = List.copyOf(values);
    }

    private SymbolAxis drawn() {
      ParameterText words = new ParameterText(values);
      String[] labels =
          values.stream()
              .map(value -> Numbers.significant(words.number(value), 3))
              .toArray(String[]::new);
      SymbolAxis axis = XyChart.style(new SymbolAxis(words.label(name), labels));
      axis.setGridBandsVisible(false);
      axis.setTickMarksVisible(false);
      return axis;
    }

    private String label(int index) {
      return name + " " + new ParameterText(values).text(values.get(index));
    }
  }

  /** Takes copies. */
  public MapChart {
    cells = cells.stream().map(List::copyOf).toList();
  }

  @Override
  public String description() {
    double least = Double.POSITIVE_INFINITY;
    double most = Double.NEGATIVE_INFINITY;
    String whereLeast = "";
    String whereMost = "";
    for (int j = 0; j < cells.size(); j++) {
      for (int i = 0; i < cells.get(j).size(); i++) {
        double value = cells.get(j).get(i).orElse(Double.NaN);
        if (value < least) {
          least = value;
          whereLeast = place(i, j);
        }
        if (value > most) {
          most = value;
          whereMost = place(i, j);
        }
      }
    }
    return scale.quantity()
        + " for values of "
        + across.name()
        + " and "
        + up.name()
        + (whereLeast.isEmpty()
            ? ": none could be solved."
            : ". Smallest: "
                + scale.text(least)
                + " at "
                + whereLeast
                + ". Largest: "
                + scale.text(most)
                + " at "
                + whereMost
                + ".");
  }

  private String place(int i, int j) {
    return across.label(i) + ", " + up.label(j);
  }

  @Override
  public int width() {
    return Math.max(350, Math.min(60 + CELL_WIDTH * across.values().size(), MOST));
  }

  @Override
  public int height() {
    return 70 + Math.min(CELL_HEIGHT * up.values().size(), MOST) + KEY_HEIGHT;
  }

  @Override
  public List<Mark> draw(Graphics2D g, Rectangle2D area) {
    XYPlot plot = XyChart.plot(across.drawn(), up.drawn());
    plot.setDomainGridlinesVisible(false);
    plot.setRangeGridlinesVisible(false);
    int count =
        (int) cells.stream().flatMap(List::stream).filter(OptionalDouble::isPresent).count();
    double[][] data = new double[3][count];
    List<XyChart.Reading> readings = new ArrayList<>();
    int next = 0;
    for (int j = 0; j < cells.size(); j++) {
      for (int i = 0; i < cells.get(j).size(); i++) {
        OptionalDouble cell = cells.get(j).get(i);
        if (written()) {
          plot.addAnnotation(text(i, j, cell));
        }
        String value =
            cell.isPresent()
                ? scale.quantity() + " " + scale.text(cell.getAsDouble())
                : "cannot be solved";
        readings.add(new XyChart.Reading(i, j, place(i, j) + ": " + value));
        if (cell.isPresent()) {
          data[0][next] = i;
          data[1][next] = j;
          data[2][next++] = cell.getAsDouble();
        }
      }
    }
    DefaultXYZDataset set = new DefaultXYZDataset();
    set.addSeries(scale.quantity(), data);
    plot.setDataset(set);
    plot.setRenderer(renderer());
    if (across.nominal() >= 0 && up.nominal() >= 0) {
      plot.addAnnotation(
          new XYBoxAnnotation(
              across.nominal() - 0.5,
              up.nominal() - 0.5,
              across.nominal() + 0.5,
              up.nominal() + 0.5,
              Ink.curve(0),
              Ink.VERMILION,
              null));
    }
    key(g, area);
    Rectangle2D map =
        new Rectangle2D.Double(
            area.getX(), area.getY(), area.getWidth(), area.getHeight() - KEY_HEIGHT);
    return XyChart.draw(plot, false, readings, g, map);
  }

  /** What the shades stand for, in a row. */
  private void key(Graphics2D g, Rectangle2D area) {
    double each = (area.getWidth() - 2 * KEY_INDENT) / scale.from().size();
    g.setFont(Ink.SMALL);
    for (int i = 0; i < scale.from().size(); i++) {
      double x = area.getX() + KEY_INDENT + i * each;
      double y = area.getMaxY() - KEY_HEIGHT + 4;
      Rectangle2D swatch = new Rectangle2D.Double(x, y, SWATCH, SWATCH);
      g.setPaint(scale.shadeOf(i));
      g.fill(swatch);
      g.setPaint(Ink.SOFT);
      g.setStroke(Ink.HAIR);
      g.draw(swatch);
      g.setPaint(Ink.TEXT);
      g.drawString(scale.step(i), (float) (x + SWATCH + 3), (float) (y + SWATCH - 2));
    }
  }

  private boolean written() {
    return CELL_WIDTH * across.values().size() <= MOST && CELL_HEIGHT * up.values().size() <= MOST;
  }

  private XYBlockRenderer renderer() {
    XYBlockRenderer renderer = new XYBlockRenderer();
    renderer.setPaintScale(
        new PaintScale() {
          @Override
          public double getLowerBound() {
            return Double.NEGATIVE_INFINITY;
          }

          @Override
          public double getUpperBound() {
            return Double.POSITIVE_INFINITY;
          }

          @Override
          public Paint getPaint(double value) {
            return scale.shade(value);
          }
        });
    return renderer;
  }

  private XYTextAnnotation text(int i, int j, OptionalDouble cell) {
    XYTextAnnotation text =
        new XYTextAnnotation(
            cell.isPresent() ? scale.number().apply(cell.getAsDouble()) : "-", i, j);
    text.setFont(Ink.FONT);
    boolean dark = cell.isPresent() && scale.isDark(cell.getAsDouble());
    text.setPaint(cell.isEmpty() ? Ink.TEXT : dark ? Color.WHITE : ON_LIGHT);
    return text;
  }
}
