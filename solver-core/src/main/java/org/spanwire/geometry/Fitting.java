package org.spanwire.geometry;

import java.util.Objects;
import java.util.OptionalDouble;

/**
 * A lumped impedance placed along a wire, acting over a gap of physical width.
 *
 * @param name unique name within an antenna
 * @param wire name of the wire
 * @param at where its centre lies
 * @param gap width in metres along the wire; empty for two wire diameters
 * @param impedance impedance against frequency
 */
public record Fitting(
    String name, String wire, Position at, OptionalDouble gap, LumpedImpedance impedance) {

  /** Checks the ranges. */
  public Fitting {
    Objects.requireNonNull(name, "name");
    Objects.requireNonNull(wire, "wire");
    Objects.requireNonNull(at, "at");
    Objects.requireNonNull(gap, "gap");
    Objects.requireNonNull(impedance, "impedance");
    if (gap.isPresent() && !(gap.getAsDouble() > 0)) {
      throw new IllegalArgumentException(
          "fitting '" + name + "': gap " + gap.getAsDouble() + " m must be positive");
    }
  }
}
