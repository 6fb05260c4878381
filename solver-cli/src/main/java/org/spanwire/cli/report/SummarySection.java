package org.spanwire.cli.report;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.stream.Collectors;
import java.util.stream.IntStream;
import org.jsoup.nodes.Element;
import org.spanwire.circuit.bench.OperatingMode;
import org.spanwire.cli.output.BandsReport;
import org.spanwire.cli.output.CutText;
import org.spanwire.cli.output.Numbers;
import org.spanwire.study.BandCurves;
import org.spanwire.study.BandResponse;
import org.spanwire.study.BandSummary;
import org.spanwire.study.Plane;
import org.spanwire.study.PlaneResponse;
import org.spanwire.study.Verdict;

/**
 * The answers before the figures.
 *
 * @param report what is reported
 */
record SummarySection(DesignReport report) implements Section {

  @Override
  public String id() {
    return "answers";
  }

  @Override
  public String title() {
    return "Answers";
  }

  @Override
  public void write(Page page) {
    Element terms = page.terms();
    BandSummary summary = report.bands().summary();
    for (Verdict verdict : Verdict.values()) {
      String bands = String.join(", ", summary.with(verdict));
      if (!bands.isEmpty()) {
        Page.term(terms, BandsReport.needs(verdict), bands);
      }
    }
    Page.term(terms, "no tuner over all spreads", sure(report));
    HeightRanges.of(report).ifPresent(h -> Page.term(terms, h.question(), h.answer()));
    Page.term(
        terms,
        "power",
        Numbers.significant(report.bands().powerWatts(), 6) + " W from the transmitter");
    Page.term(terms, "gets hot", hottest(summary));
    RatingSection.limit(report, OperatingMode.CARRIER)
        .ifPresent(limit -> Page.term(terms, "limits the power", limit));
    ExposureSection.distances(report)
        .forEach((floor, distances) -> Page.term(terms, floor, distances));
    Page.term(terms, "cut", cut());
    trim().ifPresent(trim -> Page.term(terms, "trim", trim));
    table(page);
  }

  /** Bands that stay direct with every spread at its end. */
  static String sure(DesignReport report) {
    String bands =
        IntStream.range(0, report.curves().size())
            .filter(i -> Verdict.of(report.worst(i)) == Verdict.DIRECT)
            .mapToObj(i -> report.curves().get(i).band().name())
            .collect(Collectors.joining(", "));
    return bands.isEmpty() ? "none" : bands;
  }

  /** The limits of the verdicts, as a sentence. */
  static String verdicts() {
    return sentence(BandsReport.verdictKey().replace("<=", "≤")) + ".";
  }

  private String hottest(BandSummary summary) {
    List<String> words = new ArrayList<>();
    summary.burnsFirst().ifPresent(heat -> words.add(words(heat) + ", burns first"));
    summary.others().forEach(heat -> words.add(words(heat)));
    report.bands().unknownHeat().forEach(unknown -> words.add("not known, " + unknown));
    return words.isEmpty() ? "no part is known to" : String.join("; ", words);
  }

  private String words(BandSummary.PartHeat heat) {
    return heat.heat().part()
        + " "
        + Numbers.fixed(heat.heat().watts(), 1)
        + " W of "
        + Numbers.significant(report.bands().powerWatts(), 6)
        + " W, on "
        + heat.band();
  }

  private String cut() {
    return report.cut().legs().stream()
        .map(
            leg ->
                Numbers.fixed(leg.cutLength(), 3)
                    + " m from "
                    + CutText.place(leg.from())
                    + " to "
                    + CutText.place(leg.to()))
        .collect(Collectors.joining("; "));
  }

  private Optional<String> trim() {
    String words =
        report.cut().rows().stream()
            .filter(row -> row.effect().isPresent())
            .map(
                row ->
                    row.band()
                        + ": "
                        + Numbers.significant(row.effect().get().hertzPerMetre() / 1e5, 3))
            .collect(Collectors.joining(", "));
    return words.isEmpty()
        ? Optional.empty()
        : Optional.of("kHz up for each cm of wire taken off: " + words);
  }

  static String sentence(String text) {
    return Character.toUpperCase(text.charAt(0)) + text.substring(1);
  }

  private void table(Page page) {
    Page.TableRows rows =
        page.table(
            "Verdict by band, from the worst SWR at the transmitter before any tuner",
            "band",
            "MHz",
            "verdict",
            "worst SWR",
            "best SWR",
            "worst with spreads",
            "worst at feedpoint",
            "gain, dBi",
            "at elevation",
            "efficiency");
    List<BandResponse> bands = report.bands().bands();
    for (int i = 0; i < bands.size(); i++) {
      BandResponse band = bands.get(i);
      BandCurves curves = report.curves().get(i);
      PlaneResponse transmitter = band.at(Plane.TRANSMITTER);
      Element row =
          rows.bandRow(
              band.band(),
              Numbers.megahertz(band.range().lowHz())
                  + " to "
                  + Numbers.megahertz(band.range().highHz()),
              band.verdict().label(),
              Numbers.swr(transmitter.worst().swr()),
              Numbers.swr(transmitter.best().swr()),
              curves.extremes().isEmpty() ? "-" : Numbers.swr(report.worst(i)),
              Numbers.swr(band.at(Plane.FEEDPOINT).worst().swr()),
              Numbers.fixed(band.peak().gainDbi(), 1),
              Numbers.fixed(band.peak().elevationDegrees(), 0) + "°",
              Numbers.fixed(100 * band.radiationEfficiency(), 0) + " %");
      Page.verdict(row.child(2), band.verdict());
    }
    page.paragraph(verdicts() + " Gain and efficiency at the best match.");
  }
}
