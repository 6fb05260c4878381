package org.spanwire.study;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.Comparator;
import java.util.List;
import java.util.Optional;
import java.util.concurrent.Callable;
import java.util.stream.IntStream;
import org.apache.commons.math3.complex.Complex;
import org.apache.commons.math3.distribution.TDistribution;
import org.apache.commons.math3.exception.MathIllegalStateException;
import org.apache.commons.math3.fitting.leastsquares.LeastSquaresBuilder;
import org.apache.commons.math3.fitting.leastsquares.LeastSquaresOptimizer;
import org.apache.commons.math3.fitting.leastsquares.LevenbergMarquardtOptimizer;
import org.apache.commons.math3.linear.Array2DRowRealMatrix;
import org.apache.commons.math3.linear.ArrayRealVector;
import org.apache.commons.math3.linear.RealMatrix;
import org.apache.commons.math3.linear.RealVector;
import org.apache.commons.math3.linear.SingularMatrixException;
import org.apache.commons.math3.random.SobolSequenceGenerator;
import org.apache.commons.math3.util.Pair;
import org.spanwire.Solver;
import org.spanwire.circuit.Mismatch;
import org.spanwire.circuit.NPort;
import org.spanwire.circuit.NetworkData;
import org.spanwire.design.Band;
import org.spanwire.design.Design;
import org.spanwire.design.Parameter;
import org.spanwire.unit.Quantity;

/**
 * Estimates parameters of a design from a measured reflection coefficient by least squares
 * (Levenberg–Marquardt) from several starts, on a polynomial through solutions whose error is
 * stated. What lies between the antenna and the measuring plane is taken from the design.
 *
 * @param design with one measured feed, its first
 * @param vary parameters and the ranges they are looked for in
 * @param measured one port
 * @param plane where it was measured
 */
public record FitStudy(
    Design design, List<ParameterSample.Range> vary, NetworkData measured, Plane plane) {

  /** Frequencies used; more are thinned out evenly. */
  public static final int MOST_FREQUENCIES = 61;

  private static final double ACCURACY = 2e-3;
  private static final int MOST_SOLVES = 4000;
  private static final double WIDEST_RANGE = 1.05;
  private static final int STARTS = 8;
  private static final double STEP = 1e-5;
  private static final double ENOUGH = 1.5;
  private static final double CONFIDENCE = 0.975;
  private static final double SHARE_WITHOUT_LIMITS = 0.2;
  private static final double SPREADS = 3;

  /** Checks what can be checked without solving. */
  public FitStudy {
    vary = List.copyOf(vary);
    if (vary.isEmpty()) {
      throw new IllegalArgumentException("nothing to vary; name a parameter");
    }
    if (measured.ports() != 1) {
      throw new IllegalArgumentException(
          "the measured network has " + measured.ports() + " ports; expected 1");
    }
    if (2 * measured.frequencies().length <= vary.size()) {
      throw new IllegalArgumentException(
          "there are "
              + measured.frequencies().length
              + " measured frequencies for "
              + vary.size()
              + " parameters; measure at more");
    }
    if (!(measured.lowestHz() > 0)) {
      throw new IllegalArgumentException("the measured frequencies begin at 0 Hz; remove that row");
    }
  }

  /**
   * Where to look for a parameter that has no range of its own: its limits, else three spreads to
   * either side, else a fifth of its value.
   */
  public static ParameterSample.Range range(Parameter parameter) {
    if (parameter.limits().isPresent()) {
      Parameter.Limits limits = parameter.limits().get();
      return new ParameterSample.Range(parameter.name(), limits.low(), limits.high());
    }
    double reach =
        parameter
            .spread()
            .map(spread -> SPREADS * SpreadSample.unit(parameter))
            .filter(value -> value > 0)
            .orElse(SHARE_WITHOUT_LIMITS * Math.abs(parameter.value().value()));
    if (!(reach > 0)) {
      throw new IllegalArgumentException(
          parameter.name() + " is 0 and has neither limits nor a spread; give it limits");
    }
    double value = parameter.value().value();
    return new ParameterSample.Range(
        parameter.name(),
        new Quantity(value - reach, parameter.value().dimension()),
        new Quantity(value + reach, parameter.value().dimension()));
  }

  /**
   * Runs the study on several threads; the result does not depend on their number.
   *
   * @throws org.spanwire.design.DesignException if the design is faulty within the ranges
   * @throws org.spanwire.geometry.GeometryException if the antenna cannot be modelled within them
   */
  public FitResult run(Solver solver, int threads) {
    return new Run(solver, threads).result();
  }

  private final class Run {
    private final Solver solver;
    private final int threads;
    private final ParameterBox box = new ParameterBox(design, vary);
    private final double[] frequencies;
    private final Complex[] readings;
    private final double reference;
    private final int[] rangeOf;
    private final PortModel model;

    Run(Solver solver, int threads) {
      this.solver = solver;
      this.threads = threads;
      NPort first = measured.sample(0);
      reference = first.reference(1).getReal();
      double[] all = measured.frequencies();
      int count = Math.min(all.length, MOST_FREQUENCIES);
      frequencies = new double[count];
      readings = new Complex[count];
      for (int i = 0; i < count; i++) {
        int index = count == 1 ? 0 : (int) Math.round(i * (all.length - 1.0) / (count - 1));
        frequencies[i] = all[index];
        readings[i] = measured.sample(index).s(1, 1);
      }
      rangeOf = new int[count];
      model = model();
    }

    /** Frequencies that lie close together share a polynomial. */
    private PortModel model() {
      List<FrequencyRange> ranges = new ArrayList<>();
      int begin = 0;
      for (int i = 1; i <= frequencies.length; i++) {
        if (i == frequencies.length || frequencies[i] > WIDEST_RANGE * frequencies[begin]) {
          Arrays.fill(rangeOf, begin, i, ranges.size());
          ranges.add(new FrequencyRange(frequencies[begin], frequencies[i - 1]));
          begin = i;
        }
      }
      return PortModel.of(
          new PortModel.Request(box, ranges, List.of(), ACCURACY, MOST_SOLVES), solver, threads);
    }

    private double[] nominal() {
      return IntStream.range(0, box.size())
          .mapToDouble(
              i -> {
                double value = design.parameters().get(vary.get(i).parameter()).value().value();
                return Math.max(-1, Math.min(1, box.unit(i, value)));
              })
          .toArray();
    }

    private double[] values(double[] units) {
      return IntStream.range(0, units.length).mapToDouble(i -> box.value(i, units[i])).toArray();
    }

    private Complex reflection(List<PlaneMismatch> planes) {
      Complex impedance =
          planes.stream()
              .filter(each -> each.plane() == plane)
              .findFirst()
              .orElseThrow(
                  () -> new IllegalArgumentException("the chain has no plane " + plane.label()))
              .mismatch()
              .impedance();
      return Mismatch.of(impedance, reference).reflection();
    }

    /** Real and imaginary parts of model less reading. */
    private double[] residuals(double[] units) {
      PortModel.Place place = model.at(values(units));
      double[] residuals = new double[2 * frequencies.length];
      for (int i = 0; i < frequencies.length; i++) {
        Complex gamma = reflection(place.planes(rangeOf[i], frequencies[i]));
        residuals[2 * i] = gamma.getReal() - readings[i].getReal();
        residuals[2 * i + 1] = gamma.getImaginary() - readings[i].getImaginary();
      }
      return residuals;
    }

    private static double squares(double[] residuals) {
      return Arrays.stream(residuals).map(r -> r * r).sum();
    }

    private double misfit(double squares) {
      return Math.sqrt(squares / frequencies.length);
    }

    /** The residuals and their slopes, of the free parameters alone. */
    private Pair<RealVector, RealMatrix> linearised(double[] base, int[] free, RealVector at) {
      double[] units = placed(base, free, at.toArray());
      double[][] slopes = new double[2 * frequencies.length][free.length];
      for (int j = 0; j < free.length; j++) {
        double[] up = units.clone();
        double[] down = units.clone();
        up[free[j]] = Math.min(1, up[free[j]] + STEP);
        down[free[j]] = Math.max(-1, down[free[j]] - STEP);
        double step = up[free[j]] - down[free[j]];
        double[] above = residuals(up);
        double[] below = residuals(down);
        for (int i = 0; i < above.length; i++) {
          slopes[i][j] = (above[i] - below[i]) / step;
        }
      }
      return new Pair<>(
          new ArrayRealVector(residuals(units), false), new Array2DRowRealMatrix(slopes, false));
    }

    private double[] placed(double[] base, int[] free, double[] at) {
      double[] units = base.clone();
      for (int j = 0; j < free.length; j++) {
        units[free[j]] = at[j];
      }
      return units;
    }

    /** Where the free parameters fit best. */
    private LeastSquaresOptimizer.Optimum fitted(double[] base, int... free) {
      List<double[]> starts = new ArrayList<>();
      starts.add(Arrays.stream(free).mapToDouble(j -> base[j]).toArray());
      SobolSequenceGenerator sobol = new SobolSequenceGenerator(free.length);
      sobol.nextVector();
      for (int n = 0; n < STARTS; n++) {
        starts.add(Arrays.stream(sobol.nextVector()).map(share -> 1.8 * share - 0.9).toArray());
      }
      List<Callable<Optional<LeastSquaresOptimizer.Optimum>>> tasks = new ArrayList<>();
      starts.forEach(start -> tasks.add(() -> fittedFrom(start, base, free)));
      try (Workers workers = new Workers(threads)) {
        return workers.run(tasks).stream()
            .flatMap(Optional::stream)
            .min(Comparator.comparingDouble(optimum -> optimum.getCost()))
            .orElseThrow(
                () ->
                    new IllegalArgumentException(
                        "no start of the fit came to an end; narrow the ranges"));
      }
    }

    private Optional<LeastSquaresOptimizer.Optimum> fittedFrom(
        double[] start, double[] base, int[] free) {
      try {
        return Optional.of(
            new LevenbergMarquardtOptimizer()
                .optimize(
                    new LeastSquaresBuilder()
                        .model(at -> linearised(base, free, at))
                        .start(start)
                        .target(new double[2 * frequencies.length])
                        .parameterValidator(at -> at.map(u -> Math.max(-1, Math.min(1, u))))
                        .maxEvaluations(500)
                        .maxIterations(200)
                        .build()));
      } catch (MathIllegalStateException e) {
        // This start led nowhere; another may.
        return Optional.empty();
      }
    }

    FitResult result() {
      double[] nominal = nominal();
      double before = squares(residuals(nominal));
      int[] all = IntStream.range(0, box.size()).toArray();
      LeastSquaresOptimizer.Optimum best = fitted(nominal, all);
      double[] units = best.getPoint().toArray();
      double after = squares(residuals(units));
      double[][] covariance = covariance(best, after);
      List<FitResult.Cause> causes = causes(nominal, before, after);
      SolvedLooksAt solved = new SolvedLooksAt();
      double exact = solved.squares(units);
      Optional<FitResult.Reading> reading =
          causes.size() > 1 ? reading(nominal, causes, solved) : Optional.empty();
      return new FitResult(
          estimates(units, covariance),
          correlations(covariance),
          misfit(before),
          misfit(exact),
          causes,
          reading,
          frequencies.length,
          model.solves() + solved.count,
          model.error());
    }

    /** Of the units; NaN if the readings do not tell. */
    private double[][] covariance(LeastSquaresOptimizer.Optimum best, double squares) {
      int n = box.size();
      int freedom = 2 * frequencies.length - n;
      try {
        return best.getCovariances(1e-12).scalarMultiply(squares / freedom).getData();
      } catch (SingularMatrixException e) {
        double[][] unknown = new double[n][n];
        Arrays.stream(unknown).forEach(row -> Arrays.fill(row, Double.NaN));
        return unknown;
      }
    }

    private List<FitResult.Estimate> estimates(double[] units, double[][] covariance) {
      double t =
          new TDistribution(null, 2.0 * frequencies.length - box.size())
              .inverseCumulativeProbability(CONFIDENCE);
      List<FitResult.Estimate> estimates = new ArrayList<>();
      for (int i = 0; i < units.length; i++) {
        Parameter parameter = design.parameters().get(vary.get(i).parameter());
        double value = box.value(i, units[i]);
        double error = Math.sqrt(covariance[i][i]) * (box.high(i) - box.low(i)) / 2;
        estimates.add(
            new FitResult.Estimate(
                parameter.name(),
                parameter.value(),
                new Quantity(value, parameter.value().dimension()),
                error,
                value - t * error,
                value + t * error,
                Math.abs(units[i]) > 1 - 1e-6));
      }
      return estimates;
    }

    private double[][] correlations(double[][] covariance) {
      int n = covariance.length;
      double[][] correlations = new double[n][n];
      for (int i = 0; i < n; i++) {
        for (int j = 0; j < n; j++) {
          correlations[i][j] =
              i == j ? 1 : covariance[i][j] / Math.sqrt(covariance[i][i] * covariance[j][j]);
        }
      }
      return correlations;
    }

    private List<FitResult.Cause> causes(double[] nominal, double before, double after) {
      List<FitResult.Cause> causes = new ArrayList<>();
      for (int i = 0; i < box.size(); i++) {
        double unit = fitted(nominal, i).getPoint().getEntry(0);
        double left = squares(residuals(placed(nominal, new int[] {i}, new double[] {unit})));
        Parameter parameter = design.parameters().get(vary.get(i).parameter());
        causes.add(
            new FitResult.Cause(
                parameter.name(),
                new Quantity(box.value(i, unit), parameter.value().dimension()),
                misfit(left),
                before > 0 ? Math.max(0, 1 - left / before) : 0,
                left <= ENOUGH * ENOUGH * after));
      }
      causes.sort(Comparator.comparingDouble(FitResult.Cause::misfit));
      return causes;
    }

    /** Edges and middles of the design's bands, where the two likeliest causes differ most. */
    private Optional<FitResult.Reading> reading(
        double[] nominal, List<FitResult.Cause> causes, SolvedLooksAt solved) {
      List<Double> places = new ArrayList<>();
      for (Band band : design.bands()) {
        places.addAll(List.of(band.lowHz(), (band.lowHz() + band.highHz()) / 2, band.highHz()));
      }
      List<Complex> first = solved.reflections(with(nominal, causes.get(0)), places);
      List<Complex> second = solved.reflections(with(nominal, causes.get(1)), places);
      return IntStream.range(0, places.size())
          .mapToObj(
              i ->
                  new FitResult.Reading(
                      places.get(i),
                      swr(first.get(i)),
                      swr(second.get(i)),
                      first.get(i).subtract(second.get(i)).abs()))
          .max(Comparator.comparingDouble(FitResult.Reading::difference));
    }

    private double swr(Complex reflection) {
      return Math.min(Look.LARGEST_SWR, Mismatch.ofReflection(reflection, reference).swr());
    }

    private double[] with(double[] nominal, FitResult.Cause cause) {
      double[] units = nominal.clone();
      for (int i = 0; i < box.size(); i++) {
        if (vary.get(i).parameter().equals(cause.parameter())) {
          units[i] = box.unit(i, cause.value().value());
        }
      }
      return units;
    }

    /** From solutions instead of the model. */
    private final class SolvedLooksAt {
      private int count;

      List<Complex> reflections(double[] units, List<Double> places) {
        Installation installation = Installation.of(box.with(values(units)));
        List<Callable<Complex>> tasks = new ArrayList<>();
        for (double f : places) {
          tasks.add(() -> reflection(installation.solve(solver, f).feeds().get(0).planes()));
        }
        count += tasks.size();
        try (Workers workers = new Workers(threads)) {
          return workers.run(tasks);
        }
      }

      double squares(double[] units) {
        List<Complex> solved = reflections(units, Arrays.stream(frequencies).boxed().toList());
        double sum = 0;
        for (int i = 0; i < readings.length; i++) {
          double apart = solved.get(i).subtract(readings[i]).abs();
          sum += apart * apart;
        }
        return sum;
      }
    }
  }
}
