package org.spanwire.study;

import java.util.List;
import java.util.OptionalDouble;
import org.spanwire.Solver;
import org.spanwire.design.Design;
import org.spanwire.design.DesignException;

/**
 * Makes a design good at its worst over bands and over a set of installations: a scan of the whole
 * range by coarse solutions, then from its best places local searches on polynomials through
 * solutions, whose error is stated, and at the end solutions of what they found. With several goals
 * that are not weighted the designs between which they trade off are searched for in the same way.
 *
 * <p>Where no goal or limit asks for the choke, the scan leaves out the outside of the feed line,
 * as a perfect choke would; the local searches do not.
 *
 * @param design with at least one band
 * @param vary ranges of parameters
 * @param choices parameters that take one of several values
 * @param over the installations that the worst case is taken over; a grid of one place for the
 *     design as it stands
 * @param goals what is wanted, at least one
 * @param limits what must be kept
 * @param seed of the local searches
 */
public record OptimizeStudy(
    Design design,
    List<ParameterSample.Range> vary,
    List<ParameterGrid.Axis> choices,
    ParameterGrid over,
    List<Weighted> goals,
    List<Limit> limits,
    long seed) {

  /**
   * A goal with its part in the cost.
   *
   * @param weight positive; empty if it is a goal of its own beside the others
   */
  public record Weighted(Goal goal, OptionalDouble weight) {}

  /** The worst value that a quantity may have. */
  public record Limit(Goal goal, double value) {}

  /** Takes copies and checks what can be checked without solving. */
  public OptimizeStudy {
    vary = List.copyOf(vary);
    choices = List.copyOf(choices);
    goals = List.copyOf(goals);
    limits = List.copyOf(limits);
    if (vary.isEmpty() && choices.isEmpty()) {
      throw new IllegalArgumentException("nothing to vary; name a parameter and its range");
    }
    if (goals.isEmpty()) {
      throw new IllegalArgumentException("no goal; name one such as worst-swr");
    }
    if (design.bands().isEmpty()) {
      throw new IllegalArgumentException(
          "names no bands; add bands: {plan: iaru-region-1, use: [40 m, 20 m]}");
    }
    if (design.feedLine().isEmpty() && new OptimizeCost(goals, limits).needsChoke()) {
      throw new IllegalArgumentException(
          "heat of the choke needs the line's route; add feed-line: {path: …, conductor: …}");
    }
  }

  /**
   * Runs the study on several threads; the result does not depend on their number.
   *
   * @throws DesignException if no place of the scan can be built
   */
  public OptimizeResult run(Solver solver, int threads) {
    return new OptimizeRun(this, solver, threads).result();
  }
}
