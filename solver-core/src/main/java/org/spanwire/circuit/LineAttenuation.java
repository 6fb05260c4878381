package org.spanwire.circuit;

import java.util.SortedMap;

/**
 * Matched attenuation of a line against frequency, α = c √f + d f: the skin effect in the
 * conductors grows with √f, loss in the dielectric with f (Pozar, Microwave Engineering, 4th
 * edition, section 2.7).
 *
 * @param conductor c in dB per metre and √Hz, not negative
 * @param dielectric d in dB per metre and Hz, not negative
 */
public record LineAttenuation(double conductor, double dielectric) {

  /** A line without loss. */
  public static final LineAttenuation NONE = new LineAttenuation(0, 0);

  static final double DECIBELS_PER_NEPER = 20 / Math.log(10);

  /** Checks the ranges. */
  public LineAttenuation {
    if (!(conductor >= 0) || !(dielectric >= 0) || !Double.isFinite(conductor + dielectric)) {
      throw new IllegalArgumentException(
          "attenuation parts " + conductor + " and " + dielectric + " must not be negative");
    }
  }

  /** From one figure, taken as conductor loss alone, which holds for most lines at HF. */
  public static LineAttenuation ofConductor(double frequencyHz, double decibelsPerMetre) {
    if (!(frequencyHz > 0)) {
      throw new IllegalArgumentException("frequency " + frequencyHz + " Hz must be positive");
    }
    return new LineAttenuation(decibelsPerMetre / Math.sqrt(frequencyHz), 0);
  }

  /**
   * From a data sheet's table: least squares of the relative errors, neither part negative.
   *
   * @param table dB per metre, positive, by frequency in hertz, positive; at least two rows
   */
  public static LineAttenuation fitted(SortedMap<Double, Double> table) {
    if (table.size() < 2) {
      throw new IllegalArgumentException(
          "attenuation table has " + table.size() + " rows; give at least two, or one figure");
    }
    double[] sums = new double[5];
    table.forEach(
        (f, decibels) -> {
          if (!(f > 0) || !(decibels > 0) || !Double.isFinite(f + decibels)) {
            throw new IllegalArgumentException(
                "attenuation " + decibels + " dB/m at " + f + " Hz must be positive");
          }
          double x = Math.sqrt(f) / decibels;
          double y = f / decibels;
          sums[0] += x * x;
          sums[1] += x * y;
          sums[2] += y * y;
          sums[3] += x;
          sums[4] += y;
        });
    double determinant = sums[0] * sums[2] - sums[1] * sums[1];
    double c = (sums[3] * sums[2] - sums[4] * sums[1]) / determinant;
    double d = (sums[0] * sums[4] - sums[1] * sums[3]) / determinant;
    if (!(d > 0)) {
      return new LineAttenuation(sums[3] / sums[0], 0);
    }
    return c > 0 ? new LineAttenuation(c, d) : new LineAttenuation(0, sums[4] / sums[2]);
  }

  /** Matched attenuation in dB per metre at a frequency in hertz. */
  public double decibelsPerMetre(double frequencyHz) {
    return conductor * Math.sqrt(frequencyHz) + dielectric * frequencyHz;
  }

  /** Conductor part in nepers per metre. */
  double conductorNepers(double frequencyHz) {
    return conductor * Math.sqrt(frequencyHz) / DECIBELS_PER_NEPER;
  }

  /** Dielectric part in nepers per metre. */
  double dielectricNepers(double frequencyHz) {
    return dielectric * frequencyHz / DECIBELS_PER_NEPER;
  }
}
