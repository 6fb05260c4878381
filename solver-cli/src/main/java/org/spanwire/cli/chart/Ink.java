package org.spanwire.cli.chart;

import java.awt.BasicStroke;
import java.awt.Color;
import java.awt.Font;
import java.awt.Stroke;
import java.util.List;

/**
 * Colours, strokes and letters of all charts. Colours of data are those of M. Okabe and K. Ito,
 * Color Universal Design (2008), which people with any common form of colour blindness tell apart
 * (recommended by B. Wong, Nature Methods 8, 441, 2011). No chart tells anything by colour alone.
 */
final class Ink {

  /** Letters, axes and outlines; a page may show it in another colour, as on dark paper. */
  static final Color TEXT = new Color(34, 34, 38);

  /** Letters that repeat or explain. */
  static final Color SOFT = new Color(88, 88, 96);

  /** Grid lines. */
  static final Color GRID = new Color(208, 208, 214);

  /** Ground that a band lies on. */
  static final Color SHADE = new Color(232, 236, 240);

  /** Gaps between areas; not quite white, so that a page can tell it from letters on dark areas. */
  static final Color PAPER = new Color(254, 254, 254);

  static final Color ORANGE = new Color(230, 159, 0);
  static final Color SKY = new Color(86, 180, 233);
  static final Color GREEN = new Color(0, 158, 115);
  static final Color YELLOW = new Color(240, 228, 66);
  static final Color BLUE = new Color(0, 114, 178);
  static final Color VERMILION = new Color(213, 94, 0);
  static final Color PURPLE = new Color(204, 121, 167);
  static final Color GREY = new Color(150, 150, 156);

  /** Colours of curves, in the order of use. */
  static final List<Color> SERIES = List.of(BLUE, VERMILION, GREEN, PURPLE, ORANGE, SKY, GREY);

  static final Font FONT = new Font(Font.SANS_SERIF, Font.PLAIN, 11);
  static final Font SMALL = FONT.deriveFont(10f);

  static final Stroke HAIR = new BasicStroke(0.75f);
  static final Stroke LINE = new BasicStroke(1f);

  private static final float[][] DASHES = {
    {}, {6f, 3f}, {2f, 2.5f}, {8f, 3f, 2f, 3f}, {10f, 4f}, {3f, 5f}, {1f, 3f}
  };

  private Ink() {}

  static Color series(int index) {
    return SERIES.get(index % SERIES.size());
  }

  /** Stroke of a curve, by its place among several: solid, then dashed in several ways. */
  static Stroke curve(int index) {
    float[] dash = DASHES[index % DASHES.length];
    return dash.length == 0
        ? new BasicStroke(2f, BasicStroke.CAP_ROUND, BasicStroke.JOIN_ROUND)
        : new BasicStroke(2f, BasicStroke.CAP_BUTT, BasicStroke.JOIN_ROUND, 1, dash, 0);
  }

  /** A thin dashed line, for limits. */
  static Stroke limit() {
    return new BasicStroke(
        1f, BasicStroke.CAP_BUTT, BasicStroke.JOIN_MITER, 10, new float[] {4f, 3f}, 0);
  }
}
