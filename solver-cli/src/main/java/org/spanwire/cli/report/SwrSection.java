package org.spanwire.cli.report;

import java.util.stream.Collectors;
import org.jsoup.nodes.Element;
import org.spanwire.cli.chart.SwrChart;
import org.spanwire.cli.output.Numbers;
import org.spanwire.result.Warning;
import org.spanwire.study.BandCurves;
import org.spanwire.study.CurveStudy;

/**
 * SWR against frequency.
 *
 * @param report what is reported
 */
record SwrSection(DesignReport report) implements Section {

  @Override
  public String id() {
    return "swr";
  }

  @Override
  public String title() {
    return "SWR over each band";
  }

  @Override
  public void write(Page page) {
    String spread = spread();
    page.paragraph(
        "Line: the design as it stands. The band is shaded; dashed lines are the limits of the"
            + " verdicts, 2, 3 and 10. "
            + (spread.isEmpty()
                ? "The design states no spreads."
                : "Strip: lowest and highest SWR with one uncertain quantity at a time at the ends of"
                    + " its spread: "
                    + spread
                    + "."));
    Element gallery = page.gallery();
    for (BandCurves curves : report.curves()) {
      page.picture(gallery, new SwrChart(curves), curves.band().name(), "");
    }
    double error =
        report.curves().stream().mapToDouble(BandCurves::interpolationError).max().orElseThrow();
    page.paragraph(
        "Drawn through solved frequencies; error of |reflection coefficient| between them at most "
            + Numbers.significant(Math.max(error, 1e-6), 1)
            + ". A normally distributed quantity is taken "
            + Numbers.significant(CurveStudy.SIGMAS, 2)
            + " sigma to either side.");
    report.curves().stream()
        .flatMap(curves -> curves.warnings().stream())
        .map(Warning::message)
        .distinct()
        .forEach(page::paragraph);
    if (!spread.isEmpty()) {
      table(page);
    }
  }

  private String spread() {
    return report.curves().get(0).extremes().stream()
        .map(curve -> curve.change().orElseThrow())
        .map(change -> change.parameter() + " " + change.value())
        .collect(Collectors.joining(", "));
  }

  /** Worst SWR in the band for every end of every spread. */
  private void table(Page page) {
    int count = report.curves().get(0).extremes().size();
    String[] columns = new String[count + 2];
    columns[0] = "band";
    columns[1] = "as designed";
    for (int i = 0; i < count; i++) {
      BandCurves.Change change = report.curves().get(0).extremes().get(i).change().orElseThrow();
      columns[i + 2] = change.parameter() + " " + change.value();
    }
    Page.TableRows rows = page.table("Worst SWR in the band", columns);
    for (BandCurves curves : report.curves()) {
      String[] cells = new String[columns.length];
      java.util.Arrays.fill(cells, "-");
      cells[0] = curves.band().name();
      cells[1] = Numbers.swr(curves.worstSwrInBand(curves.nominal()));
      for (BandCurves.Curve curve : curves.extremes()) {
        BandCurves.Change change = curve.change().orElseThrow();
        for (int i = 2; i < columns.length; i++) {
          if (columns[i].equals(change.parameter() + " " + change.value())) {
            cells[i] = Numbers.swr(curves.worstSwrInBand(curve));
          }
        }
      }
      rows.bandRow(cells);
    }
  }
}
