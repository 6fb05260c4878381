package org.spanwire.validation;

import java.util.HashMap;
import java.util.Map;
import org.apache.commons.math3.analysis.solvers.BrentSolver;
import org.apache.commons.math3.complex.Complex;
import org.spanwire.Antenna;
import org.spanwire.FieldSource;
import org.spanwire.Solution;
import org.spanwire.Solver;
import org.spanwire.SolverOptions;
import org.spanwire.geometry.Feed;

/** Solves the structures of one group of cases, each of them once. For one thread. */
final class Workbench {

  /**
   * A tenth of the tightest tolerance of the cases, so that the solver's own error does not decide.
   */
  static final double SOLVER_TOLERANCE = 1e-4;

  private static final int MOST_TRIALS = 60;
  private static final double ROOT_ACCURACY = 1e-7;

  private final Solver solver =
      new Solver(SolverOptions.defaults().withTolerance(SOLVER_TOLERANCE));
  private final Map<Structure, Solution> solved = new HashMap<>();

  /** What makes the fields: the solution, or the currents that a case prescribes. */
  FieldSource source(Structure structure) {
    return Prescribed.isAskedFor(structure) ? Prescribed.of(structure) : solve(structure);
  }

  /** Input impedance, solved or by induced EMF. */
  Complex impedance(Structure structure) {
    return Prescribed.isAskedFor(structure)
        ? Prescribed.impedance(structure, 0, 0)
        : solve(structure).impedance();
  }

  /** Impedance between two feeds, solved or by induced EMF. */
  Complex impedance(Structure structure, int row, int column) {
    return Prescribed.isAskedFor(structure)
        ? Prescribed.impedance(structure, row, column)
        : solve(structure).portMatrix()[row][column];
  }

  /** The solution of another antenna, not kept. */
  Solution solve(Antenna antenna, double frequencyHz) {
    return solver.solve(antenna, frequencyHz);
  }

  /** The solution with every feed at 1 V. */
  Solution solve(Structure structure) {
    Structure bare = structure.bare();
    Solution known = solved.get(bare);
    if (known == null) {
      known = solver.solve(bare.antenna(), bare.frequencyHz());
      solved.put(bare, known);
    }
    return known;
  }

  /**
   * The solution with currents of equal magnitude in two feeds, the second ahead by {@code
   * phaseDegrees}.
   */
  Solution solveWithCurrents(Structure structure) {
    Complex[][] z = solve(structure).portMatrix();
    double phase = Math.toRadians(structure.parameters().number("phaseDegrees"));
    Complex second = new Complex(Math.cos(phase), Math.sin(phase));
    Antenna antenna = structure.antenna();
    Antenna.Builder driven = Antenna.builder().ground(antenna.ground());
    antenna.wires().forEach(driven::wire);
    for (int i = 0; i < z.length; i++) {
      Feed feed = antenna.feeds().get(i);
      driven.feed(feed.withVoltage(z[i][0].add(z[i][1].multiply(second))));
    }
    return solver.solve(driven.build(), structure.frequencyHz());
  }

  /**
   * The value of the parameter named by {@code searchParameter} at which the reactance vanishes,
   * between {@code searchFrom} and {@code searchTo}.
   */
  double resonance(Structure structure) {
    String name = searched(structure);
    return new BrentSolver(ROOT_ACCURACY)
        .solve(
            MOST_TRIALS,
            value -> impedance(structure.with(name, value)).getImaginary(),
            structure.parameters().number("searchFrom"),
            structure.parameters().number("searchTo"));
  }

  /** Resistance in ohms where the reactance vanishes. */
  double resonantResistance(Structure structure) {
    return impedance(structure.with(searched(structure), resonance(structure))).getReal();
  }

  private static String searched(Structure structure) {
    return structure.parameters().text("searchParameter", "length");
  }
}
