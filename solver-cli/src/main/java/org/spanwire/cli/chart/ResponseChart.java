package org.spanwire.cli.chart;

import java.awt.Graphics2D;
import java.awt.geom.Rectangle2D;
import java.util.ArrayList;
import java.util.List;
import java.util.stream.IntStream;
import org.jfree.chart.plot.XYPlot;
import org.jfree.chart.renderer.xy.XYLineAndShapeRenderer;
import org.jfree.data.xy.XYSeries;
import org.jfree.data.xy.XYSeriesCollection;
import org.spanwire.cli.output.Numbers;
import org.spanwire.cli.output.ResponseReport;
import org.spanwire.design.Band;
import org.spanwire.study.FrequencyRange;
import org.spanwire.study.InstallationResponse;
import org.spanwire.study.Plane;

/**
 * SWR over a whole range of frequencies, with the bands shaded.
 *
 * @param plane where it is seen
 * @param bands bands of the design; those outside the range are left out
 * @param frequenciesHz frequencies in hertz, rising
 * @param swr SWR there
 * @param width width in the units of charts
 */
public record ResponseChart(
    Plane plane, List<Band> bands, List<Double> frequenciesHz, List<Double> swr, int width)
    implements Chart {

  /** For a sheet of its own. */
  public static final int WIDE = 860;

  /** For a page that is read on a phone too. */
  public static final int NARROW = 380;

  private static final int HEIGHT = 280;

  /** Least width of a band's shade, over that of the range. */
  private static final double LEAST_SHADE = 0.008;

  private static final int READINGS = 10;

  /** Steps drawn, finer than what can be seen. */
  private static final int STEPS = 1500;

  /** Takes copies. */
  public ResponseChart {
    bands = List.copyOf(bands);
    frequenciesHz = List.copyOf(frequenciesHz);
    swr = List.copyOf(swr);
  }

  /** The chart of a response at a plane, {@link #WIDE} or {@link #NARROW}. */
  public static ResponseChart of(
      InstallationResponse response, Plane plane, List<Band> bands, int width) {
    FrequencyRange range = response.range();
    List<Double> frequencies =
        IntStream.rangeClosed(0, STEPS)
            .mapToObj(i -> range.lowHz() + (range.highHz() - range.lowHz()) * i / STEPS)
            .map(f -> Math.min(f, range.highHz()))
            .toList();
    return new ResponseChart(
        plane,
        bands,
        frequencies,
        frequencies.stream().map(f -> response.at(plane, f).swr()).toList(),
        width);
  }

  private double lowHz() {
    return frequenciesHz.get(0);
  }

  private double highHz() {
    return frequenciesHz.get(frequenciesHz.size() - 1);
  }

  /** Those in the range, the narrow ones as wide as it takes to be seen. */
  private List<Band> shown() {
    double least = LEAST_SHADE * (highHz() - lowHz());
    return bands.stream()
        .filter(band -> band.highHz() > lowHz() && band.lowHz() < highHz())
        .map(
            band -> {
              double more = Math.max(0, least - (band.highHz() - band.lowHz())) / 2;
              return new Band(
                  band.name(), Math.max(lowHz(), band.lowHz() - more), band.highHz() + more);
            })
        .toList();
  }

  @Override
  public String title() {
    return "SWR at the " + ResponseReport.place(plane);
  }

  @Override
  public String description() {
    return title()
        + " from "
        + Numbers.megahertz(lowHz())
        + " MHz to "
        + Numbers.megahertz(highHz())
        + " MHz, bands shaded. Lowest "
        + Numbers.swr(swr.stream().mapToDouble(Double::doubleValue).min().orElseThrow())
        + ".";
  }

  @Override
  public int height() {
    return HEIGHT;
  }

  @Override
  public List<Mark> draw(Graphics2D g, Rectangle2D area) {
    XYSeries series = new XYSeries("SWR");
    List<XyChart.Reading> readings = new ArrayList<>();
    for (int i = 0; i < swr.size(); i++) {
      double x = frequenciesHz.get(i) * 1e-6;
      double y = SwrAxis.place(swr.get(i));
      series.add(x, y);
      if (i % READINGS == 0) {
        readings.add(
            new XyChart.Reading(
                x, y, Numbers.fixed(x, 4) + " MHz: SWR " + Numbers.swr(swr.get(i))));
      }
    }
    XYLineAndShapeRenderer renderer = new XYLineAndShapeRenderer(true, false);
    renderer.setDrawSeriesLineAsPath(true);
    renderer.setSeriesPaint(0, Ink.BLUE);
    renderer.setSeriesStroke(0, Ink.curve(0));
    XYPlot plot =
        XyChart.plot(
            XyChart.axis("frequency, MHz", lowHz() * 1e-6, highHz() * 1e-6), SwrAxis.whole());
    plot.setDataset(new XYSeriesCollection(series));
    plot.setRenderer(renderer);
    SwrChart.mark(plot, shown());
    return XyChart.draw(plot, false, readings, g, area);
  }
}
