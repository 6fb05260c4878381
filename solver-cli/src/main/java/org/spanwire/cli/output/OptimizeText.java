package org.spanwire.cli.output;

import java.util.ArrayList;
import java.util.List;
import java.util.OptionalDouble;
import java.util.stream.Collectors;
import org.spanwire.study.Goal;
import org.spanwire.study.OptimizeResult;
import org.spanwire.study.OptimizeStudy;
import org.spanwire.unit.Dimension;
import org.spanwire.unit.Quantity;

/** The outcome of {@code spanwire optimize} for reading. */
final class OptimizeText {

  private static final int SHOWN_BINDING = 4;

  private final OptimizeReport report;
  private final OptimizeResult result;
  private final Palette palette;
  private final StringBuilder out = new StringBuilder();

  OptimizeText(OptimizeReport report, Palette palette) {
    this.report = report;
    this.result = report.result();
    this.palette = palette;
  }

  String render() {
    out.append(palette.heading(report.design().title())).append("\n\n");
    heading("Best designs, " + worst());
    out.append(designs().render()).append('\n');
    if (!result.candidates().isEmpty()) {
      best(result.candidates().get(0));
    }
    if (!result.front().isEmpty()) {
      heading("Trade-off: none of these is better than another in all goals");
      out.append(front().render()).append('\n');
    }
    conditions();
    SolveText.warnings(out, palette, report.warnings());
    out.append('\n');
    Conditions.cautions(out, palette);
    return out.toString();
  }

  private void heading(String text) {
    out.append(palette.heading(text)).append('\n');
  }

  private String worst() {
    long installations = report.study().over().count();
    return "at their worst over "
        + report.design().bands().size()
        + " bands"
        + (installations > 1 ? " and " + installations + " installations" : "");
  }

  private Table columns(String first) {
    Table table = new Table().word(first);
    result.nominal().parameters().forEach(setting -> table.number(setting.parameter()));
    for (Goal goal : result.goals()) {
      String unit = goal.measure().unit();
      table.number(goal.label() + (unit.isEmpty() ? "" : ", " + unit));
    }
    result.nominal().bands().forEach(band -> table.number(band.band()));
    return table.word("");
  }

  private Table designs() {
    Table table = columns("");
    row(table, "as it is", result.nominal());
    int number = 1;
    for (OptimizeResult.Candidate each : result.candidates()) {
      row(table, (report.isTie(each) ? "tie " : "best ") + number++, each);
    }
    return table;
  }

  private Table front() {
    Table table = columns("");
    result.front().forEach(each -> row(table, "", each));
    return table;
  }

  private void row(Table table, String name, OptimizeResult.Candidate each) {
    List<String> row = new ArrayList<>(List.of(name));
    each.parameters().forEach(setting -> row.add(value(setting.value())));
    for (int i = 0; i < each.values().size(); i++) {
      row.add(value(result.goals().get(i), each.values().get(i)));
    }
    each.bands().forEach(band -> row.add(value(result.goals().get(0), band.value())));
    row.add(each.feasible() ? "" : "breaks a limit");
    table.row(row.toArray(new String[0]));
  }

  private static String value(Goal goal, double value) {
    return goal.measure() == Goal.Measure.WORST_SWR
        ? Numbers.swr(value)
        : Numbers.fixed(value, goal.measure() == Goal.Measure.GAIN ? 2 : 1);
  }

  /** Shares in percent, as feed positions are written. */
  private static String value(Quantity quantity) {
    boolean share = quantity.dimension().equals(Dimension.NUMBER) && quantity.value() < 1;
    return share ? Numbers.fixed(100 * quantity.value(), 2) + " %" : rounded(quantity);
  }

  private static String rounded(Quantity quantity) {
    return new Quantity(
            Double.parseDouble(Numbers.significant(quantity.value(), 5)), quantity.dimension())
        .toString();
  }

  private void best(OptimizeResult.Candidate best) {
    heading("The best one");
    Conditions.line(out, "worst at", binding(best));
    String bounds =
        best.parameters().stream()
            .filter(OptimizeResult.Setting::atBound)
            .map(OptimizeResult.Setting::parameter)
            .collect(Collectors.joining(", "));
    Conditions.line(
        out, "bounds", bounds.isEmpty() ? "none is reached" : bounds + " at the end of its range");
    for (OptimizeResult.Flatness flat : best.flatness()) {
      Conditions.line(
          out,
          flat.parameter(),
          flat.low().isEmpty() && flat.high().isEmpty()
              ? "may move alone as far as was looked at and does not cost 0.1"
              : "may move alone from "
                  + end(flat.parameter(), flat.low())
                  + " to "
                  + end(flat.parameter(), flat.high())
                  + " before it costs 0.1");
    }
    out.append('\n');
  }

  private String end(String parameter, OptionalDouble value) {
    return value.isPresent()
        ? value(
            new Quantity(
                value.getAsDouble(),
                report.design().parameters().get(parameter).value().dimension()))
        : "beyond what was looked at";
  }

  private static String binding(OptimizeResult.Candidate best) {
    String shown =
        best.binding().stream()
            .limit(SHOWN_BINDING)
            .map(
                each ->
                    each.band()
                        + " ("
                        + Numbers.fixed(each.frequencyHz() / 1e6, 3)
                        + " MHz"
                        + each.installation().stream()
                            .map(s -> ", " + s.parameter() + " " + rounded(s.value()))
                            .collect(Collectors.joining())
                        + ")")
            .collect(Collectors.joining("; "));
    int more = best.binding().size() - SHOWN_BINDING;
    return shown + (more > 0 ? "; and " + more + " more" : "");
  }

  private void conditions() {
    OptimizeStudy study = report.study();
    heading("Conditions");
    study
        .vary()
        .forEach(
            range ->
                Conditions.line(
                    out, range.parameter(), value(range.from()) + " to " + value(range.to())));
    study
        .choices()
        .forEach(
            axis ->
                Conditions.line(
                    out,
                    axis.parameter(),
                    "one of "
                        + axis.values().stream()
                            .map(OptimizeText::value)
                            .collect(Collectors.joining(", "))));
    study
        .over()
        .axes()
        .forEach(
            axis ->
                Conditions.line(
                    out,
                    axis.parameter(),
                    "installations at "
                        + axis.values().stream()
                            .map(OptimizeText::rounded)
                            .collect(Collectors.joining(", "))));
    study
        .limits()
        .forEach(
            limit ->
                Conditions.line(
                    out,
                    "limit",
                    limit.goal().label()
                        + (limit.goal().measure().moreIsBetter() ? " at least " : " at most ")
                        + value(limit.goal(), limit.value())
                        + " "
                        + limit.goal().measure().unit()));
    Conditions.line(
        out,
        "search",
        result.scanned()
            + " designs scanned, then local searches on polynomials that missed reflection"
            + " coefficients of solutions they had not seen by at most "
            + Numbers.significant(result.modelError(), 2)
            + "; "
            + result.solves()
            + " solutions in all; all values above are from solutions at 5 frequencies per band,"
            + " impedances to "
            + Conditions.percent(report.tolerance()));
  }
}
