package org.spanwire.study;

import java.util.List;
import java.util.Objects;
import java.util.OptionalDouble;
import org.spanwire.design.Requirement;
import org.spanwire.result.Warning;

/**
 * A requirement and how the design stands to it. Values are in the unit of the quantity: SWR and
 * efficiency as ratios, gain in dBi, heat in watts, bandwidth in hertz.
 *
 * @param requirement what was asked
 * @param outcome whether it is kept
 * @param quantity what was looked at, with its unit and side
 * @param limit the limit; that of a verdict is the largest SWR with it
 * @param found the value where it is nearest to the limit or furthest beyond it
 * @param low smallest value that the numerical errors allow
 * @param high largest value that the numerical errors allow
 * @param frequencyHz where it was found, in hertz; empty for a yield
 * @param tolerance relative accuracy of impedances that it was judged with
 * @param cause why it is not kept, in one line; empty if it is
 * @param warnings named doubts
 */
public record CheckedRequirement(
    Requirement requirement,
    Outcome outcome,
    Quantity quantity,
    double limit,
    double found,
    double low,
    double high,
    OptionalDouble frequencyHz,
    double tolerance,
    String cause,
    List<Warning> warnings) {

  /** Whether a requirement is kept. */
  public enum Outcome {
    /** Kept, whatever the numerical errors are. */
    MET("met"),
    /** Not kept, whatever the numerical errors are. */
    FAILED("failed"),
    /** Closer to the limit than the numerical error, at a tighter tolerance too. */
    UNDECIDED("undecided");

    private final String label;

    Outcome(String label) {
      this.label = label;
    }

    /** The word used in outputs. */
    public String label() {
      return label;
    }
  }

  /** What a requirement limits. */
  public enum Quantity {
    /** Largest SWR at the feedpoint. */
    SWR_FEEDPOINT("SWR at the feedpoint", "", true),
    /** Largest SWR at the transmitter. */
    SWR_TRANSMITTER("SWR at the transmitter", "", true),
    /** Verdict by the largest SWR at the transmitter. */
    VERDICT("verdict", "", true),
    /** Smallest gain. */
    GAIN("gain", "dBi", false),
    /** Smallest radiation efficiency. */
    EFFICIENCY("radiation efficiency", "", false),
    /** Largest heat of the choke at the top of the line. */
    CHOKE_HEAT("heat of the choke", "W", true),
    /** Width of the widest stretch within an SWR. */
    BANDWIDTH("bandwidth", "Hz", false),
    /** Largest distance that people must keep. */
    EXPOSURE_DISTANCE("distance to keep", "m", true),
    /** Smallest share of installations that meet all other requirements. */
    YIELD("yield", "", false);

    private final String label;
    private final String unit;
    private final boolean atMost;

    Quantity(String label, String unit, boolean atMost) {
      this.label = label;
      this.unit = unit;
      this.atMost = atMost;
    }

    /** The words used in outputs. */
    public String label() {
      return label;
    }

    /** The unit of limit, value and margin; empty for a ratio. */
    public String unit() {
      return unit;
    }

    /** Whether the limit is the largest value allowed; the smallest if not. */
    public boolean atMost() {
      return atMost;
    }
  }

  /** Takes copies. */
  public CheckedRequirement {
    Objects.requireNonNull(cause, "cause");
    warnings = List.copyOf(warnings);
  }

  /** Whether it is kept beyond doubt. */
  public boolean passed() {
    return outcome == Outcome.MET;
  }

  /** Room between value and limit, negative beyond the limit. */
  public double margin() {
    return quantity.atMost() ? limit - found : found - limit;
  }

  /** Which side of the limit the values that the numerical errors allow lie on. */
  static Outcome judge(Quantity quantity, double limit, double low, double high) {
    boolean met = quantity.atMost() ? high <= limit : low >= limit;
    boolean failed = quantity.atMost() ? low > limit : high < limit;
    if (met) {
      return Outcome.MET;
    }
    return failed ? Outcome.FAILED : Outcome.UNDECIDED;
  }
}
