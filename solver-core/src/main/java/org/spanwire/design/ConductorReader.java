package org.spanwire.design;

import java.util.Optional;
import java.util.OptionalDouble;
import org.spanwire.medium.Cladding;
import org.spanwire.medium.Conductor;
import org.spanwire.medium.Insulation;
import org.spanwire.medium.Material;
import org.spanwire.medium.Materials;
import org.spanwire.medium.MechanicalProperties;
import org.spanwire.medium.Stranding;
import org.spanwire.unit.Dimension;

/** Reads what a wire is made of. */
final class ConductorReader {

  private final Evaluator evaluator;

  ConductorReader(Evaluator evaluator) {
    this.evaluator = evaluator;
  }

  private static Fields fields(Item item) {
    return item.fields("material", "diameter", "strands", "cladding", "insulation", "mechanical");
  }

  Conductor conductor(String name, Item item) {
    Fields fields = fields(item);
    Material material = material(fields.required("material", "copper"));
    Optional<Cladding> cladding = fields.optional("cladding").map(this::cladding);
    Optional<Insulation> insulation = fields.optional("insulation").map(this::insulation);
    Optional<Item> strands = fields.optional("strands");
    if (strands.isEmpty()) {
      double diameter = evaluator.positive(fields.required("diameter", "2 mm"), Dimension.LENGTH);
      return item.checked(() -> new Conductor(name, diameter / 2, material, cladding, insulation));
    }
    fields.only("diameter", "strands");
    if (cladding.isPresent()) {
      throw strands
          .get()
          .fault(
              item.name()
                  + " has a cladding and strands; expected one of them, such as the clad wire of"
                  + " the same diameter");
    }
    Stranding stranding = strands(strands.get());
    return item.checked(
        () ->
            new Conductor(
                name, stranding.equivalentRadius(), stranding.equivalent(material), insulation));
  }

  /** What the wire weighs and bears: as stated, or by its densities if these are known. */
  Optional<MechanicalProperties> mechanical(Item item, Conductor conductor) {
    Fields fields = fields(item);
    OptionalDouble mass = conductor.massPerMetre();
    Optional<Item> stated = fields.optional("mechanical");
    if (stated.isPresent()) {
      double area = metalArea(fields);
      return Optional.of(item.checked(() -> mechanical(stated.get(), area, mass)));
    }
    return mass.isEmpty()
        ? Optional.empty()
        : Optional.of(item.checked(() -> MechanicalProperties.ofMass(mass.getAsDouble())));
  }

  private double metalArea(Fields conductor) {
    Optional<Stranding> strands = conductor.optional("strands").map(this::strands);
    double radius =
        strands
            .map(Stranding::strandRadius)
            .orElseGet(
                () ->
                    0.5
                        * evaluator.positive(
                            conductor.required("diameter", "2 mm"), Dimension.LENGTH));
    return strands.map(Stranding::count).orElse(1) * Math.PI * radius * radius;
  }

  private MechanicalProperties mechanical(Item item, double metalArea, OptionalDouble byDensity) {
    Fields fields =
        item.fields("mass-per-length", "breaking-strength", "elastic-modulus", "expansion");
    OptionalDouble stated = positive(fields, "mass-per-length", Dimension.MASS_PER_LENGTH, 1);
    OptionalDouble mass = stated.isPresent() ? stated : byDensity;
    return new MechanicalProperties(
        mass.orElseThrow(
            () ->
                item.fault(
                    item.name()
                        + " has no mass-per-length, and it does not follow from the densities; add"
                        + " mass-per-length: 28 g/m, or the density of metal and insulation")),
        positive(fields, "breaking-strength", Dimension.FORCE, 1),
        positive(fields, "elastic-modulus", Dimension.PRESSURE, metalArea),
        positive(fields, "expansion", Dimension.EXPANSION, 1));
  }

  private OptionalDouble positive(Fields fields, String key, Dimension dimension, double factor) {
    return fields
        .optional(key)
        .map(value -> OptionalDouble.of(factor * evaluator.positive(value, dimension)))
        .orElse(OptionalDouble.empty());
  }

  private Stranding strands(Item item) {
    Fields fields = item.fields("count", "diameter");
    Item count = fields.required("count", "7");
    double number = evaluator.positive(count, Dimension.NUMBER);
    if (number != Math.rint(number) || number > 100_000) {
      throw count.fault(count.name() + " is " + number + "; expected a whole number such as 7");
    }
    double diameter = evaluator.positive(fields.required("diameter", "0.5 mm"), Dimension.LENGTH);
    return item.checked(() -> new Stranding((int) number, diameter / 2));
  }

  private Cladding cladding(Item item) {
    Fields fields = item.fields("material", "thickness");
    Material material = material(fields.required("material", "copper"));
    double thickness = evaluator.positive(fields.required("thickness", "50 um"), Dimension.LENGTH);
    return item.checked(() -> new Cladding(material, thickness));
  }

  private Material material(Item item) {
    if (item.isText()) {
      return Materials.find(item.text())
          .orElseThrow(
              () ->
                  item.unknown("material", Materials.all().stream().map(Material::name).toList()));
    }
    Fields fields = item.fields("conductivity", "permeability", "density");
    double conductivity =
        evaluator.positive(fields.required("conductivity", "58 MS/m"), Dimension.CONDUCTIVITY);
    double permeability =
        fields
            .optional("permeability")
            .map(p -> evaluator.positive(p, Dimension.NUMBER))
            .orElse(1.0);
    return item.checked(
        () ->
            new Material(
                "conductivity " + conductivity + " S/m",
                conductivity,
                permeability,
                positive(fields, "density", Dimension.DENSITY, 1),
                "given by the user"));
  }

  private Insulation insulation(Item item) {
    Fields fields = item.fields("thickness", "permittivity", "loss-tangent", "density");
    double thickness = evaluator.positive(fields.required("thickness", "0.6 mm"), Dimension.LENGTH);
    double permittivity =
        evaluator.positive(fields.required("permittivity", "2.3"), Dimension.NUMBER);
    double lossTangent =
        fields
            .optional("loss-tangent")
            .map(t -> evaluator.notNegative(t, Dimension.NUMBER))
            .orElse(0.0);
    OptionalDouble density = positive(fields, "density", Dimension.DENSITY, 1);
    return item.checked(() -> new Insulation(thickness, permittivity, lossTangent, density));
  }
}
