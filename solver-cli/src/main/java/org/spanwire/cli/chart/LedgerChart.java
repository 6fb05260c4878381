package org.spanwire.cli.chart;

import java.awt.Color;
import java.awt.Graphics2D;
import java.awt.geom.Rectangle2D;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import org.jfree.chart.axis.CategoryAxis;
import org.jfree.chart.axis.CategoryLabelPositions;
import org.jfree.chart.axis.NumberAxis;
import org.jfree.chart.plot.CategoryPlot;
import org.jfree.chart.plot.PlotOrientation;
import org.jfree.chart.renderer.category.StackedBarRenderer;
import org.jfree.chart.renderer.category.StandardBarPainter;
import org.jfree.chart.ui.RectangleEdge;
import org.jfree.data.category.DefaultCategoryDataset;
import org.spanwire.cli.output.Numbers;
import org.spanwire.study.Ledger;

/**
 * Where the transmitter's power goes: one bar for each band, from what never leaves the transmitter
 * to what reaches the sky.
 *
 * @param ledgers ledgers by name of the band, in the order drawn
 */
public record LedgerChart(Map<String, Ledger> ledgers) implements Chart {

  /** Parts that get less than this share of every bar are not drawn. */
  private static final double SMALLEST = 0.002;

  private static final Map<String, Color> COLORS =
      Map.of(
          Ledger.MISMATCH,
          Ink.GREY,
          "line",
          Ink.SKY,
          "transformer",
          Ink.PURPLE,
          Ledger.CHOKE,
          Ink.VERMILION,
          "fittings",
          Ink.TEXT,
          "conductors",
          Ink.YELLOW,
          "soil",
          Ink.ORANGE,
          "sky",
          Ink.GREEN);

  /** Keeps the order. */
  public LedgerChart {
    ledgers = java.util.Collections.unmodifiableMap(new LinkedHashMap<>(ledgers));
  }

  @Override
  public String title() {
    return "Where the power goes";
  }

  @Override
  public String description() {
    StringBuilder text = new StringBuilder("Stacked bars, percent of the transmitter's power.");
    ledgers.forEach(
        (band, ledger) ->
            text.append(' ')
                .append(band)
                .append(": ")
                .append(percent(ledger, "sky"))
                .append(" reaches the sky."));
    return text.toString();
  }

  private static String percent(Ledger ledger, String part) {
    return Numbers.fixed(100 * ledger.watts(part) / ledger.availableWatts(), 0) + " %";
  }

  /** The parts that are seen in any bar, in the order of the ledger. */
  private List<String> parts() {
    return ledgers.values().iterator().next().entries().stream()
        .map(Ledger.Entry::part)
        .distinct()
        .filter(part -> ledgers.values().stream().anyMatch(l -> share(l, part) > SMALLEST))
        .toList();
  }

  /** Share of all parts of a name; several lines are one part here. */
  private static double share(Ledger ledger, String part) {
    return ledger.entries().stream()
            .filter(entry -> entry.part().equals(part))
            .mapToDouble(Ledger.Entry::watts)
            .sum()
        / ledger.availableWatts();
  }

  @Override
  public int width() {
    return 350;
  }

  @Override
  public int height() {
    return 90 + 26 * ledgers.size();
  }

  @Override
  public List<Mark> draw(Graphics2D g, Rectangle2D area) {
    DefaultCategoryDataset data = new DefaultCategoryDataset();
    StackedBarRenderer renderer = new StackedBarRenderer();
    renderer.setBarPainter(new StandardBarPainter());
    renderer.setShadowVisible(false);
    renderer.setDrawBarOutline(true);
    List<String> parts = parts();
    for (int i = 0; i < parts.size(); i++) {
      String part = parts.get(i);
      ledgers.forEach((band, ledger) -> data.addValue(100 * share(ledger, part), part, band));
      renderer.setSeriesPaint(i, COLORS.getOrDefault(part, Ink.series(i)));
      renderer.setSeriesOutlinePaint(i, Ink.PAPER);
    }
    NumberAxis percent = XyChart.style(XyChart.axis("percent of the transmitter's power", 0, 100));
    CategoryAxis bands = new CategoryAxis();
    bands.setTickLabelFont(Ink.FONT);
    bands.setTickLabelPaint(Ink.TEXT);
    bands.setAxisLinePaint(Ink.SOFT);
    bands.setCategoryMargin(0.25);
    bands.setCategoryLabelPositions(CategoryLabelPositions.STANDARD);
    CategoryPlot plot = new CategoryPlot(data, bands, percent, renderer);
    XyChart.plain(plot);
    plot.setOrientation(PlotOrientation.HORIZONTAL);
    plot.setRangeGridlinePaint(Ink.GRID);
    Rectangle2D drawn = XyChart.draw(plot, true, g, area);
    return marks(parts, data, bands, percent, drawn, area);
  }

  private List<Mark> marks(
      List<String> parts,
      DefaultCategoryDataset data,
      CategoryAxis bands,
      NumberAxis percent,
      Rectangle2D drawn,
      Rectangle2D area) {
    List<Mark> marks = new ArrayList<>();
    int row = 0;
    for (Map.Entry<String, Ledger> each : ledgers.entrySet()) {
      double y = bands.getCategoryMiddle(row++, data.getColumnCount(), drawn, RectangleEdge.LEFT);
      double before = 0;
      for (String part : parts) {
        double share = 100 * share(each.getValue(), part);
        double x = percent.valueToJava2D(before + share / 2, drawn, RectangleEdge.BOTTOM);
        marks.add(
            new Mark(
                x - area.getX(),
                y - area.getY(),
                each.getKey() + ", " + part + ": " + Numbers.fixed(share, 1) + " %"));
        before += share;
      }
    }
    return marks;
  }
}
