package org.spanwire.study;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.concurrent.Callable;
import org.apache.commons.math3.complex.Complex;
import org.spanwire.Solver;
import org.spanwire.ToleranceException;
import org.spanwire.circuit.CircuitException;
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

  private static final int STEPS = 48;

  /** A design with one parameter changed, or none. */
  private record Variation(Optional<BandCurves.Change> change, Installation installation) {}

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
    List<Callable<Optional<List<BandSamples>>>> tasks = new ArrayList<>();
    variations.forEach(variation -> tasks.add(() -> samples(solver, variation)));
    List<Optional<List<BandSamples>>> solved;
    try (Workers workers = new Workers(threads)) {
      solved = workers.run(tasks);
    }
    for (int i = 0; i < solved.size(); i++) {
      if (solved.get(i).isEmpty()) {
        BandCurves.Change change = variations.get(i).change().orElseThrow();
        omitted.add(
            new Warning(
                OMITTED, change.parameter() + " = " + change.value() + " could not be solved"));
      }
    }
    List<BandCurves> curves = new ArrayList<>();
    for (int band = 0; band < design.bands().size(); band++) {
      curves.add(curves(band, variations, solved, omitted));
    }
    return curves;
  }

  private BandCurves curves(
      int index,
      List<Variation> variations,
      List<Optional<List<BandSamples>>> solved,
      List<Warning> omitted) {
    Band band = design.bands().get(index);
    List<Double> frequencies = new ShownBand(band).frequencies(STEPS);
    List<BandCurves.Curve> curves = new ArrayList<>();
    double error = 0;
    for (int i = 0; i < solved.size(); i++) {
      if (solved.get(i).isPresent()) {
        BandSamples samples = solved.get(i).get().get(index);
        curves.add(curve(variations.get(i).change(), samples, frequencies));
        error = Math.max(error, samples.error());
      }
    }
    return new BandCurves(
        band, frequencies, curves.get(0), curves.subList(1, curves.size()), error, omitted);
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
    double value = parameter.nearestAllowed(nominal.value() + by);
    return new BandCurves.Change(parameter.name(), new Quantity(value, nominal.dimension()));
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

  /** All bands of a variation; empty if it cannot be solved. */
  private Optional<List<BandSamples>> samples(Solver solver, Variation variation) {
    String feed = design.antenna().feeds().get(0).name();
    try {
      InstallationFamily family =
          new InstallationFamily(
              variation.installation(), solver, ShownBand.first(design.bands()), 1);
      return Optional.of(ShownBand.solve(design.bands(), f -> family.at(f), feed));
    } catch (GeometryException | CircuitException | ToleranceException e) {
      if (variation.change().isEmpty()) {
        throw e;
      }
      return Optional.empty();
    }
  }

  private static BandCurves.Curve curve(
      Optional<BandCurves.Change> change, BandSamples samples, List<Double> frequencies) {
    ReflectionCurve feedpoint = samples.curve(Plane.FEEDPOINT);
    List<Complex> reflections = frequencies.stream().map(feedpoint::at).toList();
    List<Double> swr = ShownBand.swr(samples, frequencies);
    return new BandCurves.Curve(change, reflections, swr);
  }
}
