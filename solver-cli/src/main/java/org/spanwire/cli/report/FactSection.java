package org.spanwire.cli.report;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.stream.Collectors;
import org.jsoup.nodes.Element;
import org.spanwire.circuit.bench.OperatingMode;
import org.spanwire.cli.output.BandsReport;
import org.spanwire.cli.output.Numbers;
import org.spanwire.cli.output.RatingTables;
import org.spanwire.study.BandRating;
import org.spanwire.study.BandResponse;
import org.spanwire.study.Plane;
import org.spanwire.study.Verdict;

/**
 * What a buyer asks about, band by band.
 *
 * @param report what is reported
 */
record FactSection(DesignReport report) implements Section {

  private static final List<OperatingMode> MODES =
      List.of(OperatingMode.SSB, OperatingMode.CW, OperatingMode.CARRIER);

  @Override
  public String id() {
    return "facts";
  }

  @Override
  public String title() {
    return "Facts";
  }

  @Override
  public void write(Page page) {
    Element terms = page.terms();
    Page.term(terms, "no tuner, over all spreads", SummarySection.sure(report));
    HeightRanges.of(report).ifPresent(h -> Page.term(terms, h.question(), h.answer()));
    Page.term(terms, "span along the ground", Numbers.significant(report.across(), 4) + " m");
    HangSection.heights(report).ifPresent(heights -> Page.term(terms, "hung at", heights));
    Page.term(terms, "hangs on wires and supports", report.cut().kitText().hanging());
    for (OperatingMode mode : MODES) {
      RatingSection.limit(report, mode)
          .ifPresent(limit -> Page.term(terms, "largest power, " + mode.label(), limit));
    }
    ExposureSection.distances(report)
        .forEach((floor, distances) -> Page.term(terms, floor, distances));
    table(page);
  }

  private void table(Page page) {
    List<String> columns =
        new ArrayList<>(
            List.of("band", "MHz", "needs, over all spreads", "SWR as designed", "at worst"));
    MODES.forEach(mode -> columns.add(mode.label() + ", W"));
    columns.addAll(List.of("limited by", "gain, dBi", "at elevation"));
    Page.TableRows rows =
        page.table(
            "Band by band: SWR at the transmitter, largest peak envelope power, gain at the best match",
            columns.toArray(new String[0]));
    for (int i = 0; i < report.curves().size(); i++) {
      row(rows, report.bands().bands().get(i), report.worst(i), report.bands().ratings().get(i));
    }
    page.paragraph(
        Arrays.stream(Verdict.values())
            .filter(verdict -> Double.isFinite(verdict.limit()))
            .map(
                verdict ->
                    BandsReport.needs(verdict)
                        + ", SWR at most "
                        + Numbers.significant(verdict.limit(), 3))
            .collect(
                Collectors.joining(
                    "; ", "At worst, with one uncertain quantity at a time at its end: ", ".")));
    // Without the parts that nobody has rated the limits would look better than they are.
    page.paragraph(report.bands().ratingTables().orElseThrow().key());
  }

  private static void row(Page.TableRows rows, BandResponse band, double worst, BandRating rating) {
    Verdict verdict = Verdict.of(worst);
    List<String> cells =
        new ArrayList<>(
            List.of(
                band.band(),
                Numbers.megahertz(band.range().lowHz())
                    + " to "
                    + Numbers.megahertz(band.range().highHz()),
                BandsReport.needs(verdict),
                Numbers.swr(band.at(Plane.TRANSMITTER).best().swr())
                    + " to "
                    + Numbers.swr(band.at(Plane.TRANSMITTER).worst().swr()),
                Numbers.swr(worst)));
    for (OperatingMode mode : MODES) {
      cells.add(Numbers.significant(Math.floor(rating.lowest(mode).envelopeWatts(mode)), 3));
    }
    cells.add(
        MODES.stream()
            .map(mode -> RatingTables.setBy(rating.lowest(mode)))
            .distinct()
            .collect(Collectors.joining("; ")));
    cells.add(Numbers.fixed(band.peak().gainDbi(), 1));
    cells.add(Numbers.fixed(band.peak().elevationDegrees(), 0) + "°");
    Element row = rows.bandRow(cells.toArray(new String[0]));
    Page.verdict(row.child(2), verdict);
  }
}
