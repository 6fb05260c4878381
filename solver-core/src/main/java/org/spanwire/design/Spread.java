package org.spanwire.design;

import org.spanwire.unit.Quantity;

/** A stated uncertainty of a parameter, in the parameter's own dimension. */
public sealed interface Spread {

  /**
   * Every value between the nominal one minus and plus the half-width is equally likely.
   *
   * @param halfWidth not negative
   */
  record Uniform(Quantity halfWidth) implements Spread {}

  /**
   * Normally distributed around the nominal value.
   *
   * @param sigma standard deviation, not negative
   */
  record Normal(Quantity sigma) implements Spread {}
}
