package org.spanwire.medium;

import java.util.OptionalDouble;

/**
 * A dielectric coat around a conductor.
 *
 * @param thickness radial thickness in metres, positive
 * @param relativePermittivity real relative permittivity, at least 1
 * @param lossTangent loss tangent, not negative
 * @param density kilograms per cubic metre, positive, if known
 */
public record Insulation(
    double thickness, double relativePermittivity, double lossTangent, OptionalDouble density) {

  /** Checks the ranges. */
  public Insulation {
    if (!(thickness > 0) || Double.isInfinite(thickness)) {
      throw new IllegalArgumentException(
          "insulation thickness " + thickness + " m must be positive");
    }
    if (!(relativePermittivity >= 1) || Double.isInfinite(relativePermittivity)) {
      throw new IllegalArgumentException(
          "insulation permittivity " + relativePermittivity + " must be at least 1");
    }
    if (!(lossTangent >= 0) || Double.isInfinite(lossTangent)) {
      throw new IllegalArgumentException(
          "insulation loss tangent " + lossTangent + " must not be negative");
    }
    Material.checkDensity(density);
  }

  /** A coat of unknown density. */
  public Insulation(double thickness, double relativePermittivity, double lossTangent) {
    this(thickness, relativePermittivity, lossTangent, OptionalDouble.empty());
  }
}
