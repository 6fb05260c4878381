package org.spanwire.cli.output;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.stream.Collectors;
import org.spanwire.design.Parameter;
import org.spanwire.design.Spread;
import org.spanwire.study.YieldResult;

/** The outcome of {@code spanwire yield} for reading. */
final class YieldText {

  /** What moves less than this share of the variance is not worth a word. */
  private static final double WORTH_NAMING = 0.05;

  private static final int SHOWN_POINTS = 3;

  private final YieldReport report;
  private final YieldResult result;
  private final Palette palette;
  private final StringBuilder out = new StringBuilder();

  YieldText(YieldReport report, Palette palette) {
    this.report = report;
    this.result = report.result();
    this.palette = palette;
  }

  String render() {
    out.append(palette.heading(report.design().title())).append("\n\n");
    heading("Share of " + result.samples() + " installations drawn that meet each requirement");
    out.append(shares().render())
        .append("by slopes: what the derivatives at the nominal design alone would say\n\n");
    heading("What one spread of a parameter moves, and its part of the variance");
    out.append(influences().render()).append('\n');
    if (!result.envelopes().isEmpty()) {
      heading("SWR at the transmitter that 10, 50 and 90 % of the installations stay below");
      out.append(envelopes().render()).append('\n');
    }
    conditions();
    SolveText.warnings(out, palette, report.warnings());
    return out.toString();
  }

  private void heading(String text) {
    out.append(palette.heading(text)).append('\n');
  }

  private static String percent(double share) {
    return Numbers.fixed(100 * share, 1);
  }

  private Table shares() {
    Table table =
        new Table()
            .word("requirement")
            .number("met", "%")
            .number("95 % confidence", "%")
            .number("by slopes", "%")
            .number("nominal")
            .number("10 %", "below")
            .number("50 %", "below")
            .number("90 %", "below")
            .word("dominated by");
    for (YieldResult.Outcome outcome : result.outcomes()) {
      table.row(
          YieldReport.label(outcome.requirement()),
          percent(outcome.share().value()),
          interval(outcome.share()),
          percent(outcome.linearShare()),
          value(outcome, outcome.nominal()),
          value(outcome, outcome.percentiles().p10()),
          value(outcome, outcome.percentiles().p50()),
          value(outcome, outcome.percentiles().p90()),
          dominant(outcome));
    }
    if (result.outcomes().size() > 1) {
      table.row(
          "all of them",
          percent(result.all().value()),
          interval(result.all()),
          "",
          "",
          "",
          "",
          "",
          "");
    }
    return table;
  }

  private static String value(YieldResult.Outcome outcome, double value) {
    return Numbers.swr(value * YieldReport.scale(outcome.requirement()));
  }

  private static String interval(YieldResult.Share share) {
    return percent(share.low()) + " to " + percent(share.high());
  }

  private static String dominant(YieldResult.Outcome outcome) {
    return outcome.influences().stream()
        .filter(influence -> influence.varianceShare() >= WORTH_NAMING)
        .sorted(Comparator.comparingDouble(YieldResult.Influence::varianceShare).reversed())
        .limit(2)
        .map(i -> i.parameter() + " " + Numbers.fixed(100 * i.varianceShare(), 0) + " %")
        .collect(Collectors.joining(", "));
  }

  /** Requirements on one quantity and band differ in their limits only: one row for them. */
  private Table influences() {
    Table table = new Table().word("value");
    for (Parameter parameter : result.parameters()) {
      table.number(parameter.name(), spread(parameter));
    }
    List<List<YieldResult.Influence>> shown = new ArrayList<>();
    for (YieldResult.Outcome outcome : result.outcomes()) {
      if (shown.contains(outcome.influences())) {
        continue;
      }
      shown.add(outcome.influences());
      List<String> row = new ArrayList<>();
      row.add(YieldReport.quantity(outcome.requirement()));
      for (YieldResult.Influence influence : outcome.influences()) {
        double step = influence.perSpread() * YieldReport.scale(outcome.requirement());
        row.add(
            (step >= 0 ? "+" : "")
                + Numbers.fixed(step, 3)
                + "  "
                + Numbers.fixed(100 * influence.varianceShare(), 0)
                + " %");
      }
      table.row(row.toArray(new String[0]));
    }
    return table;
  }

  private static String spread(Parameter parameter) {
    boolean normal = parameter.spread().orElseThrow() instanceof Spread.Normal;
    return (normal ? "sigma " : "+/- ") + YieldReport.spread(parameter);
  }

  private Table envelopes() {
    Table table = new Table().word("band");
    for (String where : List.of("low edge", "middle", "high edge")) {
      table.number(where, "MHz").number("", "10 %").number("", "50 %").number("", "90 %");
    }
    for (YieldResult.Envelope envelope : result.envelopes()) {
      List<String> row = new ArrayList<>(List.of(envelope.band()));
      int last = envelope.points().size() - 1;
      for (int i = 0; i < SHOWN_POINTS; i++) {
        YieldResult.Point point = envelope.points().get(i * last / (SHOWN_POINTS - 1));
        row.add(Numbers.fixed(point.frequencyHz() / 1e6, 3));
        row.add(Numbers.swr(point.swr().p10()));
        row.add(Numbers.swr(point.swr().p50()));
        row.add(Numbers.swr(point.swr().p90()));
      }
      table.row(row.toArray(new String[0]));
    }
    return table;
  }

  private void conditions() {
    heading("Conditions");
    for (Parameter parameter : result.parameters()) {
      boolean normal = parameter.spread().orElseThrow() instanceof Spread.Normal;
      Conditions.line(
          out,
          parameter.name(),
          parameter.value()
              + (normal
                  ? ", normal with sigma " + YieldReport.spread(parameter) + ", cut off at 4 sigma"
                  : ", anywhere within +/- " + YieldReport.spread(parameter))
              + parameter
                  .limits()
                  .map(l -> ", never outside " + l.low() + " to " + l.high())
                  .orElse(""));
    }
    Conditions.line(
        out, "sample", result.samples() + " points of a Sobol sequence, seed " + report.seed());
    Conditions.line(
        out,
        "accuracy",
        result.solves()
            + " solutions, the installations judged on polynomials between them; reflection"
            + " coefficients of solutions they had not seen were missed by at most "
            + Numbers.significant(result.modelError(), 2)
            + distanceError()
            + "; at most "
            + percent(
                result.outcomes().stream()
                    .mapToDouble(YieldResult.Outcome::undecided)
                    .max()
                    .orElse(0))
            + " % of the installations lie so close to a limit that this could decide");
  }

  private String distanceError() {
    return result.distanceError().isPresent()
        ? ", distances to keep by at most "
            + Numbers.significant(result.distanceError().getAsDouble(), 2)
            + " m"
        : "";
  }
}
