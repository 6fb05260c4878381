package org.spanwire.cli.output;

import java.util.List;
import org.spanwire.study.CheckedRequirement;
import org.spanwire.study.CheckedRequirement.Quantity;

/** The outcome of {@code spanwire check} for reading. */
final class CheckText {

  private final CheckReport report;
  private final Palette palette;
  private final StringBuilder out = new StringBuilder();

  CheckText(CheckReport report, Palette palette) {
    this.report = report;
    this.palette = palette;
  }

  String render() {
    for (CheckReport.Checked each : report.designs()) {
      out.append(out.isEmpty() ? "" : "\n");
      out.append(palette.heading(each.design().title()))
          .append("  (")
          .append(each.design().source())
          .append(")\n")
          .append(table(each.requirements()).render());
      each.requirements().stream().filter(checked -> !checked.passed()).forEach(this::cause);
    }
    SolveText.warnings(out, palette, report.warnings());
    out.append('\n');
    if (judgesExposure()) {
      Paragraph.write(
          out,
          "",
          0,
          "Distances to keep are estimates for planning, no proof that limits of exposure are kept:"
              + " the rules of the place and measurement go first.");
    }
    out.append(palette.heading(summary())).append('\n');
    return out.toString();
  }

  private boolean judgesExposure() {
    return report.designs().stream()
        .flatMap(each -> each.requirements().stream())
        .anyMatch(checked -> checked.quantity() == Quantity.EXPOSURE_DISTANCE);
  }

  private Table table(List<CheckedRequirement> requirements) {
    Table table =
        new Table()
            .word("outcome")
            .word("where")
            .word("requirement")
            .number("limit")
            .number("found")
            .number("margin")
            .number("error")
            .number("at", "MHz");
    for (CheckedRequirement checked : requirements) {
      table.row(
          word -> palette.outcome(checked.outcome(), word),
          checked.outcome().label(),
          RequirementText.scope(checked.requirement()),
          shown(checked),
          RequirementText.limit(checked),
          RequirementText.found(checked),
          RequirementText.margin(checked),
          RequirementText.error(checked),
          checked.frequencyHz().isPresent()
              ? Numbers.fixed(checked.frequencyHz().getAsDouble() / 1e6, 4)
              : "-");
    }
    return table;
  }

  private static String shown(CheckedRequirement checked) {
    String unit = RequirementText.unit(checked);
    return RequirementText.quantity(checked) + (unit.isEmpty() ? "" : ", " + unit);
  }

  private void cause(CheckedRequirement checked) {
    String label = "  " + RequirementText.scope(checked.requirement()) + ": ";
    Paragraph.write(out, label, label.length(), checked.cause());
  }

  private String summary() {
    long all = report.designs().stream().mapToLong(each -> each.requirements().size()).sum();
    long met =
        report.designs().stream()
            .flatMap(each -> each.requirements().stream())
            .filter(CheckedRequirement::passed)
            .count();
    if (met == all) {
      return all == 1 ? "the requirement is met" : "all " + all + " requirements are met";
    }
    long open = all - met;
    return open + " of " + all + " requirements " + (open == 1 ? "is" : "are") + " not met";
  }
}
