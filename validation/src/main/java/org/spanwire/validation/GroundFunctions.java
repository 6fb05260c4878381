package org.spanwire.validation;

import org.apache.commons.math3.complex.Complex;
import org.apache.commons.math3.optim.MaxEval;
import org.apache.commons.math3.optim.nonlinear.scalar.GoalType;
import org.apache.commons.math3.optim.univariate.BrentOptimizer;
import org.apache.commons.math3.optim.univariate.SearchInterval;
import org.apache.commons.math3.optim.univariate.UnivariateObjectiveFunction;
import org.spanwire.FieldSource;
import org.spanwire.PrescribedCurrent;
import org.spanwire.geometry.Point;
import org.spanwire.geometry.Wire;
import org.spanwire.medium.Conductor;
import org.spanwire.medium.Ground;
import org.spanwire.medium.Soil;
import org.spanwire.medium.Soils;
import org.spanwire.medium.SurfaceWave;
import org.spanwire.result.Direction;
import org.spanwire.unit.PhysicalConstants;

/** Reflection at soil, the wave along it, and its constants. */
final class GroundFunctions {

  /**
   * Field of a short vertical over perfect ground times distance, 1 kW at a gain of 3; ITU-R P.341
   * rounds it to 300 V.
   */
  private static final double CYMOMOTIVE_FORCE =
      Math.sqrt(3e3 * PhysicalConstants.IMPEDANCE_OF_FREE_SPACE / (4 * Math.PI));

  private static final double HEIGHT = 0.1;
  private static final double LENGTH = 1e-3;
  private static final int MOST_TRIALS = 200;

  private GroundFunctions() {}

  static Complex penetrationDepth(ValidationCase c, Workbench bench) {
    double frequency = c.parameters().frequencyHz();
    Complex index = soil(c).complexPermittivity(frequency).sqrt();
    double attenuation = PhysicalConstants.wavenumber(frequency) * Math.abs(index.getImaginary());
    return new Complex(1 / attenuation);
  }

  static Complex permittivity(ValidationCase c, Workbench bench) {
    return new Complex(named(c).relativePermittivity());
  }

  static Complex conductivity(ValidationCase c, Workbench bench) {
    return new Complex(named(c).conductivity());
  }

  private static Soil named(ValidationCase c) {
    return Soils.find(c.parameters().text("soilName", "")).orElseThrow();
  }

  private static Soil soil(ValidationCase c) {
    return (Soil) Parts.ground(c.parameters());
  }

  static Complex reflection(ValidationCase c, boolean vertical) {
    return reflection(c, vertical, c.parameters().number("towardElevationDegrees"));
  }

  /**
   * Reflection coefficient of a plane wave, from the far field of a short current over the soil and
   * over none: E = E_free (1 + Γ exp(−2jkh sin ψ)).
   */
  private static Complex reflection(ValidationCase c, boolean vertical, double elevation) {
    double frequency = c.parameters().frequencyHz();
    double wavelength = PhysicalConstants.wavelength(frequency);
    double height = HEIGHT * wavelength;
    double half = 0.5 * LENGTH * wavelength;
    Point low = vertical ? new Point(0, 0, height - half) : new Point(-half, 0, height);
    Point high = vertical ? new Point(0, 0, height + half) : new Point(half, 0, height);
    Wire wire = Wire.of("short", Conductor.perfect(0.1 * half), low, high);
    PrescribedCurrent over =
        PrescribedCurrent.builder(frequency).ground(soil(c)).wire(wire, s -> Complex.ONE).build();
    Direction direction = new Direction(elevation, 90);
    Complex ratio =
        component(over, direction, vertical)
            .divide(component(over.over(Ground.freeSpace()), direction, vertical));
    double phase =
        2 * PhysicalConstants.wavenumber(frequency) * height * Math.sin(Math.toRadians(elevation));
    return ratio.subtract(1).multiply(new Complex(Math.cos(phase), Math.sin(phase)));
  }

  private static Complex component(FieldSource source, Direction direction, boolean vertical) {
    return vertical ? source.farField(direction).theta() : source.farField(direction).phi();
  }

  /** Elevation in degrees at which vertical polarisation is reflected least. */
  static Complex leastReflectionElevation(ValidationCase c, Workbench bench) {
    return new Complex(
        new BrentOptimizer(1e-9, 1e-9)
            .optimize(
                new MaxEval(MOST_TRIALS),
                GoalType.MINIMIZE,
                new UnivariateObjectiveFunction(e -> reflection(c, true, e).abs()),
                new SearchInterval(0.01, 60, c.parameters().number("searchFrom")))
            .getPoint());
  }

  static Complex leastReflection(ValidationCase c, Workbench bench) {
    return new Complex(reflection(c, true, leastReflectionElevation(c, bench).getReal()).abs());
  }

  /** F(p) of a numerical distance |p| exp(−jb). */
  static Complex surfaceWaveAttenuation(ValidationCase c, Workbench bench) {
    double magnitude = c.parameters().number("numericalDistance");
    double b = Math.toRadians(c.parameters().number("numericalAngleDegrees"));
    return SurfaceWave.attenuation(new Complex(magnitude * Math.cos(b), -magnitude * Math.sin(b)));
  }

  /** mV/m at a distance by the flat-earth formula. */
  static Complex surfaceWaveField(ValidationCase c, Workbench bench) {
    Parameters p = c.parameters();
    double field =
        SurfaceWave.fieldStrength(
            soil(c), p.frequencyHz(), p.number("atRhoMetres"), CYMOMOTIVE_FORCE);
    return new Complex(1e3 * field);
  }

  /** The same by the near field of a short vertical, some thousandths of a wavelength up. */
  static Complex groundWaveField(ValidationCase c, Workbench bench) {
    double hertz = c.parameters().frequencyHz();
    double length = 5 * LENGTH * PhysicalConstants.wavelength(hertz);
    double amperes =
        CYMOMOTIVE_FORCE
            * 2
            * Math.PI
            / (PhysicalConstants.IMPEDANCE_OF_FREE_SPACE
                * PhysicalConstants.wavenumber(hertz)
                * length);
    Wire wire =
        Wire.of(
            "short",
            Conductor.perfect(0.01 * length),
            new Point(0, 0, length),
            new Point(0, 0, 2 * length));
    PrescribedCurrent current =
        PrescribedCurrent.builder(hertz)
            .ground(soil(c))
            .wire(wire, s -> new Complex(amperes))
            .build();
    Point point = new Point(c.parameters().number("atRhoMetres"), 0, 0);
    return new Complex(1e3 * current.nearField(point).ez().abs());
  }
}
