package org.spanwire;

import java.util.Objects;

/** Solves antennas by a Galerkin method of moments. Immutable and safe for use by several threads. */
public final class Solver {

  private final SolverOptions options;

  /** A solver with default options. */
  public Solver() {
    this(SolverOptions.defaults());
  }

  /** A solver with options. */
  public Solver(SolverOptions options) {
    this.options = Objects.requireNonNull(options, "options");
  }

  /** The options of this solver. */
  public SolverOptions options() {
    return options;
  }

  /**
   * Checks the geometry of an antenna at a frequency in hertz as {@link #solve} would, without solving.
   *
   * @throws org.spanwire.geometry.GeometryException if the antenna cannot be modelled as given
   */
  public void check(Antenna antenna, double frequencyHz) {
    throw new UnsupportedOperationException();
  }

  /**
   * Solves an antenna at one frequency.
   *
   * @param antenna at least one wire and one feed
   * @param frequencyHz frequency in hertz, positive
   * @throws org.spanwire.geometry.GeometryException if the antenna cannot be modelled as given
   * @throws ToleranceException if the wanted tolerance could not be reached
   */
  public Solution solve(Antenna antenna, double frequencyHz) {
    throw new UnsupportedOperationException();
  }
}
