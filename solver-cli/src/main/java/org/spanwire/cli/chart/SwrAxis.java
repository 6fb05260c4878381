package org.spanwire.cli.chart;

import java.awt.Graphics2D;
import java.awt.geom.Rectangle2D;
import java.util.List;
import org.jfree.chart.axis.AxisState;
import org.jfree.chart.axis.NumberAxis;
import org.jfree.chart.axis.NumberTick;
import org.jfree.chart.ui.RectangleEdge;
import org.jfree.chart.ui.TextAnchor;

/**
 * An axis of SWR spaced by the magnitude of the reflection coefficient, (s − 1)/(s + 1): small SWR
 * get room, and an infinite one has its place.
 */
final class SwrAxis extends NumberAxis {

  private static final long serialVersionUID = 1;

  private static final double[] TICKS = {1, 1.5, 2, 3, 5, 10};

  /**
   * An axis from 1 up.
   *
   * @param highest largest SWR to show; up to 10 is shown anyway
   */
  SwrAxis(double highest) {
    super("SWR");
    setRange(0, Math.min(1, Math.max(place(10), place(highest)) + 0.03));
  }

  /** An axis from 1 to infinity, which is 1 on it. */
  static SwrAxis whole() {
    SwrAxis axis = new SwrAxis(1);
    axis.setRange(0, 1);
    return axis;
  }

  /** Where an SWR lies on the axis, 0 to 1. */
  static double place(double swr) {
    return Double.isInfinite(swr) ? 1 : (swr - 1) / (swr + 1);
  }

  @Override
  @SuppressWarnings("rawtypes")
  public List refreshTicks(Graphics2D g, AxisState state, Rectangle2D area, RectangleEdge edge) {
    return java.util.Arrays.stream(TICKS)
        .mapToObj(
            swr ->
                new NumberTick(
                    place(swr),
                    swr == Math.rint(swr) ? Integer.toString((int) swr) : Double.toString(swr),
                    TextAnchor.CENTER_RIGHT,
                    TextAnchor.CENTER_RIGHT,
                    0))
        .toList();
  }
}
