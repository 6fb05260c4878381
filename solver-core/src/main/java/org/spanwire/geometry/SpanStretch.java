package org.spanwire.geometry;

import org.apache.commons.math3.geometry.euclidean.threed.Vector3D;
import org.spanwire.internal.math.GaussLegendre;

/**
 * Wire between two loads. Along unstretched length s from 0 to {@code length} its tension is T(s) =
 * start + gradient·s, and its shape obeys dr/ds = T/|T| + T/EA (Irvine 1981, chapter 1).
 *
 * @param start tension at s = 0 in newtons, pointing along the wire
 * @param gradient change of the tension in newtons per metre: minus the load
 * @param length unstretched length in metres
 * @param compliance 1/EA per newton; 0 for a wire that does not stretch
 */
record SpanStretch(Vector3D start, Vector3D gradient, double length, double compliance) {

  private static final GaussLegendre RULE = GaussLegendre.of(16);

  Vector3D tension(double s) {
    return start.add(s, gradient);
  }

  Vector3D end() {
    return tension(length);
  }

  /**
   * Way from the start to s. With T = T⊥ + e T∥, e along the load, the integral of T/|T| is T⊥ ∫
   * ds/|T| + e (|T(s)| − |T(0)|)/|gradient|, and ∫ ds/|T| is the potential of a straight line,
   * (2/w) artanh(w s/(|T(0)| + |T(s)|)): both forms stay accurate however taut the wire.
   */
  Vector3D way(double s) {
    Vector3D there = tension(s);
    double sum = start.getNorm() + there.getNorm();
    double load = gradient.getNorm();
    Vector3D middle = tension(0.5 * s);
    Vector3D stretched = middle.scalarMultiply(s * compliance);
    if (load == 0) {
      return stretched.add(s / start.getNorm(), start);
    }
    Vector3D e = gradient.scalarMultiply(1 / load);
    double u = Math.min(1, load * s / sum);
    double inverse = 2 * s / sum * (u < 1e-4 ? 1 + u * u / 3 : artanh(u) / u);
    double along = middle.dotProduct(e);
    Vector3D across = middle.subtract(along, e);
    return stretched.add(across.getNorm() == 0 ? 0 : inverse, across).add(2 * s * along / sum, e);
  }

  private static double artanh(double u) {
    return 0.5 * (Math.log1p(u) - Math.log1p(-u));
  }

  /** Length under tension. */
  double stretchedLength() {
    double sum = 0;
    for (int i = 0; i < RULE.size(); i++) {
      double s = 0.5 * length * (1 + RULE.node(i));
      sum += RULE.weight(i) * tension(s).getNorm();
    }
    return length + 0.5 * length * compliance * sum;
  }

  /** Adds the derivative of the whole way by the tension, ∫ (1/|T| − T Tᵀ/|T|³ + 1/EA) ds. */
  void addDerivative(double[][] to) {
    for (int i = 0; i < RULE.size(); i++) {
      Vector3D t = tension(0.5 * length * (1 + RULE.node(i)));
      double norm = t.getNorm();
      double ds = 0.5 * length * RULE.weight(i);
      double[] c = t.scalarMultiply(1 / norm).toArray();
      for (int j = 0; j < 3; j++) {
        to[j][j] += ds * (1 / norm + compliance);
        for (int k = 0; k < 3; k++) {
          to[j][k] -= c[j] * c[k] * (ds / norm);
        }
      }
    }
  }

  /** Where the tension is at right angles to a direction, if it is anywhere strictly between. */
  double crossing(Vector3D direction) {
    double slope = gradient.dotProduct(direction);
    double s = -start.dotProduct(direction) / slope;
    return s > 0 && s < length ? s : Double.NaN;
  }

  /** Largest distance of the wire between two places from the straight line between them. */
  double deviation(double from, double to) {
    Vector3D origin = way(from);
    Vector3D chord = way(to).subtract(origin);
    if (chord.getNorm() == 0 || gradient.getNorm() == 0) {
      return 0;
    }
    Vector3D c = chord.normalize();
    Vector3D off = gradient.subtract(gradient.dotProduct(c), c);
    double s = crossing(off);
    if (off.getNorm() <= 1e-14 * gradient.getNorm() || !(s > from && s < to)) {
      return 0;
    }
    return Math.abs(way(s).subtract(origin).dotProduct(off)) / off.getNorm();
  }
}
