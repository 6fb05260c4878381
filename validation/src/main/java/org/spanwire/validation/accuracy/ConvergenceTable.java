package org.spanwire.validation.accuracy;

import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import org.apache.commons.math3.complex.Complex;
import org.spanwire.Antenna;
import org.spanwire.Solution;
import org.spanwire.Solver;
import org.spanwire.SolverOptions;
import org.spanwire.ToleranceException;
import org.spanwire.unit.PhysicalConstants;

/**
 * Input impedance of one structure at tolerances from loose to tight, as a Markdown table: error
 * relative to the finest run against unknowns, the error the solver states, and the local slope −d
 * log(error)/d log(unknowns). For a method that converges like a fixed power of the unknowns the
 * slope stays; here it grows.
 */
final class ConvergenceTable {

  private static final double FREQUENCY_HZ = 30e6;

  private static final double LOOSEST = 1e-2;
  private static final double TIGHTEST = 1e-7;

  /** No step asks for less than this, so that no level of refinement is jumped over. */
  private static final double[] STEPS = {5e-4, 1e-4, 2e-5, 3e-6, 1e-6, TIGHTEST};

  private final ConvergenceStructure structure;
  private final List<Run> runs;

  /**
   * One solution.
   *
   * @param unknowns number of unknowns
   * @param impedance input impedance in ohms
   * @param statedError relative error as the solver states it
   */
  record Run(int unknowns, Complex impedance, double statedError) {}

  private ConvergenceTable(ConvergenceStructure structure, List<Run> runs) {
    this.structure = structure;
    this.runs = runs;
  }

  /**
   * Solves a structure again and again, each time asking for a little less than the error stated
   * last, until the tightest tolerance or the solver's limit is reached.
   */
  static ConvergenceTable of(ConvergenceStructure structure) {
    Antenna antenna = structure.antenna(PhysicalConstants.wavelength(FREQUENCY_HZ));
    List<Run> runs = new ArrayList<>();
    double tolerance = LOOSEST;
    while (true) {
      Optional<Run> run = run(antenna, tolerance);
      if (run.isEmpty()) {
        break;
      }
      if (runs.isEmpty() || run.get().unknowns > runs.get(runs.size() - 1).unknowns) {
        runs.add(run.get());
      }
      if (tolerance == TIGHTEST) {
        break;
      }
      double step = STEPS[Math.min(runs.size(), STEPS.length) - 1];
      tolerance = Math.max(step, 0.99 * run.get().statedError);
    }
    return new ConvergenceTable(structure, List.copyOf(runs));
  }

  private static Optional<Run> run(Antenna antenna, double tolerance) {
    try {
      Solution solution = new Solver(new SolverOptions(tolerance)).solve(antenna, FREQUENCY_HZ);
      Complex z = solution.impedance();
      return Optional.of(
          new Run(solution.unknowns(), z, solution.impedanceErrorOhm("main") / z.abs()));
    } catch (ToleranceException e) {
      return Optional.empty();
    }
  }

  /** The runs from coarse to fine. */
  List<Run> runs() {
    return runs;
  }

  /** Error of a run relative to the finest. */
  double error(int run) {
    Complex finest = runs.get(runs.size() - 1).impedance;
    return runs.get(run).impedance.subtract(finest).abs() / finest.abs();
  }

  /** Local slope between a run and the one before it. */
  double slope(int run) {
    double decades = Math.log(error(run - 1) / error(run));
    return decades / Math.log((double) runs.get(run).unknowns / runs.get(run - 1).unknowns);
  }

  /** The table with its heading. */
  String markdown() {
    StringBuilder out = new StringBuilder("### ").append(structure.title()).append("\n\n");
    out.append("| unknowns | R, ohm | X, ohm | error | stated | slope |\n");
    out.append("|---:|---:|---:|---:|---:|---:|\n");
    for (int i = 0; i < runs.size(); i++) {
      Run run = runs.get(i);
      boolean finest = i == runs.size() - 1;
      out.append(
          String.format(
              Locale.ROOT,
              "| %d | %.5f | %.5f | %s | %.1e | %s |%n",
              run.unknowns,
              run.impedance.getReal(),
              run.impedance.getImaginary(),
              finest ? "reference" : String.format(Locale.ROOT, "%.1e", error(i)),
              run.statedError,
              i == 0 || finest ? "" : String.format(Locale.ROOT, "%.1f", slope(i))));
    }
    return out.toString();
  }
}
