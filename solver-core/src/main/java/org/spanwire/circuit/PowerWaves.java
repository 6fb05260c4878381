package org.spanwire.circuit;

import org.apache.commons.math3.complex.Complex;

/**
 * Incident and reflected power waves of a set of independent excitations, one per column, with the
 * reference impedances they are counted against (Kurokawa 1965, see {@link NPort}).
 */
record PowerWaves(ComplexMatrix incident, ComplexMatrix reflected, Complex[] references) {

  static PowerWaves ofScattering(ComplexMatrix s, Complex[] references) {
    return new PowerWaves(ComplexMatrix.identity(s.rows()), s, references);
  }

  /**
   * Waves that obey M V + N I = 0, which with V = R^−½ (Z* a + Z b) and I = R^−½ (a − b) reads (M
   * Z* + N) R^−½ a = (N − M Z) R^−½ b.
   */
  static PowerWaves ofEquations(ComplexMatrix m, ComplexMatrix n, Complex[] references) {
    ComplexMatrix left = side(m, n, references, true);
    ComplexMatrix right = side(m, n, references, false);
    try {
      return new PowerWaves(
          ComplexMatrix.identity(m.columns()), right.solveConsistent(left), references);
    } catch (ArithmeticException e) {
      throw new CircuitException(
          "network has no scattering parameters for these reference impedances; choose others");
    }
  }

  private static ComplexMatrix side(
      ComplexMatrix m, ComplexMatrix n, Complex[] z, boolean incident) {
    return ComplexMatrix.of(
        m.rows(),
        m.columns(),
        (i, j) -> {
          Complex drop = incident ? z[j].conjugate() : z[j].negate();
          return m.at(i, j).multiply(drop).add(n.at(i, j)).divide(Math.sqrt(z[j].getReal()));
        });
  }

  /** V = R^−½ (Z* a + Z b) in volts. */
  ComplexMatrix voltages() {
    return entries(
        (i, j) ->
            references[i]
                .conjugate()
                .multiply(incident.at(i, j))
                .add(references[i].multiply(reflected.at(i, j)))
                .divide(Math.sqrt(references[i].getReal())));
  }

  /** I = R^−½ (a − b) in amperes. */
  ComplexMatrix currents() {
    return entries(
        (i, j) ->
            incident
                .at(i, j)
                .subtract(reflected.at(i, j))
                .divide(Math.sqrt(references[i].getReal())));
  }

  /** The same voltages and currents against other references. */
  PowerWaves renormalized(Complex[] z) {
    ComplexMatrix v = voltages();
    ComplexMatrix i = currents();
    return new PowerWaves(
        entries((r, c) -> wave(v.at(r, c), z[r].multiply(i.at(r, c)), z[r])),
        entries((r, c) -> wave(v.at(r, c), z[r].conjugate().multiply(i.at(r, c)).negate(), z[r])),
        z);
  }

  private static Complex wave(Complex voltage, Complex drop, Complex reference) {
    return voltage.add(drop).divide(2 * Math.sqrt(reference.getReal()));
  }

  /** S with S a = b. */
  ComplexMatrix scattering() {
    return quotient(reflected, incident, "scattering");
  }

  private ComplexMatrix entries(ComplexMatrix.Entries entries) {
    return ComplexMatrix.of(incident.rows(), incident.columns(), entries);
  }

  /** X with X · denominator = numerator. */
  static ComplexMatrix quotient(
      ComplexMatrix numerator, ComplexMatrix denominator, String parameters) {
    try {
      return denominator.transpose().solve(numerator.transpose()).transpose();
    } catch (ArithmeticException e) {
      throw new CircuitException("network has no finite " + parameters + " parameters; use others");
    }
  }
}
