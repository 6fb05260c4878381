package org.spanwire.study;

import java.util.ArrayList;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.concurrent.Callable;
import org.spanwire.SolutionFamily;
import org.spanwire.Solver;

/**
 * An installation solved at many frequencies from few meshes; every operation equals that of {@link
 * Installation#solve} within the solver's tolerance. Safe for use by several threads.
 */
final class InstallationFamily {

  private final Installation installation;
  private final Solver solver;
  private final List<SolutionFamily> families = new ArrayList<>();
  private final Map<Double, Operation> solved = new HashMap<>();

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
    List<Double> left = frequenciesHz.stream().distinct().toList();
    Solver asked = solver;
    try (Workers workers = new Workers(threads)) {
      while (!left.isEmpty()) {
        double[] frequencies = left.stream().mapToDouble(Double::doubleValue).toArray();
        families.add(asked.family(installation.modelled(), frequencies, new double[1], threads));
        Operation worst = solve(left, workers);
        left = left.stream().filter(f -> !solved.containsKey(f)).toList();
        if (!left.isEmpty()) {
          asked = installation.tighter(solver, asked, families.size(), worst);
        }
      }
    }
  }

  /** Solves with the last family, keeps what is good enough and returns the worst of all. */
  private Operation solve(List<Double> frequencies, Workers workers) {
    SolutionFamily family = families.get(families.size() - 1);
    List<Callable<Operation>> tasks = new ArrayList<>();
    frequencies.forEach(f -> tasks.add(() -> installation.operate(family.at(f)).operation()));
    Operation worst = null;
    for (Operation operation : workers.run(tasks)) {
      if (operation.relativeError() <= solver.options().tolerance()) {
        solved.put(operation.solution().frequencyHz(), operation);
      }
      if (worst == null || operation.relativeError() > worst.relativeError()) {
        worst = operation;
      }
    }
    return worst;
  }

  /**
   * The operation at a frequency in hertz: those that were asked for are at hand, others between
   * them cost little.
   */
  Operation at(double frequencyHz) {
    Operation known = solved.get(frequencyHz);
    if (known != null) {
      return known;
    }
    for (SolutionFamily family : families) {
      Operation found = installation.operate(family.at(frequencyHz)).operation();
      if (found.relativeError() <= solver.options().tolerance()) {
        return found;
      }
    }
    return installation.solve(solver, frequencyHz);
  }
}
