package org.spanwire.unit;

import java.math.BigDecimal;
import java.util.HashMap;
import java.util.LinkedHashMap;
import java.util.Map;
import java.util.Optional;
import java.util.Set;

/** The units a user can write: SI with prefixes, and the trade's. */
final class Units {

  /**
   * A unit.
   *
   * @param factor what one of it is in SI units, as a decimal number so that a quantity is rounded
   *     once
   * @param dimension what it measures
   */
  record Unit(BigDecimal factor, Dimension dimension) {

    /** A number of this unit; the number is a decimal numeral in the range of a double. */
    Quantity of(String number) {
      // A numeral that underflows has an exponent that BigDecimal may refuse.
      double rough = Double.parseDouble(number);
      double value = rough == 0 ? 0 : new BigDecimal(number).multiply(factor).doubleValue();
      return new Quantity(value, dimension);
    }
  }

  private static final Map<String, Integer> PREFIXES = prefixes();
  private static final Map<String, Dimension> PREFIXED =
      Map.ofEntries(
          Map.entry("m", Dimension.LENGTH),
          Map.entry("s", Dimension.TIME),
          Map.entry("Pa", Dimension.PRESSURE),
          Map.entry("Hz", Dimension.FREQUENCY),
          Map.entry("W", Dimension.POWER),
          Map.entry("V", Dimension.VOLTAGE),
          Map.entry("ohm", Dimension.RESISTANCE),
          Map.entry("Ω", Dimension.RESISTANCE),
          Map.entry("H", Dimension.INDUCTANCE),
          Map.entry("F", Dimension.CAPACITANCE),
          Map.entry("T", Dimension.FLUX_DENSITY),
          Map.entry("S/m", Dimension.CONDUCTIVITY));
  private static final Map<String, Dimension> PREFIXED_THOUSANDTHS =
      Map.of("g", Dimension.MASS, "g/m", Dimension.MASS_PER_LENGTH);
  private static final Map<String, Unit> TABLE = table();

  private Units() {}

  /** The unit of a symbol, if it is known. */
  static Optional<Unit> find(String symbol) {
    return Optional.ofNullable(TABLE.get(normalise(symbol)));
  }

  /** A known unit that differs in letter case only, as in "mhz". */
  static Optional<String> resembling(String symbol) {
    String wanted = normalise(symbol);
    return TABLE.keySet().stream()
        .filter(known -> known.equalsIgnoreCase(wanted))
        .sorted()
        .findFirst();
  }

  static boolean takesPrefix(String symbol) {
    return PREFIXED.containsKey(symbol);
  }

  /** The prefix of a power of ten, null if there is none. */
  static String prefix(int power) {
    return PREFIXES.entrySet().stream()
        .filter(e -> e.getValue() == power)
        .map(Map.Entry::getKey)
        .findFirst()
        .orElse(null);
  }

  /**
   * Diameter of an American wire gauge, 0.127 mm · 92^((36 − n)/39), ASTM B258.
   *
   * @param number gauge number as written; 00, 000 and 0000 count down from 0
   */
  static Quantity wireGauge(String number) {
    if (number.matches("0{1,4}")) {
      return gauge(1 - number.length());
    }
    if (!number.matches("[1-9][0-9]?") || Integer.parseInt(number) > 40) {
      throw new UnitException(
          "AWG " + number + " is no wire gauge; expected a whole number from 0000 to 40");
    }
    return gauge(Integer.parseInt(number));
  }

  private static Quantity gauge(int n) {
    return new Quantity(0.127e-3 * Math.pow(92, (36 - n) / 39.0), Dimension.LENGTH);
  }

  // The micro sign, the Greek mu and u are one prefix; the ohm sign and the Greek omega one unit.
  private static String normalise(String symbol) {
    return symbol.replace('\u00b5', 'u').replace('\u03bc', 'u').replace('\u2126', 'Ω');
  }

  private static Map<String, Integer> prefixes() {
    Map<String, Integer> prefixes = new LinkedHashMap<>();
    String letters = "fpnum kMGT";
    for (int i = 0; i < letters.length(); i++) {
      prefixes.put(letters.substring(i, i + 1).strip(), 3 * i - 15);
    }
    return prefixes;
  }

  private static Map<String, Unit> table() {
    Map<String, Unit> table = new HashMap<>();
    PREFIXED.forEach((symbol, dimension) -> putPrefixed(table, symbol, 0, dimension));
    // The kilogram is the SI unit, but prefixes go to the gram.
    PREFIXED_THOUSANDTHS.forEach((symbol, dimension) -> putPrefixed(table, symbol, -3, dimension));
    table.put("kg/m3", unit("1", Dimension.DENSITY));
    table.put("g/cm3", unit("1e3", Dimension.DENSITY));
    table.put("N", unit("1", Dimension.FORCE));
    table.put("kN", unit("1e3", Dimension.FORCE));
    table.put("min", unit("60", Dimension.TIME));
    table.put("K", unit("1", Dimension.TEMPERATURE));
    table.put("m/s", unit("1", Dimension.SPEED));
    table.put("K", unit("1", Dimension.TEMPERATURE_CHANGE));
    table.put("ppm/K", unit("1e-6", Dimension.EXPANSION));
    table.put("cm", unit("1e-2", Dimension.LENGTH));
    table.put("ft", unit("0.3048", Dimension.LENGTH));
    table.put("in", unit("0.0254", Dimension.LENGTH));
    table.put("mil", unit("25.4e-6", Dimension.LENGTH));
    table.put("rad", unit("1", Dimension.ANGLE));
    table.put("deg", new Unit(new BigDecimal(Math.PI / 180), Dimension.ANGLE));
    table.put("°", table.get("deg"));
    table.put("%", unit("0.01", Dimension.NUMBER));
    table.put("dB", unit("1", Dimension.LEVEL));
    table.put("dBi", unit("1", Dimension.GAIN));
    return Map.copyOf(table);
  }

  private static void putPrefixed(
      Map<String, Unit> table, String symbol, int power, Dimension dimension) {
    for (Map.Entry<String, Integer> prefix : PREFIXES.entrySet()) {
      BigDecimal factor = BigDecimal.ONE.scaleByPowerOfTen(prefix.getValue() + power);
      table.put(prefix.getKey() + symbol, new Unit(factor, dimension));
    }
  }

  private static Unit unit(String factor, Dimension dimension) {
    return new Unit(new BigDecimal(factor), dimension);
  }

  /** Names of the units without their prefixed forms, for messages. */
  static String listing() {
    return "m, ft, in, mil, s, min, Hz, W, V, ohm, H, F, T, S/m, g, g/m, kg/m3, N, Pa, K, ppm/K, deg, rad, %, dB, dBi, with SI prefixes"
        + " (mm, MHz, kohm, uH, pF, MS/m), and AWG n";
  }

  /** Functions and words that are no parameter names. */
  static Set<String> reserved() {
    return Set.of("AWG", "sqrt", "sin", "cos", "tan", "abs", "min", "max", "pi");
  }
}
