package org.spanwire.validation;

import org.apache.commons.math3.complex.Complex;

/** Quantities of a conductor alone. */
final class MediumFunctions {

  private MediumFunctions() {}

  static Complex surfaceImpedance(ValidationCase c, Workbench bench) {
    return Parts.conductor(c.parameters()).surfaceImpedance(c.parameters().frequencyHz());
  }

  /** Conductivity of a material in MS/m. */
  static Complex conductivity(ValidationCase c, Workbench bench) {
    return new Complex(1e-6 * Parts.conductor(c.parameters()).material().conductivity());
  }

  /** Mass of a length of the wire in g/m. */
  static Complex wireMass(ValidationCase c, Workbench bench) {
    return new Complex(1e3 * Parts.conductor(c.parameters()).massPerMetre().orElseThrow());
  }
}
