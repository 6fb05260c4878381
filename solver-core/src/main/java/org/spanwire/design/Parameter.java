package org.spanwire.design;

import java.util.Objects;
import java.util.Optional;
import org.spanwire.unit.Quantity;

/**
 * A named quantity of a design.
 *
 * @param name letters, digits and underscores
 * @param value nominal value
 * @param spread its uncertainty, if stated; studies look no further than the limits
 * @param limits the values it may take, if stated; the nominal value keeps them
 */
public record Parameter(
    String name, Quantity value, Optional<Spread> spread, Optional<Limits> limits) {

  /** Refuses null. */
  public Parameter {
    Objects.requireNonNull(name, "name");
    Objects.requireNonNull(value, "value");
    Objects.requireNonNull(spread, "spread");
    Objects.requireNonNull(limits, "limits");
  }

  /** What the limits allow that is nearest to a value, both in SI units. */
  public double nearestAllowed(double value) {
    return limits
        .map(l -> Math.max(l.low().value(), Math.min(l.high().value(), value)))
        .orElse(value);
  }

  /**
   * The smallest and the largest value of a parameter, both allowed.
   *
   * @param low smallest value
   * @param high largest value, greater than the smallest
   */
  public record Limits(Quantity low, Quantity high) {}
}
