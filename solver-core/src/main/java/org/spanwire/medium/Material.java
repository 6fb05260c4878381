package org.spanwire.medium;

import java.util.Objects;
import java.util.OptionalDouble;

/**
 * What a conductor is made of.
 *
 * @param name name used in outputs
 * @param conductivity conductivity in S/m, positive; infinite for a perfect conductor
 * @param relativePermeability relative permeability, at least 1 as a rule, positive in any case
 * @param density kilograms per cubic metre, positive, if known
 * @param source where the numbers come from
 */
public record Material(
    String name,
    double conductivity,
    double relativePermeability,
    OptionalDouble density,
    String source) {

  /** Checks the ranges. */
  public Material {
    Objects.requireNonNull(name, "name");
    Objects.requireNonNull(source, "source");
    if (!(conductivity > 0)) {
      throw new IllegalArgumentException("conductivity " + conductivity + " S/m must be positive");
    }
    if (!(relativePermeability > 0) || Double.isInfinite(relativePermeability)) {
      throw new IllegalArgumentException(
          "relative permeability " + relativePermeability + " must be positive and finite");
    }
    checkDensity(density);
  }

  /** A material of unknown density. */
  public Material(String name, double conductivity, double relativePermeability, String source) {
    this(name, conductivity, relativePermeability, OptionalDouble.empty(), source);
  }

  static void checkDensity(OptionalDouble density) {
    double value = density.orElse(1);
    if (!(value > 0) || Double.isInfinite(value)) {
      throw new IllegalArgumentException("density " + value + " kg/m3 must be positive and finite");
    }
  }

  /** True if the material has no resistance at all. */
  public boolean isPerfect() {
    return Double.isInfinite(conductivity);
  }
}
