package org.spanwire.cli.chart;

import java.awt.Color;
import java.awt.FontMetrics;
import java.awt.Graphics2D;
import java.awt.Stroke;
import java.awt.geom.Ellipse2D;
import java.awt.geom.Path2D;
import java.awt.geom.Point2D;
import java.util.List;

/**
 * Draws in a plane whose unit circle lies somewhere on the picture, y upwards. The chart library
 * has polar plots of whole circles only, and no Smith chart.
 *
 * @param g draws
 * @param centreX centre of the circle, to the right
 * @param centreY centre of the circle, downwards
 * @param radius radius of the circle
 */
record Disc(Graphics2D g, double centreX, double centreY, double radius) {

  Point2D at(double x, double y) {
    return new Point2D.Double(centreX + radius * x, centreY - radius * y);
  }

  void circle(double x, double y, double r, Color color, Stroke stroke) {
    g.setPaint(color);
    g.setStroke(stroke);
    Point2D centre = at(x, y);
    double size = radius * r;
    g.draw(new Ellipse2D.Double(centre.getX() - size, centre.getY() - size, 2 * size, 2 * size));
  }

  void line(double x1, double y1, double x2, double y2, Color color, Stroke stroke) {
    curve(List.of(new Point2D.Double(x1, y1), new Point2D.Double(x2, y2)), color, stroke);
  }

  void curve(List<? extends Point2D> points, Color color, Stroke stroke) {
    Path2D path = new Path2D.Double();
    for (int i = 0; i < points.size(); i++) {
      Point2D p = at(points.get(i).getX(), points.get(i).getY());
      if (i == 0) {
        path.moveTo(p.getX(), p.getY());
      } else {
        path.lineTo(p.getX(), p.getY());
      }
    }
    g.setPaint(color);
    g.setStroke(stroke);
    g.draw(path);
  }

  void dot(double x, double y, double size, Color color, boolean filled) {
    Point2D p = at(x, y);
    Ellipse2D dot = new Ellipse2D.Double(p.getX() - size, p.getY() - size, 2 * size, 2 * size);
    g.setPaint(color);
    if (filled) {
      g.fill(dot);
    } else {
      g.setStroke(Ink.LINE);
      g.draw(dot);
    }
  }

  /**
   * Writes beside a point.
   *
   * @param alignX −1 to the left of it, 0 across, 1 to the right
   * @param alignY −1 below it, 0 across, 1 above
   */
  void text(String text, double x, double y, int alignX, int alignY, Color color) {
    Point2D p = at(x, y);
    g.setFont(Ink.SMALL);
    g.setPaint(color);
    FontMetrics metrics = g.getFontMetrics();
    double width = metrics.stringWidth(text);
    double left = p.getX() + (alignX - 1) * width / 2 + 3 * alignX;
    double base = p.getY() + metrics.getAscent() * (0.4 - 0.6 * alignY) - 2 * alignY;
    g.drawString(text, (float) left, (float) base);
  }
}
