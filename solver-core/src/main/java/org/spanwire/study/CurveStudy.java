package org.spanwire.study;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.concurrent.Callable;
import org.apache.commons.math3.complex.Complex;
import org.spanwire.Solver;
import org.spanwire.ToleranceException;
import org.spanwire.circuit.CircuitException;
import org.spanwire.circuit.Mismatch;
import org.spanwire.design.Band;
import org.spanwire.design.Design;
import org.spanwire.design.DesignException;
import org.spanwire.design.Parameter;
import org.spanwire.design.Spread;
import org.spanwire.geometry.GeometryException;
import org.spanwire.result.Warning;
import org.spanwire.unit.Quantity;

/**
 * Draws curves over and around the bands of a design by interpolating the reflection coefficient
 * between solved frequencies. A parameter's spread is looked at no further than its limits.
 *
 * @param design a design with bands and at least one feed, the first of which is looked at
 * @param spreads whether to vary the parameters that carry a spread
 */
public record CurveStudy(Design design, boolean spreads) {

  /** Name of the warning that a variation could not be solved. */
  public static final String OMITTED = "variation-omitted";

  /** Standard deviations at which a normally distributed parameter is looked at. */
  public static final double SIGMAS = 2;

  /** Width shown beside each edge of a band, over the band's own. */
  private static final double MARGIN = 0.25;

  /** Steps of a curve: a multiple of six puts points on both edges. */
  private static final int STEPS = 48;

  private static final int POINTS = 5;
  private static final int MOST_POINTS = 65;

  /** Largest error of |Γ| accepted: moves an SWR of 2 by 0.02, less than a line's width. */
  private static final double REFLECTION_ERROR = 5e-3;

  /** A design with one parameter changed, or none. */
  private record Variation(Optional<BandCurves.Change> change, Installation installation) {}

  /** A variation's samples of one band. */
  private record Samples(Variation variation, BandSamples band) {}

  /**
   * Runs the study on several threads; the results do not depend on their number.
   *
   * @throws org.spanwire.geometry.GeometryException if the design as it stands cannot be modelled
   */
  public List<BandCurves> run(Solver solver, int threads) {
    List<Warning> omitted = new ArrayList<>();
    List<Variation> variations = new ArrayList<>();
    variations.add(new Variation(Optional.empty(), Installation.of(design)));
    if (spreads) {
      changes().forEach(change -> add(change, variations, omitted));
    }
    List<BandCurves> curves = new ArrayList<>();
    try (Workers workers = new Workers(threads)) {
      for (Band band : design.bands()) {
        curves.add(curves(solver, workers, band, variations, omitted));
      }
    }
    return curves;
  }

  private List<BandCurves.Change> changes() {
    List<BandCurves.Change> changes = new ArrayList<>();
    for (Parameter parameter : design.parameters().values()) {
      parameter
          .spread()
          .map(CurveStudy::halfWidth)
          .filter(width -> width > 0)
          .ifPresent(
              width -> {
                changes.add(change(parameter, -width));
                changes.add(change(parameter, width));
              });
    }
    return changes;
  }

  private static double halfWidth(Spread spread) {
    if (spread instanceof Spread.Uniform uniform) {
      return uniform.halfWidth().value();
    }
    return SIGMAS * ((Spread.Normal) spread).sigma().value();
  }

  /** Limits go before spreads: they are what the site allows. */
  private static BandCurves.Change change(Parameter parameter, double by) {
    Quantity nominal = parameter.value();
    double value = nominal.value() + by;
    double low = parameter.limits().map(l -> l.low().value()).orElse(Double.NEGATIVE_INFINITY);
    double high = parameter.limits().map(l -> l.high().value()).orElse(Double.POSITIVE_INFINITY);
    return new BandCurves.Change(
        parameter.name(), new Quantity(Math.max(low, Math.min(value, high)), nominal.dimension()));
  }

  private void add(BandCurves.Change change, List<Variation> variations, List<Warning> omitted) {
    try {
      Design changed = design.with(change.parameter(), Sweep.exact(change.value()));
      variations.add(new Variation(Optional.of(change), Installation.of(changed)));
    } catch (DesignException | GeometryException | CircuitException e) {
      omitted.add(omitted(change, e));
    }
  }

  private static Warning omitted(BandCurves.Change change, RuntimeException cause) {
    return new Warning(
        OMITTED,
        change.parameter() + " = " + change.value() + " is left out: " + cause.getMessage());
  }

  private BandCurves curves(
      Solver solver,
      Workers workers,
      Band band,
      List<Variation> variations,
      List<Warning> alreadyOmitted) {
    double margin = MARGIN * (band.highHz() - band.lowHz());
    Band shown = new Band(band.name(), band.lowHz() - margin, band.highHz() + margin);
    List<Callable<Optional<Samples>>> tasks = new ArrayList<>();
    List<Warning> omitted = new ArrayList<>(alreadyOmitted);
    for (Variation variation : variations) {
      tasks.add(() -> samples(solver, shown, variation));
    }
    List<Samples> solved = new ArrayList<>();
    List<Optional<Samples>> results = workers.run(tasks);
    for (int i = 0; i < results.size(); i++) {
      results.get(i).ifPresent(solved::add);
      if (results.get(i).isEmpty()) {
        BandCurves.Change change = variations.get(i).change().orElseThrow();
        omitted.add(
            new Warning(
                OMITTED,
                change.parameter() + " = " + change.value() + " cannot be solved in this band"));
      }
    }
    List<Double> frequencies = frequencies(band, margin);
    List<BandCurves.Curve> curves = new ArrayList<>();
    for (Samples samples : solved) {
      curves.add(curve(samples, frequencies));
    }
    double error = solved.stream().mapToDouble(s -> s.band().error()).max().orElseThrow();
    return new BandCurves(
        band, frequencies, curves.get(0), curves.subList(1, curves.size()), error, omitted);
  }

  /** Solves until the curve is good enough; empty if a variation cannot be solved. */
  private Optional<Samples> samples(Solver solver, Band shown, Variation variation) {
    String feed = design.antenna().feeds().get(0).name();
    BandSamples samples = new BandSamples(shown, POINTS);
    try {
      fill(solver, variation.installation(), feed, samples);
      while (samples.error() > REFLECTION_ERROR && 2 * samples.count() - 1 <= MOST_POINTS) {
        samples.refine();
        fill(solver, variation.installation(), feed, samples);
      }
      return Optional.of(new Samples(variation, samples));
    } catch (GeometryException | CircuitException | ToleranceException e) {
      if (variation.change().isEmpty()) {
        throw e;
      }
      return Optional.empty();
    }
  }

  private static void fill(
      Solver solver, Installation installation, String feed, BandSamples samples) {
    List<BandSamples.Sample> solved = new ArrayList<>();
    for (double frequency : samples.missing()) {
      Operation operation = installation.solve(solver, frequency);
      solved.add(
          new BandSamples.Sample(operation.feed(feed), List.of(), operation.solution().warnings()));
    }
    samples.fill(solved);
  }

  private static List<Double> frequencies(Band band, double margin) {
    List<Double> frequencies = new ArrayList<>();
    double width = band.highHz() - band.lowHz() + 2 * margin;
    for (int i = 0; i <= STEPS; i++) {
      frequencies.add(
          i == STEPS / 6
              ? band.lowHz()
              : i == STEPS * 5 / 6 ? band.highHz() : band.lowHz() - margin + width * i / STEPS);
    }
    return frequencies;
  }

  private static BandCurves.Curve curve(Samples samples, List<Double> frequencies) {
    ReflectionCurve feedpoint = samples.band().curve(Plane.FEEDPOINT);
    ReflectionCurve transmitter = samples.band().curve(Plane.TRANSMITTER);
    double reference = samples.band().referenceOhm(Plane.TRANSMITTER);
    List<Complex> reflections = new ArrayList<>();
    List<Double> swr = new ArrayList<>();
    for (double frequency : frequencies) {
      reflections.add(feedpoint.at(frequency));
      swr.add(Mismatch.ofReflection(transmitter.at(frequency), reference).swr());
    }
    return new BandCurves.Curve(samples.variation().change(), reflections, swr);
  }
}
