package org.spanwire.study;

import org.apache.commons.math3.complex.Complex;

/**
 * The reflection coefficient of a port over a band: the polynomial through its values at Chebyshev
 * points of the second kind, both band edges included.
 *
 * <p>The reflection coefficient of a passive port is bounded and, being damped by its reference
 * impedance, has its poles further from the real axis than the impedance, so it is the quantity to
 * interpolate; the interpolant converges geometrically. Evaluation: J.-P. Berrut and L. N.
 * Trefethen, Barycentric Lagrange interpolation, SIAM Review 46, 501 (2004), equations (4.2) and
 * (5.4).
 */
final class ReflectionCurve {

  private static final int SCAN_STEPS_PER_POINT = 24;

  private final FrequencyRange range;
  private final Complex[] values;
  private final double[] nodes;

  /**
   * The curve through values at {@link #frequencies}.
   *
   * @param range band, low end below high end
   * @param values reflection coefficients, one for each frequency; at least 3
   */
  ReflectionCurve(FrequencyRange range, Complex[] values) {
    this.range = range;
    this.values = values.clone();
    this.nodes = nodes(values.length);
  }

  /**
   * Frequencies in hertz to sample a band at, rising from edge to edge; every second one of 2n − 1
   * is one of n.
   */
  static double[] frequencies(FrequencyRange range, int count) {
    double[] nodes = nodes(count);
    double[] frequencies = new double[count];
    for (int i = 0; i < count; i++) {
      frequencies[i] = range.middleHz() + nodes[i] * (range.highHz() - range.lowHz()) / 2;
    }
    frequencies[0] = range.lowHz();
    frequencies[count - 1] = range.highHz();
    return frequencies;
  }

  private static double[] nodes(int count) {
    double[] nodes = new double[count];
    for (int i = 0; i < count; i++) {
      // The sine of a symmetric argument keeps the middle point exactly in the middle.
      nodes[i] = Math.sin(Math.PI / 2 * (2.0 * i - (count - 1)) / (count - 1));
    }
    return nodes;
  }

  /** Reflection coefficient at a frequency in hertz within the band. */
  Complex at(double frequencyHz) {
    double x = (frequencyHz - range.middleHz()) * 2 / (range.highHz() - range.lowHz());
    double re = 0;
    double im = 0;
    double sum = 0;
    for (int i = 0; i < nodes.length; i++) {
      double distance = x - nodes[i];
      if (distance == 0) {
        return values[i];
      }
      double weight = weight(i) / distance;
      re += weight * values[i].getReal();
      im += weight * values[i].getImaginary();
      sum += weight;
    }
    return new Complex(re / sum, im / sum);
  }

  /** Barycentric weight of a point, up to a common factor: Berrut and Trefethen (5.4). */
  private double weight(int i) {
    double end = i == 0 || i == nodes.length - 1 ? 0.5 : 1;
    return i % 2 == 0 ? end : -end;
  }

  /**
   * Estimate of the largest error of |Γ| between the points: twice the sum of the last two
   * Chebyshev coefficients.
   *
   * <p>For a function analytic in an ellipse of parameter ρ the coefficients fall like ρ^−k and the
   * interpolation error is at most 2/(ρ − 1) times the last (L. N. Trefethen, Approximation Theory
   * and Approximation Practice, SIAM 2013, theorems 8.1 and 8.2); twice the last two covers that
   * for ρ of at least √2. Two coefficients, since one may vanish by symmetry.
   */
  double error() {
    int degree = values.length - 1;
    return 2 * (coefficient(degree) / 2 + coefficient(degree - 1));
  }

  /**
   * Magnitude of (2/n) Σ'' values cos(kθ), a Chebyshev coefficient of the interpolant; twice it for
   * k = n.
   */
  private double coefficient(int k) {
    int degree = values.length - 1;
    Complex sum = Complex.ZERO;
    for (int i = 0; i <= degree; i++) {
      double half = i == 0 || i == degree ? 0.5 : 1;
      double cosine = Math.cos(Math.PI * (((long) k * (degree - i)) % (2L * degree)) / degree);
      sum = sum.add(values[i].multiply(half * cosine));
    }
    return sum.abs() * 2 / degree;
  }

  /** Searches the curve. */
  ReflectionSearch search() {
    int steps = SCAN_STEPS_PER_POINT * (nodes.length - 1);
    double[] scan = new double[steps + 1];
    for (int i = 0; i <= steps; i++) {
      scan[i] = range.lowHz() + (range.highHz() - range.lowHz()) * i / steps;
    }
    scan[steps] = range.highHz();
    return new ReflectionSearch(scan, this::squaredMagnitude);
  }

  private double squaredMagnitude(double frequencyHz) {
    Complex value = at(frequencyHz);
    return value.getReal() * value.getReal() + value.getImaginary() * value.getImaginary();
  }
}
