package org.spanwire.medium;

import java.util.List;
import java.util.Optional;

/**
 * Soils of Recommendation ITU-R P.527-3 (1992), figure 1, which at 0.1–30 MHz have constants that
 * do not depend on frequency to the accuracy of the curves.
 */
public final class Soils {

  private static final String P527 =
      "ITU-R P.527-3 (1992) figure 1, 20 °C, read to curve accuracy, from memory";

  private static final List<Soil> ALL =
      List.of(
          new Soil("sea-water", 70, 5, P527),
          new Soil("sea-water-low-salinity", 80, 1, P527),
          new Soil("fresh-water", 80, 3e-3, P527),
          new Soil("wet-ground", 30, 1e-2, P527),
          new Soil("medium-dry", 15, 1e-3, P527),
          new Soil("dry", 7, 3e-4, "ITU-R P.368 curve family, from memory"),
          new Soil("very-dry", 3, 1e-4, P527),
          new Soil(
              "ice",
              3,
              3e-5,
              "ITU-R P.527-3 (1992) figure 1, fresh-water ice at −1 °C, from memory"));

  private Soils() {}

  /** All soils known by name. */
  public static List<Soil> all() {
    return ALL;
  }

  /** The soil of a name, if there is one. */
  public static Optional<Soil> find(String name) {
    return ALL.stream().filter(s -> s.name().equals(name)).findFirst();
  }
}
