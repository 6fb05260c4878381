package org.spanwire;

import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import org.spanwire.geometry.Wire;
import org.spanwire.medium.Insulation;
import org.spanwire.result.Warning;
import org.spanwire.unit.PhysicalConstants;

/** Named warnings for designs at the edge of the model. */
final class ThinWireLimits {

  /**
   * Radius over wavelength above which a current that depends on azimuth is no longer negligible.
   */
  private static final double THICK = 0.01;

  /** Length over radius of a wire below which end faces matter. */
  private static final double STUBBY = 20;

  /**
   * Phase k b √ε across a coat of outer radius b above which its field is no longer that of a
   * static charge and a direct current. At this limit the velocity along the wire is off by up to
   * 0.04 per cent: largest difference to the exact surface wave (Goubau 1950) for b up to four
   * times the metal's radius and ε up to 30; it grows as the square.
   */
  private static final double THICK_COAT = 0.1;

  private ThinWireLimits() {}

  static List<Warning> warnings(Antenna antenna, double frequencyHz) {
    List<Warning> warnings = new ArrayList<>();
    double wavelength = PhysicalConstants.wavelength(frequencyHz);
    for (Wire wire : antenna.wires()) {
      double radius = wire.conductor().outerRadius();
      if (radius > THICK * wavelength) {
        warnings.add(radiusOverWavelength(wire, radius, wavelength));
      }
      if (wire.length() < STUBBY * radius) {
        warnings.add(lengthOverRadius(wire, radius));
      }
      wire.conductor()
          .insulation()
          .map(coat -> radius / wavelength * 2 * Math.PI * Math.sqrt(coat.relativePermittivity()))
          .filter(phase -> phase > THICK_COAT)
          .ifPresent(phase -> warnings.add(coatOverWavelength(wire, phase)));
    }
    warnings.addAll(NearbyStretches.warnings(antenna.wires(), antenna.ground()));
    warnings.addAll(LayerWarnings.of(antenna.ground(), frequencyHz));
    return warnings;
  }

  private static Warning radiusOverWavelength(Wire wire, double radius, double wavelength) {
    return new Warning(
        "radius-over-wavelength",
        String.format(
            Locale.ROOT,
            "wire '%s': radius %.4g m is %.3g wavelengths, limit %.2g; the thin-wire model"
                + " leaves out currents around the wire, use a thinner conductor",
            wire.name(),
            radius,
            radius / wavelength,
            THICK));
  }

  private static Warning lengthOverRadius(Wire wire, double radius) {
    return new Warning(
        "length-over-radius",
        String.format(
            Locale.ROOT,
            "wire '%s': length %.4g m is %.3g radii, limit %.0f; the end faces are left out,"
                + " use a thinner conductor",
            wire.name(),
            wire.length(),
            wire.length() / radius,
            STUBBY));
  }

  private static Warning coatOverWavelength(Wire wire, double phase) {
    Insulation coat = wire.conductor().insulation().orElseThrow();
    return new Warning(
        "coat-over-wavelength",
        String.format(
            Locale.ROOT,
            "wire '%s': coat of %.4g m outer radius and permittivity %.3g is %.3g rad of phase"
                + " thick, limit %.2g; the velocity along the wire may be up to %.2g %% off, use a"
                + " thinner coat",
            wire.name(),
            wire.conductor().outerRadius(),
            coat.relativePermittivity(),
            phase,
            THICK_COAT,
            0.04 * phase * phase / (THICK_COAT * THICK_COAT)));
  }
}
