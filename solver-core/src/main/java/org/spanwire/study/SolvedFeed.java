package org.spanwire.study;

import java.util.List;
import java.util.Optional;
import org.apache.commons.math3.complex.Complex;
import org.spanwire.Solution;
import org.spanwire.circuit.Mismatch;

/**
 * What a feed sees, with all feeds driven as stated.
 *
 * @param name name of the feed
 * @param impedance input impedance in ohms, {@link Complex#INF} where no current flows
 * @param errorOhm estimated error of its magnitude in ohms
 * @param gapMetres gap width that was used
 * @param planes what is seen at the feedpoint, at the transformer's input if there is one, and at
 *     the transmitter
 */
public record SolvedFeed(
    String name, Complex impedance, double errorOhm, double gapMetres, List<PlaneMismatch> planes) {

  /** Takes a copy. */
  public SolvedFeed {
    planes = List.copyOf(planes);
  }

  static SolvedFeed of(Solution solution, String name, List<PlaneMismatch> planes) {
    return new SolvedFeed(
        name,
        solution.impedance(name),
        solution.impedanceErrorOhm(name),
        solution.gap(name),
        planes);
  }

  /** Estimated error over the magnitude of the impedance; 0 for an open or a short circuit. */
  public double relativeError() {
    double magnitude = impedance.abs();
    return magnitude == 0 || Double.isInfinite(magnitude) ? 0 : errorOhm / magnitude;
  }

  /**
   * What is seen at a plane.
   *
   * @throws IllegalArgumentException if the chain has no such plane
   */
  public Mismatch at(Plane plane) {
    return find(plane)
        .orElseThrow(() -> new IllegalArgumentException("the chain has no plane " + plane.label()));
  }

  /** What is seen at a plane, if the chain has it. */
  public Optional<Mismatch> find(Plane plane) {
    return planes.stream()
        .filter(each -> each.plane() == plane)
        .map(PlaneMismatch::mismatch)
        .findFirst();
  }
}
