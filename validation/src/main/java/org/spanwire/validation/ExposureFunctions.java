package org.spanwire.validation;

import java.util.List;
import org.apache.commons.math3.complex.Complex;
import org.spanwire.PrescribedCurrent;
import org.spanwire.design.ExposureLimit;
import org.spanwire.geometry.Point;
import org.spanwire.geometry.Wire;
import org.spanwire.medium.Conductor;
import org.spanwire.medium.Materials;
import org.spanwire.practice.FarFieldScreen;
import org.spanwire.result.NearField;
import org.spanwire.unit.PhysicalConstants;

/** Limits of exposure, the far-field screen, and plane and spherical waves. */
final class ExposureFunctions {

  private static final double FIELD_FREQUENCY = 14.2e6;

  /** Length of a Hertz dipole over the wavelength. */
  private static final double SHORT = 1e-6;

  private ExposureFunctions() {}

  private static ExposureLimit limit(Parameters p) {
    return ExposureLimit.find(p.text("limit", "")).orElseThrow();
  }

  static Complex electricLimit(ValidationCase c, Workbench bench) {
    return new Complex(limit(c.parameters()).electric(c.parameters().frequencyHz()));
  }

  static Complex magneticLimit(ValidationCase c, Workbench bench) {
    return new Complex(
        limit(c.parameters()).magnetic(c.parameters().frequencyHz()).orElse(Double.NaN));
  }

  static Complex densityLimit(ValidationCase c, Workbench bench) {
    return new Complex(
        limit(c.parameters()).powerDensity(c.parameters().frequencyHz()).orElse(Double.NaN));
  }

  static Complex averagingTime(ValidationCase c, Workbench bench) {
    return new Complex(limit(c.parameters()).averagingMinutes());
  }

  /** Distance at which a power and a gain make a power density. */
  static Complex screenDistance(ValidationCase c, Workbench bench) {
    Parameters p = c.parameters();
    double eirp = p.number("powerWatts") * Math.pow(10, p.number("gainDecibels") / 10);
    return new Complex(
        FarFieldScreen.distance(p.number("wattsPerSquareMetre"), eirp, p.number("fieldFactor")));
  }

  static Complex exemptErp(ValidationCase c, Workbench bench) {
    Parameters p = c.parameters();
    return new Complex(FarFieldScreen.exemptErp(p.frequencyHz(), p.number("distanceMetres")));
  }

  /** Fields far from a short dipole, where its wave is plane, scaled to a power density. */
  static Complex planeWaveElectric(ValidationCase c, Workbench bench) {
    return new Complex(scale(c) * wave(1e4).electric());
  }

  static Complex planeWaveMagnetic(ValidationCase c, Workbench bench) {
    return new Complex(scale(c) * wave(1e4).magnetic());
  }

  private static double scale(ValidationCase c) {
    NearField field = wave(1e4);
    return Math.sqrt(
        c.parameters().number("wattsPerSquareMetre") / (field.electric() * field.magnetic()));
  }

  /** E_θ/H_φ beside a Hertz dipole at kr. */
  static Complex waveImpedance(ValidationCase c, Workbench bench) {
    NearField field = wave(c.parameters().number("phaseDistance"));
    return new Complex(field.electric() / field.magnetic());
  }

  static Complex electricOverSoil(ValidationCase c, Workbench bench) {
    return new Complex(overSoil(c.parameters()).electric());
  }

  static Complex magneticOverSoil(ValidationCase c, Workbench bench) {
    return new Complex(overSoil(c.parameters()).magnetic());
  }

  /** Field of a level half wave with 1 A at its middle, along x about the origin, over soil. */
  private static NearField overSoil(Parameters p) {
    double frequency = p.frequencyHz();
    double k = PhysicalConstants.wavenumber(frequency);
    double half = Math.PI / (2 * k);
    double height = p.number("heightMetres");
    Wire wire =
        new Wire(
            "half wave",
            Conductor.bare(Materials.PERFECT, 1e-4),
            List.of(new Point(-half, 0, height), new Point(half, 0, height)));
    return PrescribedCurrent.builder(frequency)
        .ground(Parts.ground(p))
        .wire(wire, s -> new Complex(Math.sin(k * (half - Math.abs(s - half)))))
        .build()
        .nearField(new Point(p.number("atXMetres"), p.number("atYMetres"), p.number("atZMetres")));
  }

  private static NearField wave(double phaseDistance) {
    double half = 0.5 * SHORT * PhysicalConstants.wavelength(FIELD_FREQUENCY);
    Wire wire =
        new Wire(
            "dipole",
            Conductor.bare(Materials.PERFECT, 1e-3 * half),
            List.of(new Point(0, 0, -half), new Point(0, 0, half)));
    double distance = phaseDistance / PhysicalConstants.wavenumber(FIELD_FREQUENCY);
    return PrescribedCurrent.builder(FIELD_FREQUENCY)
        .wire(wire, s -> Complex.ONE)
        .build()
        .nearField(new Point(distance, 0, 0));
  }
}
