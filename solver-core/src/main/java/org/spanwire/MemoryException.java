package org.spanwire;

/**
 * An antenna whose solution would not fit into the memory allowed by {@link
 * SolverOptions#memoryBytes}. Thrown before anything of that size is allocated.
 */
public final class MemoryException extends RuntimeException {

  private static final long serialVersionUID = 1L;

  private final int unknowns;
  private final long neededBytes;
  private final long allowedBytes;

  MemoryException(int unknowns, long neededBytes, long allowedBytes) {
    super(
        "the antenna needs "
            + unknowns
            + " unknowns and some "
            + megabytes(neededBytes)
            + " MB of memory, limit "
            + megabytes(allowedBytes)
            + " MB; give Java more memory, simplify the antenna, lower the frequency or ask for a"
            + " larger tolerance");
    this.unknowns = unknowns;
    this.neededBytes = neededBytes;
    this.allowedBytes = allowedBytes;
  }

  private static long megabytes(long bytes) {
    return (bytes + (1 << 20) - 1) >> 20;
  }

  /** Number of unknowns. */
  public int unknowns() {
    return unknowns;
  }

  /** Memory in bytes that the solution needs. */
  public long neededBytes() {
    return neededBytes;
  }

  /** Memory in bytes that it may take. */
  public long allowedBytes() {
    return allowedBytes;
  }
}
