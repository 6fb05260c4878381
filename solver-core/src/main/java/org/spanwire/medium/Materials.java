package org.spanwire.medium;

import java.util.List;
import java.util.Optional;

/** The conductor materials known by name. Conductivities at 20 °C. */
public final class Materials {

  /** No resistance at all. */
  public static final Material PERFECT =
      new Material("perfect", Double.POSITIVE_INFINITY, 1, "ideal conductor");

  /** Annealed copper of the International Annealed Copper Standard, 100 % IACS. */
  public static final Material COPPER =
      new Material("copper", 58.0e6, 1, "IEC 60028: 58 MS/m at 20 °C");

  /** Pure aluminium. */
  public static final Material ALUMINIUM =
      new Material("aluminium", 37.7e6, 1, "handbook value, 20 °C, from memory");

  /** Phosphor bronze. */
  public static final Material PHOSPHOR_BRONZE =
      new Material("phosphor-bronze", 10.0e6, 1, "handbook value, alloy dependent, from memory");

  /** Stainless steel, austenitic (non-magnetic). */
  public static final Material STAINLESS_STEEL =
      new Material("stainless-steel", 1.4e6, 1, "handbook value for austenitic steel, from memory");

  /** Carbon steel; its permeability varies widely with alloy and treatment. */
  public static final Material STEEL =
      new Material(
          "steel", 5.0e6, 200, "handbook order of magnitude, from memory; permeability uncertain");

  private static final List<Material> ALL =
      List.of(PERFECT, COPPER, ALUMINIUM, PHOSPHOR_BRONZE, STAINLESS_STEEL, STEEL);

  private Materials() {}

  /** All materials known by name. */
  public static List<Material> all() {
    return ALL;
  }

  /** The material of a name, if there is one. */
  public static Optional<Material> find(String name) {
    return ALL.stream().filter(m -> m.name().equals(name)).findFirst();
  }
}
