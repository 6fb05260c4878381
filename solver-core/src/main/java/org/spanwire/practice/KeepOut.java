package org.spanwire.practice;

import java.util.List;
import java.util.Optional;
import org.spanwire.design.ExposureLimit;
import org.spanwire.geometry.Point;

/**
 * How far people on a floor must keep away from an antenna's conductors for a limit to be kept.
 *
 * @param limit the limit
 * @param floor height of the floor in metres above the ground
 * @param distance largest distance in metres, in plan, from the nearest conductor at which the
 *     limit is exceeded at any height up to 2 m above the floor; 0 if it is kept everywhere
 * @param shortest the same for fields weaker by their uncertainty
 * @param longest the same for fields stronger by their uncertainty
 * @param at the person at that distance, if the limit is exceeded anywhere
 * @param strongest the person in the strongest field of the floor, against the limit
 * @param exposure share of the limit at {@code strongest}, squared fields averaged over time; the
 *     limit is kept up to 1
 * @param outline places on the floor where the limit is met, in order around the conductors; empty
 *     if it is kept everywhere
 */
public record KeepOut(
    ExposureLimit limit,
    double floor,
    double distance,
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

  /** Whether it is the electric field that decides at a person. */
  public static boolean electricDecides(
      ExposureLimit limit, double frequencyHz, FieldStrength person) {
    double electric = person.electric() / limit.electric(frequencyHz);
    return limit.magnetic(frequencyHz).isEmpty()
        || electric >= person.magnetic() / limit.magnetic(frequencyHz).getAsDouble();
  }
}
