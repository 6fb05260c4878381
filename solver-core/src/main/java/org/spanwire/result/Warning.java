package org.spanwire.result;

import java.util.Objects;

/**
 * A named doubt about a result.
 *
 * @param name fixed name in kebab case, for programs
 * @param message one line for people: quantity, value with unit, limit, remedy
 */
public record Warning(String name, String message) {

  /** Refuses null. */
  public Warning {
    Objects.requireNonNull(name, "name");
    Objects.requireNonNull(message, "message");
  }
}
