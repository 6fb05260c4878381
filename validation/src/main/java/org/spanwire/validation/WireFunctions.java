package org.spanwire.validation;

import org.apache.commons.math3.complex.Complex;
import org.spanwire.geometry.Point;
import org.spanwire.result.CurrentSample;
import org.spanwire.result.NearField;

/** Quantities of the current along a straight wire. */
final class WireFunctions {

  /** Current samples per wavelength; a multiple of four. */
  private static final int SAMPLES = 64;

  private static final int PHASES = 16;

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

  /**
   * Conductance in mS of a wire without ends: the mean over lengths that differ by a sixteenth of a
   * wavelength, over which what the far ends reflect comes back in every phase.
   */
  static Complex endlessConductance(ValidationCase c, Workbench bench) {
    double sum = 0;
    for (int i = 0; i < PHASES; i++) {
      double length = c.parameters().number("length") + i * 1.0 / PHASES;
      sum += bench.impedance(c.structure().with("length", length)).reciprocal().getReal();
    }
    return new Complex(1e3 * sum / PHASES);
  }

  static Complex electricField(ValidationCase c, Workbench bench) {
    return new Complex(nearField(c, bench).electric());
  }

  static Complex magneticField(ValidationCase c, Workbench bench) {
    return new Complex(nearField(c, bench).magnetic());
  }

  /** Field of the current on a wire along z, solved or prescribed, at a power radiated. */
  private static NearField nearField(ValidationCase c, Workbench bench) {
    Parameters p = c.parameters();
    Point point = new Point(p.number("atRhoMetres"), 0, p.number("atZMetres"));
    double watts =
        Prescribed.isAskedFor(c.structure())
            ? Prescribed.of(c.structure()).radiatedPower()
            : bench.solve(c.structure()).powerBudget().radiated();
    NearField field = bench.source(c.structure()).nearField(point);
    double scale = Math.sqrt(p.number("powerWatts") / watts);
    return new NearField(
        point,
        field.ex().multiply(scale),
        field.ey().multiply(scale),
        field.ez().multiply(scale),
        field.hx().multiply(scale),
        field.hy().multiply(scale),
        field.hz().multiply(scale));
  }
}
