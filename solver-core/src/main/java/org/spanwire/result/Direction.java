package org.spanwire.result;

/**
 * A direction in space.
 *
 * @param elevationDegrees elevation above the horizon (the x-y plane), −90 to 90 degrees
 * @param azimuthDegrees azimuth counter-clockwise from +x, any finite value
 */
public record Direction(double elevationDegrees, double azimuthDegrees) {

  /** Checks the ranges. */
  public Direction {
    if (!(elevationDegrees >= -90 && elevationDegrees <= 90)) {
      throw new IllegalArgumentException(
          "elevation " + elevationDegrees + " deg must lie between -90 and 90 deg");
    }
    if (!Double.isFinite(azimuthDegrees)) {
      throw new IllegalArgumentException("azimuth " + azimuthDegrees + " deg must be finite");
    }
  }
}
