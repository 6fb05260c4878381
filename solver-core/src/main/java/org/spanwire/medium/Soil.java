package org.spanwire.medium;

import java.util.Objects;
import org.apache.commons.math3.complex.Complex;
import org.spanwire.unit.PhysicalConstants;

/**
 * Homogeneous, non-magnetic soil filling z &lt; 0.
 *
 * @param name what the soil is called in outputs
 * @param relativePermittivity real relative permittivity, at least 1
 * @param conductivity conductivity in S/m, not negative
 * @param source where the two numbers come from
 */
public record Soil(String name, double relativePermittivity, double conductivity, String source)
    implements Ground {

  /** Checks the ranges. */
  public Soil {
    Objects.requireNonNull(name, "name");
    Objects.requireNonNull(source, "source");
    if (!(relativePermittivity >= 1) || Double.isInfinite(relativePermittivity)) {
      throw new IllegalArgumentException(
          "soil relative permittivity "
              + relativePermittivity
              + " must be a finite number of at least 1");
    }
    if (!(conductivity >= 0) || Double.isInfinite(conductivity)) {
      throw new IllegalArgumentException(
          "soil conductivity " + conductivity + " S/m must be a finite number of at least 0 S/m");
    }
  }

  /** Soil known by its two constants only. */
  public static Soil of(double relativePermittivity, double conductivity) {
    return new Soil(
        "permittivity " + relativePermittivity + ", conductivity " + conductivity + " S/m",
        relativePermittivity,
        conductivity,
        "given by the user");
  }

  /**
   * Complex relative permittivity ε_r − jσ/(ωε0), time convention exp(+jωt).
   *
   * @param frequencyHz frequency in hertz, positive
   */
  public Complex complexPermittivity(double frequencyHz) {
    return new Complex(
        relativePermittivity,
        -conductivity / (2 * Math.PI * frequencyHz * PhysicalConstants.ELECTRIC_CONSTANT));
  }
}
