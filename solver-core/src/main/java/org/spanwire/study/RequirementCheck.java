package org.spanwire.study;

import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Objects;
import java.util.stream.Collectors;
import org.spanwire.Solver;
import org.spanwire.ToleranceException;
import org.spanwire.design.Design;
import org.spanwire.design.Requirement;
import org.spanwire.study.CheckedRequirement.Outcome;

/**
 * Holds a design to its requirements, at its first feed.
 *
 * <p>A value that lies closer to its limit than the numerical error is solved for again at a
 * tighter tolerance; if the limit is still within the error, the requirement is undecided, which
 * does not pass. The error counts that of the impedance, carried to the quantity, and that of the
 * curve over a band between the frequencies solved. The distance to keep from an antenna counts
 * with the uncertainty that the design's spreads give it, a yield with its confidence interval.
 *
 * @param design the design, with its requirements
 */
public record RequirementCheck(Design design) {

  /** Tolerance of the second look over that of the first. */
  private static final double TIGHTER = 0.1;

  private static final double TIGHTEST = 1e-7;

  /** Installations drawn for a yield at the first look, and at the second. */
  private static final int SAMPLES = 1000;

  private static final int MORE_SAMPLES = 20_000;

  /** Checks that there is a design. */
  public RequirementCheck {
    Objects.requireNonNull(design, "design");
  }

  /**
   * Checks all requirements, on several threads.
   *
   * @param threads number of threads; the results do not depend on it
   * @return one entry per requirement, in the order of the design; none without requirements
   * @throws org.spanwire.geometry.GeometryException if the antenna cannot be modelled as given
   * @throws ToleranceException if the tolerance of the solver could not be reached
   */
  public List<CheckedRequirement> run(Solver solver, int threads) {
    Installation installation = Installation.of(design);
    try (Workers workers = new Workers(threads)) {
      Map<Requirement, CheckedRequirement> checked =
          judge(installation, solver, design.requirements(), workers);
      StudyJudge studies = new StudyJudge(design, solver, threads, SAMPLES);
      judgeByStudies(studies, design.requirements(), checked);
      List<Requirement> open =
          checked.values().stream()
              .filter(each -> each.outcome() == Outcome.UNDECIDED)
              .map(CheckedRequirement::requirement)
              .toList();
      double tighter = Math.max(TIGHTEST, TIGHTER * solver.options().tolerance());
      if (!open.isEmpty() && tighter < solver.options().tolerance()) {
        try {
          Solver again = solver.withTolerance(tighter);
          checked.putAll(judge(installation, again, open, workers));
          judgeByStudies(new StudyJudge(design, again, threads, MORE_SAMPLES), open, checked);
        } catch (ToleranceException e) {
          // The first look stands: undecided.
        }
      }
      return design.requirements().stream().map(checked::get).toList();
    }
  }

  private static void judgeByStudies(
      StudyJudge judge,
      List<Requirement> requirements,
      Map<Requirement, CheckedRequirement> checked) {
    requirements.stream()
        .distinct()
        .filter(StudyJudge::judges)
        .forEach(each -> checked.put(each, judge.check(each)));
  }

  private static Map<Requirement, CheckedRequirement> judge(
      Installation installation, Solver solver, List<Requirement> requirements, Workers workers) {
    Map<Requirement.Scope, List<Requirement>> byScope =
        requirements.stream()
            .distinct()
            .filter(each -> !StudyJudge.judges(each))
            .collect(
                Collectors.groupingBy(Requirement::scope, LinkedHashMap::new, Collectors.toList()));
    Map<Requirement, CheckedRequirement> checked = new LinkedHashMap<>();
    byScope.forEach(
        (scope, here) -> {
          RequirementJudge judge = new RequirementJudge(installation, solver);
          if (scope instanceof Requirement.AtFrequency at) {
            Operation operation = installation.solve(solver, at.frequencyHz());
            here.forEach(each -> checked.put(each, judge.at(each, operation)));
          } else if (scope instanceof Requirement.InBand in) {
            FrequencyRange range = new FrequencyRange(in.band().lowHz(), in.band().highHz());
            BandScan scan = judge.scan(range, here, workers);
            here.forEach(each -> checked.put(each, judge.over(each, scan)));
          }
        });
    return checked;
  }
}
