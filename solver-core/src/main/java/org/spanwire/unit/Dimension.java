package org.spanwire.unit;

import java.util.EnumMap;
import java.util.List;
import java.util.Map;
import java.util.stream.Collectors;

/**
 * The kind of a quantity: integer exponents of metre, kilogram, second, ampere, kelvin, radian,
 * decibel and dBi. The angle counts as a dimension of its own so that a length is never taken for
 * an angle.
 */
public final class Dimension {

  /** A pure number; percent is one. */
  public static final Dimension NUMBER = new Dimension(new EnumMap<>(Base.class));

  /** Length, metre. */
  public static final Dimension LENGTH = base(Base.METRE);

  /** Plane angle, radian. */
  public static final Dimension ANGLE = base(Base.RADIAN);

  /** Ratio of powers in decibels. */
  public static final Dimension LEVEL = base(Base.DECIBEL);

  /** Gain over an isotropic radiator, dBi. */
  public static final Dimension GAIN = base(Base.DBI);

  /** Mass, kilogram. */
  public static final Dimension MASS = base(Base.KILOGRAM);

  /** Mass per length, kilogram per metre. */
  public static final Dimension MASS_PER_LENGTH = MASS.per(LENGTH);

  /** Density, kilogram per cubic metre. */
  public static final Dimension DENSITY = MASS_PER_LENGTH.per(LENGTH).per(LENGTH);

  /** Time, second. */
  public static final Dimension TIME = base(Base.SECOND);

  /** Difference of temperatures, kelvin. */
  public static final Dimension TEMPERATURE = base(Base.KELVIN);

  private static final Dimension CURRENT = base(Base.AMPERE);

  /** Force, newton. */
  public static final Dimension FORCE = MASS.times(LENGTH).per(TIME).per(TIME);

  /** Pressure and elastic modulus, pascal. */
  public static final Dimension PRESSURE = FORCE.per(LENGTH).per(LENGTH);

  /** Speed, metre per second. */
  public static final Dimension SPEED = LENGTH.per(TIME);

  /** Change of temperature, kelvin. */
  public static final Dimension TEMPERATURE_CHANGE = base(Base.KELVIN);

  /** Thermal expansion, relative change of length per kelvin. */
  public static final Dimension EXPANSION = NUMBER.per(TEMPERATURE);

  /** Frequency, hertz. */
  public static final Dimension FREQUENCY = NUMBER.per(TIME);

  /** Power, watt. */
  public static final Dimension POWER =
      MASS.times(LENGTH).times(LENGTH).per(TIME).per(TIME).per(TIME);

  /** Voltage, volt. */
  public static final Dimension VOLTAGE = POWER.per(CURRENT);

  /** Resistance and impedance, ohm. */
  public static final Dimension RESISTANCE = VOLTAGE.per(CURRENT);

  /** Inductance, henry. */
  public static final Dimension INDUCTANCE = RESISTANCE.times(TIME);

  /** Capacitance, farad. */
  public static final Dimension CAPACITANCE = TIME.per(RESISTANCE);

  /** Magnetic flux density, tesla. */
  public static final Dimension FLUX_DENSITY = VOLTAGE.times(TIME).per(LENGTH).per(LENGTH);

  /** Conductivity, siemens per metre. */
  public static final Dimension CONDUCTIVITY = NUMBER.per(RESISTANCE).per(LENGTH);

  private static final List<Named> NAMED =
      List.of(
          new Named(NUMBER, "a number without unit", "", "0.36 or 36 %"),
          new Named(LENGTH, "a length", "m", "27.3 m"),
          new Named(ANGLE, "an angle", "rad", "30 deg"),
          new Named(LEVEL, "a level", "dB", "2.2 dB"),
          new Named(GAIN, "a gain", "dBi", "5 dBi"),
          new Named(FREQUENCY, "a frequency", "Hz", "7.1 MHz"),
          new Named(POWER, "a power", "W", "100 W"),
          new Named(VOLTAGE, "a voltage", "V", "1 V"),
          new Named(RESISTANCE, "a resistance", "ohm", "50 ohm"),
          new Named(INDUCTANCE, "an inductance", "H", "4.2 uH"),
          new Named(CAPACITANCE, "a capacitance", "F", "60 pF"),
          new Named(MASS, "a mass", "kg", "1.8 kg"),
          new Named(MASS_PER_LENGTH, "a mass per length", "kg/m", "28 g/m"),
          new Named(DENSITY, "a density", "kg/m3", "950 kg/m3"),
          new Named(FORCE, "a force", "N", "100 N"),
          new Named(PRESSURE, "a pressure or elastic modulus", "Pa", "110 GPa"),
          new Named(SPEED, "a speed", "m/s", "30 m/s"),
          new Named(TEMPERATURE_CHANGE, "a change of temperature", "K", "-20 K"),
          new Named(EXPANSION, "a thermal expansion", "1/K", "17 ppm/K"),
          new Named(TIME, "a time", "s", "60 s"),
          new Named(TEMPERATURE, "a difference of temperatures", "K", "60 K"),
          new Named(FLUX_DENSITY, "a flux density", "T", "50 mT"),
          new Named(CONDUCTIVITY, "a conductivity", "S/m", "5 mS/m"));

  /** Exponents other than 0. */
  private final Map<Base, Integer> exponents;

  private Dimension(Map<Base, Integer> exponents) {
    this.exponents = exponents;
  }

  private static Dimension base(Base base) {
    return new Dimension(new EnumMap<>(Map.of(base, 1)));
  }

  /** The dimension of a product. */
  public Dimension times(Dimension other) {
    return combine(other, 1);
  }

  /** The dimension of a quotient. */
  public Dimension per(Dimension other) {
    return combine(other, -1);
  }

  /**
   * The dimension of a square root.
   *
   * @throws UnitException if an exponent is odd
   */
  public Dimension root() {
    Map<Base, Integer> half = new EnumMap<>(Base.class);
    exponents.forEach(
        (base, exponent) -> {
          if (exponent % 2 != 0) {
            throw new UnitException(
                "cannot take the square root of " + describe() + "; expected a number or a square");
          }
          half.put(base, exponent / 2);
        });
    return new Dimension(half);
  }

  /** What the trade calls it, with article: "a length". */
  public String describe() {
    return NAMED.stream()
        .filter(n -> n.dimension.equals(this))
        .map(Named::description)
        .findFirst()
        .orElseGet(() -> "a quantity in " + symbol());
  }

  /** A quantity of this dimension as a user would write it: "27.3 m". */
  public String example() {
    return NAMED.stream()
        .filter(n -> n.dimension.equals(this))
        .map(Named::example)
        .findFirst()
        .orElse("1 " + symbol());
  }

  /** The SI unit: "m", "S/m"; empty for a number. */
  public String symbol() {
    return NAMED.stream()
        .filter(n -> n.dimension.equals(this))
        .map(Named::symbol)
        .findFirst()
        .orElseGet(this::product);
  }

  private String product() {
    return exponents.entrySet().stream()
        .map(e -> e.getKey().symbol + (e.getValue() == 1 ? "" : "^" + e.getValue()))
        .collect(Collectors.joining("·"));
  }

  private Dimension combine(Dimension other, int sign) {
    Map<Base, Integer> sum = new EnumMap<>(exponents);
    other.exponents.forEach((base, exponent) -> sum.merge(base, sign * exponent, Integer::sum));
    sum.values().removeIf(exponent -> exponent == 0);
    return new Dimension(sum);
  }

  @Override
  public boolean equals(Object other) {
    return other instanceof Dimension d && exponents.equals(d.exponents);
  }

  @Override
  public int hashCode() {
    return exponents.hashCode();
  }

  @Override
  public String toString() {
    return describe();
  }

  private enum Base {
    METRE("m"),
    KILOGRAM("kg"),
    SECOND("s"),
    AMPERE("A"),
    KELVIN("K"),
    RADIAN("rad"),
    DECIBEL("dB"),
    DBI("dBi");

    private final String symbol;

    Base(String symbol) {
      this.symbol = symbol;
    }
  }

  private record Named(Dimension dimension, String description, String symbol, String example) {}
}
