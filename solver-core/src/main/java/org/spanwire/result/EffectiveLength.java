package org.spanwire.result;

import java.util.Objects;
import org.apache.commons.math3.complex.Complex;

/**
 * Vector effective length of an antenna's feed towards a direction (Sinclair, Proc. IRE 38, 148,
 * 1950; IEEE Std 145-2013), time convention exp(+jωt). A plane wave that arrives from the direction
 * with rms components E_θ and E_φ at the origin (in the absence of antenna and ground) acts at the
 * open feed like a generator of voltage h_θ E_θ + h_φ E_φ.
 *
 * @param theta component in metres along increasing polar angle, downward at the horizon
 * @param phi component in metres along increasing azimuth
 * @param sourceImpedance impedance in ohms of the equivalent generator: the feed's own impedance
 *     with all other feeds open
 */
public record EffectiveLength(Complex theta, Complex phi, Complex sourceImpedance) {

  /** Refuses missing components. */
  public EffectiveLength {
    Objects.requireNonNull(theta, "theta");
    Objects.requireNonNull(phi, "phi");
    Objects.requireNonNull(sourceImpedance, "sourceImpedance");
  }

  /** Magnitude √(|h_θ|² + |h_φ|²) in metres. */
  public double magnitude() {
    return Math.hypot(theta.abs(), phi.abs());
  }

  /**
   * Open-circuit voltage in volts for a plane wave; positive drives current toward increasing
   * distance along the wire.
   *
   * @param eTheta E_θ at the origin in V/m, rms phasor
   * @param ePhi E_φ at the origin in V/m, rms phasor
   */
  public Complex openCircuitVoltage(Complex eTheta, Complex ePhi) {
    return theta.multiply(eTheta).add(phi.multiply(ePhi));
  }

  /** Current in amperes through the shorted feed, all other feeds open, for a plane wave. */
  public Complex shortCircuitCurrent(Complex eTheta, Complex ePhi) {
    return openCircuitVoltage(eTheta, ePhi).divide(sourceImpedance);
  }
}
