package org.spanwire.internal.field;

import java.util.ArrayList;
import java.util.List;
import org.apache.commons.math3.optim.MaxEval;
import org.apache.commons.math3.optim.nonlinear.scalar.GoalType;
import org.apache.commons.math3.optim.univariate.BrentOptimizer;
import org.apache.commons.math3.optim.univariate.SearchInterval;
import org.apache.commons.math3.optim.univariate.UnivariateObjectiveFunction;
import org.apache.commons.math3.optim.univariate.UnivariatePointValuePair;
import org.spanwire.internal.field.GainPattern.Candidate;

/**
 * Gathers local maxima that belong together: one maximum found twice, or places on one crest of
 * equal intensity, like the cones of a straight wire. Two places lie on one crest if the highest
 * place on the great circle midway between them is as high, and so on down to the finest detail of
 * the pattern.
 */
final class Crests {

  /** Between neighbours on a crest the intensity dips by less, between two lobes by more. */
  private static final double DIP = 1e-3;

  private static final int DEEPEST = 6;

  private final FarField field;
  private final double step;
  private final double[] work = new double[FarField.WORK];

  /**
   * @param step angle in radians over which the pattern changes little
   */
  Crests(FarField field, double step) {
    this.field = field;
    this.step = step;
  }

  /** The candidates in groups, in the order of each group's first. */
  List<List<Candidate>> of(List<Candidate> found) {
    List<List<Candidate>> crests = new ArrayList<>();
    for (Candidate next : found) {
      List<Candidate> joined = new ArrayList<>();
      crests.removeIf(
          crest -> {
            boolean joins = crest.stream().anyMatch(c -> together(c, next, 0));
            if (joins) {
              joined.addAll(crest);
            }
            return joins;
          });
      joined.add(next);
      crests.add(joined);
    }
    return crests;
  }

  private boolean together(Candidate a, Candidate b, int depth) {
    double higher = Math.max(a.intensity(), b.intensity());
    if (!a.isAsHighAs(b)) {
      return false;
    }
    double apart = angle(a, b);
    double[] p = unit(a);
    double[] q = unit(b);
    double[] middle = scaled(p[0] + q[0], p[1] + q[1], p[2] + q[2]);
    if (apart <= step) {
      return intensity(middle, middle, 0) >= higher * (1 - DIP);
    }
    if (depth == DEEPEST || apart > 0.9 * Math.PI) {
      return false;
    }
    double[] across =
        scaled(p[1] * q[2] - p[2] * q[1], p[2] * q[0] - p[0] * q[2], p[0] * q[1] - p[1] * q[0]);
    Candidate top = highestAcross(middle, across, 0.5 * apart);
    return together(a, top, depth + 1) && together(top, b, depth + 1);
  }

  /** The largest intensity on the great circle that crosses the middle at a right angle. */
  private Candidate highestAcross(double[] middle, double[] across, double reach) {
    UnivariatePointValuePair top =
        new BrentOptimizer(1e-9, 1e-9)
            .optimize(
                new MaxEval(200),
                GoalType.MAXIMIZE,
                new UnivariateObjectiveFunction(angle -> intensity(middle, across, angle)),
                new SearchInterval(-reach, reach, 0));
    double c = Math.cos(top.getPoint());
    double s = Math.sin(top.getPoint());
    double z = c * middle[2] + s * across[2];
    double y = c * middle[1] + s * across[1];
    double x = c * middle[0] + s * across[0];
    return new Candidate(
        top.getValue(),
        Math.toDegrees(Math.atan2(z, Math.hypot(x, y))),
        Math.toDegrees(Math.atan2(y, x)));
  }

  /** Intensity at an angle from a direction towards another one at right angles to it. */
  private double intensity(double[] from, double[] toward, double angle) {
    double c = Math.cos(angle);
    double s = angle == 0 ? 0 : Math.sin(angle);
    double x = c * from[0] + s * toward[0];
    double y = c * from[1] + s * toward[1];
    double z = c * from[2] + s * toward[2];
    double rho = Math.hypot(x, y);
    double norm = Math.hypot(rho, z);
    return field.intensity(
        z / norm, rho / norm, rho > 0 ? x / rho : 1, rho > 0 ? y / rho : 0, work);
  }

  private static double[] scaled(double x, double y, double z) {
    double norm = Math.max(Math.sqrt(x * x + y * y + z * z), Double.MIN_NORMAL);
    return new double[] {x / norm, y / norm, z / norm};
  }

  private static double angle(Candidate a, Candidate b) {
    double[] p = unit(a);
    double[] q = unit(b);
    double chord =
        Math.sqrt(
            (p[0] - q[0]) * (p[0] - q[0])
                + (p[1] - q[1]) * (p[1] - q[1])
                + (p[2] - q[2]) * (p[2] - q[2]));
    return 2 * Math.asin(Math.min(1, 0.5 * chord));
  }

  private static double[] unit(Candidate c) {
    double elevation = Math.toRadians(c.elevation());
    double azimuth = Math.toRadians(c.azimuth());
    return new double[] {
      Math.cos(elevation) * Math.cos(azimuth),
      Math.cos(elevation) * Math.sin(azimuth),
      Math.sin(elevation)
    };
  }
}
