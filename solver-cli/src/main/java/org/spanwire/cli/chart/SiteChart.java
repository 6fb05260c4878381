package org.spanwire.cli.chart;

import java.awt.Graphics2D;
import java.awt.geom.Rectangle2D;
import java.text.DecimalFormat;
import java.text.DecimalFormatSymbols;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import org.jfree.chart.axis.NumberAxis;
import org.jfree.chart.plot.XYPlot;
import org.jfree.data.xy.YIntervalSeries;
import org.jfree.data.xy.YIntervalSeriesCollection;
import org.spanwire.cli.output.Numbers;
import org.spanwire.study.SiteTable;

/**
 * SWR at the transmitter over a band and a little beyond, for every place of a table as a strip,
 * and for one of them as a line. Its two marks are the lower left and the upper right corner of the
 * plot, for whoever draws more into it.
 *
 * @param table what is drawn
 * @param band index of the band
 * @param nominal the place drawn as a line
 */
public record SiteChart(SiteTable table, int band, SiteTable.Place nominal) implements Chart {

  @Override
  public String title() {
    return "SWR, " + table.bands().get(band).name();
  }

  @Override
  public String description() {
    List<Double> line = nominal.swr().get(band);
    return "SWR at the transmitter against frequency. As designed from "
        + Numbers.swr(extreme(line, true))
        + " to "
        + Numbers.swr(extreme(line, false))
        + " in the range shown; over all heights, soils and lines from "
        + Numbers.swr(extreme(envelope(true), true))
        + " to "
        + Numbers.swr(extreme(envelope(false), false))
        + ".";
  }

  private static double extreme(List<Double> values, boolean lowest) {
    return values.stream().reduce((a, b) -> lowest ? Math.min(a, b) : Math.max(a, b)).orElseThrow();
  }

  private List<Double> envelope(boolean lowest) {
    List<Double> envelope = new ArrayList<>();
    for (int i = 0; i < table.frequenciesHz().get(band).size(); i++) {
      List<Double> there = new ArrayList<>();
      for (SiteTable.Place place : table.curves()) {
        if (place.reason().isEmpty()) {
          there.add(place.swr().get(band).get(i));
        }
      }
      envelope.add(extreme(there, lowest));
    }
    return envelope;
  }

  @Override
  public int width() {
    return 350;
  }

  @Override
  public int height() {
    return 230;
  }

  @Override
  public List<Mark> draw(Graphics2D g, Rectangle2D area) {
    List<Double> frequencies = table.frequenciesHz().get(band);
    List<Double> low = envelope(true);
    List<Double> high = envelope(false);
    YIntervalSeries series = new YIntervalSeries("SWR");
    for (int i = 0; i < frequencies.size(); i++) {
      series.add(
          frequencies.get(i) / 1e6,
          SwrAxis.place(nominal.swr().get(band).get(i)),
          SwrAxis.place(low.get(i)),
          SwrAxis.place(high.get(i)));
    }
    // A reading may be worse than all that is expected: the axis goes on.
    XYPlot plot =
        XyChart.plot(
            XyChart.axis(
                "frequency, MHz",
                frequencies.get(0) / 1e6,
                frequencies.get(frequencies.size() - 1) / 1e6),
            SwrAxis.whole());
    ((NumberAxis) plot.getDomainAxis())
        .setNumberFormatOverride(
            new DecimalFormat("0.####", DecimalFormatSymbols.getInstance(Locale.ROOT)));
    YIntervalSeriesCollection data = new YIntervalSeriesCollection();
    data.addSeries(series);
    plot.setDataset(data);
    plot.setRenderer(SwrChart.renderer());
    SwrChart.mark(plot, List.of(table.bands().get(band)));
    Rectangle2D inner = XyChart.draw(plot, false, g, area);
    return List.of(
        new Mark(inner.getX() - area.getX(), inner.getMaxY() - area.getY(), "lower left corner"),
        new Mark(inner.getMaxX() - area.getX(), inner.getY() - area.getY(), "upper right corner"));
  }
}
