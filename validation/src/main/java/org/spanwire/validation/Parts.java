package org.spanwire.validation;

import java.util.Set;
import org.spanwire.medium.Conductor;
import org.spanwire.medium.Ground;
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
          "frequencyMHz",
          "ground",
          "permittivity",
          "soilConductivity");

  private Parts() {}

  /**
   * The wire: its radius in wavelengths or its diameter in millimetres; perfect unless a material
   * is named.
   */
  static Conductor conductor(Parameters p) {
    return conductor(p, radius(p));
  }

  static Conductor conductor(Parameters p, double radius) {
    return Conductor.bare(material(p), radius);
  }

  static Conductor secondConductor(Parameters p) {
    return conductor(p, p.has("secondRadius") ? p.metres("secondRadius") : radius(p));
  }

  private static double radius(Parameters p) {
    return p.has("diameterMillimetres")
        ? p.number("diameterMillimetres") / 2000
        : p.metres("radius");
  }

  private static Material material(Parameters p) {
    String name = p.text("material", Materials.PERFECT.name());
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
