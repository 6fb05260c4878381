package org.spanwire.result;

import org.apache.commons.math3.complex.Complex;

/**
 * The far electric field in a direction, r E e^{+jk0r} with r measured from the origin, volts rms;
 * time convention exp(+jωt).
 *
 * @param theta component along increasing polar angle (downward at the horizon): vertical
 *     polarisation
 * @param phi component along increasing azimuth: horizontal polarisation
 */
public record RadiatedField(Complex theta, Complex phi) {

  /**
   * Axial ratio, major over minor axis of the polarisation ellipse (IEEE Std 145-2013): 1 for
   * circular, infinite for linear polarisation, and 1 by convention in a null. From the Stokes
   * parameters, Born and Wolf 1999, section 1.4.
   */
  public double axialRatio() {
    double across = Math.abs(crossed().getImaginary());
    double major = 0.5 * (total() + linear());
    return major == 0 ? 1 : major / across;
  }

  /**
   * Tilt of the ellipse's major axis in degrees, 0 up to 180: 0 horizontal, 90 vertical, turning
   * from the direction of increasing azimuth toward up.
   */
  public double tiltDegrees() {
    double horizontal = phi.abs();
    double vertical = theta.abs();
    double twice =
        Math.atan2(2 * crossed().getReal(), (horizontal - vertical) * (horizontal + vertical));
    double tilt = 0.5 * Math.toDegrees(twice);
    return (tilt < 0 ? tilt + 180 : tilt) + 0.0;
  }

  /**
   * True if the field turns clockwise as seen along the direction of propagation: right-hand sense
   * of IEEE Std 145-2013.
   */
  public boolean isRightHanded() {
    return crossed().getImaginary() > 0;
  }

  /** E_φ (−E_θ)*: the two components across the ray, horizontal and upward. */
  private Complex crossed() {
    return phi.multiply(theta.negate().conjugate());
  }

  private double total() {
    return phi.abs() * phi.abs() + theta.abs() * theta.abs();
  }

  private double linear() {
    double horizontal = phi.abs();
    double vertical = theta.abs();
    return Math.hypot((horizontal - vertical) * (horizontal + vertical), 2 * crossed().getReal());
  }
}
