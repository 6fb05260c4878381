package org.spanwire.practice;

/**
 * Where the air around a wire begins to discharge: Peek's law for parallel round wires, visual
 * corona at a peak surface field of 30 kV/cm · m · δ (1 + 0.301/√(δ r)), r in centimetres (F. W.
 * Peek, Dielectric Phenomena in High Voltage Engineering, 3rd edition, 1929, chapter 3), from
 * memory.
 *
 * <p>Assumptions: the law was measured at power frequency; at HF discharges begin at somewhat less.
 * Dry, clean wire away from its ends; rain, ice, burrs and cut ends lower the onset several times.
 *
 * @param irregularity m: 1 for a polished wire, about 0.8 for a stranded or weathered one
 * @param relativeAirDensity δ: 1 at 25 °C and 1013 hPa
 */
public record Corona(double irregularity, double relativeAirDensity) {

  /** A weathered or stranded wire at sea level. */
  public static final Corona WEATHERED = new Corona(0.8, 1);

  /** Checks the ranges. */
  public Corona {
    if (!(irregularity > 0 && irregularity <= 1) || !(relativeAirDensity > 0)) {
      throw new IllegalArgumentException(
          "irregularity "
              + irregularity
              + " must lie above 0 and at most 1, relative air density "
              + relativeAirDensity
              + " above 0");
    }
  }

  /**
   * Peak surface field in volts per metre at which corona begins.
   *
   * @param radius outer radius in metres, positive
   */
  public double onset(double radius) {
    double delta = relativeAirDensity;
    return 3e6 * irregularity * delta * (1 + 0.0301 / Math.sqrt(delta * radius));
  }
}
