package org.spanwire.unit;

import java.util.HashMap;
import java.util.LinkedHashMap;
import java.util.Map;
import java.util.Optional;
import java.util.Set;

/** The units a user can write: SI with prefixes, and the trade's. */
final class Units {

  private static final Map<String, Integer> PREFIXES = prefixes();
  private static final Map<String, Dimension> PREFIXED =
      Map.of(
          "m", Dimension.LENGTH,
          "Hz", Dimension.FREQUENCY,
          "W", Dimension.POWER,
          "V", Dimension.VOLTAGE,
          "ohm", Dimension.RESISTANCE,
          "Ω", Dimension.RESISTANCE,
          "H", Dimension.INDUCTANCE,
          "F", Dimension.CAPACITANCE,
          "S/m", Dimension.CONDUCTIVITY);
  private static final Map<String, Quantity> TABLE = table();

  private Units() {}

  /** One of a unit, in SI, if the unit is known. */
  static Optional<Quantity> find(String symbol) {
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

  private static Map<String, Quantity> table() {
    Map<String, Quantity> table = new HashMap<>();
    for (Map.Entry<String, Dimension> unit : PREFIXED.entrySet()) {
      for (Map.Entry<String, Integer> prefix : PREFIXES.entrySet()) {
        // Decimal text, not a power, so that every factor is the double nearest to it.
        double factor = Double.parseDouble("1e" + prefix.getValue());
        table.put(prefix.getKey() + unit.getKey(), new Quantity(factor, unit.getValue()));
      }
    }
    table.put("cm", new Quantity(1e-2, Dimension.LENGTH));
    table.put("ft", new Quantity(0.3048, Dimension.LENGTH));
    table.put("in", new Quantity(0.0254, Dimension.LENGTH));
    table.put("mil", new Quantity(25.4e-6, Dimension.LENGTH));
    table.put("rad", new Quantity(1, Dimension.ANGLE));
    table.put("deg", new Quantity(Math.PI / 180, Dimension.ANGLE));
    table.put("°", table.get("deg"));
    table.put("%", new Quantity(0.01, Dimension.NUMBER));
    table.put("dB", new Quantity(1, Dimension.LEVEL));
    table.put("dBi", new Quantity(1, Dimension.GAIN));
    return Map.copyOf(table);
  }

  /** Names of the units without their prefixed forms, for messages. */
  static String listing() {
    return "m, ft, in, mil, Hz, W, V, ohm, H, F, S/m, deg, rad, %, dB, dBi, with SI prefixes"
        + " (mm, MHz, kohm, uH, pF, MS/m), and AWG n";
  }

  /** Functions and words that are no parameter names. */
  static Set<String> reserved() {
    return Set.of("AWG", "sqrt", "sin", "cos", "tan", "abs", "min", "max", "pi");
  }
}
