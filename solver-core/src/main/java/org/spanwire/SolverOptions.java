package org.spanwire;

/**
 * How a solver works.
 *
 * @param tolerance wanted relative accuracy of port impedances, 1e-7 to 0.1
 */
public record SolverOptions(double tolerance) {

  /** The tolerance used unless another is asked for: 0.1 %. */
  public static final double DEFAULT_TOLERANCE = 1e-3;

  /** Checks the ranges. */
  public SolverOptions {
    if (!(tolerance >= 1e-7 && tolerance <= 0.1)) {
      throw new IllegalArgumentException(
          "tolerance " + tolerance + " must lie between 1e-7 and 0.1");
    }
  }

  /** Default options. */
  public static SolverOptions defaults() {
    return new SolverOptions(DEFAULT_TOLERANCE);
  }

  /** The same options with another tolerance. */
  public SolverOptions withTolerance(double relative) {
    return new SolverOptions(relative);
  }
}
