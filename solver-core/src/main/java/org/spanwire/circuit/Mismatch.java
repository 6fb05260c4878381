package org.spanwire.circuit;

import java.util.Objects;
import org.apache.commons.math3.complex.Complex;

/**
 * An impedance seen against a real reference impedance.
 *
 * <p>With a = |Z + R0| and b = |Z − R0| the magnitude of the reflection coefficient is b/a, and a²
 * − b² = 4·R·R0. The quantities below are written with these, so that nothing is lost to
 * cancellation near an open or a short circuit.
 *
 * <p>Source: D. M. Pozar, Microwave Engineering, 4th edition (Wiley, 2012), section 2.3, equations
 * (2.35), (2.38) and (2.41); equation numbers from memory.
 *
 * @param impedance impedance in ohms; {@link Complex#INF} for an open circuit; negative resistance
 *     is allowed
 * @param referenceOhm reference impedance in ohms, positive and finite
 */
public record Mismatch(Complex impedance, double referenceOhm) {

  /** Checks the ranges. */
  public Mismatch {
    Objects.requireNonNull(impedance, "impedance");
    if (impedance.isNaN()) {
      throw new IllegalArgumentException("impedance must be a number or infinite");
    }
    if (!(referenceOhm > 0) || Double.isInfinite(referenceOhm)) {
      throw new IllegalArgumentException(
          "reference impedance " + referenceOhm + " ohm must be positive and finite");
    }
  }

  /** An impedance in ohms seen against a reference impedance in ohms. */
  public static Mismatch of(Complex impedance, double referenceOhm) {
    return new Mismatch(impedance, referenceOhm);
  }

  /**
   * The impedance Z = R0 (1 + Γ)/(1 − Γ) that has reflection coefficient Γ; an open circuit for Γ =
   * 1.
   */
  public static Mismatch ofReflection(Complex reflection, double referenceOhm) {
    Complex z =
        reflection.equals(Complex.ONE)
            ? Complex.INF
            : Complex.ONE
                .add(reflection)
                .divide(Complex.ONE.subtract(reflection))
                .multiply(referenceOhm);
    return new Mismatch(z, referenceOhm);
  }

  /**
   * Reflection coefficient Γ = (Z − R0)/(Z + R0); 1 for an open circuit, −1 for a short. Infinite
   * for Z = −R0.
   *
   * <p>Pozar (2.35).
   */
  public Complex reflection() {
    if (impedance.isInfinite()) {
      return Complex.ONE;
    }
    Complex sum = impedance.add(referenceOhm);
    return sum.equals(Complex.ZERO) ? Complex.INF : impedance.subtract(referenceOhm).divide(sum);
  }

  /**
   * Standing-wave ratio (1 + |Γ|)/(1 − |Γ|) = (a + b)²/(4·R·R0), at least 1; infinite where |Γ| is
   * 1 or more: for an open or a short circuit, a pure reactance, and any negative resistance.
   *
   * <p>Pozar (2.41).
   */
  public double swr() {
    if (totallyReflecting()) {
      return Double.POSITIVE_INFINITY;
    }
    double scale = incidentScale() + reflectedScale();
    return Math.max(1, scale / referenceOhm * (scale / (4 * impedance.getReal())));
  }

  /**
   * Return loss −20 log10|Γ| in decibels; infinite for a perfect match, 0 for total reflection,
   * negative for |Γ| above 1.
   *
   * <p>Pozar (2.38); sign as in IEEE Std 145-2013, positive for a passive load.
   */
  public double returnLossDb() {
    if (impedance.isInfinite()) {
      return 0;
    }
    return 20 * (Math.log10(incidentScale()) - Math.log10(reflectedScale()));
  }

  /**
   * Mismatch loss −10 log10(1 − |Γ|²) = 10 log10(a²/(4·R·R0)) in decibels, at least 0; infinite
   * where |Γ| is 1 or more, since no power reaches the load then.
   */
  public double mismatchLossDb() {
    if (totallyReflecting()) {
      return Double.POSITIVE_INFINITY;
    }
    double a = incidentScale();
    return Math.max(0, 10 * Math.log10(a / referenceOhm * (a / (4 * impedance.getReal()))));
  }

  private boolean totallyReflecting() {
    return impedance.isInfinite() || !(impedance.getReal() > 0);
  }

  /** a = |Z + R0| in ohms. */
  private double incidentScale() {
    return Math.hypot(impedance.getReal() + referenceOhm, impedance.getImaginary());
  }

  /** b = |Z − R0| in ohms. */
  private double reflectedScale() {
    return Math.hypot(impedance.getReal() - referenceOhm, impedance.getImaginary());
  }
}
