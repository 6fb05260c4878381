package org.spanwire.cli.output;

import java.util.Comparator;
import java.util.List;
import org.spanwire.circuit.TransmissionLine;
import org.spanwire.study.FitResult;
import org.spanwire.unit.Dimension;
import org.spanwire.unit.Quantity;

/** The outcome of {@code spanwire fit} for reading. */
final class FitText {

  private static final int MOST_SHOWN = 12;

  private final FitReport report;
  private final FitResult result;
  private final Palette palette;
  private final StringBuilder out = new StringBuilder();

  FitText(FitReport report, Palette palette) {
    this.report = report;
    this.result = report.result();
    this.palette = palette;
  }

  String render() {
    out.append(palette.heading(report.design().title())).append("\n\n");
    new FitVerdict(report).paragraphs().forEach(each -> Paragraph.write(out, "", 0, each));
    out.append('\n');
    heading("Estimates, all together");
    out.append(estimates().render()).append('\n');
    heading("Each as the only cause, the likeliest first");
    out.append(causes().render()).append('\n');
    readings();
    conditions();
    SolveText.warnings(out, palette, report.warnings());
    return out.toString();
  }

  private void heading(String text) {
    out.append(palette.heading(text)).append('\n');
  }

  private Quantity nominal(String parameter) {
    return report.design().parameters().get(parameter).value();
  }

  static String value(Quantity quantity, int digits) {
    return new Quantity(
            Double.parseDouble(Numbers.significant(quantity.value(), digits)), quantity.dimension())
        .toString();
  }

  private static String value(double si, FitResult.Estimate of) {
    return FitVerdict.rounded(si, of).toString();
  }

  private static String through(TransmissionLine line) {
    return ", through "
        + value(new Quantity(line.length(), Dimension.LENGTH), 4)
        + " of "
        + Numbers.significant(line.impedanceOhm(), 3)
        + " ohm line";
  }

  private Table estimates() {
    Table table =
        new Table()
            .word("parameter")
            .number("design")
            .number("estimate")
            .number("standard error")
            .number("95 % confidence");
    result.estimates().forEach(each -> table.number("correlation", "with " + each.parameter()));
    for (int i = 0; i < result.estimates().size(); i++) {
      FitResult.Estimate each = result.estimates().get(i);
      String[] row = new String[5 + result.estimates().size()];
      row[0] = each.parameter();
      row[1] = each.nominal().toString();
      row[2] = FitVerdict.rounded(each).toString();
      row[3] =
          Double.isNaN(each.standardError())
              ? "-"
              : value(new Quantity(each.standardError(), each.value().dimension()), 2);
      row[4] =
          Double.isNaN(each.low())
              ? "-"
              : value(each.low(), each) + " to " + value(each.high(), each);
      for (int j = 0; j < result.estimates().size(); j++) {
        double correlation = result.correlations()[i][j];
        row[5 + j] = i == j || Double.isNaN(correlation) ? "-" : Numbers.fixed(correlation, 2);
      }
      table.row(row);
    }
    return table;
  }

  private Table causes() {
    Table table =
        new Table()
            .word("parameter")
            .number("design")
            .number("would be")
            .number("explains")
            .number("misfit left")
            .word("");
    for (FitResult.Cause cause : result.causes()) {
      table.row(
          cause.parameter(),
          nominal(cause.parameter()).toString(),
          value(cause.value(), 4),
          FitVerdict.percent(cause.explained()),
          Numbers.fixed(cause.misfit(), 4),
          cause.enough() ? "enough alone" : "not enough alone");
    }
    return table;
  }

  /** All of a few readings; of many those that the estimates leave farthest off. */
  private void readings() {
    List<FitResult.Comparison> all = result.comparisons();
    boolean few = all.size() <= MOST_SHOWN;
    heading(
        few
            ? "SWR, reading by reading"
            : "SWR, the " + MOST_SHOWN + " readings of " + all.size() + " farthest off");
    Table table =
        new Table()
            .number("frequency", "MHz")
            .number("read")
            .number("as designed")
            .number("with the", "estimates");
    all.stream()
        .sorted(Comparator.comparingDouble(FitText::off).reversed())
        .limit(MOST_SHOWN)
        .sorted(Comparator.comparingDouble(FitResult.Comparison::frequencyHz))
        .forEach(
            each ->
                table.row(
                    Numbers.megahertz(each.frequencyHz()),
                    Numbers.swr(each.readSwr()),
                    Numbers.swr(each.designedSwr()),
                    Numbers.swr(each.estimatedSwr())));
    out.append(table.render()).append('\n');
  }

  /** By the reflection coefficients, as the misfit counts: a large SWR is hard to read. */
  private static double off(FitResult.Comparison each) {
    return Math.abs(2 / (1 + each.readSwr()) - 2 / (1 + each.estimatedSwr()));
  }

  private void conditions() {
    heading("Conditions");
    Conditions.line(
        out,
        "measured",
        report.source()
            + ", "
            + result.frequencies()
            + (report.measurement().phase() ? " frequencies" : " readings of SWR without phase")
            + ", at the "
            + report.measurement().plane().label()
            + report.measurement().line().map(line -> through(line)).orElse(""));
    report
        .measurement()
        .swrError()
        .ifPresent(
            share ->
                Conditions.line(
                    out,
                    "errors",
                    Numbers.significant(100 * share, 2)
                        + " % of the SWR on average, as stated or assumed; with the estimates the"
                        + " readings are off by "
                        + Numbers.significant(result.overErrors().orElseThrow(), 2)
                        + " times that (rms)"));
    Conditions.line(
        out,
        "misfit",
        (report.measurement().phase()
                ? "rms difference of the reflection coefficients: "
                : "rms difference of the reflection coefficients' magnitudes: ")
            + Numbers.fixed(result.nominalMisfit(), 4)
            + " as designed, "
            + Numbers.fixed(result.misfit(), 4)
            + " with the estimates");
    Conditions.line(
        out,
        "accuracy",
        result.solves()
            + " solutions; fitted on polynomials that missed reflection coefficients of solutions"
            + " they had not seen by at most "
            + Numbers.significant(result.modelError(), 2));
    Conditions.line(
        out,
        "known",
        "taken to be right: all parameters that are not listed, and the chain between antenna and instrument");
  }
}
