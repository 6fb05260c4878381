package org.spanwire.validation;

import org.apache.commons.math3.complex.Complex;
import org.spanwire.PrescribedCurrent;
import org.spanwire.Solution;

/** Quantities at the feeds. */
final class Impedances {

  private Impedances() {}

  static Complex input(ValidationCase c, Workbench bench) {
    return bench.impedance(c.structure());
  }

  /** Radiation resistance in ohms, referred to the largest of prescribed currents. */
  static Complex radiationResistance(ValidationCase c, Workbench bench) {
    PrescribedCurrent current = Prescribed.of(c.structure());
    return new Complex(current.radiatedPower() + current.absorbedPower());
  }

  static Complex microhenries(ValidationCase c, Workbench bench) {
    double omega = 2 * Math.PI * c.parameters().frequencyHz();
    return new Complex(1e6 * input(c, bench).getImaginary() / omega);
  }

  static Complex port(ValidationCase c, Workbench bench, int row, int column) {
    return bench.impedance(c.structure(), row, column);
  }

  static Complex oddMode(ValidationCase c, Workbench bench) {
    Complex[][] z = solve(c, bench).portMatrix();
    return z[0][0].subtract(z[0][1]);
  }

  static Complex driven(ValidationCase c, Workbench bench, int feed) {
    if (Prescribed.isAskedFor(c.structure())) {
      double phase = Math.toRadians(c.parameters().number("phaseDegrees"));
      Complex ahead = new Complex(Math.cos(phase), feed == 0 ? Math.sin(phase) : -Math.sin(phase));
      return port(c, bench, feed, feed).add(port(c, bench, 0, 1).multiply(ahead));
    }
    Solution solution = bench.solveWithCurrents(c.structure());
    return solution.impedance(c.structure().antenna().feeds().get(feed).name());
  }

  static Complex ratio(ValidationCase c, Workbench bench) {
    return input(c, bench).divide(reference(c, bench));
  }

  static Complex resistanceRatio(ValidationCase c, Workbench bench) {
    double resistance = input(c, bench).getReal();
    return new Complex(resistance / reference(c, bench).getReal());
  }

  static Complex change(ValidationCase c, Workbench bench) {
    Complex reference = reference(c, bench);
    return input(c, bench).subtract(reference).divide(reference.getReal());
  }

  static Complex resonance(ValidationCase c, Workbench bench) {
    return new Complex(bench.resonance(c.structure()));
  }

  static Complex resonantResistance(ValidationCase c, Workbench bench) {
    return new Complex(bench.resonantResistance(c.structure()));
  }

  static Complex resonantResistanceRatio(ValidationCase c, Workbench bench) {
    double reference = bench.resonantResistance(c.reference());
    return resonantResistance(c, bench).divide(reference);
  }

  static Complex coupling(ValidationCase c, Workbench bench) {
    double mutual = port(c, bench, 0, 1).abs();
    double one = port(c, bench, 0, 0).getReal();
    double other = port(c, bench, 1, 1).getReal();
    double passed = mutual * mutual / (4 * one * other);
    return new Complex(10 * Math.log10(passed));
  }

  private static Solution solve(ValidationCase c, Workbench bench) {
    return bench.solve(c.structure());
  }

  private static Complex reference(ValidationCase c, Workbench bench) {
    return bench.impedance(c.reference());
  }
}
