package org.spanwire.validation;

import java.util.OptionalDouble;
import org.apache.commons.math3.analysis.solvers.BrentSolver;
import org.apache.commons.math3.complex.Complex;
import org.spanwire.FieldSource;
import org.spanwire.PrescribedCurrent;
import org.spanwire.Solution;
import org.spanwire.result.Direction;
import org.spanwire.result.PowerBudget;
import org.spanwire.unit.PhysicalConstants;

/** Quantities of the far field and of the power. */
final class Patterns {

  /**
   * Directivity of a thin half-wave dipole with sinusoidal current, 1.640922 (Balanis, Antenna
   * Theory, chapter 4).
   */
  private static final double HALF_WAVE_DIPOLE_DBI = 10 * Math.log10(1.640922377);

  private static final double HALF_POWER_DECIBELS = 10 * Math.log10(2);
  private static final int MOST_TRIALS = 100;

  private Patterns() {}

  static Complex peakGain(ValidationCase c, Workbench bench) {
    return new Complex(source(c, bench).peakGain().gainDbi());
  }

  static Complex drivenGainIncrease(ValidationCase c, Workbench bench) {
    FieldSource both =
        Prescribed.isAskedFor(c.structure())
            ? Prescribed.of(c.structure())
            : bench.solveWithCurrents(c.structure());
    double driven = both.peakGain().gainDbi();
    double single = bench.source(c.reference()).peakGain().gainDbi();
    return new Complex(driven - single);
  }

  static Complex peakGainOverDipole(ValidationCase c, Workbench bench) {
    return peakGain(c, bench).subtract(HALF_WAVE_DIPOLE_DBI);
  }

  static Complex peakElevation(ValidationCase c, Workbench bench) {
    return new Complex(elevation(source(c, bench)));
  }

  /** Angle of the main lobe from a wire along z, in degrees. */
  static Complex lobeAngle(ValidationCase c, Workbench bench) {
    return new Complex(90 - Math.abs(elevation(source(c, bench))));
  }

  static Complex gainAt(ValidationCase c, Workbench bench) {
    Parameters p = c.parameters();
    Direction direction =
        new Direction(p.number("towardElevationDegrees"), p.number("towardAzimuthDegrees", 0));
    return new Complex(source(c, bench).gainDbi(direction));
  }

  /** Width of the lobe at right angles to a wire along z, in degrees. */
  static Complex beamwidth(ValidationCase c, Workbench bench) {
    FieldSource source = source(c, bench);
    double half = source.gainDbi(new Direction(0, 0)) - HALF_POWER_DECIBELS;
    double edge =
        new BrentSolver(1e-6)
            .solve(MOST_TRIALS, e -> source.gainDbi(new Direction(e, 0)) - half, 0, 80);
    return new Complex(2 * edge);
  }

  static Complex efficiency(ValidationCase c, Workbench bench) {
    if (Prescribed.isAskedFor(c.structure())) {
      PrescribedCurrent current = Prescribed.of(c.structure());
      double radiated = current.radiatedPower();
      return new Complex(radiated / (radiated + current.absorbedPower()));
    }
    return new Complex(solve(c, bench).radiationEfficiency());
  }

  /** Field along the ground in mV/m at a distance over perfect ground, 1 kW radiated. */
  static Complex unattenuatedField(ValidationCase c, Workbench bench) {
    double gain = Math.pow(10, source(c, bench).gainDbi(new Direction(0, 0)) / 10);
    double volts =
        Math.sqrt(1e3 * gain * PhysicalConstants.IMPEDANCE_OF_FREE_SPACE / (4 * Math.PI));
    return new Complex(1e3 * volts / c.parameters().number("atRhoMetres"));
  }

  /** Effective length at right angles to a prescribed current, in wavelengths. */
  static Complex effectiveLength(ValidationCase c, Workbench bench) {
    double metres =
        Prescribed.of(c.structure()).effectiveLength(new Direction(0, 0), Complex.ONE).magnitude();
    return new Complex(metres / PhysicalConstants.wavelength(c.structure().frequencyHz()));
  }

  static Complex efficiencyDecibels(ValidationCase c, Workbench bench) {
    return new Complex(10 * Math.log10(solve(c, bench).radiationEfficiency()));
  }

  static Complex powerBalance(ValidationCase c, Workbench bench) {
    OptionalDouble balance = solve(c, bench).powerBalance();
    return new Complex(balance.orElseThrow());
  }

  static Complex powerBalanceWithSoil(ValidationCase c, Workbench bench) {
    PowerBudget budget = solve(c, bench).powerBudgetWithSoil();
    double leaving =
        budget.radiated()
            + budget.conductorLoss()
            + budget.fittingLoss()
            + budget.soilAbsorbed().orElseThrow();
    return new Complex(leaving / budget.accepted());
  }

  private static double elevation(FieldSource source) {
    return source.peakGain().elevationDegrees().orElseThrow();
  }

  private static FieldSource source(ValidationCase c, Workbench bench) {
    return bench.source(c.structure());
  }

  private static Solution solve(ValidationCase c, Workbench bench) {
    return bench.solve(c.structure());
  }
}
