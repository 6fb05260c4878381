package org.spanwire.cli.command;

import java.util.List;
import picocli.CommandLine.Option;

/** Chosen directions to give the gain in. */
final class GainDirections {

  @Option(
      names = "--elevation",
      paramLabel = "E",
      split = ",",
      converter = Converters.Degrees.class,
      description =
          "Elevations in degrees to give the gain at, the largest over azimuth unless --azimuth is"
              + " given.")
  private List<Double> elevations = List.of();

  @Option(
      names = "--azimuth",
      paramLabel = "A",
      split = ",",
      converter = Converters.Degrees.class,
      description = "Azimuths in degrees, counter-clockwise from +x, for every --elevation.")
  private List<Double> azimuths = List.of();

  List<Double> elevations() {
    return elevations;
  }

  List<Double> azimuths() {
    return azimuths;
  }

  /** Refuses azimuths without elevations and elevations out of range. */
  void check() {
    if (!azimuths.isEmpty() && elevations.isEmpty()) {
      throw new InputException("--azimuth: needs --elevation; add one such as --elevation 30");
    }
    checkElevations(elevations);
  }

  /** Refuses elevations out of range. */
  static void checkElevations(List<Double> elevations) {
    for (double elevation : elevations) {
      if (!(Math.abs(elevation) <= 90)) {
        throw new InputException(
            "--elevation " + elevation + ": must lie between -90 and 90 degrees");
      }
    }
  }
}
