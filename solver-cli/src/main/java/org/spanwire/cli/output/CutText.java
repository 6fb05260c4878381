package org.spanwire.cli.output;

import java.util.List;
import org.spanwire.design.CutRules;
import org.spanwire.practice.Leg;
import org.spanwire.practice.Trim;
import org.spanwire.result.Warning;
import org.spanwire.study.TrimRow;

/** The outcome of {@code spanwire cut} as a sheet for the bench. */
final class CutText {

  private static final List<String> CAUTIONS =
      List.of(
          "Wire under tension lashes when it parts: wear gloves and eye protection, and stand clear of its line.",
          "Transformer, choke and line fall if the wire breaks: let nobody stand below, and fit a weak link where"
              + " local practice asks for one.",
          "Trim with the transmitter off and disconnected; the ends carry dangerous RF voltage while transmitting.");

  private final CutReport report;
  private final Palette palette;
  private final StringBuilder out = new StringBuilder();

  CutText(CutReport report, Palette palette) {
    this.report = report;
    this.palette = palette;
  }

  String render() {
    out.append(palette.heading(report.design().title())).append("\n\n");
    legs();
    rules();
    trim();
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

  private static String place(Leg.End end) {
    return switch (end.kind()) {
      case FREE -> "insulator";
      case FEED -> "feed " + end.name();
      case FITTING -> "fitting " + end.name();
      case JOINT -> "joint or ground";
    };
  }

  private void rules() {
    CutRules rules = report.rules();
    Conditions.line(
        out,
        "datum",
        rules.datum() == CutRules.Datum.EYE
            ? "the model ends at the bearing point of the eye; half the loop and the fold-back come on top"
            : "the model ends at the tip of the wire; loop and fold-back are part of its length");
    Conditions.line(
        out,
        "allowances",
        "loop "
            + millimetres(rules.loop())
            + ", fold-back "
            + millimetres(rules.foldBack())
            + ", terminal "
            + millimetres(rules.terminal())
            + ", stretch in service "
            + Numbers.significant(100 * rules.stretch(), 3)
            + " %");
    Conditions.line(out, "tolerance", "+/- " + millimetres(rules.tolerance()));
    Conditions.line(
        out, "made up", "from terminal to the eye's bearing point, laid out without tension");
    Conditions.line(out, "insulation", "is part of the model: apply no further shortening factor");
    out.append('\n');
  }

  private static String millimetres(double metres) {
    return Numbers.significant(1000 * metres, 4) + " mm";
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
    Paragraph.write(
        out,
        "",
        0,
        "Of every centimetre take "
            + Numbers.fixed(10 * trim.firstShare(), 1)
            + " mm off at the wire's first point and "
            + Numbers.fixed(10 * trim.lastShare(), 1)
            + " mm at its last: this keeps the ratio of the legs. All bands move together. A dash: no best match"
            + " in or near that band.");
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
