package org.spanwire.internal.field;

/** Uniform sampling around the azimuth. */
final class AzimuthRule {

  private AzimuthRule() {}

  /**
   * Number of equidistant samples that integrates |N|² over azimuth to rounding. N of a structure
   * of radius R holds the harmonics e^{jmφ} with weights J_m(k_ρ R), which fall faster than
   * exponentially beyond m = k_ρ R (DLMF 10.19.8), so |N|² ends some seven times the cube root
   * beyond 2 k_ρ R; a rule of n samples errs by the harmonics n, 2n, … only (Davis and Rabinowitz
   * 1984, 2.9).
   *
   * @param radius k_ρ R
   */
  static int samples(double radius) {
    double twice = 2 * radius;
    return 10 + (int) Math.ceil(twice + 7 * Math.cbrt(twice));
  }
}
