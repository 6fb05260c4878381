package org.spanwire.study;

import java.util.List;
import java.util.Optional;
import org.spanwire.unit.Quantity;

/**
 * One point of a sweep at one frequency.
 *
 * @param parameters values of the varied parameters, in the sweep's order
 * @param frequencyHz frequency in hertz
 * @param values what was asked for, in the order of {@link SweepRequest#columns}; empty if there is
 *     no result
 * @param failure why there is no result
 */
public record SweepRow(
    List<Quantity> parameters, double frequencyHz, List<Double> values, Optional<Failure> failure) {

  /** Takes copies. */
  public SweepRow {
    parameters = List.copyOf(parameters);
    values = List.copyOf(values);
  }

  /**
   * Why a point has no result.
   *
   * @param kind what kind of reason
   * @param message one line that says what is wrong and what to do
   */
  public record Failure(Kind kind, String message) {}

  /** Kinds of reasons. */
  public enum Kind {
    /** The design is faulty with these values of its parameters. */
    DESIGN("bad-design"),
    /** The wires cannot be modelled as they lie. */
    GEOMETRY("bad-geometry"),
    /** A stage of the feed chain has no parameters at the frequency. */
    FEED_CHAIN("bad-feed-chain"),
    /** The solver could not reach the wanted tolerance. */
    TOLERANCE("tolerance-not-reached");

    private final String label;

    Kind(String label) {
      this.label = label;
    }

    /** The word used in outputs. */
    public String label() {
      return label;
    }
  }

  /** "ok", or the label of the failure. */
  public String status() {
    return failure.map(f -> f.kind().label()).orElse("ok");
  }
}
