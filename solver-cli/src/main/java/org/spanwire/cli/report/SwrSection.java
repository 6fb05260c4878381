package org.spanwire.cli.report;

import java.util.ArrayList;
import java.util.List;
import java.util.stream.Collectors;
import org.jsoup.nodes.Element;
import org.spanwire.cli.chart.ResponseChart;
import org.spanwire.cli.chart.SwrChart;
import org.spanwire.cli.output.Numbers;
import org.spanwire.result.Warning;
import org.spanwire.study.BandCurves;
import org.spanwire.study.CurveStudy;
import org.spanwire.study.InstallationResponse;
import org.spanwire.study.Plane;

/**
 * SWR against frequency.
 *
 * @param report what is reported
 * @param detailed whether to tell what each spread does, and how good the curves are
 */
record SwrSection(DesignReport report, boolean detailed) implements Section {

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
    if (detailed) {
      details(page);
      report.response().ifPresent(response -> range(page, response));
    }
  }

  /** Where the antenna is good beside the bands says which way to move it. */
  private void range(Page page, InstallationResponse response) {
    String matches =
        response.bestMatches(Plane.TRANSMITTER).stream()
            .map(
                match ->
                    Numbers.swr(match.swr())
                        + " at "
                        + Numbers.fixed(match.frequencyHz() * 1e-6, 3)
                        + " MHz")
            .collect(Collectors.joining(", "));
    page.paragraph(
        "From band to band: "
            + (matches.isEmpty() ? "SWR has no minimum." : "best matches " + matches + ".")
            + " "
            + response.solvedFrequencies().size()
            + " frequencies solved; error of |reflection coefficient| between them "
            + Numbers.significant(response.reflectionError(), 1)
            + ".");
    page.picture(
        page.gallery(),
        ResponseChart.of(
            response, Plane.TRANSMITTER, report.design().bands(), ResponseChart.NARROW),
        "",
        "");
  }

  private void details(Page page) {
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
    if (!report.curves().get(0).extremes().isEmpty()) {
      table(page);
    }
  }

  /** What is changed in a curve. */
  static String name(BandCurves.Curve curve) {
    BandCurves.Change change = curve.change().orElseThrow();
    return change.parameter() + " " + change.value();
  }

  private String spread() {
    return report.curves().get(0).extremes().stream()
        .map(SwrSection::name)
        .collect(Collectors.joining(", "));
  }

  /** Worst SWR in the band for every end of every spread. */
  private void table(Page page) {
    List<BandCurves.Curve> first = report.curves().get(0).extremes();
    List<String> columns = new ArrayList<>(List.of("band", "as designed"));
    first.forEach(curve -> columns.add(name(curve)));
    Page.TableRows rows = page.table("Worst SWR in the band", columns.toArray(new String[0]));
    for (BandCurves curves : report.curves()) {
      List<String> cells = new ArrayList<>();
      cells.add(curves.band().name());
      cells.add(Numbers.swr(curves.worstSwrInBand(curves.nominal())));
      first.forEach(
          one ->
              cells.add(
                  curves
                      .like(one)
                      .map(curve -> Numbers.swr(curves.worstSwrInBand(curve)))
                      .orElse("-")));
      rows.bandRow(cells.toArray(new String[0]));
    }
  }
}
