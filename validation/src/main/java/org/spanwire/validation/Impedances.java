package org.spanwire.validation;

import org.apache.commons.math3.complex.Complex;
import org.spanwire.Solution;

/** Quantities at the feeds. */
final class Impedances {

  private Impedances() {}

  static Complex input(ValidationCase c, Workbench bench) {
    return solve(c, bench).impedance();
  }

  static Complex microhenries(ValidationCase c, Workbench bench) {
    double omega = 2 * Math.PI * c.parameters().frequencyHz();
    return new Complex(1e6 * input(c, bench).getImaginary() / omega);
  }

  static Complex port(ValidationCase c, Workbench bench, int row, int column) {
    return solve(c, bench).portMatrix()[row][column];
  }

  static Complex oddMode(ValidationCase c, Workbench bench) {
    Complex[][] z = solve(c, bench).portMatrix();
    return z[0][0].subtract(z[0][1]);
  }

  static Complex driven(ValidationCase c, Workbench bench, int feed) {
    Solution solution = bench.solveWithCurrents(c.structure());
    return solution.impedance(c.structure().antenna().feeds().get(feed).name());
  }

  static Complex ratio(ValidationCase c, Workbench bench) {
    return input(c, bench).divide(reference(c, bench).impedance());
  }

  static Complex resistanceRatio(ValidationCase c, Workbench bench) {
    double resistance = input(c, bench).getReal();
    return new Complex(resistance / reference(c, bench).impedance().getReal());
  }

  static Complex change(ValidationCase c, Workbench bench) {
    Complex reference = reference(c, bench).impedance();
    return input(c, bench).subtract(reference).divide(reference.getReal());
  }

  static Complex resonance(ValidationCase c, Workbench bench) {
    return new Complex(bench.resonance(c.structure()));
  }

  static Complex resonantResistance(ValidationCase c, Workbench bench) {
    return new Complex(bench.solveAtResonance(c.structure()).impedance().getReal());
  }

  static Complex resonantResistanceRatio(ValidationCase c, Workbench bench) {
    double reference = bench.solveAtResonance(c.reference()).impedance().getReal();
    return resonantResistance(c, bench).divide(reference);
  }

  static Complex coupling(ValidationCase c, Workbench bench) {
    Complex[][] z = solve(c, bench).portMatrix();
    double mutual = z[1][0].abs();
    double passed = mutual * mutual / (4 * z[0][0].getReal() * z[1][1].getReal());
    return new Complex(10 * Math.log10(passed));
  }

  static Complex reciprocityDefect(ValidationCase c, Workbench bench) {
    Complex[][] z = solve(c, bench).portMatrix();
    return new Complex(z[0][1].subtract(z[1][0]).abs() / z[0][1].abs());
  }

  private static Solution solve(ValidationCase c, Workbench bench) {
    return bench.solve(c.structure());
  }

  private static Solution reference(ValidationCase c, Workbench bench) {
    return bench.solve(c.reference());
  }
}
