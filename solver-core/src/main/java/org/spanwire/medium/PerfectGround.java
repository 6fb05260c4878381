package org.spanwire.medium;

/** A perfectly conducting plane at z = 0. */
public enum PerfectGround implements Ground {
  /** The only value. */
  INSTANCE
}
