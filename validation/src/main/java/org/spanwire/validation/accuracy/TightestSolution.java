package org.spanwire.validation.accuracy;

import org.spanwire.Antenna;
import org.spanwire.Solution;
import org.spanwire.Solver;
import org.spanwire.SolverOptions;
import org.spanwire.ToleranceException;

/** The solution with the smallest stated error that the solver reaches. */
final class TightestSolution {

  private TightestSolution() {}

  /**
   * Solves at a tolerance or, if that is out of reach, at what was reached.
   *
   * @throws ToleranceException if nothing below 0.1 is reached
   */
  static Solution of(Antenna antenna, double frequencyHz, double tolerance) {
    try {
      return new Solver(new SolverOptions(tolerance)).solve(antenna, frequencyHz);
    } catch (ToleranceException e) {
      double next = 1.01 * e.reached();
      if (!(next > tolerance && next <= 0.1)) {
        throw e;
      }
      return of(antenna, frequencyHz, next);
    }
  }
}
