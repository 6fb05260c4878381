package org.spanwire.cli.output;

import java.math.BigDecimal;
import java.math.MathContext;
import java.util.Locale;
import java.util.OptionalDouble;
import org.apache.commons.math3.complex.Complex;
import org.spanwire.study.Verdict;

/** Numbers for reading. */
public final class Numbers {

  private static final int MOST_DECIMALS = 6;
  private static final double NO_WATTS = 1e-6;

  private Numbers() {}

  public static String fixed(double value, int decimals) {
    if (Double.isInfinite(value)) {
      return value > 0 ? "inf" : "-inf";
    }
    String text = String.format(Locale.ROOT, "%." + decimals + "f", value);
    return text.startsWith("-") && text.chars().noneMatch(c -> c >= '1' && c <= '9')
        ? text.substring(1)
        : text;
  }

  public static String fixed(OptionalDouble value, int decimals) {
    return value.isPresent() ? fixed(value.getAsDouble(), decimals) : "-";
  }

  /**
   * Two decimals up to 10, one up to 100, then none; more where rounding would move it to the other
   * side of a verdict's limit.
   */
  public static String swr(double swr) {
    int decimals = swr < 9.995 ? 2 : swr < 99.95 ? 1 : 0;
    String text = fixed(swr, decimals);
    while (swr <= Verdict.WIDE_TUNER.limit() + 1
        && decimals < MOST_DECIMALS
        && Verdict.of(Double.parseDouble(text)) != Verdict.of(swr)) {
      text = fixed(swr, ++decimals);
    }
    return text;
  }

  /** Heat of a part. A transformer without any is one taken as ideal: its heat is not known. */
  public static String heat(String part, double watts, int decimals) {
    return part.startsWith("transformer") && watts < NO_WATTS ? "-" : fixed(watts, decimals);
  }

  /** Resistance or reactance to the digit that its error leaves standing, six decimals at most. */
  public static String ohms(double value, double errorOhm) {
    return fixed(value, (int) Math.max(0, Math.min(6, Math.ceil(-Math.log10(errorOhm)))));
  }

  /** A complex number to whole units: "98 - j12", "open" where it is infinite. */
  public static String rectangular(Complex value) {
    return value.isInfinite() || value.isNaN()
        ? "open"
        : fixed(value.getReal(), 0)
            + (value.getImaginary() < 0 ? " - j" : " + j")
            + fixed(Math.abs(value.getImaginary()), 0);
  }

  /** To a number of significant digits, without trailing zeros and without an exponent. */
  public static String significant(double value, int digits) {
    if (value == 0 || Double.isInfinite(value)) {
      return fixed(value, 0);
    }
    return new BigDecimal(value)
        .round(new MathContext(digits))
        .stripTrailingZeros()
        .toPlainString();
  }

  /** Megahertz to a hertz, without trailing zeros. */
  public static String megahertz(double hertz) {
    return BigDecimal.valueOf(Math.round(hertz), 6).stripTrailingZeros().toPlainString();
  }
}
