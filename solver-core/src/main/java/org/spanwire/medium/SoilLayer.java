package org.spanwire.medium;

import java.util.Objects;
import org.apache.commons.math3.complex.Complex;
import org.spanwire.unit.PhysicalConstants;

/**
 * A level layer that is known to be there and that the model, a homogeneous half-space, leaves out.
 *
 * @param place whether it lies on the soil or beneath it
 * @param metres thickness of what lies on the soil; depth at which what lies beneath it begins
 * @param relativePermittivity real relative permittivity, at least 1
 * @param conductivity conductivity in S/m, not negative
 */
public record SoilLayer(
    Place place, double metres, double relativePermittivity, double conductivity) {

  /**
   * Relative permittivity of dry snow of 300 kg/m³, 1 + 1.7 ρ + 0.7 ρ² with ρ in g/cm³ (Tiuri,
   * Sihvola, Nyfors and Hallikainen, IEEE J. Oceanic Eng. 9, 377, 1984, from memory).
   */
  public static final double DRY_SNOW_PERMITTIVITY = 1.573;

  /** Where a layer lies. */
  public enum Place {
    /** On the soil's surface, as snow does; z = 0 stays the soil's surface. */
    ON_THE_SOIL,
    /** Under the soil, which is only as deep as the layer's distance. */
    BENEATH_THE_SOIL
  }

  /** Checks the ranges. */
  public SoilLayer {
    Objects.requireNonNull(place, "place");
    if (!(metres > 0) || Double.isInfinite(metres)) {
      throw new IllegalArgumentException(
          "layer thickness or depth " + metres + " m must be positive and finite");
    }
    Soil.checkConstants(relativePermittivity, conductivity);
  }

  /** Dry snow of a thickness in metres, without loss. */
  public static SoilLayer snow(double metres) {
    return new SoilLayer(Place.ON_THE_SOIL, metres, DRY_SNOW_PERMITTIVITY, 0);
  }

  /**
   * Reflection coefficient at z = 0 of a plane wave that comes straight down on a soil with this
   * layer: the wave impedances of the layers carried up from below (Wait, Electromagnetic Waves in
   * Stratified Media, 1962, chapter 2).
   */
  public Complex reflection(Soil soil, double frequencyHz) {
    Complex below = soil.complexPermittivity(frequencyHz);
    Complex own = Soil.complexPermittivity(relativePermittivity, conductivity, frequencyHz);
    double k = PhysicalConstants.wavenumber(frequencyHz);
    if (place == Place.BENEATH_THE_SOIL) {
      return reflection(carried(below, impedance(own), k * metres));
    }
    double phase = 2 * k * metres;
    return reflection(carried(own, impedance(below), k * metres))
        .multiply(new Complex(Math.cos(phase), Math.sin(phase)));
  }

  /** Reflection coefficient of the soil alone for the same wave. */
  public static Complex bareReflection(Soil soil, double frequencyHz) {
    return reflection(impedance(soil.complexPermittivity(frequencyHz)));
  }

  /** Wave impedance over that of free space. */
  private static Complex impedance(Complex permittivity) {
    return permittivity.sqrt().reciprocal();
  }

  private static Complex reflection(Complex impedance) {
    return impedance.subtract(1).divide(impedance.add(1));
  }

  /** Impedance on top of a layer of a thickness kd over an impedance. */
  private static Complex carried(Complex permittivity, Complex under, double thickness) {
    Complex own = impedance(permittivity);
    Complex tangent = permittivity.sqrt().multiply(new Complex(0, thickness)).tanh();
    return own.multiply(under.add(own.multiply(tangent))).divide(own.add(under.multiply(tangent)));
  }
}
