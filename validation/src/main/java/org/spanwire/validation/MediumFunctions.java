package org.spanwire.validation;

import org.apache.commons.math3.complex.Complex;
import org.spanwire.medium.Soil;
import org.spanwire.unit.PhysicalConstants;

/** Quantities of a conductor or a soil alone. */
final class MediumFunctions {

  private MediumFunctions() {}

  static Complex surfaceImpedance(ValidationCase c, Workbench bench) {
    return Parts.conductor(c.parameters()).surfaceImpedance(c.parameters().frequencyHz());
  }

  /** Depth in metres at which a plane wave has fallen to 1/e: 1/|Im(k √ε)|. */
  static Complex penetrationDepth(ValidationCase c, Workbench bench) {
    double frequency = c.parameters().frequencyHz();
    Complex index = ((Soil) Parts.ground(c.parameters())).complexPermittivity(frequency).sqrt();
    double attenuation = PhysicalConstants.wavenumber(frequency) * Math.abs(index.getImaginary());
    return new Complex(1 / attenuation);
  }
}
