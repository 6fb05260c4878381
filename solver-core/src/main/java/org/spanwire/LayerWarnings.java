package org.spanwire;

import java.util.List;
import java.util.Locale;
import org.apache.commons.math3.complex.Complex;
import org.spanwire.medium.Ground;
import org.spanwire.medium.Soil;
import org.spanwire.medium.SoilLayer;
import org.spanwire.result.Warning;
import org.spanwire.unit.Dimension;
import org.spanwire.unit.PhysicalConstants;
import org.spanwire.unit.Quantity;

/** Named warnings for what lies on the soil or beneath it and is left out, with its size. */
final class LayerWarnings {

  private LayerWarnings() {}

  static List<Warning> of(Ground ground, double frequencyHz) {
    return ground instanceof Soil soil
        ? soil.layers().stream().map(layer -> warning(soil, layer, frequencyHz)).toList()
        : List.of();
  }

  private static Warning warning(Soil soil, SoilLayer layer, double frequencyHz) {
    Complex bare = SoilLayer.bareReflection(soil, frequencyHz);
    Complex real = layer.reflection(soil, frequencyHz);
    // A surface higher by d turns the phase by 2kd.
    double higher =
        real.divide(bare).getArgument() / (2 * PhysicalConstants.wavenumber(frequencyHz));
    boolean above = layer.place() == SoilLayer.Place.ON_THE_SOIL;
    return new Warning(
        above ? "snow-over-soil" : "layered-soil",
        String.format(
            Locale.ROOT,
            "%s relative permittivity %.3g, conductivity %.2g S/m, is left out of the model;"
                + " straight up the reflection coefficient is %.3f with it and %.3f without, its"
                + " phase as if the surface lay %.2g m %s (plane wave, Wait 1962; low wires may"
                + " feel more): solve with the wires so much %s too",
            above
                ? "a layer of " + metres(layer.metres()) + " on the soil,"
                : "the ground below " + metres(layer.metres()) + ",",
            layer.relativePermittivity(),
            layer.conductivity(),
            real.abs(),
            bare.abs(),
            Math.abs(higher),
            higher < 0 ? "lower" : "higher",
            higher < 0 ? "higher" : "lower"));
  }

  private static Quantity metres(double length) {
    return new Quantity(length, Dimension.LENGTH);
  }
}
