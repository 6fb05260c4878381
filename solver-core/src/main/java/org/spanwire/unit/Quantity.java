package org.spanwire.unit;

import java.math.BigDecimal;
import java.math.MathContext;
import java.util.Map;
import java.util.Objects;

/**
 * A finite number with a dimension.
 *
 * @param value in SI units; decibels and dBi as such, angles in radians, percent as 0.01
 * @param dimension what it is
 */
public record Quantity(double value, Dimension dimension) {

  /** Refuses numbers that are not finite. */
  public Quantity {
    Objects.requireNonNull(dimension, "dimension");
    if (!Double.isFinite(value)) {
      throw new UnitException("result " + value + " is not a finite number; expected a finite one");
    }
  }

  /**
   * Reads a number with a unit or an expression of such, without parameters: {@code 27.3 m}, {@code
   * 7.1MHz}, {@code 36 %}, {@code AWG 14}, {@code 3 * 2.5 m}.
   *
   * @throws UnitException if the text is no quantity
   */
  public static Quantity parse(String text) {
    return Expression.parse(text).evaluate(Map.of());
  }

  /**
   * The value in SI units if the dimension is the wanted one.
   *
   * @throws UnitException if it is another
   */
  public double in(Dimension wanted) {
    if (!dimension.equals(wanted)) {
      throw new UnitException(
          this
              + " is "
              + dimension.describe()
              + "; expected "
              + wanted.describe()
              + " such as "
              + wanted.example());
    }
    return value;
  }

  /**
   * An angle in degrees, as it was written: the two roundings on the way to radians and back are
   * undone where that gives a decimal number of at most nine places.
   *
   * @throws UnitException if this is no angle
   */
  public double degrees() {
    double degrees = Math.toDegrees(in(Dimension.ANGLE));
    double rounded = Math.rint(degrees * 1e9) / 1e9;
    return Math.abs(rounded - degrees) <= 4 * Math.ulp(degrees) ? rounded : degrees;
  }

  /** The value to six digits with an SI unit, with a prefix where one helps: "7.1 MHz". */
  @Override
  public String toString() {
    String symbol = dimension.symbol();
    if (dimension.equals(Dimension.ANGLE)) {
      return round(degrees()) + " deg";
    }
    if (!Units.takesPrefix(symbol) || value == 0) {
      return symbol.isEmpty() ? round(value) : round(value) + " " + symbol;
    }
    int power = (int) Math.floor((Math.log10(Math.abs(value)) + 1e-9) / 3) * 3;
    if (dimension.equals(Dimension.LENGTH) && power > 0) {
      power = 0;
    }
    String prefix = Units.prefix(power);
    return prefix == null
        ? round(value) + " " + symbol
        : round(value / Math.pow(10, power)) + " " + prefix + symbol;
  }

  private static String round(double number) {
    return number == 0
        ? "0"
        : new BigDecimal(number).round(new MathContext(6)).stripTrailingZeros().toPlainString();
  }
}
