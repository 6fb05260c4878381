package org.spanwire.circuit;

import java.util.Objects;

/**
 * A Touchstone file that cannot be used: where it is wrong, what was expected and what to do. The
 * message is one line, {@code file:line:column: text}, or {@code file: text} if no place in the
 * file is at fault.
 */
public final class TouchstoneException extends RuntimeException {

  private static final long serialVersionUID = 1L;

  private final String file;
  private final int line;
  private final int column;
  private final String problem;

  TouchstoneException(String file, int line, int column, String problem) {
    super(null, null, false, false);
    this.file = Objects.requireNonNull(file, "file");
    this.line = line;
    this.column = column;
    this.problem = Objects.requireNonNull(problem, "problem");
  }

  /** The file as it was named to the reader. */
  public String file() {
    return file;
  }

  /** Line, counted from 1; 0 if the file as a whole is at fault. */
  public int line() {
    return line;
  }

  /** Column, counted from 1; 0 if the file as a whole is at fault. */
  public int column() {
    return column;
  }

  /** What is wrong, without the place. */
  public String problem() {
    return problem;
  }

  /** The place and what is wrong, in one line. */
  @Override
  public String getMessage() {
    String place = line > 0 ? ":" + line + ":" + column : "";
    return (file + place + ": " + problem).replaceAll("\\p{Cntrl}", "?");
  }
}
