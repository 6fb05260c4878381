package org.spanwire.study;

import java.util.List;
import java.util.Objects;
import java.util.OptionalDouble;
import java.util.stream.IntStream;
import org.apache.commons.math3.complex.Complex;
import org.apache.commons.math3.fitting.leastsquares.LeastSquaresOptimizer.Optimum;
import org.spanwire.Solver;
import org.spanwire.design.Design;
import org.spanwire.design.Parameter;
import org.spanwire.unit.Quantity;

/**
 * Estimates parameters of a design from what an instrument showed of an installation, by least
 * squares on a polynomial through solutions whose error is stated. What lies between the antenna
 * and the measuring plane is taken from the design.
 *
 * @param design with one measured feed, its first
 * @param vary parameters of the design and the ranges they are looked for in, which hold the
 *     design's own values
 * @param measurement what was measured
 */
public record FitStudy(Design design, List<ParameterSample.Range> vary, Measurement measurement) {

  /** Frequencies used; more are thinned out evenly. */
  public static final int MOST_FREQUENCIES = 61;

  private static final double SHARE_WITHOUT_LIMITS = 0.2;
  private static final double SPREADS = 3;

  /** Checks what can be checked without solving. */
  public FitStudy {
    vary = List.copyOf(vary);
    Objects.requireNonNull(measurement, "measurement");
    if (vary.isEmpty()) {
      throw new IllegalArgumentException("nothing to vary; name a parameter");
    }
    for (ParameterSample.Range range : vary) {
      Parameter parameter = design.parameters().get(range.parameter());
      if (parameter == null) {
        throw new IllegalArgumentException("the design has no parameter " + range.parameter());
      }
      range(parameter, range.from(), range.to());
    }
    if (measurement.numbers() <= vary.size()) {
      throw new IllegalArgumentException(
          "the number of readings, "
              + measurement.readings().size()
              + (measurement.phase() ? " with phase" : " without phase")
              + ", is too small to find "
              + vary.size()
              + (vary.size() == 1 ? " parameter" : " parameters")
              + " and how well; measure at more frequencies");
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
   * A range of the caller's to look for a parameter in. What differs from the design can be told
   * only where the design is looked at too.
   *
   * @throws IllegalArgumentException if it is one value or does not hold the parameter's own
   */
  public static ParameterSample.Range range(Parameter parameter, Quantity from, Quantity to) {
    double low = Math.min(from.value(), to.value());
    double high = Math.max(from.value(), to.value());
    double value = parameter.value().value();
    if (!(low < high && low <= value && value <= high)) {
      throw new IllegalArgumentException(
          parameter.name()
              + " is "
              + parameter.value()
              + " in the design; look for it in a range that holds this value");
    }
    return new ParameterSample.Range(parameter.name(), from, to);
  }

  /**
   * Runs the study on several threads; the result does not depend on their number.
   *
   * @throws org.spanwire.design.DesignException if the design is faulty within the ranges
   * @throws org.spanwire.geometry.GeometryException if the antenna cannot be modelled within them
   */
  public FitResult run(Solver solver, int threads) {
    FitModel model = new FitModel(this, solver, threads);
    int[] all = IntStream.range(0, model.size()).toArray();
    List<Optimum> found = new FitSearch(model).fitted(model.nominal(), all);
    double[] best = found.get(0).getPoint().toArray();
    FitErrors errors = new FitErrors(model, found.get(0), model.misfit(best).squares());
    FitCauses causes = new FitCauses(this, model, found, errors);
    List<Complex> estimated = model.solved(best);
    FitModel.Misfit solved = model.misfit(estimated);
    List<Complex> designed = model.shown(model.nominal());
    Measurement used = model.measurement();
    return new FitResult(
        errors.estimates(),
        errors.correlations(),
        model.misfit(designed).rms(),
        solved.rms(),
        used.statesErrors()
            ? OptionalDouble.of(Math.sqrt(solved.squares() / used.numbers()))
            : OptionalDouble.empty(),
        causes.asDesigned(),
        causes.causes(),
        causes.others(),
        causes.reading(),
        IntStream.range(0, designed.size())
            .mapToObj(
                i ->
                    FitResult.Comparison.of(
                        used.readings().get(i), designed.get(i), estimated.get(i)))
            .toList(),
        model.solves(),
        model.error());
  }
}
