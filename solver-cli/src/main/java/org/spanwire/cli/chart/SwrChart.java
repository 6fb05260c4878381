package org.spanwire.cli.chart;

import java.awt.Graphics2D;
import java.awt.geom.Rectangle2D;
import java.text.DecimalFormat;
import java.text.DecimalFormatSymbols;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import org.jfree.chart.axis.NumberAxis;
import org.jfree.chart.plot.IntervalMarker;
import org.jfree.chart.plot.ValueMarker;
import org.jfree.chart.plot.XYPlot;
import org.jfree.chart.renderer.xy.DeviationRenderer;
import org.jfree.chart.ui.Layer;
import org.jfree.data.xy.YIntervalSeries;
import org.jfree.data.xy.YIntervalSeriesCollection;
import org.spanwire.cli.output.Numbers;
import org.spanwire.design.Band;
import org.spanwire.study.BandCurves;
import org.spanwire.study.Verdict;

/**
 * SWR at the transmitter over a band and a little beyond: the band shaded, the design as it stands
 * as a line, the envelope over its spreads as a strip around it.
 *
 * @param curves what is drawn
 */
public record SwrChart(BandCurves curves) implements Chart {

  private static final int READINGS = 3;

  @Override
  public String title() {
    return "SWR, " + curves.band().name();
  }

  @Override
  public String description() {
    return "SWR at the transmitter against frequency. Band "
        + megahertz(curves.band().lowHz())
        + " to "
        + megahertz(curves.band().highHz())
        + " MHz shaded. SWR at the lower edge "
        + Numbers.swr(atEdge(curves.band().lowHz()))
        + ", at the upper edge "
        + Numbers.swr(atEdge(curves.band().highHz()))
        + (curves.extremes().isEmpty()
            ? "."
            : "; with the spreads at worst " + Numbers.swr(curves.worstSwrInBand()) + ".");
  }

  private double atEdge(double hertz) {
    return curves.nominal().swr().get(curves.frequenciesHz().indexOf(hertz));
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
    List<Double> frequencies = curves.frequenciesHz();
    List<Double> low = curves.lowestSwr();
    List<Double> high = curves.highestSwr();
    YIntervalSeries series = new YIntervalSeries("SWR");
    List<XyChart.Reading> readings = new ArrayList<>();
    for (int i = 0; i < frequencies.size(); i++) {
      double x = frequencies.get(i) / 1e6;
      double swr = curves.nominal().swr().get(i);
      series.add(x, SwrAxis.place(swr), SwrAxis.place(low.get(i)), SwrAxis.place(high.get(i)));
      if (i % READINGS == 0 || curves.band().lowHz() == frequencies.get(i)) {
        readings.add(
            new XyChart.Reading(x, SwrAxis.place(swr), reading(x, swr, low.get(i), high.get(i))));
      }
    }
    double highest = high.stream().mapToDouble(Double::doubleValue).max().orElseThrow();
    XYPlot plot =
        XyChart.plot(
            XyChart.axis(
                "frequency, MHz",
                frequencies.get(0) / 1e6,
                frequencies.get(frequencies.size() - 1) / 1e6),
            new SwrAxis(highest));
    NumberAxis across = (NumberAxis) plot.getDomainAxis();
    across.setNumberFormatOverride(
        new DecimalFormat("0.####", DecimalFormatSymbols.getInstance(Locale.ROOT)));
    YIntervalSeriesCollection data = new YIntervalSeriesCollection();
    data.addSeries(series);
    plot.setDataset(data);
    plot.setRenderer(renderer());
    mark(plot, List.of(curves.band()));
    return XyChart.draw(plot, false, readings, g, area);
  }

  static DeviationRenderer renderer() {
    DeviationRenderer renderer = new DeviationRenderer(true, false);
    renderer.setAlpha(0.35f);
    renderer.setSeriesPaint(0, Ink.BLUE);
    renderer.setSeriesFillPaint(0, Ink.SKY);
    renderer.setSeriesStroke(0, Ink.curve(0));
    return renderer;
  }

  /** Bands, and the limits of the verdicts. */
  static void mark(XYPlot plot, List<Band> bands) {
    for (Band band : bands) {
      IntervalMarker shade = new IntervalMarker(band.lowHz() / 1e6, band.highHz() / 1e6, Ink.SHADE);
      shade.setAlpha(1);
      plot.addDomainMarker(shade, Layer.BACKGROUND);
    }
    for (Verdict verdict : Verdict.values()) {
      if (Double.isFinite(verdict.limit())) {
        ValueMarker limit = new ValueMarker(SwrAxis.place(verdict.limit()), Ink.SOFT, Ink.limit());
        limit.setAlpha(1);
        plot.addRangeMarker(limit, Layer.BACKGROUND);
      }
    }
  }

  private String reading(double megahertz, double swr, double low, double high) {
    return Numbers.fixed(megahertz, 4)
        + " MHz: SWR "
        + Numbers.swr(swr)
        + (curves.extremes().isEmpty()
            ? ""
            : ", over the spreads " + Numbers.swr(low) + " to " + Numbers.swr(high));
  }

  private static String megahertz(double hertz) {
    return Numbers.megahertz(hertz);
  }
}
