package org.spanwire.study;

import java.util.List;
import java.util.Map;
import java.util.concurrent.ConcurrentHashMap;
import org.spanwire.Solution;
import org.spanwire.SolutionFamily;
import org.spanwire.Solver;

/**
 * An installation solved at many frequencies from few meshes; every operation equals that of {@link
 * Installation#solve} within the solver's tolerance. The meshes are judged by the error behind the
 * feed chain, as the antenna is driven there. Safe for use by several threads.
 */
final class InstallationFamily {

  private final Installation installation;
  private final Solver solver;
  private final SolutionFamily family;
  private final Map<Double, FeedLineCircuit.Solved> solved = new ConcurrentHashMap<>();

  /**
   * Solves.
   *
   * @param frequenciesHz frequencies in hertz, at least one
   * @param threads number of threads; the results do not depend on it
   * @throws org.spanwire.ToleranceException if the wanted tolerance could not be reached
   */
  InstallationFamily(
      Installation installation, Solver solver, List<Double> frequenciesHz, int threads) {
    this.installation = installation;
    this.solver = solver;
    double[] frequencies = frequenciesHz.stream().mapToDouble(Double::doubleValue).toArray();
    family =
        solver.family(
            installation.modelled(), frequencies, new double[1], threads, this::relativeError);
  }

  /** Of the operation that a solution leads to, which is kept if it is good enough. */
  private double relativeError(Solution solution) {
    FeedLineCircuit.Solved operated = installation.operate(solution);
    double error = operated.operation().relativeError();
    if (error <= solver.options().tolerance()) {
      solved.put(solution.frequencyHz(), operated);
    }
    return error;
  }

  /**
   * The operation at a frequency in hertz: those that were asked for are at hand, others between
   * them cost little.
   */
  Operation at(double frequencyHz) {
    return withPorts(frequencyHz).operation();
  }

  /** The same with the terminals of the antenna. */
  FeedLineCircuit.Solved withPorts(double frequencyHz) {
    if (!solved.containsKey(frequencyHz)) {
      double error = relativeError(family.at(frequencyHz));
      if (!(error <= solver.options().tolerance())) {
        solved.put(frequencyHz, installation.solveWithPorts(solver, frequencyHz));
      }
    }
    return solved.get(frequencyHz);
  }
}
