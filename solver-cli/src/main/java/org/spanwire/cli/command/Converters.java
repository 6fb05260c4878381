package org.spanwire.cli.command;

import java.util.Arrays;
import java.util.List;
import java.util.function.Function;
import java.util.stream.Collectors;
import java.util.stream.IntStream;
import org.spanwire.circuit.bench.Limits;
import org.spanwire.circuit.bench.OperatingMode;
import org.spanwire.design.DesignReader;
import org.spanwire.design.ExposureLimit;
import org.spanwire.study.Plane;
import org.spanwire.study.SweepQuantity;
import org.spanwire.unit.Dimension;
import org.spanwire.unit.Quantity;
import org.spanwire.unit.UnitException;
import picocli.CommandLine.ITypeConverter;
import picocli.CommandLine.TypeConversionException;

/** Option values that are quantities, in SI units but for angles. */
final class Converters {

  private Converters() {}

  /** A frequency in hertz, positive; a large bare number is hertz, as in tables. */
  static final class Frequency implements ITypeConverter<Double> {

    @Override
    public Double convert(String text) {
      return hertz(text);
    }

    static double hertz(String text) {
      Quantity quantity = quantity(text, Dimension.FREQUENCY);
      double hertz = quantity.value();
      if (quantity.dimension().equals(Dimension.NUMBER)
          && hertz > 0
          && hertz < DesignReader.LEAST_BARE_HERTZ) {
        throw new TypeConversionException(
            "frequency " + text + " has no unit; write one such as 7.1MHz");
      }
      if (!(hertz > 0)) {
        throw new TypeConversionException(
            "frequency " + text + " must be above zero; write one such as 7.1MHz");
      }
      return hertz;
    }
  }

  /** A range of frequency, {@code 3.5MHz:30MHz}. */
  static final class Frequencies implements ITypeConverter<Limits.Range> {
    @Override
    public Limits.Range convert(String text) {
      String[] ends = text.split(":", -1);
      if (ends.length != 2) {
        throw none(text);
      }
      double low = Frequency.hertz(ends[0]);
      double high = Frequency.hertz(ends[1]);
      if (!(high > low)) {
        throw none(text);
      }
      return new Limits.Range(low, high);
    }

    private static TypeConversionException none(String text) {
      return new TypeConversionException(
          "range " + text + " is none; write one such as 3.5MHz:30MHz");
    }
  }

  /** Evenly spaced lengths in metres, {@code 5m:30m:26}. */
  static final class Lengths implements ITypeConverter<List<Double>> {
    @Override
    public List<Double> convert(String text) {
      String[] parts = text.split(":", -1);
      if (parts.length == 3 && parts[2].matches("[1-9][0-9]{0,3}")) {
        double from = value(parts[0], Dimension.LENGTH);
        double to = value(parts[1], Dimension.LENGTH);
        int count = Integer.parseInt(parts[2]);
        if (from > 0 && to > from && count > 1) {
          return IntStream.range(0, count)
              .mapToObj(i -> from + i * (to - from) / (count - 1))
              .toList();
        }
      }
      throw new TypeConversionException(
          "lengths " + text + " are none; write them as FROM:TO:COUNT such as 5m:30m:26");
    }
  }

  /** A power in watts, positive; a bare number is watts. */
  static final class Watts implements ITypeConverter<Double> {
    @Override
    public Double convert(String text) {
      double watts = value(text, Dimension.POWER);
      if (!(watts > 0)) {
        throw new TypeConversionException(
            "power " + text + " must be above zero; write one such as 10W");
      }
      return watts;
    }
  }

  /** An angle in degrees; a bare number is degrees. */
  static final class Degrees implements ITypeConverter<Double> {
    @Override
    public Double convert(String text) {
      Quantity quantity = quantity(text, Dimension.ANGLE);
      return quantity.dimension().equals(Dimension.ANGLE) ? quantity.degrees() : quantity.value();
    }
  }

  /** A ratio: {@code 0.1%} or 0.001. */
  static final class Ratio implements ITypeConverter<Double> {
    @Override
    public Double convert(String text) {
      return value(text, Dimension.NUMBER);
    }
  }

  /** A tolerance: as a ratio, but not where it could be meant in percent. */
  static final class Tolerance implements ITypeConverter<Double> {

    private static final double LEAST_DOUBTFUL = 0.01;

    @Override
    public Double convert(String text) {
      double ratio = value(text, Dimension.NUMBER);
      if (!text.contains("%") && ratio >= LEAST_DOUBTFUL) {
        throw new TypeConversionException(
            "tolerance " + text + " has no unit; write it in percent such as 0.1%");
      }
      return ratio;
    }
  }

  /** A length in metres; a bare number is metres. */
  static final class Length implements ITypeConverter<Double> {
    @Override
    public Double convert(String text) {
      return value(text, Dimension.LENGTH);
    }
  }

  /** A limit of exposure by its name. */
  static final class Limit implements ITypeConverter<ExposureLimit> {
    @Override
    public ExposureLimit convert(String text) {
      return ExposureLimit.find(text)
          .orElseThrow(
              () ->
                  new TypeConversionException(
                      "'"
                          + text
                          + "' is no limit; known are "
                          + ExposureLimit.all().stream()
                              .map(ExposureLimit::name)
                              .collect(Collectors.joining(", "))));
    }
  }

  /** A mode of operation by its word. */
  static final class Mode implements ITypeConverter<OperatingMode> {
    @Override
    public OperatingMode convert(String text) {
      return OperatingMode.find(text)
          .orElseThrow(
              () ->
                  new TypeConversionException(
                      "'"
                          + text
                          + "' is no mode; known are "
                          + String.join(", ", OperatingMode.words())));
    }
  }

  /** An impedance in ohms, positive; a bare number is ohms. */
  static final class Ohms implements ITypeConverter<Double> {
    @Override
    public Double convert(String text) {
      double ohms = value(text, Dimension.RESISTANCE);
      if (!(ohms > 0)) {
        throw new TypeConversionException(
            "impedance " + text + " must be above zero; write one such as 50ohm");
      }
      return ohms;
    }
  }

  /** A level in dB; a bare number is dB. */
  static final class Decibels implements ITypeConverter<Double> {
    @Override
    public Double convert(String text) {
      return value(text, Dimension.LEVEL);
    }
  }

  /** A quantity that a sweep can give. */
  static final class Wanted implements ITypeConverter<SweepQuantity> {
    @Override
    public SweepQuantity convert(String text) {
      return labelled(SweepQuantity.values(), SweepQuantity::label, text, "quantity of a sweep");
    }
  }

  /** A place of the feed chain. */
  static final class PlaneLabel implements ITypeConverter<Plane> {
    @Override
    public Plane convert(String text) {
      return labelled(Plane.values(), Plane::label, text, "plane of the feed chain");
    }
  }

  private static <T> T labelled(T[] values, Function<T, String> label, String text, String what) {
    return Arrays.stream(values)
        .filter(value -> label.apply(value).equals(text))
        .findFirst()
        .orElseThrow(
            () ->
                new TypeConversionException(
                    "'"
                        + text
                        + "' is no "
                        + what
                        + "; expected "
                        + Arrays.stream(values).map(label).collect(Collectors.joining(", "))));
  }

  private static double value(String text, Dimension wanted) {
    return quantity(text, wanted).value();
  }

  /** A quantity of a dimension, or a bare number. */
  private static Quantity quantity(String text, Dimension wanted) {
    Quantity quantity;
    try {
      quantity = Quantity.parse(text);
    } catch (UnitException e) {
      throw new TypeConversionException(e.getMessage());
    }
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
    return quantity;
  }
}
