package org.spanwire.internal.moment;

import org.apache.commons.math3.complex.Complex;

/**
 * Two cubic B-splines of different width about one place that stand in for an evenly filled gap.
 * Their weights are such that the transform of the sum over the wire, ∫ e(s) cos(ζs) ds, has the
 * gap's value and slope at the ζ of the guided wave: what is sent out along the wire is the same,
 * and so is, to fourth order in width over distance, every other effect at a distance.
 *
 * @param wide half-width of the wider spline in metres
 * @param narrow half-width of the narrower one
 * @param wideWeight weight of the wider one
 * @param narrowWeight weight of the narrower one
 */
record SplinePair(double wide, double narrow, Complex wideWeight, Complex narrowWeight) {

  /** The next one is below 2^11/23! = 8e-20. */
  private static final int SINC_TERMS = 10;

  /** The pair for a gap of a width in metres. */
  static SplinePair of(double wide, double narrow, double gap, Complex guided) {
    Complex box = box(guided, gap);
    Complex boxSlope = slope(guided.multiply(gap / 2)).multiply(gap / 2);
    Complex first = spline(guided, wide);
    Complex second = spline(guided, narrow);
    Complex firstSlope = splineSlope(guided, wide);
    Complex secondSlope = splineSlope(guided, narrow);
    Complex determinant = first.multiply(secondSlope).subtract(second.multiply(firstSlope));
    return new SplinePair(
        wide,
        narrow,
        box.multiply(secondSlope).subtract(second.multiply(boxSlope)).divide(determinant),
        first.multiply(boxSlope).subtract(box.multiply(firstSlope)).divide(determinant));
  }

  /** Transform of an evenly filled gap of unit integral. */
  static Complex box(Complex zeta, double gap) {
    return sinc(zeta.multiply(gap / 2));
  }

  /** The cubic B-spline of unit integral that vanishes at s = ±w: four boxes of w/2 convolved. */
  static double value(double s, double halfWidth) {
    double x = 2 * Math.abs(s) / halfWidth;
    double rest = 2 - x;
    if (rest <= 0) {
      return 0;
    }
    double shape = x < 1 ? (4 - 3 * x * x * rest) / 6 : rest * rest * rest / 6;
    return 2 * shape / halfWidth;
  }

  /** Transform of a spline. */
  static Complex spline(Complex zeta, double halfWidth) {
    Complex square = square(sinc(zeta.multiply(halfWidth / 4)));
    return square(square);
  }

  private static Complex splineSlope(Complex zeta, double halfWidth) {
    Complex x = zeta.multiply(halfWidth / 4);
    Complex sinc = sinc(x);
    return square(sinc).multiply(sinc).multiply(slope(x)).multiply(halfWidth);
  }

  private static Complex square(Complex x) {
    return x.multiply(x);
  }

  private static Complex sinc(Complex x) {
    if (x.getImaginary() == 0 && x.getReal() > 1) {
      return new Complex(Math.sin(x.getReal()) / x.getReal());
    }
    double re = x.getReal() * x.getReal() - x.getImaginary() * x.getImaginary();
    double im = 2 * x.getReal() * x.getImaginary();
    return re * re + im * im < 4 ? sincOfSquare(re, im) : x.sin().divide(x);
  }

  /** Σ (−x²)^n/(2n + 1)! for x² of modulus up to 2, to the last digits. */
  private static Complex sincOfSquare(double re, double im) {
    double sumRe = 1;
    double sumIm = 0;
    for (int n = SINC_TERMS; n > 0; n--) {
      double factor = -1.0 / (2 * n * (2 * n + 1));
      double next = 1 + factor * (sumRe * re - sumIm * im);
      sumIm = factor * (sumRe * im + sumIm * re);
      sumRe = next;
    }
    return new Complex(sumRe, sumIm);
  }

  /** Derivative of sin(x)/x. */
  private static Complex slope(Complex x) {
    if (x.abs() < 1e-2) {
      Complex square = square(x);
      return x.multiply(square.divide(30).subtract(square(square).divide(840)).subtract(1.0 / 3));
    }
    return x.cos().subtract(sinc(x)).divide(x);
  }
}
