package org.spanwire.study;

/**
 * What it takes to transmit on a whole band, by the worst SWR over it.
 *
 * <p>The limits are common practice, no source: what transmitters stand without a tuner, what
 * built-in tuners and what wide-range tuners match.
 */
public enum Verdict {
  /** SWR of at most 2: no tuner needed. */
  DIRECT("direct", 2),
  /** SWR of at most 3: within reach of a built-in tuner. */
  TUNABLE("tunable", 3),
  /** SWR of at most 10: needs a tuner of wide range. */
  WIDE_TUNER("wide-tuner", 10),
  /** SWR above 10. */
  UNUSABLE("unusable", Double.POSITIVE_INFINITY);

  private final String label;
  private final double limit;

  Verdict(String label, double limit) {
    this.label = label;
    this.limit = limit;
  }

  /** The verdict on a worst SWR, 1 to infinity. */
  public static Verdict of(double worstSwr) {
    for (Verdict verdict : values()) {
      if (worstSwr <= verdict.limit) {
        return verdict;
      }
    }
    throw new IllegalArgumentException("SWR " + worstSwr + " must be a number");
  }

  /** The word used in outputs. */
  public String label() {
    return label;
  }

  /** The largest SWR with this verdict; infinite for {@link #UNUSABLE}. */
  public double limit() {
    return limit;
  }
}
