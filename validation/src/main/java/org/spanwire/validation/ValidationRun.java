package org.spanwire.validation;

import java.time.Duration;
import java.util.ArrayList;
import java.util.List;

/**
 * All cases, run once.
 *
 * @param stamp what was run, and where
 * @param groups the groups of cases
 * @param outcomes what came of them, in the same order
 * @param elapsed wall-clock time
 */
record ValidationRun(
    RunStamp stamp, List<CaseGroup> groups, List<Outcome> outcomes, Duration elapsed) {

  ValidationRun {
    groups = List.copyOf(groups);
    outcomes = List.copyOf(outcomes);
  }

  /** Runs groups of cases, groups side by side, and keeps their order. */
  static ValidationRun of(RunStamp stamp, List<CaseGroup> groups) {
    long start = System.nanoTime();
    List<Outcome> outcomes =
        groups.parallelStream().map(ValidationRun::run).flatMap(List::stream).toList();
    return new ValidationRun(stamp, groups, outcomes, Duration.ofNanos(System.nanoTime() - start));
  }

  private static List<Outcome> run(CaseGroup group) {
    Workbench bench = new Workbench();
    List<Outcome> outcomes = new ArrayList<>();
    for (ValidationCase one : group.cases()) {
      outcomes.add(run(one, bench));
    }
    return outcomes;
  }

  /** A case that throws has failed; the others still run. */
  private static Outcome run(ValidationCase one, Workbench bench) {
    try {
      return Outcome.of(one, one.quantity().measure(one, bench));
    } catch (RuntimeException e) {
      String message = e.getMessage() == null ? "" : ": " + e.getMessage();
      return Outcome.failed(one, e.getClass().getSimpleName() + message);
    }
  }

  long passed() {
    return outcomes.stream().filter(Outcome::passes).count();
  }

  boolean allPass() {
    return passed() == outcomes.size();
  }
}
