package org.spanwire.validation;

import org.apache.commons.math3.complex.Complex;
import org.spanwire.PrescribedCurrent;
import org.spanwire.geometry.Point;
import org.spanwire.geometry.Wire;
import org.spanwire.result.CurrentSample;
import org.spanwire.result.NearField;
import org.spanwire.unit.PhysicalConstants;

/** Quantities of the current along a straight wire, solved or prescribed. */
final class WireFunctions {

  /** Current samples per wavelength; a multiple of four. */
  private static final int SAMPLES = 64;

  private WireFunctions() {}

  /**
   * Velocity of the waves on a long wire over that of light. From the current in the middle three
   * fifths, away from feed and ends, where two waves exp(±jβz) obey I(z + h) + I(z − h) = 2 cos(βh)
   * I(z); h is a quarter wavelength, where the cosine tells most.
   */
  static Complex velocityFactor(ValidationCase c, Workbench bench) {
    int intervals = (int) (SAMPLES * c.parameters().number("length"));
    Complex[] current =
        bench.solve(c.structure()).currents(intervals + 1).stream()
            .map(CurrentSample::current)
            .toArray(Complex[]::new);
    int quarter = SAMPLES / 4;
    double product = 0;
    double square = 0;
    for (int i = intervals / 5; i < intervals * 4 / 5; i++) {
      Complex sides = current[i + quarter].add(current[i - quarter]);
      product += sides.multiply(current[i].conjugate()).getReal();
      square += Math.pow(current[i].abs(), 2);
    }
    return new Complex(Math.PI / 2 / Math.acos(product / (2 * square)));
  }

  static Complex electricField(ValidationCase c, Workbench bench) {
    return new Complex(nearField(c).electric());
  }

  static Complex magneticField(ValidationCase c, Workbench bench) {
    return new Complex(nearField(c).magnetic());
  }

  /** Field of the structure's one wire, along z, carrying the current sin k(h − |z|) at a power. */
  private static NearField nearField(ValidationCase c) {
    Parameters p = c.parameters();
    PrescribedCurrent unit = sinusoidal(c.structure(), 1);
    double amplitude = Math.sqrt(p.number("powerWatts") / unit.radiatedPower());
    Point point = new Point(p.number("atRhoMetres"), 0, p.number("atZMetres"));
    return sinusoidal(c.structure(), amplitude).nearField(point);
  }

  private static PrescribedCurrent sinusoidal(Structure structure, double amplitude) {
    double frequency = structure.frequencyHz();
    double k = PhysicalConstants.wavenumber(frequency);
    Wire wire = structure.antenna().wires().get(0);
    double half = wire.length() / 2;
    return PrescribedCurrent.builder(frequency)
        .wire(wire, s -> new Complex(amplitude * Math.sin(k * (half - Math.abs(s - half)))))
        .build();
  }
}
