package org.spanwire.cli.output;

import java.math.BigDecimal;
import java.math.MathContext;
import java.util.Locale;
import java.util.OptionalDouble;

/** Numbers for reading. */
final class Numbers {

  private Numbers() {}

  static String fixed(double value, int decimals) {
    if (Double.isInfinite(value)) {
      return value > 0 ? "inf" : "-inf";
    }
    String text = String.format(Locale.ROOT, "%." + decimals + "f", value);
    return text.startsWith("-") && text.chars().noneMatch(c -> c >= '1' && c <= '9')
        ? text.substring(1)
        : text;
  }

  static String fixed(OptionalDouble value, int decimals) {
    return value.isPresent() ? fixed(value.getAsDouble(), decimals) : "-";
  }

  /** Two decimals up to 10, one up to 100, then none. */
  static String swr(double swr) {
    return fixed(swr, swr < 9.995 ? 2 : swr < 99.95 ? 1 : 0);
  }

  /** Resistance or reactance to the digit that its error leaves standing, six decimals at most. */
  static String ohms(double value, double errorOhm) {
    return fixed(value, (int) Math.max(0, Math.min(6, Math.ceil(-Math.log10(errorOhm)))));
  }

  /** To a number of significant digits, without trailing zeros and without an exponent. */
  static String significant(double value, int digits) {
    if (value == 0 || Double.isInfinite(value)) {
      return fixed(value, 0);
    }
    return new BigDecimal(value)
        .round(new MathContext(digits))
        .stripTrailingZeros()
        .toPlainString();
  }

  /** Megahertz to a hertz, without trailing zeros. */
  static String megahertz(double hertz) {
    return BigDecimal.valueOf(Math.round(hertz), 6).stripTrailingZeros().toPlainString();
  }
}
