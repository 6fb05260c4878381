package org.spanwire;

import java.math.BigDecimal;
import java.math.MathContext;
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
    return new Warning(
        layer.place() == SoilLayer.Place.ON_THE_SOIL ? "snow-over-soil" : "layered-soil",
        String.format(
            Locale.ROOT,
            "%s of relative permittivity %.3g%s left out; at %s straight up |reflection| is %.2f with"
                + " it, %.2f without, as if the surface lay %s %s (plane wave, Wait 1962; low wires may"
                + " feel more); solve with the wires so much %s too",
            layer.place() == SoilLayer.Place.ON_THE_SOIL
                ? "layer of " + metres(layer.metres()) + " on the soil,"
                : "ground below " + metres(layer.metres()) + ",",
            layer.relativePermittivity(),
            layer.conductivity() == 0
                ? ","
                : String.format(Locale.ROOT, ", %.2g S/m,", layer.conductivity()),
            new Quantity(frequencyHz, Dimension.FREQUENCY),
            real.abs(),
            bare.abs(),
            metres(rounded(Math.abs(higher))),
            higher < 0 ? "lower" : "higher",
            higher < 0 ? "higher" : "lower"));
  }

  /** Two digits. */
  private static double rounded(double value) {
    return new BigDecimal(value, new MathContext(2)).doubleValue();
  }

  private static Quantity metres(double length) {
    return new Quantity(length, Dimension.LENGTH);
  }
}
