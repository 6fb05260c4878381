package org.spanwire;

/** The solver could not reach the wanted tolerance. */
public final class ToleranceException extends RuntimeException {

  private static final long serialVersionUID = 1L;

  private final double reached;

  /** With what was wanted and reached, in one line. */
  public ToleranceException(String message, double reached) {
    super(message);
    this.reached = reached;
  }

  /** The relative accuracy that was reached. */
  public double reached() {
    return reached;
  }
}
