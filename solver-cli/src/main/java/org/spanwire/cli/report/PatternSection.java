package org.spanwire.cli.report;

import java.util.ArrayList;
import java.util.List;
import java.util.function.Function;
import org.jsoup.nodes.Element;
import org.spanwire.cli.chart.PatternChart;
import org.spanwire.cli.output.Numbers;
import org.spanwire.result.GainSample;
import org.spanwire.study.BandPortrait;
import org.spanwire.study.BandResponse;
import org.spanwire.study.PatternCut;

/**
 * Gain by direction.
 *
 * @param report what is reported
 */
record PatternSection(DesignReport report) implements Section {

  @Override
  public String id() {
    return "patterns";
  }

  @Override
  public String title() {
    return "Where it radiates";
  }

  @Override
  public void write(Page page) {
    page.paragraph(
        "Gain at the best match of each band, loss in wires, fittings and soil counted, that of the"
            + " feed chain not. Azimuth runs counter-clockwise from the x axis of the design."
            + " Elevation patterns lie in the vertical plane through the largest gain and in the one"
            + " at right angles; azimuth patterns at fixed elevations.");
    List<PatternCut> all = new ArrayList<>();
    report.portraits().forEach(p -> all.addAll(p.elevationCuts()));
    double top = PatternChart.top(all);
    gallery(page, "Elevation, ", BandPortrait::elevationCuts, top);
    gallery(page, "Azimuth, ", BandPortrait::azimuthCuts, top);
    table(page);
  }

  private void gallery(
      Page page, String title, Function<BandPortrait, List<PatternCut>> cuts, double top) {
    Element gallery = page.gallery();
    for (BandPortrait portrait : report.portraits()) {
      page.picture(
          gallery,
          new PatternChart(title + portrait.band(), cuts.apply(portrait), top),
          portrait.band(),
          "");
    }
  }

  private void table(Page page) {
    List<GainSample> samples = report.bands().bands().get(0).gainSamples();
    List<String> columns =
        new ArrayList<>(List.of("band", "MHz", "largest", "elevation", "azimuth"));
    samples.forEach(s -> columns.add("at " + Numbers.significant(s.elevationDegrees(), 4) + "°"));
    Page.TableRows rows =
        page.table("Gain in dBi, the largest over azimuth", columns.toArray(new String[0]));
    for (int i = 0; i < report.portraits().size(); i++) {
      BandResponse band = report.bands().bands().get(i);
      List<String> cells = new ArrayList<>();
      cells.add(band.band());
      cells.add(Numbers.fixed(report.portraits().get(i).frequencyHz() / 1e6, 4));
      cells.add(Numbers.fixed(band.peak().gainDbi(), 1));
      cells.add(Numbers.fixed(band.peak().elevationDegrees(), 0) + "°");
      cells.add(
          band.peak().azimuthDegrees().isPresent()
              ? Numbers.fixed(band.peak().azimuthDegrees(), 0) + "°"
              : "-");
      band.gainSamples().forEach(s -> cells.add(Numbers.fixed(s.gainDbi(), 1)));
      rows.bandRow(cells.toArray(new String[0]));
    }
  }
}
