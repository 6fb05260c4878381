package org.spanwire.study;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.concurrent.Callable;
import java.util.function.DoubleFunction;
import org.apache.commons.math3.complex.Complex;
import org.spanwire.Solution;
import org.spanwire.Solver;
import org.spanwire.result.Direction;
import org.spanwire.result.GainSample;
import org.spanwire.result.PowerBudget;

/**
 * Solves an antenna at single frequencies.
 *
 * @param elevationsDegrees elevations to give the gain at
 * @param azimuthsDegrees azimuths to give the gain at; none for the largest gain over azimuth at
 *     each elevation
 * @param currentsPerWire current samples per wire, 0 for none
 * @param powerBudget whether to compute where the power goes, the power absorbed by soil included
 */
public record FrequencyStudy(
    List<Double> elevationsDegrees,
    List<Double> azimuthsDegrees,
    int currentsPerWire,
    boolean powerBudget) {

  /** Number of frequencies from which on a common mesh pays. */
  private static final int MANY = 6;

  /** Takes copies. */
  public FrequencyStudy {
    elevationsDegrees = List.copyOf(elevationsDegrees);
    azimuthsDegrees = List.copyOf(azimuthsDegrees);
  }

  /**
   * Solves at all frequencies, on several threads.
   *
   * @param frequenciesHz frequencies in hertz
   * @param threads number of threads; the results do not depend on it
   * @return one entry per frequency, in the order of the frequencies
   */
  public List<SolvedFrequency> run(
      Solver solver, Installation installation, List<Double> frequenciesHz, int threads) {
    DoubleFunction<Operation> solve =
        frequenciesHz.size() < MANY
            ? frequency -> installation.solve(solver, frequency)
            : new InstallationFamily(installation, solver, frequenciesHz, threads)::at;
    List<Callable<SolvedFrequency>> tasks = new ArrayList<>();
    for (double frequency : frequenciesHz) {
      tasks.add(() -> extract(installation, solve.apply(frequency)));
    }
    try (Workers workers = new Workers(threads)) {
      return workers.run(tasks);
    }
  }

  private SolvedFrequency extract(Installation installation, Operation operation) {
    Solution solution = operation.solution();
    Optional<PowerBudget> budget =
        powerBudget ? Optional.of(solution.powerBudgetWithSoil()) : Optional.empty();
    return new SolvedFrequency(
        solution.frequencyHz(),
        operation.feeds(),
        installation.hasFeedLine()
            ? new Complex[][] {{operation.feeds().get(0).impedance()}}
            : solution.portMatrix(),
        solution.peakGain(),
        gainSamples(solution),
        solution.radiationEfficiency(),
        budget.isPresent() ? balance(budget.get()) : solution.powerBalance(),
        budget,
        budget.flatMap(operation::ledger),
        operation.commonMode(),
        currentsPerWire > 0 ? installation.currents(operation, currentsPerWire) : List.of(),
        solution.unknowns(),
        solution.warnings());
  }

  private List<GainSample> gainSamples(Solution solution) {
    List<GainSample> samples = new ArrayList<>();
    for (double elevation : elevationsDegrees) {
      if (azimuthsDegrees.isEmpty()) {
        samples.add(solution.gainAtElevation(elevation));
      }
      for (double azimuth : azimuthsDegrees) {
        double gain = solution.gainDbi(new Direction(elevation, azimuth));
        samples.add(new GainSample(elevation, OptionalDouble.of(azimuth), gain));
      }
    }
    return samples;
  }

  private static OptionalDouble balance(PowerBudget budget) {
    double found =
        budget.radiated()
            + budget.conductorLoss()
            + budget.fittingLoss()
            + budget.soilAbsorbed().orElse(0);
    return OptionalDouble.of(found / budget.accepted());
  }
}
