package org.spanwire.validation;

import java.util.LinkedHashSet;
import java.util.List;
import java.util.Locale;
import java.util.Set;
import java.util.stream.Collectors;

/**
 * Writes a run as Markdown: one table per group, the reasons of its tolerances below, then the
 * other sections.
 */
final class MarkdownReport {

  private MarkdownReport() {}

  static String of(ValidationRun run, List<Section> sections) {
    StringBuilder text = new StringBuilder();
    RunStamp stamp = run.stamp();
    line(text, "# spanwire-validation");
    line(text, "");
    line(text, "%d of %d cases pass.", run.passed(), run.outcomes().size());
    line(text, "");
    line(text, "- Commit: %s", stamp.commit());
    line(text, "- Runtime: %s", stamp.jdk());
    line(text, "- Machine: %s", stamp.machine());
    line(text, "- Date: %s, %.1f s", stamp.date(), run.elapsed().toMillis() / 1e3);
    line(text, "- Solver tolerance: %s", Workbench.SOLVER_TOLERANCE);
    for (CaseGroup group : run.groups()) {
      table(text, group, run.outcomes());
    }
    sections.forEach(section -> text.append('\n').append(section.markdown()));
    return text.toString();
  }

  private static void table(StringBuilder text, CaseGroup group, List<Outcome> all) {
    line(text, "");
    line(text, "## Group %d. %s", group.number(), group.title());
    line(text, "");
    line(text, "| id | quantity | expected | got | deviation | tolerance | source | pass |");
    line(text, "|---|---|---|---|---|---|---|---|");
    for (Outcome outcome : all) {
      if (outcome.subject().group() == group.number()) {
        row(text, outcome);
      }
    }
    line(text, "");
    Set<Tolerance> tolerances =
        group.cases().stream()
            .map(ValidationCase::tolerance)
            .collect(Collectors.toCollection(LinkedHashSet::new));
    for (Tolerance tolerance : tolerances) {
      line(text, "- Tolerance %s: %s", CaseText.limit(tolerance), tolerance.reason());
    }
  }

  private static void row(StringBuilder text, Outcome outcome) {
    ValidationCase subject = outcome.subject();
    line(
        text,
        "| %s | %s (%s) | %s | %s | %s | %s | %s; %s | %s |",
        cell(subject.id()),
        CaseText.name(subject.quantity()),
        subject.quantity().unit(),
        CaseText.value(subject.expected()),
        outcome.got().map(CaseText::value).orElseGet(() -> cell(outcome.failure().orElseThrow())),
        CaseText.deviation(outcome.deviation(), subject.tolerance()),
        CaseText.limit(subject.tolerance()),
        cell(subject.source()),
        subject.origin().label(),
        outcome.passes() ? "yes" : "**no**");
  }

  /** A bar or a line break would end the cell. */
  private static String cell(String text) {
    return text.replace("|", "\\|").replace('\n', ' ');
  }

  private static void line(StringBuilder text, String format, Object... values) {
    text.append(String.format(Locale.ROOT, format, values)).append('\n');
  }
}
