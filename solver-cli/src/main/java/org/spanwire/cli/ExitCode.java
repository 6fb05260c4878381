package org.spanwire.cli;

/** Exit codes, on which pipelines depend. */
final class ExitCode {

  /** Done. */
  static final int DONE = 0;

  /** Bad input: usage, file or geometry. */
  static final int BAD_INPUT = 2;

  /** The solver could not reach the tolerance. */
  static final int TOLERANCE = 3;

  /** Internal error. */
  static final int INTERNAL = 70;

  private ExitCode() {}
}
