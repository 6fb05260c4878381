package org.spanwire.study;

import java.util.Comparator;
import java.util.List;
import java.util.Locale;
import java.util.OptionalDouble;
import org.spanwire.Solver;
import org.spanwire.design.Design;
import org.spanwire.design.ExposureRules;
import org.spanwire.design.Requirement;
import org.spanwire.practice.KeepOut;
import org.spanwire.result.Warning;
import org.spanwire.study.CheckedRequirement.Outcome;
import org.spanwire.study.CheckedRequirement.Quantity;

/**
 * Judges requirements that have studies of their own: the distance that people must keep, with the
 * uncertainty of that study as the error, and the yield, with its confidence interval.
 *
 * @param design what is judged
 * @param solver its tolerance is that of the judgement
 * @param threads number of threads; the results do not depend on it
 * @param samples installations drawn for a yield
 */
record StudyJudge(Design design, Solver solver, int threads, int samples) {

  private static final long SEED = 1;

  static boolean judges(Requirement requirement) {
    return requirement instanceof Requirement.MaximumExposureDistance
        || requirement instanceof Requirement.MinimumYield;
  }

  CheckedRequirement check(Requirement requirement) {
    return requirement instanceof Requirement.MaximumExposureDistance exposure
        ? exposure(exposure)
        : yieldOf((Requirement.MinimumYield) requirement);
  }

  private CheckedRequirement exposure(Requirement.MaximumExposureDistance requirement) {
    ExposureRules rules = design.exposureRules().orElse(ExposureRules.STRICT);
    BandExposure band =
        new ExposureStudy(design, rules)
            .run(solver, List.of(requirement.scope().band()), threads)
            .get(0);
    // The row that reaches furthest with its uncertainty is the one that decides.
    KeepOut furthest =
        band.rows().stream()
            .map(BandExposure.Row::keepOut)
            .max(Comparator.comparingDouble(KeepOut::longest).thenComparing(KeepOut::exposure))
            .orElseThrow();
    return checked(
        requirement,
        Quantity.EXPOSURE_DISTANCE,
        requirement.maximumMetres(),
        new double[] {furthest.distance(), furthest.shortest(), furthest.longest()},
        OptionalDouble.of(furthest.frequencyHz()),
        String.format(
            Locale.ROOT,
            "%s, %s field, people on a floor %.3g m above ground at %.4f MHz",
            furthest.limit().name(),
            furthest.electricDecides() ? "electric" : "magnetic",
            furthest.floor(),
            furthest.frequencyHz() * 1e-6),
        band.warnings());
  }

  private CheckedRequirement yieldOf(Requirement.MinimumYield requirement) {
    YieldResult result =
        new YieldStudy(design, samples, SEED, YieldStudy.DEFAULT_ACCURACY).run(solver, threads);
    double undecided = result.outcomes().stream().mapToDouble(YieldResult.Outcome::undecided).sum();
    YieldResult.Share all = result.all();
    String cause =
        result.outcomes().stream()
            .min(Comparator.comparingDouble(outcome -> outcome.share().value()))
            .map(StudyJudge::weakest)
            .orElse("no other requirement is judged");
    return checked(
        requirement,
        Quantity.YIELD,
        requirement.minimum(),
        new double[] {
          all.value(), Math.max(0, all.low() - undecided), Math.min(1, all.high() + undecided)
        },
        OptionalDouble.empty(),
        cause,
        List.of());
  }

  private static String weakest(YieldResult.Outcome outcome) {
    String parameter =
        outcome.influences().stream()
            .max(Comparator.comparingDouble(YieldResult.Influence::varianceShare))
            .map(YieldResult.Influence::parameter)
            .orElse("none");
    return String.format(
        Locale.ROOT,
        "the requirement least often met, %s, is met by %.1f %% of the installations; what moves"
            + " it most is the spread of %s",
        where(outcome.requirement()),
        100 * outcome.share().value(),
        parameter);
  }

  private static String where(Requirement requirement) {
    if (requirement.scope() instanceof Requirement.InBand in) {
      return "on " + in.band().name();
    }
    return requirement.scope() instanceof Requirement.AtFrequency at
        ? String.format(Locale.ROOT, "at %.4f MHz", at.frequencyHz() * 1e-6)
        : "everywhere";
  }

  /**
   * With a value and its range.
   *
   * @param found value, smallest and largest value that the uncertainty allows
   */
  private CheckedRequirement checked(
      Requirement requirement,
      Quantity quantity,
      double limit,
      double[] found,
      OptionalDouble frequencyHz,
      String cause,
      List<Warning> warnings) {
    Outcome outcome = CheckedRequirement.judge(quantity, limit, found[1], found[2]);
    String doubt = outcome == Outcome.UNDECIDED ? "the limit lies within the uncertainty; " : "";
    return new CheckedRequirement(
        requirement,
        outcome,
        quantity,
        limit,
        found[0],
        found[1],
        found[2],
        frequencyHz,
        solver.options().tolerance(),
        outcome == Outcome.MET ? "" : doubt + cause,
        warnings);
  }
}
