package org.spanwire.design;

import java.util.Optional;
import org.spanwire.medium.Cladding;
import org.spanwire.medium.Conductor;
import org.spanwire.medium.Insulation;
import org.spanwire.medium.Material;
import org.spanwire.medium.Materials;
import org.spanwire.medium.Stranding;
import org.spanwire.unit.Dimension;

/** Reads what a wire is made of. */
final class ConductorReader {

  private final Evaluator evaluator;

  ConductorReader(Evaluator evaluator) {
    this.evaluator = evaluator;
  }

  Conductor conductor(String name, Item item) {
    Fields fields = item.fields("material", "diameter", "strands", "cladding", "insulation");
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
    Fields fields = item.fields("conductivity", "permeability");
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
                "given by the user"));
  }

  private Insulation insulation(Item item) {
    Fields fields = item.fields("thickness", "permittivity", "loss-tangent");
    double thickness = evaluator.positive(fields.required("thickness", "0.6 mm"), Dimension.LENGTH);
    double permittivity =
        evaluator.positive(fields.required("permittivity", "2.3"), Dimension.NUMBER);
    double lossTangent =
        fields
            .optional("loss-tangent")
            .map(t -> evaluator.notNegative(t, Dimension.NUMBER))
            .orElse(0.0);
    return item.checked(() -> new Insulation(thickness, permittivity, lossTangent));
  }
}
