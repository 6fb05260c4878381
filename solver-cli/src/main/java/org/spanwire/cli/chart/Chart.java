package org.spanwire.cli.chart;

import java.awt.Graphics2D;
import java.awt.geom.Rectangle2D;
import java.util.List;

/** A picture of a result. It paints no background, so that it lies on paper of any colour. */
public interface Chart {

  /** A few words on what it shows. */
  String title();

  /** What a reader who cannot see it should know: axes, and the gist in numbers. */
  String description();

  /** Width in units of which a letter is some 11 high. */
  int width();

  /** Height in the same units. */
  int height();

  /**
   * Draws it.
   *
   * @param area where, {@link #width} by {@link #height}
   * @return places to be read out
   */
  List<Mark> draw(Graphics2D g, Rectangle2D area);
}
