package org.spanwire.validation;

import java.io.IOException;
import java.io.Reader;
import java.io.UncheckedIOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import org.apache.commons.csv.CSVFormat;
import org.apache.commons.csv.CSVRecord;

/**
 * How far the tests reach: the lines of the library that its tests run, by this build, and the
 * planted faults that tests notice, by the last run at length.
 */
final class TestReach {

  private static final double LEAST_COVERAGE = 0.9;
  private static final double LEAST_SCORE = 0.75;

  /** Groups of the profile that runs the mutation tests. */
  private static final List<String> GROUPS =
      List.of("unit", "circuit", "design", "check", "check-output");

  /**
   * Lines of code.
   *
   * @param covered run by a test
   * @param all with and without
   */
  record Lines(long covered, long all) {

    double share() {
      return covered / (double) all;
    }
  }

  private TestReach() {}

  /** Lines that the library's tests have run, if this build has counted them. */
  static Optional<Lines> lines(Path coverage) {
    if (!Files.exists(coverage)) {
      return Optional.empty();
    }
    CSVFormat format = CSVFormat.DEFAULT.builder().setHeader().setSkipHeaderRecord(true).get();
    try (Reader in = Files.newBufferedReader(coverage)) {
      long covered = 0;
      long missed = 0;
      for (CSVRecord row : format.parse(in)) {
        covered += Long.parseLong(row.get("LINE_COVERED"));
        missed += Long.parseLong(row.get("LINE_MISSED"));
      }
      return Optional.of(new Lines(covered, covered + missed));
    } catch (IOException e) {
      throw new UncheckedIOException(coverage.toString(), e);
    }
  }

  /** Section of the report; too few lines, a weak group or one not run is a fault. */
  static Section section(Optional<Lines> lines, MutationRecord mutations) {
    List<String> faults = new ArrayList<>();
    StringBuilder text = new StringBuilder("## How far the tests reach\n\n");
    text.append(
        lines
            .map(
                found ->
                    format(
                        "Lines of solver-core run by its tests: %.1f %% of %d, wanted %.0f %%.",
                        100 * found.share(), found.all(), 100 * LEAST_COVERAGE))
            .orElse("Lines of solver-core run by its tests: not counted by this build."));
    lines
        .filter(found -> found.share() < LEAST_COVERAGE)
        .ifPresent(found -> faults.add("the tests run too few lines of solver-core"));
    text.append(
        format(
            "%n%nSmall faults planted in the code, one at a time, and noticed by its tests, in"
                + " solver-cli for check-output and in solver-core for the other groups; wanted"
                + " %.0f %%:%n%n",
            100 * LEAST_SCORE));
    text.append("| group | planted | noticed | of these by running out of time | share | run |\n");
    text.append("|---|---:|---:|---:|---:|---|\n");
    for (String name : GROUPS) {
      mutations.groups().stream()
          .filter(group -> group.name().equals(name))
          .findFirst()
          .ifPresentOrElse(
              group -> {
                text.append(row(group));
                if (group.score() < LEAST_SCORE) {
                  faults.add("the tests of " + name + " notice too few planted faults");
                }
              },
              () -> {
                text.append("| ").append(name).append(" | | | | not run yet | |\n");
                faults.add("no planted faults are on record for " + name);
              });
    }
    faults.forEach(fault -> text.append("\n- **").append(fault).append("**\n"));
    return new Section(text.toString(), faults);
  }

  private static String row(MutationRecord.Group group) {
    return format(
        "| %s | %d | %d | %d | %.1f %% | %s, commit %s |%n",
        group.name(),
        group.mutants(),
        group.killed(),
        group.timedOut(),
        100 * group.score(),
        group.date(),
        group.commit());
  }

  private static String format(String format, Object... values) {
    return String.format(Locale.ROOT, format, values);
  }
}
