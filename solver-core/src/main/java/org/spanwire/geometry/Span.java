package org.spanwire.geometry;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.Locale;
import java.util.Objects;
import java.util.function.DoubleUnaryOperator;
import org.apache.commons.math3.analysis.solvers.BrentSolver;
import org.apache.commons.math3.geometry.euclidean.threed.Vector3D;
import org.apache.commons.math3.linear.Array2DRowRealMatrix;
import org.apache.commons.math3.linear.ArrayRealVector;
import org.apache.commons.math3.linear.CholeskyDecomposition;
import org.apache.commons.math3.linear.NonPositiveDefiniteMatrixException;
import org.apache.commons.math3.linear.RealVector;

/**
 * A flexible wire between two supports under load: the exact catenary, with loads anywhere along
 * it, wind from any side, supports at different heights, and stretch in proportion to tension.
 *
 * <p>The tension at the first support makes the wire end at the second. That way's derivative by
 * the tension is positive definite, so the equation is that of the minimum of a convex function and
 * has one solution (the complementary energy; Irvine, Cable Structures, 1981). It is found by
 * Newton's method, damped.
 *
 * @param first first support
 * @param last second support
 * @param load what pulls at the wire; not nothing
 * @param stiffness elastic modulus times cross section in newtons, positive; infinite for a wire
 *     that does not stretch
 */
public record Span(Point first, Point last, SpanLoad load, double stiffness) {

  private static final int MOST_STEPS = 200;
  private static final int DOUBLINGS = 60;

  /** Checks that there is something to hang. */
  public Span {
    Objects.requireNonNull(first, "first");
    Objects.requireNonNull(last, "last");
    Objects.requireNonNull(load, "load");
    if (!(stiffness > 0)) {
      throw new IllegalArgumentException("stiffness " + stiffness + " N must be positive");
    }
    if (!(Math.hypot(last.x() - first.x(), last.y() - first.y()) > 0)) {
      throw new IllegalArgumentException(
          "the supports stand one above the other; a hanging wire needs some span between them");
    }
    if (load.perMetre().getNorm() == 0
        && load.points().stream().allMatch(p -> p.force().getNorm() == 0)) {
      throw new IllegalArgumentException("the wire carries no load; give its mass per length");
    }
  }

  /** A wire that does not stretch, under its own weight in newtons per metre. */
  public static Span ofWeight(Point first, Point last, double newtonsPerMetre) {
    return new Span(first, last, SpanLoad.weight(newtonsPerMetre), Double.POSITIVE_INFINITY);
  }

  /** Straight distance between the supports in metres. */
  public double chord() {
    return first.distance(last);
  }

  /**
   * Hangs a wire of an unstretched length.
   *
   * @param metres unstretched length; a wire that does not stretch must be longer than the chord
   */
  public SpanShape ofLength(double metres) {
    if (!(metres > 0) || Double.isInfinite(stiffness) && !(metres > chord())) {
      throw new IllegalArgumentException(
          "wire length "
              + metres
              + " m does not reach over "
              + chord()
              + " m between the supports");
    }
    return solve(metres);
  }

  /**
   * Hangs a wire of such length that the larger pull at a support is a wanted one; of the two such
   * lengths the shorter, taut one.
   *
   * @param newtons pull, positive
   */
  public SpanShape ofTension(double newtons) {
    if (!(newtons > 0) || Double.isInfinite(newtons)) {
      throw new IllegalArgumentException("tension " + newtons + " N must be positive and finite");
    }
    double tautest = chord() / (1 + 2 * newtons / stiffness);
    DoubleUnaryOperator excess =
        slack -> Math.log(solve(tautest + slack).largestSupportTension() / newtons);
    double loads = totalLoad();
    // No pull below half the load holds it: the search begins where it is tautest.
    double pull = Math.max(newtons, loads / 2);
    double guess = chord() * loads * loads / (24 * pull * pull) + (chord() - tautest) / 2;
    double high = guess;
    double before = Double.POSITIVE_INFINITY;
    for (double e = excess.applyAsDouble(high); e > 0; e = excess.applyAsDouble(high)) {
      if (e >= before) {
        throw new IllegalArgumentException(
            String.format(
                Locale.ROOT,
                "tension %.4g N is too little to hold the load, which takes at least about %.4g N"
                    + " here; give more tension or less load",
                newtons,
                newtons * Math.exp(before)));
      }
      before = e;
      high *= 1.5;
    }
    return solve(tautest + root(excess, high));
  }

  /**
   * Hangs a wire of such length that its largest vertical distance below the chord is a wanted one.
   *
   * @param metres sag, positive
   */
  public SpanShape ofSag(double metres) {
    if (!(metres > 0) || Double.isInfinite(metres)) {
      throw new IllegalArgumentException("sag " + metres + " m must be positive and finite");
    }
    if (!Double.isInfinite(stiffness)) {
      // The tension of the wire that does not stretch is that of the one that does, up to strain.
      double tension =
          new Span(first, last, load, Double.POSITIVE_INFINITY)
              .ofSag(metres)
              .largestSupportTension();
      DoubleUnaryOperator excess = t -> Math.log(metres / ofTension(t).sag());
      return ofTension(
          new BrentSolver(1e-12, 1e-12)
              .solve(200, excess::applyAsDouble, 0.8 * tension, 1.25 * tension));
    }
    DoubleUnaryOperator excess = slack -> Math.log(metres / solve(chord() + slack).sag());
    double high = 8 * metres * metres / (3 * chord());
    while (excess.applyAsDouble(high) > 0) {
      high *= 2;
    }
    return solve(chord() + root(excess, high));
  }

  /** Root of a function that falls with slack, at or below a slack where it is not positive. */
  private static double root(DoubleUnaryOperator falling, double high) {
    double low = high;
    int halvings = 0;
    while (falling.applyAsDouble(low) <= 0) {
      low *= 0.5;
      if (++halvings > DOUBLINGS) {
        throw new IllegalArgumentException(
            "the wire would be straight to the accuracy of the computation; give less tension");
      }
    }
    double logarithm =
        new BrentSolver(1e-15, 1e-14)
            .solve(500, x -> falling.applyAsDouble(Math.exp(x)), Math.log(low), Math.log(high));
    return Math.exp(logarithm);
  }

  private double totalLoad() {
    return load.points().stream()
        .mapToDouble(p -> p.force().getNorm())
        .reduce(load.perMetre().getNorm() * chord(), Double::sum);
  }

  private SpanShape solve(double length) {
    Vector3D way = vector(last).subtract(vector(first));
    Vector3D tension = guess(length, way);
    Vector3D missed = missed(tension, length, way);
    for (int step = 0; step < MOST_STEPS; step++) {
      Vector3D change = newton(tension, length, missed);
      double fraction = 1;
      double slope = missed.dotProduct(change);
      Vector3D next = tension.add(change);
      Vector3D nextMissed = missed(next, length, way);
      while (nextMissed.dotProduct(change) < -0.9 * slope && fraction > 1e-12) {
        fraction *= 0.5;
        next = tension.add(fraction, change);
        nextMissed = missed(next, length, way);
      }
      boolean atRounding =
          missed.getNorm() <= 1e-11 * length && nextMissed.getNorm() >= 0.5 * missed.getNorm();
      if (atRounding || nextMissed.getNorm() == 0) {
        return new SpanShape(this, length, stretches(next, length));
      }
      tension = next;
      missed = nextMissed;
    }
    throw new IllegalArgumentException(
        String.format(
            Locale.ROOT,
            "wire length %.6g m is too far from the %.6g m between the supports to be computed; give"
                + " one that is nearer",
            length,
            chord()));
  }

  /** Half the load at each end, and along the chord what a flat parabola needs. */
  private Vector3D guess(double length, Vector3D way) {
    Vector3D all = load.perMetre().scalarMultiply(length);
    for (SpanLoad.PointLoad point : load.points()) {
      all = all.add(point.force());
    }
    double slack = Math.max(length / chord() - 1, 1e-12);
    double pull = totalLoad() / Math.sqrt(24 * slack);
    double elastic = stiffness * Math.max(0, chord() / length - 1);
    double taut =
        Double.isInfinite(stiffness)
            ? pull
            : Math.min(pull, elastic + Math.cbrt(stiffness * totalLoad() * totalLoad() / 24));
    return way.normalize().scalarMultiply(taut).add(0.5, all);
  }

  /** How far the wire ends short of the second support. */
  private Vector3D missed(Vector3D tension, double length, Vector3D way) {
    Vector3D left = way;
    for (SpanStretch stretch : stretches(tension, length)) {
      left = left.subtract(stretch.way(stretch.length()));
    }
    return left;
  }

  private Vector3D newton(Vector3D tension, double length, Vector3D missed) {
    double[][] derivative = new double[3][3];
    stretches(tension, length).forEach(stretch -> stretch.addDerivative(derivative));
    try {
      RealVector change =
          new CholeskyDecomposition(new Array2DRowRealMatrix(derivative), 1e-9, 0)
              .getSolver()
              .solve(new ArrayRealVector(missed.toArray()));
      return new Vector3D(change.toArray());
    } catch (NonPositiveDefiniteMatrixException e) {
      throw new IllegalArgumentException(
          "the wire would be straight to the accuracy of the computation; give less tension", e);
    }
  }

  private List<SpanStretch> stretches(Vector3D tension, double length) {
    List<SpanLoad.PointLoad> points = new ArrayList<>(load.points());
    points.sort(Comparator.comparingDouble(SpanLoad.PointLoad::at));
    Vector3D gradient = load.perMetre().negate();
    List<SpanStretch> stretches = new ArrayList<>();
    Vector3D start = tension;
    double at = 0;
    for (SpanLoad.PointLoad point : points) {
      SpanStretch stretch =
          new SpanStretch(start, gradient, (point.at() - at) * length, 1 / stiffness);
      stretches.add(stretch);
      start = stretch.end().subtract(point.force());
      at = point.at();
    }
    stretches.add(new SpanStretch(start, gradient, (1 - at) * length, 1 / stiffness));
    return stretches;
  }

  static Vector3D vector(Point point) {
    return new Vector3D(point.x(), point.y(), point.z());
  }
}
