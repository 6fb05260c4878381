package org.spanwire.cli.chart;

import java.awt.Color;
import java.awt.Font;
import java.awt.Graphics2D;
import java.awt.RenderingHints;
import java.awt.geom.AffineTransform;
import java.awt.geom.Rectangle2D;
import java.awt.image.BufferedImage;
import java.io.ByteArrayOutputStream;
import java.io.IOException;
import java.io.UncheckedIOException;
import java.nio.charset.StandardCharsets;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import javax.imageio.ImageIO;

/**
 * Several charts on one white sheet, each below its title.
 *
 * @param title what all of them show
 * @param charts at least one, from left to right in rows
 */
public record Sheet(String title, List<Chart> charts) implements Chart {

  private static final int HEAD = 34;
  private static final int TITLE = 22;
  private static final int GAP = 14;
  private static final int MOST_COLUMNS = 3;
  private static final int MOST_WIDTH = 1400;

  /** Pixels for a unit of the charts: sharp on screens and on paper. */
  private static final int PIXELS = 2;

  private static final Font BOLD = Ink.FONT.deriveFont(Font.BOLD);

  /** Takes a copy. */
  public Sheet {
    charts = List.copyOf(charts);
    if (charts.isEmpty()) {
      throw new IllegalArgumentException("a sheet needs at least one chart");
    }
  }

  private int columns() {
    int fitting = Math.max(1, (MOST_WIDTH - GAP) / cellWidth());
    return Math.min(Math.min(MOST_COLUMNS, fitting), charts.size());
  }

  private int cellWidth() {
    return charts.stream().mapToInt(Chart::width).max().orElseThrow() + GAP;
  }

  private int rowHeight(int row) {
    int first = row * columns();
    return TITLE
        + GAP
        + charts.subList(first, Math.min(charts.size(), first + columns())).stream()
            .mapToInt(Chart::height)
            .max()
            .orElseThrow();
  }

  private int rows() {
    return (charts.size() + columns() - 1) / columns();
  }

  @Override
  public String description() {
    StringBuilder text = new StringBuilder();
    charts.forEach(
        chart -> text.append(chart.title()).append(": ").append(chart.description()).append(' '));
    return text.toString().strip();
  }

  @Override
  public int width() {
    return columns() * cellWidth() + GAP;
  }

  @Override
  public int height() {
    int height = HEAD;
    for (int row = 0; row < rows(); row++) {
      height += rowHeight(row);
    }
    return height;
  }

  @Override
  public List<Mark> draw(Graphics2D g, Rectangle2D area) {
    g.setPaint(Color.WHITE);
    g.fill(area);
    g.setPaint(Ink.TEXT);
    g.setFont(BOLD.deriveFont(14f));
    g.drawString(title, (float) area.getX() + GAP, (float) area.getY() + 22);
    List<Mark> marks = new ArrayList<>();
    double y = area.getY() + HEAD;
    for (int row = 0; row < rows(); row++) {
      for (int column = 0; column < columns(); column++) {
        int index = row * columns() + column;
        if (index < charts.size()) {
          double x = area.getX() + GAP + column * cellWidth();
          place(g, charts.get(index), x, y)
              .forEach(m -> marks.add(new Mark(m.x() + x, m.y(), m.text())));
        }
      }
      y += rowHeight(row);
    }
    return marks;
  }

  private static List<Mark> place(Graphics2D g, Chart chart, double x, double y) {
    g.setPaint(Ink.TEXT);
    g.setFont(BOLD);
    g.drawString(chart.title(), (float) x, (float) y + 14);
    double top = y + TITLE;
    return chart.draw(g, new Rectangle2D.Double(x, top, chart.width(), chart.height())).stream()
        .map(m -> new Mark(m.x(), m.y() + top, m.text()))
        .toList();
  }

  /**
   * The sheet as a file's content.
   *
   * @param name name of the file, which ends in .svg or .png
   */
  public byte[] file(String name) {
    return name.toLowerCase(Locale.ROOT).endsWith(".svg")
        ? SvgPicture.of(this, "sheet").text().getBytes(StandardCharsets.UTF_8)
        : png();
  }

  private byte[] png() {
    BufferedImage image =
        new BufferedImage(PIXELS * width(), PIXELS * height(), BufferedImage.TYPE_INT_RGB);
    Graphics2D g = image.createGraphics();
    g.setRenderingHint(RenderingHints.KEY_ANTIALIASING, RenderingHints.VALUE_ANTIALIAS_ON);
    g.setRenderingHint(
        RenderingHints.KEY_TEXT_ANTIALIASING, RenderingHints.VALUE_TEXT_ANTIALIAS_ON);
    g.transform(AffineTransform.getScaleInstance(PIXELS, PIXELS));
    draw(g, new Rectangle2D.Double(0, 0, width(), height()));
    g.dispose();
    ByteArrayOutputStream out = new ByteArrayOutputStream();
    try {
      ImageIO.write(image, "png", out);
    } catch (IOException e) {
      throw new UncheckedIOException(e);
    }
    return out.toByteArray();
  }
}
