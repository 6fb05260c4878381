package org.spanwire.practice;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.Objects;
import java.util.Optional;
import java.util.function.Function;
import java.util.function.ToDoubleFunction;
import org.spanwire.Solution;
import org.spanwire.design.ExposureLimit;
import org.spanwire.geometry.Point;
import org.spanwire.result.NearField;
import org.spanwire.unit.PhysicalConstants;

/**
 * Fields of a solved antenna where people can be, against limits of exposure: all around every
 * conductor, along its sides and about its ends, at heights of 0.5 m to 2 m above a floor.
 * Immutable.
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

  /** Rays halved toward the one that reaches furthest. */
  private static final int HALVINGS = 2;

  private final Solution solution;
  private final PlanView plan;
  private final Function<Point, NearField> map;
  private final double scale;
  private final double watts;

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
    return watts * Math.pow(10, solution.peakGain().gainDbi() / 10);
  }

  /** The far-field screen for a limit; the gain counts the ground's reflection already. */
  public FarFieldScreen screen(ExposureLimit limit, double duty) {
    return FarFieldScreen.of(
        limit,
        solution.frequencyHz(),
        limit.share(duty) * eirp(),
        FarFieldScreen.NO_REFLECTION);
  }

  /**
   * Distances to keep on a floor.
   *
   * @param limits limits that cover the frequency
   * @param duty average over peak power, over the averaging time
   * @param floor height of the floor in metres, not negative
   * @param uncertainty relative uncertainty of the field strengths, not negative
   */
  public List<KeepOut> keepOut(
      List<ExposureLimit> limits, double duty, double floor, double uncertainty) {
    double furthest =
        limits.stream().mapToDouble(limit -> screen(limit, duty).distance()).max().orElse(0);
    double wavelength = PhysicalConstants.wavelength(solution.frequencyHz());
    double end = Math.max(1.5 * furthest, Math.max(wavelength / (2 * Math.PI), plan.highest()));
    while (true) {
      Survey survey = new Survey(floor, wavelength, end);
      List<KeepOut> found = new ArrayList<>();
      for (ExposureLimit limit : limits) {
        found.add(survey.keepOut(limit, duty, uncertainty));
      }
      double longest = found.stream().mapToDouble(KeepOut::longest).max().orElse(0);
      if (longest < 0.9 * end) {
        return found;
      }
      end *= 2;
    }
  }

  /** Largest share of a limit's field strengths at a person, 1 where it is just kept. */
  private ToDoubleFunction<FieldStrength> measure(ExposureLimit limit, double duty) {
    double root = Math.sqrt(limit.share(duty));
    double electric = root / limit.electric(solution.frequencyHz());
    double magnetic =
        limit.magnetic(solution.frequencyHz()).isPresent()
            ? root / limit.magnetic(solution.frequencyHz()).getAsDouble()
            : 0;
    return person -> Math.max(electric * person.electric(), magnetic * person.magnetic());
  }

  /** All rays over one floor. */
  private final class Survey {

    private final double floor;
    private final double wavelength;
    private final double end;
    private final List<List<RayFields>> rounds = new ArrayList<>();

    Survey(double floor, double wavelength, double end) {
      this.floor = floor;
      this.wavelength = wavelength;
      this.end = end;
      for (List<Ray> round : plan.rays(Math.max(1, wavelength / 6))) {
        rounds.add(round.stream().map(this::fields).toList());
      }
    }

    private RayFields fields(Ray ray) {
      return new RayFields(ray, floor, plan, ExposureMap.this::at, wavelength, end);
    }

    KeepOut keepOut(ExposureLimit limit, double duty, double uncertainty) {
      ToDoubleFunction<FieldStrength> measure = measure(limit, duty);
      RayFields.Reach furthest = furthest(measure, 1);
      FieldStrength strongest =
          rounds.stream()
              .flatMap(List::stream)
              .map(ray -> ray.strongest(measure))
              .filter(Objects::nonNull)
              .max(Comparator.comparingDouble(measure))
              .orElseThrow();
      return new KeepOut(
          limit,
          floor,
          furthest.distance(),
          furthest(measure, 1 + uncertainty).distance(),
          furthest(measure, 1 / (1 + uncertainty)).distance(),
          Optional.ofNullable(furthest.there()),
          strongest,
          square(measure.applyAsDouble(strongest)),
          outline(measure));
    }

    private RayFields.Reach furthest(ToDoubleFunction<FieldStrength> measure, double level) {
      RayFields.Reach best = new RayFields.Reach(0, null);
      for (List<RayFields> round : rounds) {
        RayFields.Reach here = furthest(round, measure, level);
        best = here.distance() > best.distance() ? here : best;
      }
      return best;
    }

    /** The ray that reaches furthest, and those midway to its neighbours, halved again. */
    private RayFields.Reach furthest(
        List<RayFields> round, ToDoubleFunction<FieldStrength> measure, double level) {
      int best = 0;
      RayFields.Reach reach = round.get(0).reach(measure, level);
      for (int i = 1; i < round.size(); i++) {
        RayFields.Reach here = round.get(i).reach(measure, level);
        if (here.distance() > reach.distance()) {
          best = i;
          reach = here;
        }
      }
      if (reach.distance() == 0) {
        return reach;
      }
      Ray middle = round.get(best).ray();
      Ray before = round.get(Math.max(0, best - 1)).ray();
      Ray after = round.get(Math.min(round.size() - 1, best + 1)).ray();
      for (int halving = 0; halving < HALVINGS; halving++) {
        before = before.toward(middle);
        after = after.toward(middle);
        for (Ray ray : List.of(before, after)) {
          RayFields.Reach here = fields(ray).reach(measure, level);
          if (here.distance() > reach.distance()) {
            reach = here;
            middle = ray;
          }
        }
      }
      return reach;
    }

    private List<Point> outline(ToDoubleFunction<FieldStrength> measure) {
      List<Point> outline = new ArrayList<>();
      for (List<RayFields> round : rounds) {
        for (RayFields ray : round) {
          RayFields.Reach reach = ray.reach(measure, 1);
          if (reach.distance() > 0) {
            outline.add(ray.ray().at(reach.distance(), floor));
          }
        }
      }
      return outline;
    }
  }

  private static double square(double value) {
    return value * value;
  }
}
