package org.spanwire.practice;

import java.util.List;
import java.util.Optional;
import org.spanwire.design.ExposureLimit;
import org.spanwire.geometry.Point;

/**
 * How far people on a floor must keep away from an antenna's conductors for a limit to be kept.
 *
 * @param limit the limit
 * @param frequencyHz frequency in hertz
 * @param floor height of the floor in metres above the ground
 * @param distance largest distance in metres, in plan, from the nearest conductor at which the
 *     limit is exceeded at any height up to 2 m above the floor; 0 if it is kept everywhere
 * @param uncertainty relative uncertainty of the field strengths
 * @param shortest the distance for fields weaker by their uncertainty
 * @param longest the distance for fields stronger by their uncertainty
 * @param at the person at the distance, if the limit is exceeded anywhere
 * @param strongest the person in the strongest field of the floor, against the limit
 * @param exposure share of the limit at {@code strongest}, see {@link ExposureSurvey#exposure}
 * @param outline places on the floor where the limit is met, in order around each conductor; empty
 *     if it is kept everywhere
 */
public record KeepOut(
    ExposureLimit limit,
    double frequencyHz,
    double floor,
    double distance,
    double uncertainty,
    double shortest,
    double longest,
    Optional<FieldStrength> at,
    FieldStrength strongest,
    double exposure,
    List<Point> outline) {

  /** Copies the outline. */
  public KeepOut {
    outline = List.copyOf(outline);
  }

  /** The person that decides: at the distance, or where the field is strongest. */
  public FieldStrength decisive() {
    return at.orElse(strongest);
  }

  /** Whether it is the electric field that decides there. */
  public boolean electricDecides() {
    FieldStrength person = decisive();
    return limit.magnetic(frequencyHz).isEmpty()
        || person.electric() / limit.electric(frequencyHz)
            >= person.magnetic() / limit.magnetic(frequencyHz).getAsDouble();
  }
}
