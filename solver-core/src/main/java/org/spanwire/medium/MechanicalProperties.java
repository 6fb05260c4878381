package org.spanwire.medium;

import java.util.Objects;
import java.util.OptionalDouble;

/**
 * What a wire weighs and bears, coat and all.
 *
 * @param massPerMetre kilograms per metre, positive
 * @param breakingStrength tension in newtons at which it breaks, if known
 * @param stiffness elastic modulus times cross section of the metal in newtons, if known
 * @param expansion relative change of length per kelvin, if known
 */
public record MechanicalProperties(
    double massPerMetre,
    OptionalDouble breakingStrength,
    OptionalDouble stiffness,
    OptionalDouble expansion) {

  /** Checks the ranges. */
  public MechanicalProperties {
    if (!(massPerMetre > 0) || Double.isInfinite(massPerMetre)) {
      throw new IllegalArgumentException(
          "mass per length " + massPerMetre + " kg/m must be positive and finite");
    }
    requirePositive("breaking strength", breakingStrength, "N");
    requirePositive("stiffness", stiffness, "N");
    Objects.requireNonNull(expansion, "expansion");
  }

  /** A wire of which only the mass is known, in kilograms per metre. */
  public static MechanicalProperties ofMass(double massPerMetre) {
    OptionalDouble unknown = OptionalDouble.empty();
    return new MechanicalProperties(massPerMetre, unknown, unknown, unknown);
  }

  private static void requirePositive(String quantity, OptionalDouble value, String unit) {
    if (value.isPresent() && !(value.getAsDouble() > 0)) {
      throw new IllegalArgumentException(
          quantity + " " + value.getAsDouble() + " " + unit + " must be positive");
    }
  }
}
