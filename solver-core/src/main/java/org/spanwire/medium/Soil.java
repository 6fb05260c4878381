package org.spanwire.medium;

import java.util.List;
import java.util.Objects;
import java.util.Optional;
import org.apache.commons.math3.complex.Complex;
import org.spanwire.unit.PhysicalConstants;

/**
 * Homogeneous, non-magnetic soil filling z &lt; 0.
 *
 * @param name what the soil is called in outputs
 * @param relativePermittivity real relative permittivity, at least 1; with a table, that of its
 *     first row
 * @param conductivity conductivity in S/m, not negative; with a table, that of its first row
 * @param source where the numbers come from
 * @param table the constants against frequency, if they are not the same at all
 * @param layers what lies on the soil or beneath it and is left out: each gives a warning that
 *     tells its size
 */
public record Soil(
    String name,
    double relativePermittivity,
    double conductivity,
    String source,
    Optional<SoilTable> table,
    List<SoilLayer> layers)
    implements Ground {

  /** Checks the ranges. */
  public Soil {
    Objects.requireNonNull(name, "name");
    Objects.requireNonNull(source, "source");
    Objects.requireNonNull(table, "table");
    layers = List.copyOf(layers);
    checkConstants(relativePermittivity, conductivity);
  }

  /** Soil of the same constants at all frequencies, with nothing on it or beneath it. */
  public Soil(String name, double relativePermittivity, double conductivity, String source) {
    this(name, relativePermittivity, conductivity, source, Optional.empty(), List.of());
  }

  static void checkConstants(double relativePermittivity, double conductivity) {
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

  /** Soil whose constants depend on frequency. */
  public static Soil of(String name, SoilTable table, String source) {
    SoilTable.Row first = table.rows().get(0);
    return new Soil(
        name,
        first.relativePermittivity(),
        first.conductivity(),
        source,
        Optional.of(table),
        List.of());
  }

  /** The same soil with layers that are left out of the model, in place of those it has. */
  public Soil withLayers(List<SoilLayer> others) {
    return new Soil(name, relativePermittivity, conductivity, source, table, others);
  }

  /**
   * Complex relative permittivity ε_r − jσ/(ωε0), time convention exp(+jωt).
   *
   * @param frequencyHz frequency in hertz, positive
   * @throws IllegalArgumentException outside the table, if there is one
   */
  public Complex complexPermittivity(double frequencyHz) {
    if (table.isPresent()) {
      SoilTable.Row row = table.get().at(frequencyHz);
      return complexPermittivity(row.relativePermittivity(), row.conductivity(), frequencyHz);
    }
    return complexPermittivity(relativePermittivity, conductivity, frequencyHz);
  }

  static Complex complexPermittivity(
      double relativePermittivity, double conductivity, double frequencyHz) {
    return new Complex(
        relativePermittivity,
        -conductivity / (2 * Math.PI * frequencyHz * PhysicalConstants.ELECTRIC_CONSTANT));
  }
}
