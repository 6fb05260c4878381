package org.spanwire.validation;

import java.util.Locale;
import org.apache.commons.math3.complex.Complex;

/** Numbers and names of cases as text. */
final class CaseText {

  private CaseText() {}

  static String name(Quantity quantity) {
    return quantity.name().toLowerCase(Locale.ROOT).replace('_', ' ');
  }

  /** A number to seven digits; the imaginary part only where there is one. */
  static String value(Complex z) {
    if (z.getImaginary() == 0) {
      return number(z.getReal());
    }
    String sign = z.getImaginary() < 0 ? " - j" : " + j";
    return number(z.getReal()) + sign + number(Math.abs(z.getImaginary()));
  }

  static String limit(Tolerance tolerance) {
    return measure(tolerance.limit(), tolerance.relative());
  }

  static String deviation(double deviation, Tolerance tolerance) {
    return Double.isNaN(deviation) ? "none" : measure(deviation, tolerance.relative());
  }

  private static String measure(double value, boolean relative) {
    return relative
        ? String.format(Locale.ROOT, "%.3g %%", 100 * value)
        : String.format(Locale.ROOT, "%.3g", value);
  }

  private static String number(double x) {
    return String.format(Locale.ROOT, "%.7g", x);
  }
}
