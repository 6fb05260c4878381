package org.spanwire.practice;

import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.concurrent.ConcurrentHashMap;
import java.util.function.ToDoubleFunction;
import org.apache.commons.math3.analysis.UnivariateFunction;
import org.apache.commons.math3.analysis.solvers.BrentSolver;
import org.apache.commons.math3.optim.MaxEval;
import org.apache.commons.math3.optim.nonlinear.scalar.GoalType;
import org.apache.commons.math3.optim.univariate.BrentOptimizer;
import org.apache.commons.math3.optim.univariate.SearchInterval;
import org.apache.commons.math3.optim.univariate.UnivariateObjectiveFunction;
import org.spanwire.geometry.Point;

/**
 * Fields along one ray at the heights of a person, from a conductor outward to where another
 * conductor is nearer. The steps follow the field: a share of the distance to the nearest conductor
 * in space, and of the wavelength.
 */
final class RayFields {

  /** Heights in metres above the floor at which a person is looked at. */
  private static final double[] HEIGHTS = {0.5, 1, 1.5, 2};

  /** Nobody's body is nearer to a conductor: closer by it is contact, not exposure. */
  static final double CLEARANCE = 0.2;

  private static final double SHARE_OF_DISTANCE = 0.35;
  private static final double SHARE_OF_WAVELENGTH = 1.0 / 14;

  /** Beyond this share of a ray's length another conductor is the nearer one. */
  private static final double OWN = 0.7;

  /** A peak between samples below this level cannot reach 1. */
  private static final double NEAR_PEAK = 0.7;

  private static final double PLACE_ACCURACY = 1e-3;

  private final Ray ray;
  private final double floor;
  private final PlanView plan;
  private final FieldsAt fields;
  private final List<List<FieldStrength>> samples = new ArrayList<>();
  private final List<Double> distances = new ArrayList<>();

  /** What was seen at a distance: several limits and levels look for the same places. */
  private final Map<Double, List<FieldStrength>> seen = new ConcurrentHashMap<>();

  /** Where fields come from. */
  @FunctionalInterface
  interface FieldsAt {
    FieldStrength at(Point place);
  }

  /** Where a level is last exceeded along a ray, outward. */
  record Reach(double distance, FieldStrength there) {}

  RayFields(Ray ray, double floor, PlanView plan, FieldsAt fields, double wavelength, double end) {
    this.ray = ray;
    this.floor = floor;
    this.plan = plan;
    this.fields = fields;
    double at = 0;
    while (true) {
      double reach = Math.min(at, end);
      Point foot = ray.at(reach, floor + HEIGHTS[HEIGHTS.length - 1]);
      if (reach > 0 && plan.away(foot) < OWN * reach) {
        break;
      }
      distances.add(reach);
      samples.add(people(reach));
      if (reach >= end) {
        break;
      }
      double scale = Math.max(CLEARANCE, plan.distance(foot));
      at += Math.min(SHARE_OF_DISTANCE * scale, SHARE_OF_WAVELENGTH * wavelength);
    }
  }

  Ray ray() {
    return ray;
  }

  /** Fields at all heights where a body can be. */
  private List<FieldStrength> people(double distance) {
    return seen.computeIfAbsent(distance, this::look);
  }

  private List<FieldStrength> look(double distance) {
    List<FieldStrength> there = new ArrayList<>();
    for (double height : HEIGHTS) {
      Point place = ray.at(distance, floor + height);
      if (plan.distance(place) >= CLEARANCE) {
        there.add(fields.at(place));
      }
    }
    return there;
  }

  private static double largest(
      List<FieldStrength> people, ToDoubleFunction<FieldStrength> measure) {
    return people.stream().mapToDouble(measure).max().orElse(0);
  }

  /** The person with the largest measure among those looked at. */
  FieldStrength strongest(ToDoubleFunction<FieldStrength> measure) {
    FieldStrength best = null;
    for (List<FieldStrength> people : samples) {
      for (FieldStrength each : people) {
        if (best == null || measure.applyAsDouble(each) > measure.applyAsDouble(best)) {
          best = each;
        }
      }
    }
    return best;
  }

  /**
   * About the largest distance at which a measure exceeds a level, by interpolation between the
   * samples; 0 if nowhere.
   */
  double estimate(ToDoubleFunction<FieldStrength> measure, double level) {
    Bracket last = bracket(measure, level);
    if (last == null || last.out < 0) {
      return last == null ? 0 : last.in;
    }
    double inside = Math.log(last.inValue);
    double outside = Math.log(Math.max(last.outValue, Double.MIN_NORMAL));
    return last.in + (last.out - last.in) * inside / (inside - outside);
  }

  /**
   * The largest distance at which a measure exceeds a level; 0 with nobody there if nowhere.
   *
   * @param measure of a field, falling with its strength
   */
  Reach reach(ToDoubleFunction<FieldStrength> measure, double level) {
    Bracket last = bracket(measure, level);
    if (last == null) {
      return new Reach(0, null);
    }
    if (last.out < 0) {
      return at(last.in, measure);
    }
    UnivariateFunction along = d -> largest(people(d), measure) / level;
    return at(crossing(along, last.in, last.out), measure);
  }

  /** A place above the level and the next one outward below it, if there is one, else −1. */
  private record Bracket(double in, double inValue, double out, double outValue) {}

  private Bracket bracket(ToDoubleFunction<FieldStrength> measure, double level) {
    double[] values =
        samples.stream().mapToDouble(people -> largest(people, measure) / level).toArray();
    int last = values.length - 1;
    for (int i = last; i >= 0; i--) {
      if (values[i] > 1) {
        return i == last
            ? new Bracket(distances.get(i), values[i], -1, 0)
            : new Bracket(distances.get(i), values[i], distances.get(i + 1), values[i + 1]);
      }
      boolean peak = i > 0 && i < last && values[i] >= Math.max(values[i - 1], values[i + 1]);
      if (peak && values[i] > NEAR_PEAK) {
        UnivariateFunction along = d -> largest(people(d), measure) / level;
        double top = peak(along, i);
        if (along.value(top) > 1) {
          return new Bracket(top, along.value(top), distances.get(i + 1), values[i + 1]);
        }
      }
    }
    return null;
  }

  private Reach at(double distance, ToDoubleFunction<FieldStrength> measure) {
    FieldStrength best = null;
    for (FieldStrength each : people(distance)) {
      if (best == null || measure.applyAsDouble(each) > measure.applyAsDouble(best)) {
        best = each;
      }
    }
    // Along a slanting way another conductor may be a little nearer than the ray's own.
    double away = Math.min(distance, plan.away(ray.at(distance, floor)));
    return new Reach(away, best);
  }

  private double peak(UnivariateFunction along, int i) {
    return new BrentOptimizer(1e-6, PLACE_ACCURACY)
        .optimize(
            new MaxEval(60),
            GoalType.MAXIMIZE,
            new SearchInterval(distances.get(i - 1), distances.get(i + 1), distances.get(i)),
            new UnivariateObjectiveFunction(along))
        .getPoint();
  }

  /** Between a place above the level and one further out below it. */
  private static double crossing(UnivariateFunction along, double in, double out) {
    return new BrentSolver(PLACE_ACCURACY).solve(60, d -> along.value(d) - 1, in, out);
  }
}
