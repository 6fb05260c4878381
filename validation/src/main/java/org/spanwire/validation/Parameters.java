package org.spanwire.validation;

import java.util.List;
import java.util.Map;
import java.util.Set;
import java.util.SortedMap;
import java.util.TreeMap;
import org.spanwire.unit.PhysicalConstants;

/**
 * Named numbers, number lists and words that describe a structure and what is asked of it.
 *
 * @param values each a {@code Double}, a {@code String}, a {@code Boolean} or a {@code
 *     List<Double>}
 */
record Parameters(Map<String, Object> values) {

  /** The frequency at which one wavelength is one metre, used where a case states none. */
  private static final double ONE_METRE_WAVE_MEGAHERTZ = PhysicalConstants.SPEED_OF_LIGHT / 1e6;

  Parameters {
    values = Map.copyOf(values);
  }

  boolean has(String name) {
    return values.containsKey(name);
  }

  double number(String name) {
    return value(name, Double.class);
  }

  double number(String name, double otherwise) {
    return has(name) ? number(name) : otherwise;
  }

  String text(String name, String otherwise) {
    return has(name) ? value(name, String.class) : otherwise;
  }

  boolean flag(String name) {
    return has(name) && value(name, Boolean.class);
  }

  /** The numbers of a list. */
  List<Double> numbers(String name) {
    List<?> numbers = value(name, List.class);
    return numbers.stream().map(Double.class::cast).toList();
  }

  double frequencyHz() {
    return 1e6 * number("frequencyMHz", ONE_METRE_WAVE_MEGAHERTZ);
  }

  /** A length in metres that is stated in wavelengths. */
  double metres(String name) {
    return wavelengths(number(name));
  }

  /** A length in metres that is stated in wavelengths. */
  double metres(String name, double otherwise) {
    return wavelengths(number(name, otherwise));
  }

  /** Turns wavelengths at the frequency of these parameters into metres. */
  double wavelengths(double count) {
    return count * PhysicalConstants.wavelength(frequencyHz());
  }

  /** These parameters with others added or put in their place. */
  Parameters with(Parameters others) {
    SortedMap<String, Object> merged = new TreeMap<>(values);
    merged.putAll(others.values);
    return new Parameters(merged);
  }

  Parameters with(String name, double number) {
    return with(new Parameters(Map.of(name, number)));
  }

  Parameters without(String name) {
    SortedMap<String, Object> kept = new TreeMap<>(values);
    kept.remove(name);
    return new Parameters(kept);
  }

  /** Only the parameters of these names. */
  Parameters only(Set<String> names) {
    SortedMap<String, Object> kept = new TreeMap<>(values);
    kept.keySet().retainAll(names);
    return new Parameters(kept);
  }

  private <T> T value(String name, Class<T> type) {
    Object value = values.get(name);
    if (!type.isInstance(value)) {
      throw new IllegalArgumentException(
          "parameter '" + name + "' must be a " + type.getSimpleName() + ", got " + value);
    }
    return type.cast(value);
  }
}
