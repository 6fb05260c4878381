package org.spanwire.medium;

import java.util.Objects;
import java.util.Optional;
import java.util.OptionalDouble;
import org.apache.commons.math3.complex.Complex;

/**
 * Round wire: a metal, perhaps clad with another, a radius, and perhaps an insulating coat. A
 * stranded wire is modelled by the round wire of {@link Stranding}.
 *
 * @param name name used in outputs
 * @param radius radius of all metal in metres, cladding included, positive
 * @param material the metal, of the core if there is a cladding
 * @param cladding the layer of another metal, if any; thinner than the radius
 * @param insulation the coat, if any
 */
public record Conductor(
    String name,
    double radius,
    Material material,
    Optional<Cladding> cladding,
    Optional<Insulation> insulation) {

  /** Checks the ranges. */
  public Conductor {
    Objects.requireNonNull(name, "name");
    Objects.requireNonNull(material, "material");
    Objects.requireNonNull(cladding, "cladding");
    Objects.requireNonNull(insulation, "insulation");
    if (!(radius > 0) || Double.isInfinite(radius)) {
      throw new IllegalArgumentException(
          "conductor radius " + radius + " m must be positive and finite");
    }
    if (cladding.isPresent() && !(cladding.get().thickness() < radius)) {
      throw new IllegalArgumentException(
          "cladding thickness "
              + cladding.get().thickness()
              + " m must be less than the conductor radius "
              + radius
              + " m");
    }
  }

  /** Wire of one metal. */
  public Conductor(String name, double radius, Material material, Optional<Insulation> insulation) {
    this(name, radius, material, Optional.empty(), insulation);
  }

  /** Bare round wire of a material. */
  public static Conductor bare(Material material, double radius) {
    Objects.requireNonNull(material, "material");
    return new Conductor(material.name(), radius, material, Optional.empty());
  }

  /** Bare, perfectly conducting round wire of a radius in metres. */
  public static Conductor perfect(double radius) {
    return bare(Materials.PERFECT, radius);
  }

  /** Bare round wire that stands for strands of a material. */
  public static Conductor stranded(Material material, Stranding strands) {
    return bare(strands.equivalent(material), strands.equivalentRadius());
  }

  /** This wire with a cladding of another metal inside the same radius. */
  public Conductor withCladding(Cladding layer) {
    return new Conductor(name, radius, material, Optional.of(layer), insulation);
  }

  /** This wire with an insulating coat. */
  public Conductor withInsulation(Insulation coat) {
    return new Conductor(name, radius, material, cladding, Optional.of(coat));
  }

  /** Radius in metres of everything: metal and coat. */
  public double outerRadius() {
    return radius + insulation.map(Insulation::thickness).orElse(0.0);
  }

  /**
   * Kilograms per metre of the metal; empty if the density of any of it is not known. Strands count
   * as straight: their lay adds a few percent (common practice, no source).
   */
  public OptionalDouble metalMassPerMetre() {
    double core = radius - cladding.map(Cladding::thickness).orElse(0.0);
    OptionalDouble mass = tube(0, core, material.density());
    return cladding.isPresent()
        ? sum(mass, tube(core, radius, cladding.get().material().density()))
        : mass;
  }

  /** Kilograms per metre with the coat; empty if the density of any of it is not known. */
  public OptionalDouble massPerMetre() {
    OptionalDouble metal = metalMassPerMetre();
    return insulation.isPresent()
        ? sum(metal, tube(radius, outerRadius(), insulation.get().density()))
        : metal;
  }

  private static OptionalDouble tube(double inner, double outer, OptionalDouble density) {
    return density.isEmpty()
        ? density
        : OptionalDouble.of(Math.PI * (outer - inner) * (outer + inner) * density.getAsDouble());
  }

  private static OptionalDouble sum(OptionalDouble one, OptionalDouble other) {
    return one.isEmpty() || other.isEmpty()
        ? OptionalDouble.empty()
        : OptionalDouble.of(one.getAsDouble() + other.getAsDouble());
  }

  /**
   * Internal impedance per length of the round wire. For one metal z = γ I0(γa) / (2πaσ I1(γa))
   * with γ = √(jωμσ); with a cladding the exact solution in two layers (Schelkunoff 1934; Ramo,
   * Whinnery and Van Duzer 1994, section 3.16).
   *
   * @param frequencyHz frequency in hertz, positive
   * @return ohms per metre; zero for a perfect conductor
   */
  public Complex surfaceImpedance(double frequencyHz) {
    double core = radius - cladding.map(Cladding::thickness).orElse(0.0);
    Complex field = RoundWireImpedance.solid(material, core, frequencyHz);
    if (cladding.isPresent()) {
      field = RoundWireImpedance.clad(field, cladding.get().material(), core, radius, frequencyHz);
    }
    return field.divide(2 * Math.PI * radius);
  }
}
