package org.spanwire.validation.accuracy;

import java.util.List;
import java.util.Optional;
import org.apache.commons.math3.complex.Complex;
import org.spanwire.Solution;
import org.spanwire.Solver;
import org.spanwire.SolverOptions;
import org.spanwire.ToleranceException;

/**
 * One feed of one random structure at one tolerance, against the tightest run.
 *
 * @param structure the structure
 * @param feed name of the feed
 * @param tolerance tolerance asked for
 * @param unknowns number of unknowns
 * @param impedance impedance in ohms
 * @param reference impedance of the tightest run in ohms
 * @param statedOhm error that the solver states
 * @param referenceOhm error that the tightest run states
 */
record HonestyCase(
    RandomStructure structure,
    String feed,
    double tolerance,
    int unknowns,
    Complex impedance,
    Complex reference,
    double statedOhm,
    double referenceOhm) {

  /** The reference must be this much better than what it judges. */
  private static final double REFERENCE_SHARE = 0.3;

  static HonestyCase of(
      RandomStructure structure,
      String feed,
      double tolerance,
      Solution tested,
      Solution tightest) {
    return new HonestyCase(
        structure,
        feed,
        tolerance,
        tested.unknowns(),
        tested.impedance(feed),
        tightest.impedance(feed),
        tested.impedanceErrorOhm(feed),
        tightest.impedanceErrorOhm(feed));
  }

  /** The same feed solved anew against the reference at hand, if the tolerance is in reach. */
  Optional<HonestyCase> solvedAgain() {
    return Optional.ofNullable(solve(structure, tolerance))
        .map(
            tested ->
                new HonestyCase(
                    structure,
                    feed,
                    tolerance,
                    tested.unknowns(),
                    tested.impedance(feed),
                    reference,
                    tested.impedanceErrorOhm(feed),
                    referenceOhm));
  }

  /** The case of the same structure, feed and tolerance among others. */
  HonestyCase among(List<HonestyCase> others) {
    return others.stream()
        .filter(
            c ->
                c.structure.number() == structure.number()
                    && c.feed.equals(feed)
                    && c.tolerance == tolerance)
        .findFirst()
        .orElseThrow();
  }

  /** Solves at a tolerance or returns null where it is out of reach. */
  static Solution solve(RandomStructure structure, double tolerance) {
    try {
      return new Solver(new SolverOptions(tolerance))
          .solve(structure.antenna(), structure.frequencyHz());
    } catch (ToleranceException e) {
      return null;
    }
  }

  double trueOhm() {
    return impedance.subtract(reference).abs();
  }

  /** Whether the true error lies within the stated one. */
  boolean isHonest() {
    return trueOhm() <= statedOhm;
  }

  /** Whether the reference is good enough to judge. */
  boolean isJudged() {
    return referenceOhm <= REFERENCE_SHARE * statedOhm;
  }

  /** Stated error over true error. */
  double ratio() {
    return statedOhm / trueOhm();
  }
}
