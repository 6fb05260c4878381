package org.spanwire.medium;

/** What lies below the plane z = 0: nothing, a perfect conductor, or homogeneous soil. */
public sealed interface Ground permits FreeSpace, PerfectGround, Soil {

  /** No ground at all: the antenna stands in free space and z has no special meaning. */
  static Ground freeSpace() {
    return FreeSpace.INSTANCE;
  }

  /** A perfectly conducting plane at z = 0. */
  static Ground perfect() {
    return PerfectGround.INSTANCE;
  }
}
