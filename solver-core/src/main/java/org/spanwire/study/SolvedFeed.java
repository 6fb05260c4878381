package org.spanwire.study;

import org.apache.commons.math3.complex.Complex;
import org.spanwire.Solution;

/**
 * What a feed sees, with all feeds driven as stated.
 *
 * @param name name of the feed
 * @param impedance input impedance in ohms, {@link Complex#INF} where no current flows
 * @param errorOhm estimated error of its magnitude in ohms
 * @param gapMetres gap width that was used
 */
public record SolvedFeed(String name, Complex impedance, double errorOhm, double gapMetres) {

  static SolvedFeed of(Solution solution, String name) {
    return new SolvedFeed(
        name, solution.impedance(name), solution.impedanceErrorOhm(name), solution.gap(name));
  }

  /** Estimated error over the magnitude of the impedance; 0 for an open circuit. */
  public double relativeError() {
    return impedance.isInfinite() ? 0 : errorOhm / impedance.abs();
  }
}
