package org.spanwire.validation;

import java.util.Set;
import org.spanwire.medium.Cladding;
import org.spanwire.medium.Conductor;
import org.spanwire.medium.Ground;
import org.spanwire.medium.Insulation;
import org.spanwire.medium.Material;
import org.spanwire.medium.Materials;
import org.spanwire.medium.Soil;

/** Conductors, gaps and grounds that every structure takes from the same parameters. */
final class Parts {

  /** The names of the parameters read here, and of the frequency. */
  static final Set<String> PARAMETER_NAMES =
      Set.of(
          "radius",
          "diameterMillimetres",
          "material",
          "materialConductivity",
          "materialPermeability",
          "claddingMaterial",
          "claddingMillimetres",
          "insulationMillimetres",
          "insulationPermittivity",
          "frequencyMHz",
          "ground",
          "permittivity",
          "soilConductivity");

  private Parts() {}

  /**
   * The wire: the radius of its metal in wavelengths or the diameter in millimetres; perfect unless
   * a material is named; clad, and coated without loss, where a thickness in millimetres is given.
   */
  static Conductor conductor(Parameters p) {
    return conductor(p, radius(p));
  }

  static Conductor conductor(Parameters p, double radius) {
    Conductor wire = Conductor.bare(metal(p), radius);
    if (p.has("claddingMillimetres")) {
      Material metal = material(p.text("claddingMaterial", Materials.COPPER.name()));
      wire = wire.withCladding(new Cladding(metal, p.number("claddingMillimetres") / 1000));
    }
    if (p.has("insulationMillimetres")) {
      double thickness = p.number("insulationMillimetres") / 1000;
      wire = wire.withInsulation(new Insulation(thickness, p.number("insulationPermittivity"), 0));
    }
    return wire;
  }

  static Conductor secondConductor(Parameters p) {
    return conductor(p, p.has("secondRadius") ? p.metres("secondRadius") : radius(p));
  }

  private static double radius(Parameters p) {
    return p.has("diameterMillimetres")
        ? p.number("diameterMillimetres") / 2000
        : p.metres("radius");
  }

  /** A material by name, or by conductivity in S/m and relative permeability. */
  private static Material metal(Parameters p) {
    return p.has("materialConductivity")
        ? new Material(
            "metal",
            p.number("materialConductivity"),
            p.number("materialPermeability"),
            "given by the case")
        : material(p.text("material", Materials.PERFECT.name()));
  }

  private static Material material(String name) {
    return Materials.find(name)
        .orElseThrow(() -> new IllegalArgumentException("no material is called '" + name + "'"));
  }

  /** Width in metres of the feed gap: two radii, as in the reference solutions. */
  static double gap(Conductor conductor) {
    return 2 * conductor.radius();
  }

  static Ground ground(Parameters p) {
    String name = p.text("ground", "free-space");
    return switch (name) {
      case "free-space" -> Ground.freeSpace();
      case "perfect" -> Ground.perfect();
      case "soil" -> Soil.of(p.number("permittivity"), p.number("soilConductivity"));
      default -> throw new IllegalArgumentException("no ground is called '" + name + "'");
    };
  }
}
