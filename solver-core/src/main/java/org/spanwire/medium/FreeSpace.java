package org.spanwire.medium;

/** Free space in every direction. */
public enum FreeSpace implements Ground {
  /** The only value. */
  INSTANCE
}
