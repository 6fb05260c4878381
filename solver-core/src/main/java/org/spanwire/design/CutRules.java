package org.spanwire.design;

/**
 * How wire is made up, for cut lengths.
 *
 * @param datum what the model's free ends stand for
 * @param loop wire in metres that the eye at a free end takes: the loop's way around
 * @param foldBack wire in metres that lies back along itself behind the eye
 * @param terminal wire in metres that a terminal takes at a feed, a fitting or a junction
 * @param stretch relative lengthening in service, beyond the length when cut
 * @param tolerance accuracy of cutting in metres
 */
public record CutRules(
    Datum datum, double loop, double foldBack, double terminal, double stretch, double tolerance) {

  /** What a free end of the model stands for. */
  public enum Datum {
    /** The bearing point of the eye: loop and fold-back come on top. */
    EYE,
    /** The tip of the wire: loop and fold-back are part of the length. */
    TIP
  }

  /** Lengths as the model has them, cut to 5 mm (common practice, no source). */
  public static final CutRules PLAIN = new CutRules(Datum.TIP, 0, 0, 0, 0, 0.005);
}
