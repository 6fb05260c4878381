package org.spanwire.unit;

import java.util.Map;
import java.util.Objects;
import java.util.Set;
import java.util.function.Function;

/**
 * An expression over named quantities: numbers with units, names, {@code + - * /}, parentheses,
 * {@code sqrt sin cos tan abs min max}. Dimensions are checked. Immutable.
 */
public final class Expression {

  /** A part of an expression that can be evaluated. */
  @FunctionalInterface
  interface Node {
    Quantity value(Function<String, Quantity> names);
  }

  private final String text;
  private final Node root;
  private final Set<String> names;
  private final boolean bareNumber;

  Expression(String text, Node root, Set<String> names, boolean bareNumber) {
    this.text = text;
    this.root = root;
    this.names = Set.copyOf(names);
    this.bareNumber = bareNumber;
  }

  /**
   * Reads an expression.
   *
   * @throws UnitException if the text is none
   */
  public static Expression parse(String text) {
    return new ExpressionParser(Objects.requireNonNull(text, "text")).parse();
  }

  /**
   * Whether a text can name a quantity: letters, digits, underscore; no unit's or function's word.
   */
  public static boolean isName(String text) {
    return text.matches("[A-Za-z_][A-Za-z0-9_]*") && !Units.reserved().contains(text);
  }

  /**
   * The value with names resolved from a map.
   *
   * @throws UnitException if a name is missing, dimensions do not fit, or the result is not finite
   */
  public Quantity evaluate(Map<String, Quantity> values) {
    return evaluate(
        name -> {
          Quantity value = values.get(name);
          if (value == null) {
            throw new UnitException("unknown name '" + name + "'; expected a number with a unit");
          }
          return value;
        });
  }

  /**
   * The value with names resolved by a function, which throws for a name it does not know.
   *
   * @throws UnitException if dimensions do not fit or the result is not finite
   */
  public Quantity evaluate(Function<String, Quantity> values) {
    return root.value(values);
  }

  /** The names that occur. */
  public Set<String> names() {
    return names;
  }

  /** True for a number without unit, perhaps with a sign. */
  public boolean isBareNumber() {
    return bareNumber;
  }

  /** The text it was read from. */
  @Override
  public String toString() {
    return text;
  }
}
