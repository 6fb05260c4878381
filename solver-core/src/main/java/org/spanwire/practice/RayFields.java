package org.spanwire.practice;

import java.util.ArrayList;
import java.util.List;
import java.util.function.ToDoubleFunction;
import java.util.stream.DoubleStream;
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
   * The largest distance at which a measure exceeds a level; 0 with nobody there if nowhere.
   *
   * @param measure of a field, falling with its strength
   */
  Reach reach(ToDoubleFunction<FieldStrength> measure, double level) {
    double[] values =
        samples.stream()
            .flatMapToDouble(people -> DoubleStream.of(largest(people, measure) / level))
            .toArray();
    UnivariateFunction along = d -> largest(people(d), measure) / level;
    for (int i = values.length - 1; i >= 0; i--) {
      if (values[i] > 1) {
        return i == values.length - 1
            ? at(distances.get(i), measure)
            : at(crossing(along, distances.get(i), distances.get(i + 1)), measure);
      }
      if (i > 0
          && i < values.length - 1
          && values[i] > NEAR_PEAK
          && values[i] >= values[i - 1]
          && values[i] >= values[i + 1]) {
        double peak = peak(along, i);
        if (along.value(peak) > 1) {
          return at(crossing(along, peak, distances.get(i + 1)), measure);
        }
      }
    }
    return new Reach(0, null);
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
