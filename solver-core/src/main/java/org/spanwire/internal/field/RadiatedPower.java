package org.spanwire.internal.field;

import org.spanwire.internal.math.GaussLegendre;

/**
 * Power radiated to the sky (without a ground: in all directions), the far field's intensity
 * integrated over the sphere: Gauss–Legendre in the cosine of the polar angle, uniform in azimuth,
 * both of an order that follows from the electrical size. Over soil the panels shrink toward the
 * horizon, where the reflection coefficient changes on the scale 1/√|ε|.
 */
public final class RadiatedPower {

  private static final int LARGEST_ROUND = 8;
  private static final double GROWTH = 1.4;

  /** The rules leave a wide margin; what is too coarse is found out and raised. */
  private static final double START = 0.6;

  private final FarField field;
  private final double[] edges;
  private final double[] work = new double[FarField.WORK];

  private RadiatedPower(FarField field) {
    this.field = field;
    this.edges = edges(field);
  }

  /**
   * The radiated power; the orders are raised until it changes by less than the tolerance. Its
   * error is the last change.
   *
   * @param field the far field
   * @param relativeTolerance wanted relative error, for example 1e-6
   */
  public static PowerIntegral of(FarField field, double relativeTolerance) {
    RadiatedPower power = new RadiatedPower(field);
    double scale = START;
    double last = power.integrate(scale);
    double change = last;
    for (int round = 0; round < LARGEST_ROUND; round++) {
      scale *= GROWTH;
      double next = power.integrate(scale);
      change = Math.abs(next - last);
      last = next;
      if (change <= relativeTolerance * last) {
        break;
      }
    }
    return new PowerIntegral(last, change);
  }

  private static double[] edges(FarField field) {
    if (!field.hasGround()) {
      return new double[] {-1, 1};
    }
    int graded = 0;
    double innermost = 2 * field.soilScale();
    while (innermost * Math.pow(4, graded) < 0.7) {
      graded++;
    }
    double[] edges = new double[graded + 2];
    for (int i = 0; i < graded; i++) {
      edges[i + 1] = innermost * Math.pow(4, i);
    }
    edges[graded + 1] = 1;
    return edges;
  }

  private double integrate(double scale) {
    double sum = 0;
    for (int i = 0; i + 1 < edges.length; i++) {
      double from = edges[i];
      double to = edges[i + 1];
      // The phases of |E|² run through 2 kR per radian; n nodes integrate exp(jxt) on [−1, 1] once
      // 2n exceeds x by a margin.
      double phase = field.electricalRadius() * (Math.acos(from) - Math.acos(to));
      GaussLegendre rule =
          GaussLegendre.of((int) Math.ceil(scale * (6 + 0.5 * phase + 2 * Math.cbrt(phase))));
      for (int node = 0; node < rule.size(); node++) {
        double cosTheta = 0.5 * (from + to) + 0.5 * (to - from) * rule.node(node);
        sum += 0.5 * (to - from) * rule.weight(node) * ring(cosTheta, scale);
      }
    }
    return sum;
  }

  private double ring(double cosTheta, double scale) {
    double sinTheta = Math.sqrt((1 - cosTheta) * (1 + cosTheta));
    int samples = (int) Math.ceil(scale * AzimuthRule.samples(field.horizontalRadius() * sinTheta));
    double step = 2 * Math.PI / samples;
    double sum = 0;
    for (int i = 0; i < samples; i++) {
      double phi = i * step;
      sum += field.intensity(cosTheta, sinTheta, Math.cos(phi), Math.sin(phi), work);
    }
    return sum * step;
  }
}
