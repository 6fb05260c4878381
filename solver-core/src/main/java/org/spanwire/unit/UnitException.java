package org.spanwire.unit;

/**
 * A text that is no quantity, or quantities that do not fit together: what is wrong, what to do.
 */
public final class UnitException extends IllegalArgumentException {

  private static final long serialVersionUID = 1L;

  /**
   * Creates the exception.
   *
   * @param message one line
   */
  public UnitException(String message) {
    super(message);
  }
}
