package org.spanwire.cli.command;

import java.util.ArrayList;
import java.util.List;
import org.spanwire.design.Design;
import org.spanwire.design.Parameter;
import org.spanwire.study.ParameterGrid;
import org.spanwire.study.ParameterSample;
import org.spanwire.unit.Quantity;
import org.spanwire.unit.UnitException;

/**
 * A {@code --vary} or {@code --over}: {@code NAME=FROM:TO:COUNT}, {@code NAME=FROM:TO} for a
 * sample, or {@code NAME=V1,V2,…}.
 */
record Variation(
    String option,
    String text,
    Parameter parameter,
    List<Quantity> values,
    boolean range,
    int count) {

  static final int MOST_VALUES = 10_000_000;
  private static final String FORMS = "--vary height=5m:12m:15 or --vary height=6m,8m,11m";

  static Variation parse(String text, Design design) {
    return parse("--vary", text, design);
  }

  /** The same for an option of another name. */
  static Variation parse(String option, String text, Design design) {
    int equals = text.indexOf('=');
    if (equals < 1) {
      throw fault(option, text, "is not NAME=VALUES; write " + FORMS);
    }
    String name = text.substring(0, equals);
    Parameter parameter = design.parameters().get(name);
    if (parameter == null) {
      throw fault(
          option,
          text,
          "unknown parameter '"
              + name
              + "'; the design has "
              + (design.parameters().isEmpty()
                  ? "none: add parameters: to it"
                  : String.join(", ", design.parameters().keySet())));
    }
    String rest = text.substring(equals + 1);
    String[] ends = rest.split(":", -1);
    if (ends.length > 3) {
      throw fault(option, text, "has too many colons; write " + FORMS);
    }
    if (ends.length > 1) {
      int count = ends.length == 3 ? count(option, text, ends[2]) : 0;
      List<Quantity> range =
          List.of(
              quantity(option, text, ends[0], parameter),
              quantity(option, text, ends[1], parameter));
      return new Variation(option, text, parameter, range, true, count);
    }
    List<Quantity> values = new ArrayList<>();
    for (String value : rest.split(",", -1)) {
      values.add(quantity(option, text, value, parameter));
    }
    return new Variation(option, text, parameter, values, false, values.size());
  }

  private static int count(String option, String text, String count) {
    try {
      int number = Integer.parseInt(count);
      if (number >= 1 && number <= MOST_VALUES) {
        return number;
      }
    } catch (NumberFormatException e) {
      // Reported below.
    }
    throw fault(
        option, text, "count '" + count + "' must be a whole number from 1 to " + MOST_VALUES);
  }

  private static Quantity quantity(String option, String text, String value, Parameter parameter) {
    try {
      Quantity quantity = Quantity.parse(value);
      quantity.in(parameter.value().dimension());
      return quantity;
    } catch (UnitException e) {
      throw fault(option, text, e.getMessage());
    }
  }

  private static InputException fault(String option, String text, String what) {
    return new InputException(option + " " + text + ": " + what);
  }

  /** All values, for a grid. */
  ParameterGrid.Axis axis() {
    if (!range) {
      return new ParameterGrid.Axis(parameter.name(), values);
    }
    if (count == 0) {
      throw fault(option, text, "needs a count unless --sample is given; write " + FORMS);
    }
    return ParameterGrid.Axis.even(parameter.name(), values.get(0), values.get(1), count);
  }

  /** The ends, for a sample. */
  ParameterSample.Range ends() {
    if (!range || count > 0) {
      throw fault(
          option, text, "a sample needs a range without a count; write --vary height=5m:12m");
    }
    return new ParameterSample.Range(parameter.name(), values.get(0), values.get(1));
  }
}
