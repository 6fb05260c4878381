package org.spanwire;

/**
 * How a solver works.
 *
 * @param tolerance wanted relative accuracy of port impedances, 1e-7 to 0.1
 * @param memoryBytes memory in bytes that one solution may take, positive
 */
public record SolverOptions(double tolerance, long memoryBytes) {

  /** The tolerance used unless another is asked for: 0.1 %. */
  public static final double DEFAULT_TOLERANCE = 1e-3;

  /** Share of the memory that Java may have which a solution may take. */
  private static final double MEMORY_SHARE = 0.75;

  /** Checks the ranges. */
  public SolverOptions {
    if (!(tolerance >= 1e-7 && tolerance <= 0.1)) {
      throw new IllegalArgumentException(
          "tolerance " + tolerance + " must lie between 1e-7 and 0.1");
    }
    if (memoryBytes <= 0) {
      throw new IllegalArgumentException("memory " + memoryBytes + " bytes must be positive");
    }
  }

  /** Options with a tolerance, and three quarters of the memory that Java may have. */
  public SolverOptions(double tolerance) {
    this(tolerance, (long) (MEMORY_SHARE * Runtime.getRuntime().maxMemory()));
  }

  /** Default options. */
  public static SolverOptions defaults() {
    return new SolverOptions(DEFAULT_TOLERANCE);
  }

  /** The same options with another tolerance. */
  public SolverOptions withTolerance(double relative) {
    return new SolverOptions(relative, memoryBytes);
  }

  /** The same options with another limit of memory in bytes. */
  public SolverOptions withMemoryBytes(long bytes) {
    return new SolverOptions(tolerance, bytes);
  }
}
