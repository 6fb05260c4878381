package org.spanwire.medium;

import java.util.Objects;

/**
 * What a conductor is made of.
 *
 * @param name name used in outputs
 * @param conductivity conductivity in S/m, positive; infinite for a perfect conductor
 * @param relativePermeability relative permeability, at least 1 as a rule, positive in any case
 * @param source where the numbers come from
 */
public record Material(
    String name, double conductivity, double relativePermeability, String source) {

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
  }

  /** True if the material has no resistance at all. */
  public boolean isPerfect() {
    return Double.isInfinite(conductivity);
  }
}
