package org.spanwire.cli.command;

/** Input that cannot be used, apart from what is wrong inside a design file. */
public final class InputException extends RuntimeException {

  private static final long serialVersionUID = 1L;

  /**
   * Creates the exception.
   *
   * @param message one line: what is wrong, what was expected, what to do
   */
  InputException(String message) {
    super(message, null, false, false);
  }
}
