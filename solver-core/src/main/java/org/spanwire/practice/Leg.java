package org.spanwire.practice;

import java.util.Objects;
import org.spanwire.design.CutRules;

/**
 * A length of wire to be cut in one go: between the ends, feeds and fittings of a wire.
 *
 * @param wire name of the wire
 * @param from where it begins
 * @param to where it ends
 * @param modelLength its length in metres in the antenna, along the path, gaps left out
 * @param rules how it is made up
 */
public record Leg(String wire, End from, End to, double modelLength, CutRules rules) {

  /**
   * One end of a leg.
   *
   * @param kind what is there
   * @param name name of the feed or fitting, otherwise empty
   */
  public record End(Kind kind, String name) {

    /** What is at the end of a leg. */
    public enum Kind {
      /** Nothing conducting: an insulator. */
      FREE,
      /** A feed's terminal. */
      FEED,
      /** A fitting's terminal. */
      FITTING,
      /** Another wire, the same wire's other end, or the ground. */
      JOINT
    }
  }

  /** Checks that something is left to cut. */
  public Leg {
    Objects.requireNonNull(wire, "wire");
    Objects.requireNonNull(from, "from");
    Objects.requireNonNull(to, "to");
    Objects.requireNonNull(rules, "rules");
    double loops = (free(from) + free(to)) * (rules.loop() / 2 + rules.foldBack());
    if (rules.datum() == CutRules.Datum.TIP && !(modelLength > loops)) {
      throw new IllegalArgumentException(
          "wire '"
              + wire
              + "': a leg of "
              + modelLength
              + " m is no longer than its loop and fold-back of "
              + loops
              + " m; shorten them");
    }
  }

  private static int free(End end) {
    return end.kind() == End.Kind.FREE ? 1 : 0;
  }

  private int freeEnds() {
    return free(from) + free(to);
  }

  private double terminals() {
    return (2 - freeEnds()) * rules.terminal();
  }

  /** Wire beyond an eye's bearing point: the other half of the loop, and the fold-back. */
  private double beyondBearing() {
    return freeEnds() * (rules.loop() / 2 + rules.foldBack());
  }

  /**
   * Length to cut in metres: the leg without its stretch, what the terminals take, and for ends
   * that the model counts to the bearing point the rest of the eye.
   */
  public double cutLength() {
    double eyes = rules.datum() == CutRules.Datum.EYE ? beyondBearing() : 0;
    return modelLength / (1 + rules.stretch()) + eyes + terminals();
  }

  /**
   * Length in metres to measure once made up, before it stretches: from terminal or bearing point
   * to terminal or bearing point.
   */
  public double madeUpLength() {
    return cutLength() - beyondBearing() - terminals();
  }

  /** Length in metres that a cut length gives in the antenna: {@link #cutLength} turned round. */
  public double modelLengthOf(double cut) {
    double eyes = rules.datum() == CutRules.Datum.EYE ? beyondBearing() : 0;
    return (cut - eyes - terminals()) * (1 + rules.stretch());
  }
}
