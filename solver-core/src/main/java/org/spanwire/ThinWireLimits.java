package org.spanwire;

import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import org.spanwire.geometry.Wire;
import org.spanwire.result.Warning;
import org.spanwire.unit.PhysicalConstants;

/** Named warnings for designs at the edge of the thin-wire model. */
final class ThinWireLimits {

  /**
   * Radius over wavelength above which a current that depends on azimuth is no longer negligible.
   */
  private static final double THICK = 0.01;

  /** Length over radius of a straight stretch below which end faces matter. */
  private static final double STUBBY = 20;

  private ThinWireLimits() {}

  static List<Warning> warnings(Antenna antenna, double frequencyHz) {
    List<Warning> warnings = new ArrayList<>();
    double wavelength = PhysicalConstants.wavelength(frequencyHz);
    for (Wire wire : antenna.wires()) {
      double radius = wire.conductor().outerRadius();
      if (radius > THICK * wavelength) {
        warnings.add(
            new Warning(
                "radius-over-wavelength",
                String.format(
                    Locale.ROOT,
                    "wire '%s': radius %.4g m is %.3g wavelengths, limit %.2g; the thin-wire model"
                        + " leaves out currents around the wire, use a thinner conductor",
                    wire.name(),
                    radius,
                    radius / wavelength,
                    THICK)));
      }
      if (wire.length() < STUBBY * radius) {
        warnings.add(
            new Warning(
                "length-over-radius",
                String.format(
                    Locale.ROOT,
                    "wire '%s': length %.4g m is %.3g radii, limit %.0f; the end faces are left out,"
                        + " use a thinner conductor",
                    wire.name(),
                    wire.length(),
                    wire.length() / radius,
                    STUBBY)));
      }
    }
    return warnings;
  }
}
