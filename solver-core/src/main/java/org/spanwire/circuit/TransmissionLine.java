package org.spanwire.circuit;

import java.util.Objects;
import org.apache.commons.math3.complex.Complex;
import org.spanwire.geometry.LumpedImpedance;
import org.spanwire.unit.PhysicalConstants;

/**
 * A uniform line.
 *
 * <p>Propagation γ = α + jβ with β = ω/(velocity factor · c) and α = α_c + α_d of {@link
 * LineAttenuation}. Series resistance turns the characteristic impedance capacitive and shunt
 * conductance turns it inductive: Z0 = R0 (1 − j (α_c − α_d)/β), the first-order form of √((R +
 * jωL)/(G + jωC)) (Pozar (2.85)). With it the line's series resistance Re γZ0 = 2 R0 α_c and shunt
 * conductance Re γ/Z0 = 2 α_d/(R0 (1 + (α_c − α_d)²/β²)) are exactly not negative, so the line is
 * passive, and its matched loss is the attenuation stated.
 *
 * @param impedanceOhm nominal characteristic impedance R0 in ohms, positive
 * @param length metres, not negative
 * @param velocityFactor phase velocity over the speed of light, above 0, at most 1
 * @param attenuation matched attenuation
 */
public record TransmissionLine(
    double impedanceOhm, double length, double velocityFactor, LineAttenuation attenuation)
    implements Network {

  /** Checks the ranges. */
  public TransmissionLine {
    Objects.requireNonNull(attenuation, "attenuation");
    if (!(impedanceOhm > 0) || Double.isInfinite(impedanceOhm)) {
      throw new IllegalArgumentException(
          "line impedance " + impedanceOhm + " ohm must be positive and finite");
    }
    if (!(length >= 0) || Double.isInfinite(length)) {
      throw new IllegalArgumentException("line length " + length + " m must not be negative");
    }
    if (!(velocityFactor > 0 && velocityFactor <= 1)) {
      throw new IllegalArgumentException(
          "velocity factor " + velocityFactor + " must be above 0 and at most 1");
    }
  }

  /** The same line of another length in metres. */
  public TransmissionLine withLength(double metres) {
    return new TransmissionLine(impedanceOhm, metres, velocityFactor, attenuation);
  }

  /** Phase constant β in rad/m. */
  public double phaseConstant(double frequencyHz) {
    return PhysicalConstants.wavenumber(frequencyHz) / velocityFactor;
  }

  /** Characteristic impedance Z0 in ohms. */
  public Complex characteristicImpedance(double frequencyHz) {
    double tilt =
        attenuation.conductorNepers(frequencyHz) - attenuation.dielectricNepers(frequencyHz);
    return new Complex(impedanceOhm, -impedanceOhm * tilt / phaseConstant(frequencyHz));
  }

  /** γ times the length. */
  Complex propagation(double frequencyHz) {
    double alpha =
        attenuation.conductorNepers(frequencyHz) + attenuation.dielectricNepers(frequencyHz);
    return new Complex(alpha, phaseConstant(frequencyHz)).multiply(length);
  }

  /**
   * {@inheritDoc} A 2-port with the nominal impedance R0 as reference: S11 = (Z0² − R0²) sinh γl/D,
   * S21 = 2 Z0 R0/D, D = 2 Z0 R0 cosh γl + (Z0² + R0²) sinh γl (Pozar tables 4.1 and 4.2), all
   * times e^−γl, which cannot overflow.
   */
  @Override
  public NPort at(double frequencyHz) {
    Complex z0 = characteristicImpedance(frequencyHz);
    Complex gamma = propagation(frequencyHz);
    Complex decay = gamma.negate().exp();
    Complex square = decay.multiply(decay);
    // (1 − e^−2γl)/2, without cancellation for a short line.
    Complex sinh =
        gamma.getReal() < 1
            ? gamma.sinh().multiply(decay)
            : Complex.ONE.subtract(square).multiply(0.5);
    Complex product = z0.multiply(impedanceOhm);
    Complex z2 = z0.multiply(z0);
    double r2 = impedanceOhm * impedanceOhm;
    Complex d = product.multiply(square.add(1)).add(z2.add(r2).multiply(sinh));
    Complex back = z2.subtract(r2).multiply(sinh).divide(d);
    Complex through = product.multiply(2).multiply(decay).divide(d);
    return NPort.ofScattering(new Complex[][] {{back, through}, {through, back}}, impedanceOhm);
  }

  /** Matched loss of the whole length in dB. */
  public double matchedLossDb(double frequencyHz) {
    return attenuation.decibelsPerMetre(frequencyHz) * length;
  }

  /**
   * A stub: this line ended by an impedance in ohms, {@link Complex#INF} for an open end, as seen
   * at its other end.
   */
  public LumpedImpedance stub(Complex end) {
    return f -> at(f).terminated(2, end).inputImpedance();
  }

  /**
   * Total loss of a line in dB for its matched loss in dB and the SWR of the load against its
   * characteristic impedance, taken real: 10 log10((A² − |Γ|²)/(A (1 − |Γ|²))), A = 10^(matched/10)
   * (ARRL Antenna Book and Jasik, Antenna Engineering Handbook, from memory; closed form from the
   * decay of both waves). Infinite for infinite SWR.
   */
  public static double totalLossDb(double matchedLossDb, double loadSwr) {
    if (!(matchedLossDb >= 0) || !(loadSwr >= 1)) {
      throw new IllegalArgumentException(
          "matched loss %s dB must not be negative and SWR %s not below 1"
              .formatted(matchedLossDb, loadSwr));
    }
    double a = Math.pow(10, matchedLossDb / 10);
    if (Double.isInfinite(loadSwr)) {
      return matchedLossDb == 0 ? 0 : Double.POSITIVE_INFINITY;
    }
    double gamma = (loadSwr - 1) / (loadSwr + 1);
    return 10 * Math.log10((a * a - gamma * gamma) / (a * (1 - gamma * gamma)));
  }

  /**
   * Characteristic impedance in ohms of two equal parallel round wires in air, (η0/π) acosh(D/d), D
   * between centres, d their diameter.
   */
  public static double twoWireImpedance(double spacing, double diameter) {
    double x = requireAboveOne(spacing / diameter, "spacing over diameter");
    return PhysicalConstants.IMPEDANCE_OF_FREE_SPACE / Math.PI * acosh(x);
  }

  /**
   * Characteristic impedance in ohms of a round wire over perfect ground, (η0/2π) acosh(h/a), h
   * from its axis, a its radius.
   */
  public static double wireOverGroundImpedance(double height, double radius) {
    double x = requireAboveOne(height / radius, "height over radius");
    return PhysicalConstants.IMPEDANCE_OF_FREE_SPACE / (2 * Math.PI) * acosh(x);
  }

  /** Characteristic impedance in ohms of a coaxial line, (η0/(2π √ε_r)) ln(D/d). */
  public static double coaxialImpedance(double outer, double inner, double permittivity) {
    double x = requireAboveOne(outer / inner, "outer over inner diameter");
    return PhysicalConstants.IMPEDANCE_OF_FREE_SPACE
        / (2 * Math.PI * Math.sqrt(permittivity))
        * Math.log(x);
  }

  private static double acosh(double x) {
    return Math.log(x + Math.sqrt((x - 1) * (x + 1)));
  }

  private static double requireAboveOne(double ratio, String what) {
    if (!(ratio > 1) || Double.isInfinite(ratio)) {
      throw new IllegalArgumentException(what + " is " + ratio + "; it must be above 1");
    }
    return ratio;
  }
}
