package org.spanwire.study;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.concurrent.Callable;
import org.spanwire.Solver;
import org.spanwire.ToleranceException;
import org.spanwire.circuit.CircuitException;
import org.spanwire.design.Band;
import org.spanwire.design.Design;
import org.spanwire.design.DesignException;
import org.spanwire.design.Stage;
import org.spanwire.geometry.GeometryException;
import org.spanwire.medium.Ground;
import org.spanwire.unit.Quantity;

/**
 * Computes beforehand what may be measured where a design is put up, for what is known only there:
 * the height, the ground, and the length of the feed line.
 *
 * @param design a design with bands and at least one feed, the first of which is looked at
 * @param height the parameter for the height with its values
 * @param grounds what may lie below, at least one
 * @param lineLengths lengths of the feed line in metres; none to leave it as it is
 */
public record SiteStudy(
    Design design, ParameterGrid.Axis height, List<Ground> grounds, List<Double> lineLengths) {

  private static final int STEPS = 24;

  /** Takes copies. */
  public SiteStudy {
    grounds = List.copyOf(grounds);
    lineLengths = List.copyOf(lineLengths);
    if (grounds.isEmpty()) {
      throw new IllegalArgumentException("a site needs a ground; give at least one");
    }
    if (!lineLengths.isEmpty() && lines(design) != 1) {
      throw new IllegalArgumentException(
          "the feed chain has " + lines(design) + " lines; lengths can be tried for one only");
    }
  }

  /** Number of lines in a design's feed chain. */
  public static int lines(Design design) {
    return (int) design.feedChain().stream().filter(Stage.Line.class::isInstance).count();
  }

  private record Solved(SiteTable.Place place, double error) {}

  /**
   * Runs the study on several threads; the results do not depend on their number. What cannot be
   * modelled has no curves, but a reason.
   */
  public SiteTable run(Solver solver, int threads) {
    List<Callable<List<Solved>>> tasks = new ArrayList<>();
    for (Ground ground : grounds) {
      for (Quantity value : height.values()) {
        tasks.add(() -> lines(solver, ground, value));
      }
    }
    List<List<Solved>> solved;
    try (Workers workers = new Workers(threads)) {
      solved = workers.run(tasks);
    }
    List<SiteTable.Place> places = new ArrayList<>();
    int heights = height.values().size();
    for (int ground = 0; ground < grounds.size(); ground++) {
      for (int line = 0; line < lengths().size(); line++) {
        for (int h = 0; h < heights; h++) {
          places.add(solved.get(ground * heights + h).get(line).place());
        }
      }
    }
    return new SiteTable(
        grounds,
        lineLengths,
        height,
        design.bands(),
        design.bands().stream().map(band -> new ShownBand(band).frequencies(STEPS)).toList(),
        places,
        solved.stream().flatMap(List::stream).mapToDouble(Solved::error).max().orElseThrow());
  }

  private List<OptionalDouble> lengths() {
    return lineLengths.isEmpty()
        ? List.of(OptionalDouble.empty())
        : lineLengths.stream().map(OptionalDouble::of).toList();
  }

  /** All lengths of the line at one height over one ground. */
  private List<Solved> lines(Solver solver, Ground ground, Quantity value) {
    Design there;
    try {
      there = design.with(height.parameter(), Sweep.exact(value));
    } catch (DesignException e) {
      return lengths().stream().map(length -> missing(e)).toList();
    }
    List<Solved> solved = new ArrayList<>();
    Optional<InstallationFamily> shared = Optional.empty();
    for (OptionalDouble length : lengths()) {
      try {
        Installation installation = Installation.onSite(there, ground, length);
        // Without its outside in the model, the line is a matter of the chain alone.
        if (shared.isEmpty() || installation.hasFeedLine()) {
          shared =
              Optional.of(
                  new InstallationFamily(installation, solver, ShownBand.first(design.bands()), 1));
        }
        solved.add(solve(installation, shared.get()));
      } catch (GeometryException | CircuitException | ToleranceException e) {
        solved.add(missing(e));
      }
    }
    return solved;
  }

  private static Solved missing(RuntimeException cause) {
    return new Solved(new SiteTable.Place(List.of(), Optional.of(cause.getMessage())), 0);
  }

  private static Operation operation(Installation installation, Operation found) {
    return installation.hasFeedLine() ? found : installation.operate(found.solution()).operation();
  }

  private Solved solve(Installation installation, InstallationFamily family) {
    List<Band> bands = design.bands();
    List<BandSamples> samples =
        ShownBand.solve(
            bands,
            frequency -> operation(installation, family.at(frequency)),
            design.antenna().feeds().get(0).name());
    List<List<Double>> swr = new ArrayList<>();
    for (int i = 0; i < bands.size(); i++) {
      swr.add(ShownBand.swr(samples.get(i), new ShownBand(bands.get(i)).frequencies(STEPS)));
    }
    return new Solved(
        new SiteTable.Place(swr, Optional.empty()),
        samples.stream().mapToDouble(BandSamples::error).max().orElseThrow());
  }
}
