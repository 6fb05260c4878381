package org.spanwire.medium;

import java.util.Objects;
import java.util.Optional;

/**
 * Round wire: a material, a radius and perhaps an insulating coat.
 *
 * @param name name used in outputs
 * @param radius radius of the metal in metres, positive
 * @param material the metal
 * @param insulation the coat, if any
 */
public record Conductor(String name, double radius, Material material, Optional<Insulation> insulation) {

  /** Checks the ranges. */
  public Conductor {
    Objects.requireNonNull(name, "name");
    Objects.requireNonNull(material, "material");
    Objects.requireNonNull(insulation, "insulation");
    if (!(radius > 0) || Double.isInfinite(radius)) {
      throw new IllegalArgumentException("conductor radius " + radius + " m must be positive and finite");
    }
  }

  /** Bare round wire of a material. */
  public static Conductor bare(Material material, double radius) {
    return new Conductor(material.name(), radius, material, Optional.empty());
  }

  /** Bare, perfectly conducting round wire of a radius in metres. */
  public static Conductor perfect(double radius) {
    return bare(Materials.PERFECT, radius);
  }
}
