package org.spanwire.internal.math;

/**
 * Sums Σ c_n j_n(x) of spherical Bessel functions of the first kind with complex coefficients, for
 * real or complex x. Orders up to about 50. Upward recurrence where |x| exceeds the highest order
 * and x is real; otherwise downward recurrence, normalised by j_0 or j_1 (Miller's algorithm, DLMF
 * 10.51.1 and 3.6); the power series (DLMF 10.53.1) for small arguments. Relative to the largest
 * term the error is a few units of the last place.
 */
public final class SphericalBesselSum {

  private static final double SERIES_LIMIT = 0.01;
  private static final double SEED = 1e-200;
  private static final double RESCALE = 1e150;

  private SphericalBesselSum() {}

  /**
   * Σ (re[n] + j im[n]) j_n(x) for real x.
   *
   * @param re real parts of the coefficients
   * @param im imaginary parts, same length
   * @param x argument
   * @param out receives real and imaginary part at {@code at} and {@code at + 1}
   * @param at first index written
   */
  public static void real(double[] re, double[] im, double x, double[] out, int at) {
    if (Math.abs(x) < SERIES_LIMIT) {
      series(re, im, x, out, at);
    } else if (Math.abs(x) > re.length - 1) {
      upward(re, im, x, out, at);
    } else {
      downward(re, im, x, out, at);
    }
  }

  private static void series(double[] re, double[] im, double x, double[] out, int at) {
    double sumRe = 0;
    double sumIm = 0;
    double half = 0.5 * x * x;
    double leading = 1;
    for (int n = 0; n < re.length; n++) {
      double j =
          leading
              * (1
                  - half
                      / (2 * n + 3)
                      * (1 - half / (2 * (2 * n + 5)) * (1 - half / (3 * (2 * n + 7)))));
      sumRe += re[n] * j;
      sumIm += im[n] * j;
      leading *= x / (2 * n + 3);
    }
    out[at] = sumRe;
    out[at + 1] = sumIm;
  }

  private static void upward(double[] re, double[] im, double x, double[] out, int at) {
    double inverse = 1 / x;
    double current = Math.sin(x) * inverse;
    double next = (current - Math.cos(x)) * inverse;
    double sumRe = 0;
    double sumIm = 0;
    for (int n = 0; n < re.length; n++) {
      sumRe += re[n] * current;
      sumIm += im[n] * current;
      double after = (2 * n + 3) * inverse * next - current;
      current = next;
      next = after;
    }
    out[at] = sumRe;
    out[at + 1] = sumIm;
  }

  private static void downward(double[] re, double[] im, double x, double[] out, int at) {
    int top = re.length - 1;
    double inverse = 1 / x;
    double above = 0;
    double current = SEED;
    double sumRe = 0;
    double sumIm = 0;
    for (int n = startingOrder(top, Math.abs(x)); n >= 0; n--) {
      if (n <= top) {
        sumRe += re[n] * current;
        sumIm += im[n] * current;
      }
      if (n > 0) {
        double below = (2 * n + 1) * inverse * current - above;
        above = current;
        current = below;
      }
    }
    double j0 = Math.sin(x) * inverse;
    double scale =
        Math.abs(current) >= Math.abs(above) ? j0 / current : (j0 - Math.cos(x)) * inverse / above;
    out[at] = sumRe * scale;
    out[at + 1] = sumIm * scale;
  }

  /** Orders above the highest one asked for, until the decaying solution has won by 1e-16. */
  private static int startingOrder(int top, double size) {
    return top + 8 + (int) size;
  }

  /**
   * e^{−|Im x|} Σ (re[n] + j im[n]) j_n(x) for complex x; the factor keeps the sum finite for any
   * x.
   *
   * @param re real parts of the coefficients
   * @param im imaginary parts, same length
   * @param x real part of the argument
   * @param y imaginary part of the argument
   * @param out receives real and imaginary part at {@code at} and {@code at + 1}
   * @param at first index written
   */
  public static void scaledComplex(
      double[] re, double[] im, double x, double y, double[] out, int at) {
    if (y == 0) {
      real(re, im, x, out, at);
      return;
    }
    double squared = x * x + y * y;
    if (squared < SERIES_LIMIT * SERIES_LIMIT) {
      complexSeries(re, im, x, y, out, at);
    } else {
      complexDownward(re, im, x, y, squared, out, at);
    }
  }

  private static void complexSeries(
      double[] re, double[] im, double x, double y, double[] out, int at) {
    double halfRe = 0.5 * (x * x - y * y);
    double halfIm = x * y;
    double leadRe = Math.exp(-Math.abs(y));
    double leadIm = 0;
    double sumRe = 0;
    double sumIm = 0;
    for (int n = 0; n < re.length; n++) {
      double a = 1.0 / (3 * (2 * n + 7));
      double b = 1.0 / (2 * (2 * n + 5));
      double c = 1.0 / (2 * n + 3);
      double tRe = 1 - a * halfRe;
      double tIm = -a * halfIm;
      double uRe = 1 - b * (halfRe * tRe - halfIm * tIm);
      double uIm = -b * (halfRe * tIm + halfIm * tRe);
      double vRe = 1 - c * (halfRe * uRe - halfIm * uIm);
      double vIm = -c * (halfRe * uIm + halfIm * uRe);
      double jRe = leadRe * vRe - leadIm * vIm;
      double jIm = leadRe * vIm + leadIm * vRe;
      sumRe += re[n] * jRe - im[n] * jIm;
      sumIm += re[n] * jIm + im[n] * jRe;
      double nextRe = c * (leadRe * x - leadIm * y);
      leadIm = c * (leadRe * y + leadIm * x);
      leadRe = nextRe;
    }
    out[at] = sumRe;
    out[at + 1] = sumIm;
  }

  private static void complexDownward(
      double[] re, double[] im, double x, double y, double squared, double[] out, int at) {
    int top = re.length - 1;
    double inverseRe = x / squared;
    double inverseIm = -y / squared;
    double aboveRe = 0;
    double aboveIm = 0;
    double currentRe = SEED;
    double currentIm = 0;
    double sumRe = 0;
    double sumIm = 0;
    for (int n = startingOrder(top, Math.sqrt(squared)); n >= 0; n--) {
      if (n <= top) {
        sumRe += re[n] * currentRe - im[n] * currentIm;
        sumIm += re[n] * currentIm + im[n] * currentRe;
      }
      if (n > 0) {
        double factorRe = (2 * n + 1) * inverseRe;
        double factorIm = (2 * n + 1) * inverseIm;
        double belowRe = factorRe * currentRe - factorIm * currentIm - aboveRe;
        double belowIm = factorRe * currentIm + factorIm * currentRe - aboveIm;
        aboveRe = currentRe;
        aboveIm = currentIm;
        currentRe = belowRe;
        currentIm = belowIm;
        if (Math.abs(currentRe) + Math.abs(currentIm) > RESCALE) {
          double shrink = 1 / RESCALE;
          aboveRe *= shrink;
          aboveIm *= shrink;
          currentRe *= shrink;
          currentIm *= shrink;
          sumRe *= shrink;
          sumIm *= shrink;
        }
      }
    }
    normalise(
        sumRe, sumIm, currentRe, currentIm, aboveRe, aboveIm, x, y, inverseRe, inverseIm, out, at);
  }

  /** Divides the sum by f_0/j_0 or f_1/j_1, whichever is the better determined. */
  private static void normalise(
      double sumRe,
      double sumIm,
      double f0Re,
      double f0Im,
      double f1Re,
      double f1Im,
      double x,
      double y,
      double inverseRe,
      double inverseIm,
      double[] out,
      int at) {
    double sinh = -0.5 * Math.expm1(-2 * Math.abs(y)) * Math.signum(y);
    double cosh = 1 - Math.abs(sinh);
    double sin = Math.sin(x);
    double cos = Math.cos(x);
    double sineRe = sin * cosh;
    double sineIm = cos * sinh;
    double jRe = sineRe * inverseRe - sineIm * inverseIm;
    double jIm = sineRe * inverseIm + sineIm * inverseRe;
    double fRe = f0Re;
    double fIm = f0Im;
    if (f1Re * f1Re + f1Im * f1Im > f0Re * f0Re + f0Im * f0Im) {
      double dRe = jRe - cos * cosh;
      double dIm = jIm + sin * sinh;
      jRe = dRe * inverseRe - dIm * inverseIm;
      jIm = dRe * inverseIm + dIm * inverseRe;
      fRe = f1Re;
      fIm = f1Im;
    }
    double size = Math.max(Math.abs(fRe), Math.abs(fIm));
    fRe /= size;
    fIm /= size;
    double norm = 1 / (size * (fRe * fRe + fIm * fIm));
    double ratioRe = (jRe * fRe + jIm * fIm) * norm;
    double ratioIm = (jIm * fRe - jRe * fIm) * norm;
    out[at] = sumRe * ratioRe - sumIm * ratioIm;
    out[at + 1] = sumRe * ratioIm + sumIm * ratioRe;
  }
}
