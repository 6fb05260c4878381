package org.spanwire.cli.chart;

import java.util.List;
import org.spanwire.cli.output.Numbers;
import org.spanwire.unit.Quantity;

/**
 * How values of one parameter are written beside pictures: shares in percent, other plain numbers,
 * such as the ratio of a transformer, as they are.
 *
 * @param values all of them
 */
public record ParameterText(List<Quantity> values) {

  private static final int DIGITS = 4;

  /** Takes a copy. */
  public ParameterText {
    values = List.copyOf(values);
  }

  private boolean percent() {
    return values.stream()
        .allMatch(value -> value.dimension().symbol().isEmpty() && Math.abs(value.value()) <= 1);
  }

  /** The unit; empty for plain numbers. */
  public String unit() {
    return percent() ? "%" : values.get(0).dimension().symbol();
  }

  /** A value in the unit. */
  public double number(Quantity value) {
    return percent() ? 100 * value.value() : value.value();
  }

  /** A parameter's name and unit. */
  public String label(String parameter) {
    return unit().isEmpty() ? parameter : parameter + ", " + unit();
  }

  /** A value with its unit, or with a prefix to it. */
  public String text(Quantity value) {
    String number = Numbers.significant(number(value), DIGITS);
    if (percent()) {
      return number + " %";
    }
    return new Quantity(Double.parseDouble(number), value.dimension()).toString();
  }
}
