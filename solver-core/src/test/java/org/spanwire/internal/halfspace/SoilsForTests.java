package org.spanwire.internal.halfspace;

import org.apache.commons.math3.complex.Complex;
import org.spanwire.unit.PhysicalConstants;

/** Complex permittivity of test soils. */
final class SoilsForTests {

  private SoilsForTests() {}

  static Complex at(double permittivity, double conductivity, double frequencyHz) {
    return new Complex(
        permittivity,
        -conductivity / (2 * Math.PI * frequencyHz * PhysicalConstants.ELECTRIC_CONSTANT));
  }
}
