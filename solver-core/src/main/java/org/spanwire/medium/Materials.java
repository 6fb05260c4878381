package org.spanwire.medium;

import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;

/** The conductor materials known by name. Conductivities and densities at 20 °C. */
public final class Materials {

  /** No resistance at all. */
  public static final Material PERFECT =
      new Material("perfect", Double.POSITIVE_INFINITY, 1, "ideal conductor");

  /** Annealed copper of the International Annealed Copper Standard, 100 % IACS. */
  public static final Material COPPER =
      known(
          "copper",
          58.0e6,
          1,
          8960,
          "IEC 60028: 58 MS/m at 20 °C; density of the CRC Handbook of Chemistry and Physics, from memory");

  /** Pure aluminium. */
  public static final Material ALUMINIUM =
      known(
          "aluminium",
          37.7e6,
          1,
          2700,
          "handbook value, 20 °C, from memory; density of the CRC Handbook of Chemistry and Physics, from memory");

  /** Phosphor bronze. */
  public static final Material PHOSPHOR_BRONZE =
      known(
          "phosphor-bronze",
          10.0e6,
          1,
          8860,
          "handbook values, alloy dependent; density of UNS C51000; from memory");

  /** Stainless steel, austenitic (non-magnetic). */
  public static final Material STAINLESS_STEEL =
      known(
          "stainless-steel",
          1.4e6,
          1,
          7900,
          "handbook value for austenitic steel; density of EN 10088-1, 1.4301; from memory");

  /** Carbon steel; its permeability varies widely with alloy and treatment. */
  public static final Material STEEL =
      known(
          "steel",
          5.0e6,
          200,
          7850,
          "handbook order of magnitude, permeability uncertain; density of EN 1993-1-2; from memory");

  private static final List<Material> ALL =
      List.of(PERFECT, COPPER, ALUMINIUM, PHOSPHOR_BRONZE, STAINLESS_STEEL, STEEL);

  private Materials() {}

  private static Material known(
      String name, double conductivity, double permeability, double density, String source) {
    return new Material(name, conductivity, permeability, OptionalDouble.of(density), source);
  }

  /** All materials known by name. */
  public static List<Material> all() {
    return ALL;
  }

  /** The material of a name, if there is one. */
  public static Optional<Material> find(String name) {
    return ALL.stream().filter(m -> m.name().equals(name)).findFirst();
  }
}
