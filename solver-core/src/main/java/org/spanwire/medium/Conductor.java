package org.spanwire.medium;

import java.util.Objects;
import java.util.Optional;
import org.apache.commons.math3.complex.Complex;
import org.spanwire.internal.math.ModifiedBesselRatio;
import org.spanwire.unit.PhysicalConstants;

/**
 * Round wire: a material, a radius and perhaps an insulating coat.
 *
 * @param name name used in outputs
 * @param radius radius of the metal in metres, positive
 * @param material the metal
 * @param insulation the coat, if any
 */
public record Conductor(
    String name, double radius, Material material, Optional<Insulation> insulation) {

  /** Checks the ranges. */
  public Conductor {
    Objects.requireNonNull(name, "name");
    Objects.requireNonNull(material, "material");
    Objects.requireNonNull(insulation, "insulation");
    if (!(radius > 0) || Double.isInfinite(radius)) {
      throw new IllegalArgumentException(
          "conductor radius " + radius + " m must be positive and finite");
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

  /**
   * Internal impedance per length of the round wire, z = γ I0(γa) / (2πaσ I1(γa)) with γ = √(jωμσ)
   * (Schelkunoff 1934; Ramo, Whinnery and Van Duzer 1994, section 3.16).
   *
   * @param frequencyHz frequency in hertz, positive
   * @return ohms per metre; zero for a perfect conductor
   */
  public Complex surfaceImpedance(double frequencyHz) {
    if (material.isPerfect()) {
      return Complex.ZERO;
    }
    double omega = 2 * Math.PI * frequencyHz;
    double permeability = PhysicalConstants.MAGNETIC_CONSTANT * material.relativePermeability();
    double half = Math.sqrt(0.5 * omega * permeability * material.conductivity());
    Complex gamma = new Complex(half, half);
    return ModifiedBesselRatio.zeroOverOne(gamma.multiply(radius))
        .multiply(gamma)
        .divide(2 * Math.PI * radius * material.conductivity());
  }
}
