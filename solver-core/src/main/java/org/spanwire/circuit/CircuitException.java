package org.spanwire.circuit;

/** A circuit question that has no answer: what was asked, why not, and what to do, in one line. */
public final class CircuitException extends RuntimeException {

  private static final long serialVersionUID = 1L;

  CircuitException(String message) {
    super(message, null, false, false);
  }
}
