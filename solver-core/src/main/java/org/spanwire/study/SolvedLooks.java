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
    Design design = box.with(values);
    Installation installation =
        numbers.route() ? Installation.of(design) : Installation.withoutLine(design);
    List<Double> key = new ArrayList<>();
    ofAntenna.forEach(i -> key.add(values[i]));
    return new Solved(installation, key);
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
      List<Double> key = new ArrayList<>(place);
      key.add(frequencyHz);
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
