package org.spanwire.study;

import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.concurrent.ConcurrentHashMap;
import org.spanwire.Solver;
import org.spanwire.design.Design;

/**
 * Installations of a design for values of its parameters, from solutions. What the feed chain alone
 * decides is not solved again. Safe for use by several threads.
 */
final class SolvedLooks {

  private final ParameterBox box;
  private final PortNumbers numbers;
  private final Solver solver;
  private final List<Integer> ofAntenna;
  private final Map<List<Double>, double[]> solved = new ConcurrentHashMap<>();

  SolvedLooks(ParameterBox box, PortNumbers numbers, Solver solver, double frequencyHz) {
    this.box = box;
    this.numbers = numbers;
    this.solver = solver;
    ofAntenna = box.ofAntenna(frequencyHz);
  }

  /** The installation with values in SI units, in the order of the box. */
  Look at(double... values) {
    return new Solved(installation(values), place(values));
  }

  /**
   * Solves ahead, the frequencies of a place from few meshes.
   *
   * @param places values of several installations
   * @param frequenciesHz frequencies in hertz that will be looked at
   */
  void solve(List<double[]> places, List<Double> frequenciesHz, int threads) {
    for (double[] values : places) {
      List<Double> place = place(values);
      List<Double> missing =
          frequenciesHz.stream().filter(f -> !solved.containsKey(key(place, f))).toList();
      if (!missing.isEmpty()) {
        InstallationFamily family =
            new InstallationFamily(installation(values), solver, missing, threads);
        missing.forEach(f -> solved.put(key(place, f), numbers.flat(family.withPorts(f))));
      }
    }
  }

  private Installation installation(double[] values) {
    Design design = box.with(values);
    return numbers.route() ? Installation.of(design) : Installation.withoutLine(design);
  }

  /** What of the values the antenna depends on. */
  private List<Double> place(double[] values) {
    return ofAntenna.stream().map(i -> values[i]).toList();
  }

  private static List<Double> key(List<Double> place, double frequencyHz) {
    List<Double> key = new ArrayList<>(place);
    key.add(frequencyHz);
    return key;
  }

  long solves() {
    return solved.size();
  }

  /** Solves when it is looked at. */
  private final class Solved implements Look {
    private final Installation installation;
    private final List<Double> place;

    Solved(Installation installation, List<Double> place) {
      this.installation = installation;
      this.place = place;
    }

    private double[] flat(double frequencyHz) {
      List<Double> key = key(place, frequencyHz);
      double[] known = solved.get(key);
      if (known == null) {
        known = numbers.solve(installation, solver, frequencyHz);
        solved.put(key, known);
      }
      return known;
    }

    @Override
    public double swr(int range, double frequencyHz, Plane plane) {
      return Look.swr(installation.planes(frequencyHz, numbers.ports(flat(frequencyHz))), plane);
    }

    @Override
    public double chokeWatts(int range, double frequencyHz) {
      return installation.chokeWatts(frequencyHz, numbers.ports(flat(frequencyHz)));
    }

    @Override
    public double decibels(int range, double frequencyHz, int number) {
      return numbers.decibels(flat(frequencyHz), number);
    }
  }
}
