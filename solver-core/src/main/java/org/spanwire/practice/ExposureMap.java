package org.spanwire.practice;

import java.util.List;
import java.util.function.Function;
import org.spanwire.Solution;
import org.spanwire.design.ExposureLimit;
import org.spanwire.geometry.Point;
import org.spanwire.result.NearField;
import org.spanwire.unit.PhysicalConstants;

/**
 * Fields of a solved antenna where people can be, at a stated power. Immutable.
 *
 * <p>Fields are rms and undisturbed by the person, who is not part of the model; over a person's
 * height the largest counts, which is stricter than the average over the body that the limits
 * allow. Places closer than 0.2 m to a conductor are left out: there it is contact that hurts. An
 * estimate, no certificate: ground, house and wiring differ from the model's flat soil.
 */
public final class ExposureMap {

  /**
   * Relative accuracy asked of the field; it is another small part of the uncertainty of distances.
   */
  private static final double FIELD_ACCURACY = 1e-3;

  private final Solution solution;
  private final PlanView plan;
  private final Function<Point, NearField> map;
  private final double scale;
  private final double watts;
  private volatile double eirp = Double.NaN;

  /**
   * Scales a solution to a power.
   *
   * @param watts peak envelope power in watts that the antenna accepts at its feeds, positive
   */
  public ExposureMap(Solution solution, double watts) {
    double accepted = solution.acceptedPower();
    if (!(watts > 0) || Double.isInfinite(watts) || !(accepted > 0)) {
      throw new IllegalArgumentException(
          "power " + watts + " W and accepted power " + accepted + " W must be positive");
    }
    this.solution = solution;
    this.watts = watts;
    scale = Math.sqrt(watts / accepted);
    plan = new PlanView(solution.antenna().wires());
    map = solution.nearFieldMap(FIELD_ACCURACY);
  }

  /** Fields at a place, at the peak of the envelope. */
  public FieldStrength at(Point place) {
    NearField field = map.apply(place);
    return new FieldStrength(place, scale * field.electric(), scale * field.magnetic());
  }

  /** Equivalent isotropically radiated power in watts, of the envelope's peak. */
  public double eirp() {
    // The search for the peak is dear, and whoever computes it finds the same.
    if (Double.isNaN(eirp)) {
      eirp = watts * Math.pow(10, solution.peakGain().gainDbi() / 10);
    }
    return eirp;
  }

  /** The far-field screen for a limit; the gain counts the ground's reflection already. */
  public FarFieldScreen screen(ExposureLimit limit, double duty) {
    return FarFieldScreen.of(
        limit, solution.frequencyHz(), limit.share(duty) * eirp(), FarFieldScreen.NO_REFLECTION);
  }

  /**
   * Looks around on a floor.
   *
   * @param limits limits that cover the frequency; far enough out for all of them
   * @param duty average over peak power, over the averaging time
   * @param floor height of the floor in metres, not negative
   */
  public ExposureSurvey survey(List<ExposureLimit> limits, double duty, double floor) {
    double furthest =
        limits.stream().mapToDouble(limit -> screen(limit, duty).distance()).max().orElse(0);
    double wavelength = PhysicalConstants.wavelength(solution.frequencyHz());
    double end = Math.max(1.5 * furthest, Math.max(wavelength / (2 * Math.PI), plan.highest()));
    while (true) {
      ExposureSurvey survey =
          new ExposureSurvey(plan, this::at, solution.frequencyHz(), duty, floor, end);
      if (limits.stream().allMatch(survey::isWideEnough)) {
        return survey;
      }
      end *= 2;
    }
  }
}
