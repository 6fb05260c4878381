package org.spanwire.cli.command;

import java.util.List;

/** The options for gain in chosen directions. */
final class GainDirections {

  private GainDirections() {}

  /** Refuses azimuths without elevations and elevations out of range. */
  static void check(List<Double> elevations, List<Double> azimuths) {
    if (!azimuths.isEmpty() && elevations.isEmpty()) {
      throw new InputException("--azimuth: needs --elevation; add one such as --elevation 30");
    }
    for (double elevation : elevations) {
      if (!(Math.abs(elevation) <= 90)) {
        throw new InputException(
            "--elevation " + elevation + ": must lie between -90 and 90 degrees");
      }
    }
  }
}
