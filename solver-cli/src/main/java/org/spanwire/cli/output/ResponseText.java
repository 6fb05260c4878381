package org.spanwire.cli.output;

import java.util.Collections;
import java.util.Comparator;
import java.util.List;
import org.spanwire.circuit.Mismatch;
import org.spanwire.result.Direction;
import org.spanwire.study.FrequencyRange;
import org.spanwire.study.FrequencyResponse;
import org.spanwire.study.InstallationResponse;
import org.spanwire.study.Plane;
import org.spanwire.study.SwrAt;

/** The outcome of {@code spanwire response} for reading. */
final class ResponseText {

  private final ResponseReport report;
  private final InstallationResponse response;
  private final Palette palette;
  private final StringBuilder out = new StringBuilder();

  ResponseText(ResponseReport report, Palette palette) {
    this.report = report;
    this.response = report.response();
    this.palette = palette;
  }

  String render() {
    out.append(palette.heading(report.conditions().design().title())).append("\n\n");
    resonances();
    String seen =
        "SWR at the "
            + ResponseReport.place(report.plane())
            + ", "
            + Numbers.significant(at(response.range().lowHz()).referenceOhm(), 4)
            + " ohm"
            + (report.plane() == Plane.TRANSMITTER ? ", before any tuner" : "");
    matches(seen + ": best matches");
    ranges(seen + ": where it stays low");
    if (!report.directions().isEmpty()) {
      gains();
    }
    report.conditions().text(out, palette);
    Conditions.line(out, "response", accuracy());
    if (response.gaps().size() > 1) {
      Conditions.line(
          out, "seen", "at feed " + feed() + ", with all feeds driven as the design states");
    }
    SolveText.warnings(out, palette, report.warnings());
    out.append('\n');
    Conditions.cautions(out, palette);
    return out.toString();
  }

  /** The first one, whose planes are seen. */
  private String feed() {
    return report.conditions().design().antenna().feeds().get(0).name();
  }

  private Mismatch at(double frequency) {
    return response.at(report.plane(), frequency);
  }

  private void section(String title, Table table, boolean empty) {
    out.append(palette.heading(title)).append('\n');
    out.append(empty ? "  none in this range\n" : table.render()).append('\n');
  }

  private String accuracy() {
    return response.solvedFrequencies().size()
        + " frequencies solved from "
        + Numbers.megahertz(response.range().lowHz())
        + " MHz to "
        + Numbers.megahertz(response.range().highHz())
        + " MHz; error of |reflection coefficient| between them "
        + Numbers.significant(response.reflectionError(), 2)
        + gainAccuracy();
  }

  private String gainAccuracy() {
    String error = Conditions.percent(response.gainError());
    return switch (report.directions().size()) {
      case 0 -> "";
      case 1 -> ", of the gain as a ratio " + error;
      default -> ", of gains as ratios " + error + " of the root of the sum of their squares";
    };
  }

  private void resonances() {
    Table table = new Table().number("frequency", "MHz").word("kind").number("resistance", "ohm");
    List<FrequencyResponse.Resonance> found = response.resonances(Plane.FEEDPOINT);
    for (FrequencyResponse.Resonance resonance : found) {
      table.row(
          Numbers.fixed(resonance.frequencyHz() * 1e-6, 4),
          ResponseReport.kind(resonance),
          Numbers.significant(resonance.resistanceOhm(), 4));
    }
    section(
        "Resonances of "
            + (response.gaps().size() > 1 ? "feed " + feed() : "the feedpoint")
            + ", where its reactance is zero",
        table,
        found.isEmpty());
  }

  private void matches(String title) {
    Table table = new Table().number("frequency", "MHz").number("SWR").number("impedance", "ohm");
    List<SwrAt> found = response.bestMatches(report.plane());
    for (SwrAt match : found) {
      table.row(
          Numbers.fixed(match.frequencyHz() * 1e-6, 4),
          Numbers.swr(match.swr()),
          Numbers.rectangular(at(match.frequencyHz()).impedance()));
    }
    section(title, table, found.isEmpty());
  }

  private void ranges(String title) {
    Table table =
        new Table()
            .number("SWR", "at most")
            .number("from", "MHz")
            .number("to", "MHz")
            .number("width", "kHz");
    boolean empty = true;
    for (double limit : ResponseReport.LIMITS) {
      for (FrequencyRange range : response.within(report.plane(), limit)) {
        empty = false;
        table.row(
            Numbers.significant(limit, 3),
            Numbers.fixed(range.lowHz() * 1e-6, 4),
            Numbers.fixed(range.highHz() * 1e-6, 4),
            Numbers.fixed((range.highHz() - range.lowHz()) * 1e-3, 1));
      }
    }
    section(title, table, empty);
  }

  /** The smallest and the largest of the rows. */
  private void gains() {
    Table table =
        new Table()
            .number("elevation", "deg")
            .number("azimuth", "deg")
            .number("lowest", "dBi")
            .number("at", "MHz")
            .number("highest", "dBi")
            .number("at", "MHz");
    for (Direction direction : report.directions()) {
      Comparator<Double> byGain =
          Comparator.comparingDouble(frequency -> response.gainDbi(direction, frequency));
      double low = Collections.min(report.frequenciesHz(), byGain);
      double high = Collections.max(report.frequenciesHz(), byGain);
      table.row(
          Numbers.significant(direction.elevationDegrees(), 6),
          Numbers.significant(direction.azimuthDegrees(), 6),
          Numbers.fixed(response.gainDbi(direction, low), 2),
          Numbers.fixed(low * 1e-6, 4),
          Numbers.fixed(response.gainDbi(direction, high), 2),
          Numbers.fixed(high * 1e-6, 4));
    }
    section("Gain over the range", table, false);
  }
}
