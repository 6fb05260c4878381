package org.spanwire.design;

import java.util.LinkedHashMap;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import org.spanwire.geometry.Position;
import org.spanwire.unit.Dimension;
import org.spanwire.unit.Expression;
import org.spanwire.unit.Quantity;
import org.spanwire.unit.UnitException;

/** Reads the parameters of a design and evaluates expressions over them. */
final class Evaluator {

  private static final int LONGEST_CHAIN = 50;

  private final Optional<Names> declared;
  private final Map<String, String> overrides;
  private final Map<String, Parameter> parameters = new LinkedHashMap<>();
  private final Set<String> open = new LinkedHashSet<>();

  /**
   * Evaluates all parameters.
   *
   * @param overrides quantities that replace values of the file, by parameter name
   */
  Evaluator(Optional<Item> section, Map<String, String> overrides) {
    this.declared = section.map(item -> item.names("parameter"));
    this.overrides = overrides;
    Map<String, Parameter> inFileOrder = new LinkedHashMap<>();
    for (String name : known()) {
      if (!Expression.isName(name)) {
        throw declared
            .orElseThrow()
            .key(name)
            .fault(
                "parameter name "
                    + Words.quote(name)
                    + " is not allowed; expected letters, digits and _, no function's name");
      }
      inFileOrder.put(name, parameter(name));
    }
    parameters.clear();
    parameters.putAll(inFileOrder);
  }

  /** The parameters in the order of the file. */
  Map<String, Parameter> parameters() {
    return parameters;
  }

  /** The value of an expression in SI units. */
  double value(Item item, Dimension wanted) {
    return require(item, quantity(item, item.text()), wanted);
  }

  /** The value of an expression in SI units, greater than zero. */
  double positive(Item item, Dimension wanted) {
    double value = value(item, wanted);
    if (!(value > 0)) {
      throw item.fault(
          item.name()
              + " is "
              + new Quantity(value, wanted)
              + "; expected more than 0 such as "
              + wanted.example());
    }
    return value;
  }

  /** The value of an expression in SI units, zero or more. */
  double notNegative(Item item, Dimension wanted) {
    double value = value(item, wanted);
    if (!(value >= 0)) {
      throw item.fault(
          item.name() + " is " + new Quantity(value, wanted) + "; expected at least 0");
    }
    return value;
  }

  /** A place along a wire: a fraction of its length, or a distance from its first point. */
  Position position(Item item) {
    var quantity = quantity(item, item.text());
    if (quantity.dimension().equals(Dimension.LENGTH)) {
      return item.checked(() -> Position.distance(quantity.value()));
    }
    if (!quantity.dimension().equals(Dimension.NUMBER)) {
      throw item.fault(
          item.name()
              + " is "
              + quantity
              + "; expected a fraction of the wire such as 36 %, or a"
              + " distance from its first point such as 12 m");
    }
    if (!(quantity.value() >= 0 && quantity.value() <= 1)) {
      throw item.fault(
          item.name()
              + " is "
              + quantity
              + "; expected 0 to 1 (0 to 100 %), or a distance with its"
              + " unit such as 12 m");
    }
    return Position.fraction(quantity.value());
  }

  /** Whether a number stands there without a unit. */
  boolean isBareNumber(Item item) {
    return expression(item, item.text()).isBareNumber();
  }

  /** The value of an expression, where a bare number is in the SI unit of the dimension. */
  double valueOrBare(Item item, Dimension dimension) {
    String text = item.text();
    Quantity quantity = quantity(item, text);
    if (quantity.dimension().equals(Dimension.NUMBER) && expression(item, text).isBareNumber()) {
      return quantity.value();
    }
    return require(item, quantity, dimension);
  }

  Quantity quantity(Item item, String text) {
    try {
      return expression(item, text).evaluate(name -> resolve(item, name));
    } catch (UnitException e) {
      throw item.fault(item.name() + ": " + e.getMessage());
    }
  }

  private static Expression expression(Item item, String text) {
    try {
      return Expression.parse(text);
    } catch (UnitException e) {
      throw item.fault(item.name() + ": " + e.getMessage());
    }
  }

  private static double require(Item item, Quantity quantity, Dimension wanted) {
    if (!quantity.dimension().equals(wanted)) {
      throw item.fault(
          item.name()
              + " is "
              + quantity
              + " ("
              + quantity.dimension().describe()
              + "); expected "
              + wanted.describe()
              + " such as "
              + wanted.example());
    }
    return quantity.value();
  }

  private Set<String> known() {
    return declared.map(Names::all).orElse(Set.of());
  }

  private Quantity resolve(Item user, String name) {
    if (!known().contains(name)) {
      throw user.fault(
          "unknown parameter "
              + Words.quote(name)
              + " in "
              + user.name()
              + "; "
              + (known().isEmpty()
                  ? "expected a number with a unit, or a parameters section that names it"
                  : Words.remedy(name, known())));
    }
    if (open.contains(name)) {
      throw user.fault(
          "parameter "
              + name
              + " refers to itself ("
              + String.join(" -> ", open)
              + " -> "
              + name
              + "); give one of them a value of its own");
    }
    if (open.size() >= LONGEST_CHAIN) {
      throw user.fault(
          "parameters refer to one another more than "
              + LONGEST_CHAIN
              + " deep; give one of them a value of its own");
    }
    return parameter(name).value();
  }

  private Parameter parameter(String name) {
    Parameter done = parameters.get(name);
    if (done != null) {
      return done;
    }
    open.add(name);
    Parameter parameter = read(name, declared.orElseThrow().value(name));
    open.remove(name);
    parameters.put(name, parameter);
    return parameter;
  }

  private Parameter read(String name, Item item) {
    if (item.isText()) {
      return new Parameter(name, nominal(name, item), Optional.empty(), Optional.empty());
    }
    Fields fields = item.fields("value", "spread", "limits");
    Item given = fields.required("value", "27.3 m");
    Quantity value = nominal(name, given);
    Optional<Parameter.Limits> limits =
        fields.optional("limits").map(l -> limits(l, value.dimension()));
    limits.ifPresent(l -> check(given, name, value, l));
    return new Parameter(
        name, value, fields.optional("spread").map(s -> spread(s, value.dimension())), limits);
  }

  private Quantity nominal(String name, Item item) {
    Quantity fromFile = quantity(item, item.text());
    String override = overrides.get(name);
    if (override == null) {
      return fromFile;
    }
    Item set = item.as("parameter " + name + " set to " + Words.quote(override));
    Quantity value = quantity(set, override);
    require(set, value, fromFile.dimension());
    return value;
  }

  private Spread spread(Item item, Dimension dimension) {
    if (item.isText()) {
      return new Spread.Uniform(new Quantity(notNegative(item, dimension), dimension));
    }
    Item sigma = item.fields("sigma").required("sigma", "10 mm");
    return new Spread.Normal(new Quantity(notNegative(sigma, dimension), dimension));
  }

  private Parameter.Limits limits(Item item, Dimension dimension) {
    List<Item> ends = item.items("a list of two values such as [25 m, 30 m]");
    if (ends.size() != 2) {
      throw item.fault(
          item.name() + " has " + ends.size() + " values; expected two such as [25 m, 30 m]");
    }
    Quantity low = new Quantity(value(ends.get(0), dimension), dimension);
    Quantity high = new Quantity(value(ends.get(1), dimension), dimension);
    if (!(low.value() < high.value())) {
      throw item.fault(
          item.name() + " run from " + low + " to " + high + "; expected the smaller one first");
    }
    return new Parameter.Limits(low, high);
  }

  private static void check(Item item, String name, Quantity value, Parameter.Limits limits) {
    if (value.value() < limits.low().value() || value.value() > limits.high().value()) {
      throw item.fault(
          "parameter "
              + name
              + " is "
              + value
              + ", limits "
              + limits.low()
              + " to "
              + limits.high()
              + "; change the value or the limits");
    }
  }
}
