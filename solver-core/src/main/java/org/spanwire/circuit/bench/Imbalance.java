package org.spanwire.circuit.bench;

import org.apache.commons.math3.complex.Complex;

/**
 * How two outputs that should be equal and opposite differ: S31/S21 = −g e^jφ.
 *
 * @param amplitudeDb 20 log10 g, finite
 * @param phaseDegrees φ in degrees, finite
 */
public record Imbalance(double amplitudeDb, double phaseDegrees) {

  /** Checks that both are numbers. */
  public Imbalance {
    if (!Double.isFinite(amplitudeDb) || !Double.isFinite(phaseDegrees)) {
      throw new IllegalArgumentException(
          "imbalance of %s dB and %s degrees must be finite".formatted(amplitudeDb, phaseDegrees));
    }
  }

  /** From the transmission to both outputs, both not zero. */
  public static Imbalance of(Complex s21, Complex s31) {
    Complex ratio = s31.negate().divide(s21);
    return new Imbalance(20 * Math.log10(ratio.abs()), Math.toDegrees(ratio.getArgument()));
  }

  /**
   * From two traces.
   *
   * @param firstVolts amplitude at the first output
   * @param secondVolts amplitude at the second, in the same unit
   * @param shiftSeconds how much later the second trace's opposite half wave comes than the first
   *     trace's half wave
   * @param frequencyHz frequency in hertz
   */
  public static Imbalance ofTraces(
      double firstVolts, double secondVolts, double shiftSeconds, double frequencyHz) {
    return new Imbalance(
        20 * Math.log10(secondVolts / firstVolts), -360 * frequencyHz * shiftSeconds);
  }

  /**
   * The same with the probes' own imbalance removed, as it reads with both probes on one point
   * (their second trace inverted).
   */
  public Imbalance withoutProbes(Imbalance probes) {
    return new Imbalance(amplitudeDb - probes.amplitudeDb, phaseDegrees - probes.phaseDegrees);
  }

  /**
   * Readings of voltage over two terminations in ohms that are not equal, brought to equal ones.
   */
  public Imbalance withTerminations(double firstOhm, double secondOhm) {
    return new Imbalance(amplitudeDb + 10 * Math.log10(firstOhm / secondOhm), phaseDegrees);
  }

  /**
   * Common-mode rejection ratio 20 log10(|1 + g e^jφ|/|1 − g e^jφ|) in dB; cot(φ/2) for phase
   * alone; infinite for perfect balance.
   */
  public double rejectionDb() {
    return 10 * Math.log10(differential() / common());
  }

  /** Share of the power of both outputs that is common mode, 0 to 1. */
  public double commonShare() {
    return common() / (common() + differential());
  }

  /** What a differential load loses by it, −10 log10(1 − common share), in dB. */
  public double combiningLossDb() {
    return -10 * Math.log10(differential() / (common() + differential()));
  }

  private double gain() {
    return Math.pow(10, amplitudeDb / 20);
  }

  /** |1 + g e^jφ|² = (1 − g)² + 4 g cos²(φ/2). */
  private double differential() {
    return squares(Math.cos(Math.toRadians(phaseDegrees) / 2));
  }

  /** |1 − g e^jφ|² = (1 − g)² + 4 g sin²(φ/2), without cancellation. */
  private double common() {
    return squares(Math.sin(Math.toRadians(phaseDegrees) / 2));
  }

  private double squares(double root) {
    double g = gain();
    return (1 - g) * (1 - g) + 4 * g * root * root;
  }
}
