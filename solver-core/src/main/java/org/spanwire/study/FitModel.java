package org.spanwire.study;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.concurrent.Callable;
import java.util.stream.IntStream;
import org.apache.commons.math3.complex.Complex;
import org.apache.commons.math3.linear.Array2DRowRealMatrix;
import org.apache.commons.math3.linear.ArrayRealVector;
import org.apache.commons.math3.linear.RealMatrix;
import org.apache.commons.math3.linear.RealVector;
import org.apache.commons.math3.util.Pair;
import org.spanwire.Solver;
import org.spanwire.design.Parameter;
import org.spanwire.unit.Quantity;

/**
 * What an instrument would show for values of the varied parameters, beside what it did show.
 * Parameters are in units from −1 to 1 over their ranges.
 */
final class FitModel {

  /** Wanted error of reflection coefficients of the polynomials. */
  static final double ACCURACY = 2e-3;

  private static final int MOST_SOLVES = 4000;
  private static final double WIDEST_RANGE = 1.05;
  private static final double STEP = 1e-5;

  private final FitStudy study;
  private final Measurement measurement;
  private final Solver solver;
  private final int threads;
  private final ParameterBox box;
  private final int[] rangeOf;
  private final PortModel model;
  private int solved;

  FitModel(FitStudy study, Solver solver, int threads) {
    this.study = study;
    this.solver = solver;
    this.threads = threads;
    measurement = study.measurement().thinned(FitStudy.MOST_FREQUENCIES);
    box = new ParameterBox(study.design(), study.vary());
    rangeOf = new int[measurement.readings().size()];
    model =
        PortModel.of(
            new PortModel.Request(box, ranges(), List.of(), ACCURACY, MOST_SOLVES),
            solver,
            threads);
  }

  /** Frequencies that lie close together share a polynomial. */
  private List<FrequencyRange> ranges() {
    List<FrequencyRange> ranges = new ArrayList<>();
    int begin = 0;
    for (int i = 1; i <= rangeOf.length; i++) {
      if (i == rangeOf.length || frequency(i) > WIDEST_RANGE * frequency(begin)) {
        Arrays.fill(rangeOf, begin, i, ranges.size());
        ranges.add(new FrequencyRange(frequency(begin), frequency(i - 1)));
        begin = i;
      }
    }
    return ranges;
  }

  private double frequency(int reading) {
    return measurement.readings().get(reading).frequencyHz();
  }

  /** Those readings that are used. */
  Measurement measurement() {
    return measurement;
  }

  int size() {
    return box.size();
  }

  Parameter parameter(int i) {
    return study.design().parameters().get(study.vary().get(i).parameter());
  }

  Quantity value(int i, double unit) {
    return new Quantity(box.value(i, unit), parameter(i).value().dimension());
  }

  /** SI units of a parameter per unit. */
  double scale(int i) {
    return (box.high(i) - box.low(i)) / 2;
  }

  /** The design as it is. */
  double[] nominal() {
    return IntStream.range(0, size())
        .mapToDouble(i -> Math.max(-1, Math.min(1, box.unit(i, parameter(i).value().value()))))
        .toArray();
  }

  private double[] values(double[] units) {
    return IntStream.range(0, units.length).mapToDouble(i -> box.value(i, units[i])).toArray();
  }

  /** What one other value of one parameter means. */
  PhysicalChange change(int i, double unit) {
    String value = ParameterBox.text(value(i, unit));
    return PhysicalChange.of(
        study.design(), study.design().with(parameter(i).name(), value), frequency(0));
  }

  /** How model and readings differ. */
  final class Misfit {
    private final double[] weighted;
    private final double squares;
    private final double rms;

    private Misfit(List<Complex> modelled) {
      List<Measurement.Reading> readings = measurement.readings();
      int parts = measurement.phase() ? 2 : 1;
      weighted = new double[measurement.numbers()];
      double sum = 0;
      for (int i = 0; i < readings.size(); i++) {
        Complex apart = readings.get(i).difference(modelled.get(i));
        double weight = weight(readings.get(i));
        weighted[parts * i] = weight * apart.getReal();
        if (parts > 1) {
          weighted[parts * i + 1] = weight * apart.getImaginary();
        }
        sum += apart.abs() * apart.abs();
      }
      squares = Arrays.stream(weighted).map(r -> r * r).sum();
      rms = Math.sqrt(sum / readings.size());
    }

    /** Sum of the squares, over those of the readings' errors where these are stated. */
    double squares() {
      return squares;
    }

    /** Root mean square difference of reflection coefficients. */
    double rms() {
      return rms;
    }
  }

  /** The polynomials' error counts beside that of a reading. */
  private static double weight(Measurement.Reading reading) {
    return reading.error().isPresent()
        ? 1 / Math.hypot(reading.error().getAsDouble(), ACCURACY)
        : 1;
  }

  Misfit misfit(double[] units) {
    return misfit(shown(units));
  }

  /** How far the readings are from reflection coefficients at their frequencies. */
  Misfit misfit(List<Complex> modelled) {
    return new Misfit(modelled);
  }

  /** What the instrument would show at the readings' frequencies, by the polynomials. */
  List<Complex> shown(double[] units) {
    PortModel.Place place = model.at(values(units));
    return IntStream.range(0, rangeOf.length)
        .mapToObj(i -> measurement.reflection(place.planes(rangeOf[i], frequency(i)), frequency(i)))
        .toList();
  }

  /** The same from solutions. */
  List<Complex> solved(double[] units) {
    return reflections(
        units, IntStream.range(0, rangeOf.length).mapToObj(this::frequency).toList());
  }

  /** What the instrument would show at frequencies in hertz, from solutions. */
  List<Complex> reflections(double[] units, List<Double> frequencies) {
    Installation installation = Installation.of(box.with(values(units)));
    List<Callable<Complex>> tasks = new ArrayList<>();
    for (double f : frequencies) {
      tasks.add(
          () -> measurement.reflection(installation.solve(solver, f).feeds().get(0).planes(), f));
    }
    solved += tasks.size();
    try (Workers workers = new Workers(threads)) {
      return workers.run(tasks);
    }
  }

  /** The weighted differences and their slopes, by the free parameters alone. */
  Pair<RealVector, RealMatrix> linearised(double[] base, int[] free, RealVector at) {
    double[] units = placed(base, free, at.toArray());
    double[][] slopes = new double[measurement.numbers()][free.length];
    for (int j = 0; j < free.length; j++) {
      double[] up = units.clone();
      double[] down = units.clone();
      up[free[j]] = Math.min(1, up[free[j]] + STEP);
      down[free[j]] = Math.max(-1, down[free[j]] - STEP);
      double step = up[free[j]] - down[free[j]];
      double[] above = misfit(up).weighted;
      double[] below = misfit(down).weighted;
      for (int i = 0; i < above.length; i++) {
        slopes[i][j] = (above[i] - below[i]) / step;
      }
    }
    return new Pair<>(
        new ArrayRealVector(misfit(units).weighted, false),
        new Array2DRowRealMatrix(slopes, false));
  }

  /** Units where some parameters have other values. */
  static double[] placed(double[] base, int[] free, double... at) {
    double[] units = base.clone();
    for (int j = 0; j < free.length; j++) {
      units[free[j]] = at[j];
    }
    return units;
  }

  int threads() {
    return threads;
  }

  int solves() {
    return model.solves() + solved;
  }

  double error() {
    return model.error();
  }
}
