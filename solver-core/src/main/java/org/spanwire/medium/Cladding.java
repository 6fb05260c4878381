package org.spanwire.medium;

import java.util.Objects;

/**
 * A layer of another metal around the core of a wire, such as copper on steel.
 *
 * @param material the layer's metal
 * @param thickness radial thickness in metres, positive
 */
public record Cladding(Material material, double thickness) {

  /** Checks the ranges. */
  public Cladding {
    Objects.requireNonNull(material, "material");
    if (!(thickness > 0) || Double.isInfinite(thickness)) {
      throw new IllegalArgumentException(
          "cladding thickness " + thickness + " m must be positive and finite");
    }
  }
}
