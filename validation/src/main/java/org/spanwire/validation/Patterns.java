package org.spanwire.validation;

import java.util.OptionalDouble;
import org.apache.commons.math3.analysis.solvers.BrentSolver;
import org.apache.commons.math3.complex.Complex;
import org.spanwire.Solution;
import org.spanwire.result.Direction;
import org.spanwire.result.PowerBudget;

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
    return new Complex(solve(c, bench).peakGain().gainDbi());
  }

  static Complex drivenGainIncrease(ValidationCase c, Workbench bench) {
    double driven = bench.solveWithCurrents(c.structure()).peakGain().gainDbi();
    double single = bench.solve(c.reference()).peakGain().gainDbi();
    return new Complex(driven - single);
  }

  static Complex peakGainOverDipole(ValidationCase c, Workbench bench) {
    return peakGain(c, bench).subtract(HALF_WAVE_DIPOLE_DBI);
  }

  static Complex peakElevation(ValidationCase c, Workbench bench) {
    return new Complex(elevation(solve(c, bench)));
  }

  /** Angle of the main lobe from a wire along z, in degrees. */
  static Complex lobeAngle(ValidationCase c, Workbench bench) {
    return new Complex(90 - Math.abs(elevation(solve(c, bench))));
  }

  static Complex gainAt(ValidationCase c, Workbench bench) {
    Parameters p = c.parameters();
    Direction direction =
        new Direction(p.number("towardElevationDegrees"), p.number("towardAzimuthDegrees", 0));
    return new Complex(solve(c, bench).gainDbi(direction));
  }

  /** Width of the lobe at right angles to a wire along z, in degrees. */
  static Complex beamwidth(ValidationCase c, Workbench bench) {
    Solution solution = solve(c, bench);
    double half = solution.gainDbi(new Direction(0, 0)) - HALF_POWER_DECIBELS;
    double edge =
        new BrentSolver(1e-6)
            .solve(MOST_TRIALS, e -> solution.gainDbi(new Direction(e, 0)) - half, 0, 80);
    return new Complex(2 * edge);
  }

  static Complex efficiency(ValidationCase c, Workbench bench) {
    return new Complex(solve(c, bench).radiationEfficiency());
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

  private static double elevation(Solution solution) {
    return solution.peakGain().elevationDegrees().orElseThrow();
  }

  private static Solution solve(ValidationCase c, Workbench bench) {
    return bench.solve(c.structure());
  }
}
