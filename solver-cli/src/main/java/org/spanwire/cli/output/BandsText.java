package org.spanwire.cli.output;

import java.util.ArrayList;
import java.util.List;
import java.util.stream.Collectors;
import org.apache.commons.math3.complex.Complex;
import org.spanwire.result.GainSample;
import org.spanwire.study.BandResponse;
import org.spanwire.study.BandSummary;
import org.spanwire.study.FrequencyRange;
import org.spanwire.study.Ledger;
import org.spanwire.study.Plane;
import org.spanwire.study.PlaneResponse;
import org.spanwire.study.SolvedFeed;
import org.spanwire.study.Verdict;

/** The outcome of {@code spanwire bands} for reading, 120 columns at most for usual bands. */
final class BandsText {

  private final BandsReport report;
  private final Palette palette;
  private final StringBuilder out = new StringBuilder();

  BandsText(BandsReport report, Palette palette) {
    this.report = report;
    this.palette = palette;
  }

  String render() {
    Conditions conditions = report.conditions();
    out.append(palette.heading(conditions.design().title())).append("\n\n");
    summary();
    out.append(
            palette.heading(
                "SWR over the band at the transmitter, "
                    + conditions.transmitterReference()
                    + ", before any tuner"))
        .append('\n')
        .append(match().render())
        .append(BandsReport.verdictKey())
        .append("\n\n")
        .append(palette.heading("Worst SWR nearer to the antenna"))
        .append('\n')
        .append(nearer().render())
        .append('\n');
    out.append(palette.heading("Gain at the best match, the largest over azimuth"))
        .append('\n')
        .append(gain().render())
        .append('\n');
    if (!report.parts().isEmpty()) {
      out.append(
              palette.heading(
                  "Heat at "
                      + Numbers.significant(report.powerWatts(), 6)
                      + " W, the largest over the band"))
          .append('\n')
          .append(heat().render())
          .append('\n');
    }
    report.ratingTables().ifPresent(ratings -> ratings.text(out, palette));
    report.lineLengths().ifPresent(lengths -> lengths.text(out, palette));
    report.fixes().ifPresent(fixes -> FixesText.write(out, palette, fixes));
    conditions.text(out, palette);
    Conditions.line(out, "SWR", accuracy());
    SolveText.warnings(out, palette, report.warnings());
    out.append('\n');
    Conditions.cautions(out, palette);
    return out.toString();
  }

  /** Which bands need what, and what gets hot: the answer before the figures. */
  private void summary() {
    BandSummary summary = report.summary();
    out.append(palette.heading("In short")).append('\n');
    for (Verdict verdict : Verdict.values()) {
      String bands = String.join(", ", summary.with(verdict));
      if (!bands.isEmpty()) {
        Conditions.line(out, BandsReport.needs(verdict), palette.verdict(verdict, bands));
      }
    }
    Conditions.line(
        out,
        "burns first",
        summary
            .burnsFirst()
            .map(first -> first.heat().part() + ", " + words(first))
            .orElse("no part is known to"));
    for (BandSummary.PartHeat other : summary.others()) {
      Conditions.line(out, other.heat().part(), "up to " + words(other));
    }
    if (!report.unknownHeat().isEmpty()) {
      Conditions.line(out, "not known", "heat of the " + String.join("; ", report.unknownHeat()));
    }
    out.append('\n');
  }

  private String words(BandSummary.PartHeat heat) {
    return Numbers.fixed(heat.heat().watts(), 1)
        + " W of "
        + Numbers.significant(report.powerWatts(), 6)
        + " W on "
        + heat.band()
        + ", at "
        + Numbers.megahertz(heat.heat().frequencyHz())
        + " MHz";
  }

  private Table match() {
    Table table =
        new Table()
            .word("band")
            .word("edges", "MHz")
            .number("low", "edge")
            .number("", "middle")
            .number("high", "edge")
            .number("", "worst")
            .number("", "best")
            .word("verdict")
            .word("SWR <= 2", "MHz");
    for (BandResponse band : report.bands()) {
      PlaneResponse transmitter = band.at(Plane.TRANSMITTER);
      table.row(
          word -> palette.verdict(band.verdict(), word),
          band.band(),
          range(band.range()),
          Numbers.swr(transmitter.low()),
          Numbers.swr(transmitter.middle()),
          Numbers.swr(transmitter.high()),
          Numbers.swr(transmitter.worst().swr()),
          Numbers.swr(transmitter.best().swr()),
          band.verdict().label(),
          transmitter.direct().isEmpty()
              ? "-"
              : transmitter.direct().stream()
                  .map(range -> within(range, band.range()))
                  .collect(Collectors.joining(", ")));
    }
    return table;
  }

  /** Without what the line and the transformer hide. */
  private Table nearer() {
    Table table =
        new Table()
            .word("band")
            .number("transformer", "input")
            .number("", "feedpoint")
            .word("verdict there");
    for (BandResponse band : report.bands()) {
      PlaneResponse feedpoint = band.at(Plane.FEEDPOINT);
      table.row(
          band.band(),
          band.find(Plane.TRANSFORMER_INPUT).map(p -> Numbers.swr(p.worst().swr())).orElse("-"),
          Numbers.swr(feedpoint.worst().swr()),
          feedpoint.verdict().label());
    }
    return table;
  }

  private static String watts(BandResponse band, String part) {
    return band.heat(part).map(heat -> Numbers.heat(part, heat.watts(), 1)).orElse("-");
  }

  private Table heat() {
    Table table = new Table().word("band");
    report.parts().forEach(part -> table.number(part, "W"));
    table.number("choke", "W");
    for (BandResponse band : report.bands()) {
      List<String> row = new ArrayList<>();
      row.add(band.band());
      report.parts().forEach(part -> row.add(watts(band, part)));
      row.add(watts(band, Ledger.CHOKE));
      table.row(row.toArray(new String[0]));
    }
    return table;
  }

  private Table gain() {
    Table table =
        new Table()
            .word("band")
            .number("at", "MHz")
            .number("impedance", "there, ohm")
            .number("peak", "dBi")
            .number("elevation", "deg")
            .number("azimuth", "deg");
    for (GainSample sample : report.bands().get(0).gainSamples()) {
      table.number("at " + Numbers.significant(sample.elevationDegrees(), 4) + " deg", "dBi");
    }
    table.number("efficiency", "%");
    for (BandResponse band : report.bands()) {
      List<String> row = new ArrayList<>();
      row.add(band.band());
      row.add(Numbers.fixed(band.at(Plane.TRANSMITTER).best().frequencyHz() / 1e6, 4));
      row.add(impedance(band.feed()));
      row.add(Numbers.fixed(band.peak().gainDbi(), 2));
      row.add(Numbers.fixed(band.peak().elevationDegrees(), 1));
      row.add(Numbers.fixed(band.peak().azimuthDegrees(), 1));
      band.gainSamples().forEach(sample -> row.add(Numbers.fixed(sample.gainDbi(), 2)));
      row.add(Numbers.fixed(100 * band.radiationEfficiency(), 1));
      table.row(row.toArray(new String[0]));
    }
    return table;
  }

  private String accuracy() {
    int fewest = report.bands().stream().mapToInt(BandResponse::points).min().orElseThrow();
    int most = report.bands().stream().mapToInt(BandResponse::points).max().orElseThrow();
    double error =
        report.bands().stream().mapToDouble(BandResponse::interpolationError).max().orElseThrow();
    return (fewest == most ? "" : fewest + " to ")
        + most
        + " frequencies solved per band; error of |reflection coefficient| between them "
        + (error < 1e-4 ? "below 0.0001" : Numbers.significant(error, 1));
  }

  private static String range(FrequencyRange range) {
    return Numbers.megahertz(range.lowHz()) + "-" + Numbers.megahertz(range.highHz());
  }

  /** A range to a kilohertz, but for ends that are the band's own. */
  private static String within(FrequencyRange range, FrequencyRange band) {
    return end(range.lowHz(), band.lowHz()) + "-" + end(range.highHz(), band.highHz());
  }

  private static String end(double hertz, double edge) {
    return Numbers.megahertz(hertz == edge ? hertz : 1000 * Math.rint(hertz / 1000));
  }

  private static String impedance(SolvedFeed feed) {
    Complex z = feed.impedance();
    if (z.isInfinite()) {
      return "open";
    }
    return Numbers.ohms(z.getReal(), feed.errorOhm())
        + (z.getImaginary() < 0 ? " - j" : " + j")
        + Numbers.ohms(Math.abs(z.getImaginary()), feed.errorOhm());
  }
}
