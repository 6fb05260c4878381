package org.spanwire.cli.output;

import java.io.IOException;
import java.util.ArrayList;
import java.util.List;
import java.util.stream.Collectors;
import org.apache.commons.csv.CSVPrinter;
import org.apache.commons.math3.complex.Complex;
import org.spanwire.result.GainSample;
import org.spanwire.result.Warning;
import org.spanwire.study.BandResponse;
import org.spanwire.study.FrequencyRange;
import org.spanwire.study.Ledger;
import org.spanwire.study.Plane;
import org.spanwire.study.PlaneResponse;

/**
 * The outcome of {@code spanwire bands} as CSV, one row per band. An infinite value is {@code inf},
 * an undefined one is empty; ranges with SWR of at most 2 are written low-high and separated by a
 * blank.
 */
final class BandsCsv {

  private final BandsReport report;
  private final CSVPrinter csv;

  BandsCsv(BandsReport report, CSVPrinter csv) {
    this.report = report;
    this.csv = csv;
  }

  void write() throws IOException {
    List<String> header =
        new ArrayList<>(
            List.of(
                "band",
                "low_hz",
                "high_hz",
                "feed",
                "reference_feedpoint_ohm",
                "reference_transmitter_ohm",
                "swr_low_edge",
                "swr_middle",
                "swr_high_edge",
                "swr_maximum",
                "swr_maximum_frequency_hz",
                "swr_minimum",
                "swr_minimum_frequency_hz",
                "resistance_ohm",
                "reactance_ohm",
                "impedance_error_ohm",
                "swr_at_most_2_hz",
                "verdict",
                "gain_peak_dbi",
                "gain_peak_elevation_deg",
                "gain_peak_azimuth_deg"));
    for (GainSample sample : report.bands().get(0).gainSamples()) {
      header.add(
          "gain_elevation_" + Numbers.significant(sample.elevationDegrees(), 6) + "_deg_dbi");
    }
    header.addAll(
        List.of(
            "radiation_efficiency",
            "points",
            "largest_relative_error",
            "interpolation_error",
            "swr_maximum_feedpoint",
            "verdict_feedpoint",
            "swr_maximum_transformer_input"));
    report.parts().forEach(part -> header.add("heat_" + part.replace(' ', '_') + "_w"));
    header.add("choke_heat_w");
    report.ratingTables().ifPresent(ratings -> header.addAll(RatingTables.csvHeader()));
    header.add("warnings");
    csv.printRecord(header);
    for (BandResponse band : report.bands()) {
      csv.printRecord(row(band));
    }
  }

  private List<Object> row(BandResponse band) {
    Complex z = band.feed().impedance();
    PlaneResponse transmitter = band.at(Plane.TRANSMITTER);
    List<Object> row =
        new ArrayList<>(
            List.of(
                band.band(),
                band.range().lowHz(),
                band.range().highHz(),
                report.feed(),
                band.at(Plane.FEEDPOINT).referenceOhm(),
                transmitter.referenceOhm(),
                SolveCsv.cell(transmitter.low()),
                SolveCsv.cell(transmitter.middle()),
                SolveCsv.cell(transmitter.high()),
                SolveCsv.cell(transmitter.worst().swr()),
                transmitter.worst().frequencyHz(),
                SolveCsv.cell(transmitter.best().swr()),
                transmitter.best().frequencyHz(),
                SolveCsv.cell(z.getReal()),
                z.isInfinite() ? "" : z.getImaginary(),
                z.isInfinite() ? "" : SolveCsv.cell(band.feed().errorOhm()),
                transmitter.direct().stream().map(BandsCsv::range).collect(Collectors.joining(" ")),
                band.verdict().label(),
                SolveCsv.cell(band.peak().gainDbi()),
                SolveCsv.cell(band.peak().elevationDegrees()),
                SolveCsv.cell(band.peak().azimuthDegrees())));
    band.gainSamples().forEach(sample -> row.add(SolveCsv.cell(sample.gainDbi())));
    row.add(band.radiationEfficiency());
    row.add(band.points());
    row.add(band.largestRelativeError());
    row.add(band.interpolationError());
    row.add(SolveCsv.cell(band.at(Plane.FEEDPOINT).worst().swr()));
    row.add(band.at(Plane.FEEDPOINT).verdict().label());
    row.add(band.find(Plane.TRANSFORMER_INPUT).map(p -> SolveCsv.cell(p.worst().swr())).orElse(""));
    report.parts().forEach(part -> row.add(SolveCsv.cell(band.heat(part).orElseThrow().watts())));
    row.add(band.heat(Ledger.CHOKE).map(h -> SolveCsv.cell(h.watts())).orElse(""));
    report
        .ratingTables()
        .ifPresent(ratings -> row.addAll(ratings.csvCells(report.bands().indexOf(band))));
    List<String> names = new ArrayList<>();
    report.doubts().forEach(warning -> names.add(warning.name()));
    band.warnings().stream().map(Warning::name).forEach(names::add);
    row.add(String.join(" ", names));
    return row;
  }

  private static String range(FrequencyRange range) {
    return Math.round(range.lowHz()) + "-" + Math.round(range.highHz());
  }
}
