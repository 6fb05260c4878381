package org.spanwire.internal.field;

import org.apache.commons.math3.complex.Complex;
import org.spanwire.internal.basis.CurrentExpansion;
import org.spanwire.unit.PhysicalConstants;

/** Half-wave dipoles whose size follows from a frequency. */
final class PrescribedAtFrequency {

  private PrescribedAtFrequency() {}

  /** Cosine current of 1 A at the centre, whose height is given in wavelengths. */
  static CurrentExpansion halfWave(double frequencyHz, double heightWavelengths, double[] unit) {
    double wavelength = PhysicalConstants.wavelength(frequencyHz);
    double quarter = 0.25 * wavelength;
    double z = heightWavelengths * wavelength;
    return new PrescribedCurrent()
        .wire(
            new double[] {-quarter * unit[0], -quarter * unit[1], z - quarter * unit[2]},
            new double[] {quarter * unit[0], quarter * unit[1], z + quarter * unit[2]},
            4,
            s -> new Complex(Math.sin(2 * Math.PI * s / wavelength)))
        .expansion();
  }
}
