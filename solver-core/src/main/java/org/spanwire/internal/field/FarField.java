package org.spanwire.internal.field;

import java.util.Objects;
import org.apache.commons.math3.complex.Complex;
import org.spanwire.internal.basis.CurrentExpansion;
import org.spanwire.medium.FreeSpace;
import org.spanwire.medium.Ground;
import org.spanwire.medium.PerfectGround;
import org.spanwire.medium.Soil;
import org.spanwire.result.Direction;
import org.spanwire.result.RadiatedField;
import org.spanwire.unit.PhysicalConstants;

/**
 * Far field of a current over a ground: the direct ray and the ray reflected at z = 0.
 *
 * <p>With N the current moment of the direct ray and N' that of the ray mirrored in the ground,
 *
 * <p>r E_θ e^{jkr} = −(jkη/4π) [cosθ (N_ρ − r_p N'_ρ) − sinθ (N_z + r_p N'_z)], r E_φ e^{jkr} =
 * −(jkη/4π) [N_φ + r_s N'_φ]
 *
 * <p>(Balanis 2016, sections 3.6 and 4.8; the leading term of the Sommerfeld integrals by
 * stationary phase, Banos 1966). The wave along the surface of a soil falls off faster than 1/r and
 * is no part of it: over soil the field vanishes at the horizon. Immutable and safe for use by
 * several threads.
 */
public final class FarField {

  /**
   * Length of the array of working storage for {@link #intensity(double, double, double, double,
   * double[])}.
   */
  static final int WORK = CurrentSpectrum.WORK + 8;

  private static final int COEFFICIENTS = CurrentSpectrum.WORK;
  private static final int FIELD = CurrentSpectrum.WORK + 4;

  private final CurrentSpectrum spectrum;
  private final Ground ground;
  private final Fresnel fresnel;
  private final double soilScale;
  private final double factor;
  private final double floor;

  /**
   * Prepares the field of a current.
   *
   * @param current the current, rms amperes; over a ground all pieces lie at z ≥ 0
   * @param frequencyHz frequency in hertz, positive
   * @param ground what lies below z = 0
   */
  public FarField(CurrentExpansion current, double frequencyHz, Ground ground) {
    double wavenumber = PhysicalConstants.wavenumber(frequencyHz);
    this.ground = Objects.requireNonNull(ground, "ground");
    this.spectrum = new CurrentSpectrum(current, wavenumber);
    this.factor = wavenumber * PhysicalConstants.IMPEDANCE_OF_FREE_SPACE / (4 * Math.PI);
    // Rounding of the sum and of the phases: what is smaller is a null.
    double rounding = 1e-14 + 4 * Math.ulp(1.0) * spectrum.reach();
    this.floor = rounding * factor * spectrum.largestMoment();
    if (ground instanceof Soil soil) {
      Complex permittivity = soil.complexPermittivity(frequencyHz);
      fresnel = new Fresnel(permittivity);
      double grazing = 1 / Math.sqrt(permittivity.add(1).abs());
      double refraction = Math.sqrt(permittivity.subtract(1).abs());
      soilScale = refraction > 0 ? Math.min(grazing, refraction) : grazing;
    } else {
      fresnel = null;
      soilScale = 1;
    }
  }

  /** Field in a direction; zero below a ground. */
  public RadiatedField at(Direction direction) {
    double[] work = new double[WORK];
    intensity(direction, work);
    return new RadiatedField(
        new Complex(work[FIELD], work[FIELD + 1]), new Complex(work[FIELD + 2], work[FIELD + 3]));
  }

  /**
   * Radiation intensity r²|E|²/η in watts per steradian; exactly zero in a null and below a ground.
   */
  public double intensity(Direction direction) {
    return intensity(direction, new double[WORK]);
  }

  double intensity(Direction direction, double[] work) {
    double elevation = Math.toRadians(direction.elevationDegrees());
    double azimuth = Math.toRadians(direction.azimuthDegrees());
    return intensity(
        Math.sin(elevation), Math.cos(elevation), Math.cos(azimuth), Math.sin(azimuth), work);
  }

  /**
   * Radiation intensity by the cosines and sines of polar angle and azimuth; the field stays in the
   * working storage.
   */
  double intensity(double cosTheta, double sinTheta, double cosPhi, double sinPhi, double[] work) {
    if (hasGround() && cosTheta < 0) {
      for (int i = FIELD; i < FIELD + 4; i++) {
        work[i] = 0;
      }
      return 0;
    }
    spectrum.evaluate(sinTheta * cosPhi, sinTheta * sinPhi, cosTheta, hasGround(), work);
    reflection(cosTheta, work);
    double sum = 0;
    for (int part = 0; part < 2; part++) {
      component(part, cosTheta, sinTheta, cosPhi, sinPhi, work);
    }
    // Multiplication by −j turns (re, im) into (im, −re).
    for (int at = FIELD; at < FIELD + 4; at += 2) {
      double re = factor * work[at + 1];
      double im = -factor * work[at];
      double squared = re * re + im * im;
      boolean isNull = squared <= floor * floor;
      work[at] = isNull ? 0 : re;
      work[at + 1] = isNull ? 0 : im;
      sum += isNull ? 0 : squared;
    }
    return sum / PhysicalConstants.IMPEDANCE_OF_FREE_SPACE;
  }

  private void reflection(double cosTheta, double[] work) {
    if (fresnel != null) {
      fresnel.coefficients(cosTheta, work, COEFFICIENTS);
    } else {
      double size = ground instanceof PerfectGround ? 1 : 0;
      work[COEFFICIENTS] = size;
      work[COEFFICIENTS + 1] = 0;
      work[COEFFICIENTS + 2] = -size;
      work[COEFFICIENTS + 3] = 0;
    }
  }

  /** Real (part 0) or imaginary (part 1) parts of both components, without the leading factor. */
  private static void component(
      int part, double cosTheta, double sinTheta, double cosPhi, double sinPhi, double[] work) {
    int mirrored = CurrentSpectrum.REFLECTED;
    double rho = work[part] * cosPhi + work[2 + part] * sinPhi;
    double phi = work[2 + part] * cosPhi - work[part] * sinPhi;
    double up = work[4 + part];
    double theta = cosTheta * rho - sinTheta * up;
    // Times i^part, a product with a complex coefficient has these real and imaginary parts.
    int other = 1 - part;
    double sign = part == 0 ? -1 : 1;
    double rhoRe = work[mirrored + part] * cosPhi + work[mirrored + 2 + part] * sinPhi;
    double rhoIm = work[mirrored + other] * cosPhi + work[mirrored + 2 + other] * sinPhi;
    double phiRe = work[mirrored + 2 + part] * cosPhi - work[mirrored + part] * sinPhi;
    double phiIm = work[mirrored + 2 + other] * cosPhi - work[mirrored + other] * sinPhi;
    double thetaRe = -cosTheta * rhoRe - sinTheta * work[mirrored + 4 + part];
    double thetaIm = -cosTheta * rhoIm - sinTheta * work[mirrored + 4 + other];
    work[FIELD + part] =
        theta + work[COEFFICIENTS] * thetaRe + sign * work[COEFFICIENTS + 1] * thetaIm;
    work[FIELD + 2 + part] =
        phi + work[COEFFICIENTS + 2] * phiRe + sign * work[COEFFICIENTS + 3] * phiIm;
  }

  boolean hasGround() {
    return !(ground instanceof FreeSpace);
  }

  /** Sine of the elevation below which the reflection of the soil changes fast; 1 without soil. */
  double soilScale() {
    return soilScale;
  }

  /** Radius about the structure's axis, times k0. */
  double horizontalRadius() {
    return spectrum.horizontalRadius();
  }

  /**
   * Radius about the structure's centre, over a ground about the point below it, times k0: its
   * electrical size.
   */
  double electricalRadius() {
    double height = hasGround() ? spectrum.highest() : spectrum.halfHeight();
    return Math.hypot(spectrum.horizontalRadius(), height);
  }
}
