package org.spanwire.study;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.concurrent.Callable;
import org.spanwire.Solution;
import org.spanwire.Solver;
import org.spanwire.practice.Ratings;

/**
 * An installation at the best match of a band, looked at from all sides.
 *
 * @param band name of the band
 * @param operation the installation there
 * @param deliveredWatts power into the antenna at the transmitter's power
 * @param ledger where the transmitter's watts go; empty for several feeds
 * @param along current and charge along the wires at that power
 * @param elevationCuts in the vertical plane through the largest gain, and at right angles to it
 * @param azimuthCuts at the study's elevations
 * @param ratings voltages, currents and heat of the antenna as it was modelled, at that power
 */
public record BandPortrait(
    String band,
    Operation operation,
    double deliveredWatts,
    Optional<Ledger> ledger,
    List<WireState> along,
    List<PatternCut> elevationCuts,
    List<PatternCut> azimuthCuts,
    Ratings ratings) {

  private static final int STEPS = 180;
  private static final int PLACES = 60;

  /** Takes copies. */
  public BandPortrait {
    along = List.copyOf(along);
    elevationCuts = List.copyOf(elevationCuts);
    azimuthCuts = List.copyOf(azimuthCuts);
  }

  /** Frequency in hertz. */
  public double frequencyHz() {
    return operation.solution().frequencyHz();
  }

  /**
   * Portraits of several bands, on several threads; the results do not depend on their number.
   *
   * @param bands the bands as judged by {@link BandStudy}, each portrayed at its best match
   * @param elevationsDegrees elevations of the azimuth cuts
   */
  public static List<BandPortrait> of(
      Installation installation,
      Solver solver,
      List<BandResponse> bands,
      List<Double> elevationsDegrees,
      int threads) {
    List<Callable<BandPortrait>> tasks = new ArrayList<>();
    for (BandResponse band : bands) {
      tasks.add(
          () ->
              of(
                  installation,
                  band.band(),
                  installation.solve(solver, band.at(Plane.TRANSMITTER).best().frequencyHz()),
                  elevationsDegrees));
    }
    try (Workers workers = new Workers(threads)) {
      return workers.run(tasks);
    }
  }

  private static BandPortrait of(
      Installation installation, String name, Operation operation, List<Double> elevations) {
    Solution solution = operation.solution();
    double watts = installation.deliveredWatts(operation);
    return new BandPortrait(
        name,
        operation,
        watts,
        operation.chain().isPresent()
            ? operation.ledger(solution.powerBudgetWithSoil())
            : Optional.empty(),
        installation.along(operation, PLACES),
        PatternCut.throughPeak(solution, STEPS),
        elevations.stream()
            .map(e -> PatternCut.of(solution, PatternCut.Kind.AZIMUTH, e, STEPS))
            .toList(),
        new Ratings(solution.antenna(), solution, watts));
  }
}
