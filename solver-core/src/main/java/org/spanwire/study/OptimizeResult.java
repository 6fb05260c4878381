package org.spanwire.study;

import java.util.List;
import java.util.OptionalDouble;
import org.spanwire.unit.Quantity;

/**
 * The best designs found. Values are those of the goals at their worst over bands and
 * installations, from solutions.
 *
 * @param goals the goals, in the order of {@link Candidate#values}
 * @param nominal the design as it is
 * @param candidates distinct designs, the best first
 * @param front designs of which none is better in one goal without being worse in another, from the
 *     scan and from searches between its best ones, solved; only with several goals that are not
 *     weighted
 * @param scanned number of designs scanned
 * @param solves number of times the antenna was solved
 * @param modelError largest error found of a reflection coefficient of the models that the local
 *     searches ran on, against solutions that they had not seen
 */
public record OptimizeResult(
    List<Goal> goals,
    Candidate nominal,
    List<Candidate> candidates,
    List<Candidate> front,
    int scanned,
    long solves,
    double modelError) {

  /** Two designs are a tie if their costs differ by no more than this. */
  public static final double TIE = 0.01;

  /** Takes copies. */
  public OptimizeResult {
    goals = List.copyOf(goals);
    candidates = List.copyOf(candidates);
    front = List.copyOf(front);
  }

  /**
   * A design.
   *
   * @param parameters values of the parameters that were varied
   * @param cost what was made small: the goal, its negative where more is better, or the weighted
   *     sum
   * @param values the goals
   * @param feasible whether it keeps all limits
   * @param binding where the first goal is at its worst, within 0.01
   * @param bands the first goal by band
   * @param flatness how far each parameter may move
   */
  public record Candidate(
      List<Setting> parameters,
      double cost,
      List<Double> values,
      boolean feasible,
      List<Binding> binding,
      List<BandValue> bands,
      List<Flatness> flatness) {

    /** Takes copies. */
    public Candidate {
      parameters = List.copyOf(parameters);
      values = List.copyOf(values);
      binding = List.copyOf(binding);
      bands = List.copyOf(bands);
      flatness = List.copyOf(flatness);
    }
  }

  /**
   * The value of a parameter.
   *
   * @param atBound whether it lies at an end of its range
   */
  public record Setting(String parameter, Quantity value, boolean atBound) {}

  /**
   * Where a goal is at its worst.
   *
   * @param band name of the band
   * @param frequencyHz frequency in hertz
   * @param installation values of the parameters that stand for the set of installations
   */
  public record Binding(String band, double frequencyHz, List<Setting> installation) {

    /** Takes a copy. */
    public Binding {
      installation = List.copyOf(installation);
    }
  }

  /** The worst of the first goal in a band over all installations. */
  public record BandValue(String band, double value) {}

  /**
   * How far a parameter may move alone, the others kept, until the cost has risen by 0.1.
   *
   * @param low lowest value; empty if the cost does not rise so much before the end of what was
   *     looked at
   * @param high highest value; empty likewise
   */
  public record Flatness(String parameter, OptionalDouble low, OptionalDouble high) {}
}
