package org.spanwire.circuit;

import java.util.Locale;

/**
 * How a Touchstone file states its numbers: the option line and the version-2 keywords.
 *
 * <p>Source: IBIS Open Forum, Touchstone File Format Specification, versions 1.1 and 2.1.
 *
 * @param version version of the format
 * @param unit unit of frequency
 * @param parameter kind of network parameter
 * @param format format of a complex number
 * @param matrix which part of the matrix is written; other than full only in version 2
 * @param order order of the off-diagonal parameters of a 2-port; 12_21 only in version 2
 */
public record TouchstoneOptions(
    Version version, Unit unit, Parameter parameter, Format format, Matrix matrix, Order order) {

  /** Version of the file format. */
  public enum Version {
    /** Versions 1.0 and 1.1, without keywords; the file's extension tells the number of ports. */
    V1,
    /** Version 2.0. */
    V2_0,
    /** Version 2.1. */
    V2_1;

    String word() {
      return name().substring(1).replace('_', '.');
    }
  }

  /** Unit of frequency. */
  public enum Unit {
    /** 1 Hz. */
    HZ(0),
    /** 1000 Hz. */
    KHZ(3),
    /** 1e6 Hz. */
    MHZ(6),
    /** 1e9 Hz. */
    GHZ(9);

    private final int power;

    Unit(int power) {
      this.power = power;
    }

    /** Power of ten of the unit in hertz. */
    int power() {
      return power;
    }
  }

  /** Kind of network parameter. */
  public enum Parameter {
    /** Scattering. */
    S,
    /** Admittance. */
    Y,
    /** Impedance. */
    Z,
    /** Inverse hybrid, 2-ports only. */
    G,
    /** Hybrid, 2-ports only. */
    H;

    boolean isHybrid() {
      return this == G || this == H;
    }
  }

  /** Format of a complex number. */
  public enum Format {
    /** Real and imaginary part. */
    RI,
    /** Magnitude and angle in degrees. */
    MA,
    /** 20 log10 of the magnitude, and angle in degrees. */
    DB
  }

  /** Which part of the matrix stands in the file. */
  public enum Matrix {
    /** All of it. */
    FULL,
    /** On and below the diagonal, of a symmetric matrix. */
    LOWER,
    /** On and above the diagonal, of a symmetric matrix. */
    UPPER
  }

  /** Order of the off-diagonal parameters of a 2-port. */
  public enum Order {
    /** N11 N12 N21 N22. */
    ORDER_12_21,
    /** N11 N21 N12 N22, the only order of version 1. */
    ORDER_21_12;

    String word() {
      return name().substring("ORDER_".length());
    }
  }

  /** Checks that the version allows the rest. */
  public TouchstoneOptions {
    if (version == Version.V1 && (matrix != Matrix.FULL || order != Order.ORDER_21_12)) {
      throw new IllegalArgumentException(
          "Touchstone version 1 holds full matrices in the order 21_12; choose version 2");
    }
    if (parameter.isHybrid() && matrix != Matrix.FULL) {
      throw new IllegalArgumentException("hybrid parameters are not symmetric; write them in full");
    }
  }

  /** Version 1 with scattering parameters in a unit and a format. */
  public static TouchstoneOptions version1(Unit unit, Format format) {
    return new TouchstoneOptions(
        Version.V1, unit, Parameter.S, format, Matrix.FULL, Order.ORDER_21_12);
  }

  /** Version 2.1 with scattering parameters in a unit and a format. */
  public static TouchstoneOptions version2(Unit unit, Format format) {
    return new TouchstoneOptions(
        Version.V2_1, unit, Parameter.S, format, Matrix.FULL, Order.ORDER_12_21);
  }

  /** The same for another kind of parameter. */
  public TouchstoneOptions with(Parameter other) {
    return new TouchstoneOptions(version, unit, other, format, matrix, order);
  }

  /** The same with another part of the matrix. */
  public TouchstoneOptions with(Matrix other) {
    return new TouchstoneOptions(version, unit, parameter, format, other, order);
  }

  /** The enum constant that a word names in any case, or null. */
  static <E extends Enum<E>> E named(Class<E> type, String word) {
    for (E constant : type.getEnumConstants()) {
      if (constant.name().equals(word.toUpperCase(Locale.ROOT))) {
        return constant;
      }
    }
    return null;
  }
}
