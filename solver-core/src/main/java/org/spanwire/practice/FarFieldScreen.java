package org.spanwire.practice;

import org.spanwire.design.ExposureLimit;
import org.spanwire.unit.PhysicalConstants;

/**
 * The distance at which a wave of a stated equivalent radiated power meets a limit, as if the far
 * field held everywhere: S = F² EIRP/(4πr²) (FCC OET Bulletin 65, 1997, equations 3 to 8). Inside
 * λ/2π it does not hold, and near a wire as long as a wavelength not before several of its lengths.
 *
 * @param distance metres
 * @param valid whether it lies at or beyond λ/2π
 */
public record FarFieldScreen(double distance, boolean valid) {

  /** F of a gain that counts the reflection from the ground already, and of free space. */
  public static final double NO_REFLECTION = 1;

  /** F of a ground that reflects in part, for a gain in free space (OET Bulletin 65). */
  public static final double PARTIAL_REFLECTION = 1.6;

  /** F of a ground that doubles the field, for a gain in free space (OET Bulletin 65). */
  public static final double FULL_REFLECTION = 2;

  /**
   * The distance for a limit.
   *
   * @param eirpWatts average equivalent isotropically radiated power in watts
   * @param fieldFactor what the ground does to the field, F
   */
  public static FarFieldScreen of(
      ExposureLimit limit, double frequencyHz, double eirpWatts, double fieldFactor) {
    double distance = distance(limit.planeWaveDensity(frequencyHz), eirpWatts, fieldFactor);
    return new FarFieldScreen(distance, distance >= validFrom(frequencyHz));
  }

  /**
   * Distance in metres at which the power density has a value.
   *
   * @param density W/m², positive
   * @param eirpWatts equivalent isotropically radiated power in watts
   * @param fieldFactor what the ground does to the field, F
   */
  public static double distance(double density, double eirpWatts, double fieldFactor) {
    if (!(density > 0) || !(eirpWatts >= 0) || !(fieldFactor > 0)) {
      throw new IllegalArgumentException(
          "power density "
              + density
              + " W/m² and field factor "
              + fieldFactor
              + " must be positive, EIRP "
              + eirpWatts
              + " W not negative");
    }
    return fieldFactor * Math.sqrt(eirpWatts / (4 * Math.PI * density));
  }

  /** Distance in metres from which the formula may hold: λ/2π. */
  public static double validFrom(double frequencyHz) {
    return 1 / PhysicalConstants.wavenumber(frequencyHz);
  }

  /**
   * Effective radiated power in watts, over a half-wave dipole, up to which a source at a distance
   * of at least λ/2π is exempt from evaluation in the United States (47 CFR 1.1307(b)(3)(i)(C),
   * table 1, as of 2021, from memory).
   *
   * @param frequencyHz 0.3 MHz to 300 MHz
   * @param distance metres, at least λ/2π
   */
  public static double exemptErp(double frequencyHz, double distance) {
    double megahertz = frequencyHz * 1e-6;
    if (!(megahertz >= 0.3 && megahertz < 300) || !(distance >= validFrom(frequencyHz))) {
      throw new IllegalArgumentException(
          "exemption at "
              + megahertz
              + " MHz and "
              + distance
              + " m: the table holds from 0.3 MHz to 300 MHz and from "
              + validFrom(frequencyHz)
              + " m on");
    }
    double square = distance * distance;
    if (megahertz < 1.34) {
      return 1920 * square;
    }
    return megahertz < 30 ? 3450 * square / (megahertz * megahertz) : 3.83 * square;
  }
}
