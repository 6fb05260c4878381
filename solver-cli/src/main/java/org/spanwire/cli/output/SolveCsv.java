package org.spanwire.cli.output;

import java.io.IOException;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;
import org.apache.commons.csv.CSVPrinter;
import org.apache.commons.math3.complex.Complex;
import org.spanwire.circuit.Mismatch;
import org.spanwire.result.CurrentSample;
import org.spanwire.result.Direction;
import org.spanwire.result.GainSample;
import org.spanwire.study.CommonMode;
import org.spanwire.study.Plane;
import org.spanwire.study.SolvedFeed;
import org.spanwire.study.SolvedFrequency;

/**
 * The outcome of {@code spanwire solve} as CSV: one row per frequency and feed, or, if currents
 * were asked for, one row per current sample. An infinite value is {@code inf}, an undefined one is
 * empty.
 */
final class SolveCsv {

  private final SolveReport report;
  private final CSVPrinter csv;

  SolveCsv(SolveReport report, CSVPrinter csv) {
    this.report = report;
    this.csv = csv;
  }

  void write() throws IOException {
    if (report.solutions().get(0).currents().isEmpty()) {
      feeds();
    } else {
      currents();
    }
  }

  private void currents() throws IOException {
    csv.printRecord("frequency_hz", "wire", "distance_m", "current_re_a", "current_im_a");
    for (SolvedFrequency solution : report.solutions()) {
      for (CurrentSample sample : solution.currents()) {
        csv.printRecord(
            solution.frequencyHz(),
            sample.wire(),
            sample.distance(),
            sample.current().getReal(),
            sample.current().getImaginary());
      }
    }
  }

  private void feeds() throws IOException {
    csv.printRecord(header());
    for (SolvedFrequency solution : report.solutions()) {
      for (int i = 0; i < solution.feeds().size(); i++) {
        csv.printRecord(row(solution, i));
      }
    }
  }

  private List<String> header() {
    List<String> header =
        new ArrayList<>(
            List.of(
                "frequency_hz",
                "feed",
                "resistance_ohm",
                "reactance_ohm",
                "impedance_error_ohm",
                "gap_m",
                "swr_feedpoint",
                "reference_feedpoint_ohm",
                "swr_transmitter",
                "reference_transmitter_ohm"));
    SolvedFrequency first = report.solutions().get(0);
    if (first.feeds().size() > 1) {
      for (SolvedFeed feed : first.feeds()) {
        header.add("port_resistance_" + feed.name() + "_ohm");
        header.add("port_reactance_" + feed.name() + "_ohm");
      }
    }
    header.addAll(List.of("gain_peak_dbi", "gain_peak_elevation_deg", "gain_peak_azimuth_deg"));
    for (GainSample sample : first.gainSamples()) {
      header.add(gainColumn(sample));
    }
    header.addAll(List.of("radiation_efficiency", "power_balance", "unknowns"));
    header.addAll(
        List.of(
            "swr_transformer_input",
            "reference_transformer_input_ohm",
            "choke_voltage_v",
            "choke_heat_w",
            "common_mode_current_a"));
    first
        .ledger()
        .ifPresent(
            ledger ->
                ledger
                    .entries()
                    .forEach(e -> header.add("power_" + e.part().replace(' ', '_') + "_w")));
    header.add("warnings");
    return header;
  }

  /**
   * Without an azimuth asked for, the azimuth of the largest gain differs from row to row and stays
   * out of the name.
   */
  private String gainColumn(GainSample sample) {
    return report.azimuthsAsked()
        ? gainColumn(
            new Direction(sample.elevationDegrees(), sample.azimuthDegrees().orElseThrow()))
        : gainColumn(sample.elevationDegrees()) + "_dbi";
  }

  private static String gainColumn(double elevation) {
    return "gain_elevation_" + Numbers.significant(elevation, 6) + "_deg";
  }

  /** Name of the column of the gain in a direction. */
  static String gainColumn(Direction direction) {
    return gainColumn(direction.elevationDegrees())
        + "_azimuth_"
        + Numbers.significant(direction.azimuthDegrees(), 6)
        + "_deg_dbi";
  }

  private List<Object> row(SolvedFrequency solution, int index) {
    SolvedFeed feed = solution.feeds().get(index);
    Complex z = feed.impedance();
    Mismatch feedpoint = feed.at(Plane.FEEDPOINT);
    Mismatch transmitter = feed.at(Plane.TRANSMITTER);
    List<Object> row = new ArrayList<>();
    row.add(solution.frequencyHz());
    row.add(feed.name());
    row.add(cell(z.getReal()));
    row.add(z.isInfinite() ? "" : cell(z.getImaginary()));
    row.add(z.isInfinite() ? "" : cell(feed.errorOhm()));
    row.add(feed.gapMetres());
    row.add(cell(feedpoint.swr()));
    row.add(feedpoint.referenceOhm());
    row.add(cell(transmitter.swr()));
    row.add(transmitter.referenceOhm());
    if (solution.feeds().size() > 1) {
      for (Complex port : solution.portMatrix()[index]) {
        row.add(cell(port.getReal()));
        row.add(port.isInfinite() ? "" : cell(port.getImaginary()));
      }
    }
    row.add(cell(solution.peak().gainDbi()));
    row.add(cell(solution.peak().elevationDegrees()));
    row.add(cell(solution.peak().azimuthDegrees()));
    solution.gainSamples().forEach(sample -> row.add(cell(sample.gainDbi())));
    row.add(solution.radiationEfficiency());
    row.add(cell(solution.powerBalance()));
    row.add(solution.unknowns());
    row.add(feed.find(Plane.TRANSFORMER_INPUT).map(m -> cell(m.swr())).orElse(""));
    row.add(feed.find(Plane.TRANSFORMER_INPUT).map(m -> cell(m.referenceOhm())).orElse(""));
    Optional<CommonMode> mode = solution.commonMode();
    row.add(mode.map(m -> cell(m.chokes().get(0).voltage())).orElse(""));
    row.add(mode.map(m -> cell(m.topWatts())).orElse(""));
    row.add(mode.map(m -> cell(m.current().abs())).orElse(""));
    solution.ledger().ifPresent(l -> l.entries().forEach(e -> row.add(cell(e.watts()))));
    row.add(warningNames(solution));
    return row;
  }

  private String warningNames(SolvedFrequency solution) {
    List<String> names = new ArrayList<>();
    report.doubts().forEach(warning -> names.add(warning.name()));
    solution.warnings().forEach(warning -> names.add(warning.name()));
    return String.join(" ", names);
  }

  static Object cell(double value) {
    if (Double.isNaN(value)) {
      return "";
    }
    return Double.isInfinite(value) ? (value > 0 ? "inf" : "-inf") : value;
  }

  static Object cell(OptionalDouble value) {
    return cell(value.orElse(Double.NaN));
  }
}
