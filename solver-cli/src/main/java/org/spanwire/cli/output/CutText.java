package org.spanwire.cli.output;

import java.util.List;
import org.spanwire.practice.Leg;
import org.spanwire.practice.SpanState;
import org.spanwire.practice.Trim;
import org.spanwire.result.Warning;
import org.spanwire.study.TrimRow;

/** The outcome of {@code spanwire cut} as a sheet for the bench. */
public final class CutText {

  /** Cautions for whoever makes and hangs the wire. */
  public static final List<String> CAUTIONS =
      List.of(
          "Wire under tension lashes when it parts: wear gloves and eye protection, and stand clear of its line.",
          "Transformer, choke and line fall if the wire breaks: let nobody stand below, and fit a weak link where"
              + " local practice asks for one.",
          "Trim with the transmitter off and disconnected; the ends carry dangerous RF voltage while transmitting.");

  /** What sag and pull count, and what they do not. */
  public static final String WEATHER =
      "The wire's own weight and what hangs from it; wind level and across, steady, on the wire"
          + " alone; even ice of 900 kg/m3. Gusts, swaying trees and galloping come on top. An estimate for"
          + " comparing: supports, ropes, anchors and the weak link are for somebody competent to judge by"
          + " local codes.";

  private final CutReport report;
  private final Palette palette;
  private final StringBuilder out = new StringBuilder();

  CutText(CutReport report, Palette palette) {
    this.report = report;
    this.palette = palette;
  }

  String render() {
    out.append(palette.heading(report.design().title())).append("\n\n");
    if (report.kitAlone()) {
      report.kitText().text(out, palette);
    } else {
      legs();
      rules();
      report.kitText().text(out, palette);
      trim();
      spans();
    }
    warnings();
    Conditions.cautions(out, palette);
    for (String caution : CAUTIONS) {
      Paragraph.write(out, "  - ", 4, caution);
    }
    return out.toString();
  }

  private void legs() {
    out.append(palette.heading("Cut list")).append('\n');
    Table table =
        new Table()
            .word("wire")
            .word("from")
            .word("to")
            .number("cut to", "m")
            .number("made up", "m")
            .number("in the model", "m");
    for (Leg leg : report.legs()) {
      table.row(
          leg.wire(),
          place(leg.from()),
          place(leg.to()),
          Numbers.fixed(leg.cutLength(), 3),
          Numbers.fixed(leg.madeUpLength(), 3),
          Numbers.fixed(leg.modelLength(), 3));
    }
    out.append(table.render()).append('\n');
  }

  /** What is at the end of a leg. */
  public static String place(Leg.End end) {
    return switch (end.kind()) {
      case FREE -> "insulator";
      case FEED -> "feed " + end.name();
      case FITTING -> "fitting " + end.name();
      case JOINT -> "joint or ground";
    };
  }

  private void rules() {
    report.rulesInWords().forEach(entry -> Conditions.line(out, entry.name(), entry.value()));
    out.append('\n');
  }

  private void trim() {
    if (report.trim().isEmpty() || report.rows().isEmpty()) {
      return;
    }
    Trim trim = report.trim().get();
    out.append(palette.heading("Trimming wire " + trim.wire())).append('\n');
    Table table =
        new Table()
            .word("band")
            .number("best match", "MHz")
            .number("per cm off", "kHz")
            .number("tolerance", "+/- kHz");
    for (TrimRow row : report.rows()) {
      table.row(
          row.band(),
          row.effect().map(e -> Numbers.fixed(e.bestMatchHz() / 1e6, 3)).orElse("-"),
          row.effect().map(e -> Numbers.significant(e.hertzPerMetre() / 1e5, 3)).orElse("-"),
          row.effect()
              .map(
                  e -> Numbers.significant(e.hertzPerMetre() * report.rules().tolerance() / 1e3, 2))
              .orElse("-"));
    }
    out.append(table.render());
    Paragraph.write(out, "", 0, sharing(trim));
    out.append('\n');
  }

  /** How trimming is shared between the ends of a wire. */
  public static String sharing(Trim trim) {
    return "Of every centimetre take "
        + Numbers.fixed(10 * trim.firstShare(), 1)
        + " mm off at the wire's first point and "
        + Numbers.fixed(10 * trim.lastShare(), 1)
        + " mm at its last: this keeps the ratio of the legs. All bands move together, but for one that a trap"
        + " keeps the ends out of: that is trimmed between feed and trap. A dash: no best match in or near that"
        + " band.";
  }

  private void spans() {
    if (report.spans().isEmpty()) {
      return;
    }
    out.append(palette.heading("How it hangs, in still air and in weather")).append('\n');
    Table table =
        new Table()
            .word("wire")
            .word("weather")
            .number("wind", "m/s")
            .number("ice", "mm")
            .number("change", "K")
            .number("sag", "m")
            .number("swing", "m")
            .number("lowest", "m")
            .number("largest", "tension, N")
            .number("pull at", "support, N")
            .number("margin to", "breaking");
    for (SpanState span : report.spans()) {
      table.row(
          span.wire(),
          span.name(),
          Numbers.significant(span.weather().windSpeed(), 3),
          Numbers.significant(1000 * span.weather().iceThickness(), 3),
          Numbers.significant(span.weather().temperatureChange(), 3),
          Numbers.fixed(span.sag(), 2),
          Numbers.fixed(span.swing(), 2),
          Numbers.fixed(span.lowest(), 2),
          Numbers.fixed(span.largestTension(), 0),
          Numbers.fixed(span.supportPull(), 0),
          Numbers.fixed(span.breakingMargin(), 1));
    }
    out.append(table.render());
    Paragraph.write(out, "", 0, WEATHER);
    out.append('\n');
  }

  private void warnings() {
    if (report.warnings().isEmpty()) {
      return;
    }
    out.append(palette.heading("Warnings")).append('\n');
    for (Warning warning : report.warnings()) {
      Paragraph.write(
          out, "  " + warning.name() + ": ", warning.name().length() + 4, warning.message());
    }
    out.append('\n');
  }
}
