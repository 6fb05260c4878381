package org.spanwire.cli.chart;

import java.awt.Color;
import java.awt.Graphics2D;
import java.awt.geom.Rectangle2D;
import java.util.ArrayList;
import java.util.List;
import java.util.OptionalDouble;
import org.jfree.chart.annotations.XYBoxAnnotation;
import org.jfree.chart.annotations.XYTextAnnotation;
import org.jfree.chart.axis.SymbolAxis;
import org.jfree.chart.plot.XYPlot;
import org.jfree.chart.renderer.LookupPaintScale;
import org.jfree.chart.renderer.xy.XYBlockRenderer;
import org.jfree.data.xy.DefaultXYZDataset;
import org.spanwire.cli.output.Numbers;
import org.spanwire.unit.Quantity;

/**
 * Worst SWR against two parameters: one cell for each pair of values, darker for more, the number
 * written in it where there is room.
 *
 * @param title what it shows
 * @param across name and values of the parameter drawn across
 * @param up name and values of the parameter drawn upwards
 * @param cells SWR by up and across; empty where there is none
 */
public record MapChart(String title, Axis across, Axis up, List<List<OptionalDouble>> cells)
    implements Chart {

  private static final double[] FROM = {1, 1.5, 2, 3, 5, 10};

  /** One hue from light to dark: told apart in grey and by all eyes. */
  private static final Color[] SHADES = {
    new Color(238, 245, 251),
    new Color(203, 224, 241),
    new Color(143, 190, 224),
    new Color(74, 139, 192),
    new Color(28, 92, 150),
    new Color(11, 44, 84)
  };

  private static final int CELL_WIDTH = 40;
  private static final int CELL_HEIGHT = 30;

  /** Largest extent; in cells smaller than above nothing can be written. */
  private static final int MOST = 800;

  private static final Color ON_LIGHT = new Color(17, 17, 17);
  private static final int FIRST_DARK = 3;

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
      String[] labels = values.stream().map(Axis::number).toArray(String[]::new);
      SymbolAxis axis = XyChart.style(new SymbolAxis(name + unit(), labels));
      axis.setGridBandsVisible(false);
      axis.setTickMarksVisible(false);
      return axis;
    }

    private String unit() {
      String symbol = values.get(0).dimension().symbol();
      return ", " + (symbol.isEmpty() ? "%" : symbol);
    }

    private static String number(Quantity value) {
      boolean percent = value.dimension().symbol().isEmpty();
      return Numbers.significant(percent ? 100 * value.value() : value.value(), 3);
    }

    private String label(int index) {
      return name + " " + number(values.get(index)) + unit().substring(1);
    }
  }

  /** Takes copies. */
  public MapChart {
    cells = cells.stream().map(List::copyOf).toList();
  }

  @Override
  public String description() {
    double best = Double.POSITIVE_INFINITY;
    String where = "";
    for (int j = 0; j < cells.size(); j++) {
      for (int i = 0; i < cells.get(j).size(); i++) {
        if (cells.get(j).get(i).orElse(Double.POSITIVE_INFINITY) < best) {
          best = cells.get(j).get(i).getAsDouble();
          where = place(i, j);
        }
      }
    }
    return "Worst SWR for values of "
        + across.name()
        + " and "
        + up.name()
        + (where.isEmpty()
            ? ": none could be solved."
            : ". Smallest: " + Numbers.swr(best) + " at " + where + ".");
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
    return 70 + Math.min(CELL_HEIGHT * up.values().size(), MOST);
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
        OptionalDouble swr = cells.get(j).get(i);
        if (written()) {
          plot.addAnnotation(text(i, j, swr));
        }
        String value =
            swr.isPresent() ? "SWR " + Numbers.swr(swr.getAsDouble()) : "cannot be solved";
        readings.add(new XyChart.Reading(i, j, place(i, j) + ": " + value));
        if (swr.isPresent()) {
          data[0][next] = i;
          data[1][next] = j;
          data[2][next++] = swr.getAsDouble();
        }
      }
    }
    DefaultXYZDataset set = new DefaultXYZDataset();
    set.addSeries("SWR", data);
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
    return XyChart.draw(plot, false, readings, g, area);
  }

  private boolean written() {
    return CELL_WIDTH * across.values().size() <= MOST && CELL_HEIGHT * up.values().size() <= MOST;
  }

  private static XYBlockRenderer renderer() {
    LookupPaintScale scale = new LookupPaintScale(1, Double.MAX_VALUE, SHADES[SHADES.length - 1]);
    for (int i = 0; i < FROM.length; i++) {
      scale.add(i == 0 ? 1 : Math.nextUp(FROM[i]), SHADES[i]);
    }
    XYBlockRenderer renderer = new XYBlockRenderer();
    renderer.setPaintScale(scale);
    return renderer;
  }

  private static XYTextAnnotation text(int i, int j, OptionalDouble swr) {
    XYTextAnnotation text =
        new XYTextAnnotation(swr.isPresent() ? Numbers.swr(swr.getAsDouble()) : "-", i, j);
    text.setFont(Ink.FONT);
    boolean dark = swr.isPresent() && swr.getAsDouble() > FROM[FIRST_DARK];
    text.setPaint(swr.isEmpty() ? Ink.TEXT : dark ? Color.WHITE : ON_LIGHT);
    return text;
  }
}
