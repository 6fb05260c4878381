package org.spanwire.cli.command;

import java.util.List;
import org.spanwire.unit.Dimension;
import org.spanwire.unit.Quantity;
import org.spanwire.unit.UnitException;
import picocli.CommandLine.ITypeConverter;
import picocli.CommandLine.TypeConversionException;

/** Option values that are quantities, in SI units but for angles. */
final class Converters {

  private Converters() {}

  /** A frequency in hertz, positive; a bare number is hertz. */
  static final class Frequency implements ITypeConverter<Double> {
    @Override
    public Double convert(String text) {
      double hertz = value(text, Dimension.FREQUENCY);
      if (!(hertz > 0)) {
        throw new TypeConversionException(
            "frequency " + text + " must be above zero; write one such as 7.1MHz");
      }
      return hertz;
    }
  }

  /** An angle in degrees; a bare number is degrees. */
  static final class Degrees implements ITypeConverter<Double> {
    @Override
    public Double convert(String text) {
      Quantity quantity = parse(text);
      return quantity.dimension().equals(Dimension.NUMBER)
          ? quantity.value()
          : degrees(value(text, Dimension.ANGLE));
    }

    /** Undoes the conversion to radians without leaving 29.999999999999996 for 30. */
    private static double degrees(double radians) {
      double degrees = Math.toDegrees(radians);
      double rounded = Math.rint(degrees * 1e9) / 1e9;
      return Math.abs(rounded - degrees) <= 4 * Math.ulp(degrees) ? rounded : degrees;
    }
  }

  /** A ratio: {@code 0.1%} or 0.001. */
  static final class Ratio implements ITypeConverter<Double> {
    @Override
    public Double convert(String text) {
      return value(text, Dimension.NUMBER);
    }
  }

  /** A quantity of a dimension, or a bare number that stands for its SI unit. */
  private static double value(String text, Dimension wanted) {
    Quantity quantity = parse(text);
    if (!List.of(wanted, Dimension.NUMBER).contains(quantity.dimension())) {
      throw new TypeConversionException(
          "'"
              + text
              + "' is "
              + quantity.dimension().describe()
              + ", expected "
              + wanted.describe()
              + " such as "
              + wanted.example().replace(" ", ""));
    }
    return quantity.value();
  }

  private static Quantity parse(String text) {
    try {
      return Quantity.parse(text);
    } catch (UnitException e) {
      throw new TypeConversionException(e.getMessage());
    }
  }
}
