package org.spanwire.cli.output;

import org.spanwire.study.FitResult;
import org.spanwire.unit.Quantity;

/** The outcome of {@code spanwire fit} for reading. */
final class FitText {

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
    verdict();
    heading("Estimates, all together");
    out.append(estimates().render()).append('\n');
    heading("Each as the only cause, the likeliest first");
    out.append(causes().render()).append('\n');
    conditions();
    SolveText.warnings(out, palette, report.warnings());
    return out.toString();
  }

  private void heading(String text) {
    out.append(palette.heading(text)).append('\n');
  }

  private static String percent(double share) {
    return Numbers.fixed(100 * share, 0) + " %";
  }

  private void verdict() {
    FitResult.Cause first = result.causes().get(0);
    StringBuilder words = new StringBuilder();
    words
        .append("Likeliest cause: ")
        .append(first.parameter())
        .append(' ')
        .append(value(first.value()))
        .append(" instead of ")
        .append(value(nominal(first.parameter())))
        .append(", which alone explains ")
        .append(percent(first.explained()))
        .append(" of the difference");
    if (first.enough()) {
      words.append(", as much as the readings can tell");
    } else if (result.causes().size() > 1) {
      words.append(", not all of it: more than one thing differs");
    } else {
      words.append(", not all of it: vary other parameters too");
    }
    words.append('.');
    long enough = result.causes().stream().filter(FitResult.Cause::enough).count();
    if (enough > 1) {
      words
          .append(" But ")
          .append(result.causes().get(1).parameter())
          .append(" alone would do too.");
    }
    Paragraph.write(out, "", 0, words.toString());
    result.reading().ifPresent(this::reading);
    out.append('\n');
  }

  private void reading(FitResult.Reading reading) {
    Paragraph.write(
        out,
        "",
        0,
        "To part "
            + result.causes().get(0).parameter()
            + " from "
            + result.causes().get(1).parameter()
            + " best, read SWR at "
            + Numbers.megahertz(reading.frequencyHz())
            + " MHz: "
            + Numbers.swr(reading.firstSwr())
            + " speaks for "
            + result.causes().get(0).parameter()
            + ", "
            + Numbers.swr(reading.secondSwr())
            + " for "
            + result.causes().get(1).parameter()
            + ".");
  }

  private Quantity nominal(String parameter) {
    return report.design().parameters().get(parameter).value();
  }

  private static String value(Quantity quantity) {
    return new Quantity(
            Double.parseDouble(Numbers.significant(quantity.value(), 5)), quantity.dimension())
        .toString();
  }

  private String value(double si, FitResult.Estimate of) {
    return Double.isNaN(si) ? "-" : value(new Quantity(si, of.value().dimension()));
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
      row[1] = value(each.nominal());
      row[2] = value(each.value());
      row[3] =
          Double.isNaN(each.standardError())
              ? "-"
              : new Quantity(
                      Double.parseDouble(Numbers.significant(each.standardError(), 2)),
                      each.value().dimension())
                  .toString();
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
          value(nominal(cause.parameter())),
          value(cause.value()),
          percent(cause.explained()),
          Numbers.fixed(cause.misfit(), 4),
          cause.enough() ? "enough alone" : "not enough alone");
    }
    return table;
  }

  private void conditions() {
    heading("Conditions");
    Conditions.line(
        out,
        "measured",
        report.measured()
            + ", "
            + result.frequencies()
            + " frequencies, at the "
            + report.plane().label());
    Conditions.line(
        out,
        "misfit",
        "rms difference of the reflection coefficients: "
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
