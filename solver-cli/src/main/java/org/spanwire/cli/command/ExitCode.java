package org.spanwire.cli.command;

/** Exit codes, on which pipelines depend. */
public final class ExitCode {

  /** Done. */
  public static final int DONE = 0;

  /** A requirement is not kept, or a result drifted from its baseline. */
  public static final int FAILED = 1;

  /** Bad input: usage, file or geometry. */
  public static final int BAD_INPUT = 2;

  /** The solver could not reach the tolerance. */
  public static final int TOLERANCE = 3;

  /** Internal error. */
  public static final int INTERNAL = 70;

  private ExitCode() {}
}
