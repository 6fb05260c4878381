package org.spanwire.unit;

import java.util.ArrayList;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Set;
import java.util.regex.Matcher;
import java.util.regex.Pattern;

/** Recursive-descent parser of expressions. */
final class ExpressionParser {

  private static final int LONGEST_TEXT = 1000;
  private static final int DEEPEST_NESTING = 50;
  private static final Pattern NUMBER =
      Pattern.compile("(?:[0-9]+(?:\\.[0-9]*)?|\\.[0-9]+)(?:[eE][+-]?[0-9]+)?");
  private static final Pattern NAME = Pattern.compile("[A-Za-z_][A-Za-z0-9_]*");
  private static final Pattern UNIT =
      Pattern.compile("%|°|[\\p{L}\u2126\u00b5]+(?:/(?:[mKs]|c?m3)(?![\\p{L}\\d_]))?");
  private static final Pattern BARE = Pattern.compile("[+-]?\\s*" + NUMBER.pattern());

  private final String text;
  private final Set<String> names = new LinkedHashSet<>();
  private int at;
  private int depth;

  ExpressionParser(String text) {
    this.text = text.strip();
  }

  Expression parse() {
    if (text.isEmpty()) {
      throw new UnitException("no quantity given; expected a number with a unit such as 27.3 m");
    }
    if (text.length() > LONGEST_TEXT) {
      throw new UnitException(
          "expression has "
              + text.length()
              + " characters, limit "
              + LONGEST_TEXT
              + "; split it into parameters");
    }
    Expression.Node root = sum();
    if (at < text.length()) {
      throw unexpected();
    }
    return new Expression(text, root, names, BARE.matcher(text).matches());
  }

  private Expression.Node sum() {
    Expression.Node left = product();
    while (true) {
      if (take('+')) {
        left = Arithmetic.sum(left, product(), 1);
      } else if (take('-')) {
        left = Arithmetic.sum(left, product(), -1);
      } else {
        return left;
      }
    }
  }

  private Expression.Node product() {
    Expression.Node left = signed();
    while (true) {
      if (take('*')) {
        left = Arithmetic.product(left, signed());
      } else if (take('/')) {
        left = Arithmetic.quotient(left, signed());
      } else {
        return left;
      }
    }
  }

  private Expression.Node signed() {
    enter();
    Expression.Node node;
    if (take('-')) {
      node = Arithmetic.negative(signed());
    } else if (take('+')) {
      node = signed();
    } else {
      node = primary();
    }
    depth--;
    return node;
  }

  private Expression.Node primary() {
    if (take('(')) {
      Expression.Node inner = sum();
      expect(')');
      return inner;
    }
    String number = match(NUMBER);
    if (number != null) {
      return quantity(number);
    }
    String name = match(NAME);
    if (name == null) {
      throw unexpected();
    }
    if (name.equals("AWG")) {
      return gauge();
    }
    if (take('(')) {
      return call(name);
    }
    if (name.equals("pi")) {
      Quantity pi = new Quantity(Math.PI, Dimension.NUMBER);
      return values -> pi;
    }
    names.add(name);
    return values -> values.apply(name);
  }

  private Expression.Node quantity(String number) {
    double value = Double.parseDouble(number);
    if (Double.isInfinite(value)) {
      throw new UnitException("number " + number + " is too large; expected a finite number");
    }
    String symbol = match(UNIT);
    if (symbol == null) {
      Quantity bare = new Quantity(value, Dimension.NUMBER);
      return values -> bare;
    }
    int stroke = symbol.indexOf('/');
    if (stroke > 0 && Units.find(symbol).isEmpty()) {
      at -= symbol.length() - stroke;
      symbol = symbol.substring(0, stroke);
    }
    Quantity quantity = unit(number, symbol).of(number);
    return values -> quantity;
  }

  private static Units.Unit unit(String number, String symbol) {
    return Units.find(symbol)
        .orElseThrow(
            () ->
                new UnitException(
                    "unknown unit '"
                        + symbol
                        + "' after "
                        + number
                        + "; "
                        + Units.resembling(symbol)
                            .map(known -> "did you mean " + known + "?")
                            .orElse("expected one of " + Units.listing())));
  }

  private Expression.Node gauge() {
    String number = match(Pattern.compile("[0-9]+"));
    if (number == null) {
      throw new UnitException("AWG without a number; expected a wire gauge such as AWG 14");
    }
    Quantity diameter = Units.wireGauge(number);
    return values -> diameter;
  }

  private Expression.Node call(String function) {
    List<Expression.Node> arguments = new ArrayList<>();
    do {
      arguments.add(sum());
    } while (take(','));
    expect(')');
    return Arithmetic.call(function, arguments);
  }

  private void enter() {
    if (++depth > DEEPEST_NESTING) {
      throw new UnitException(
          "expression is nested more than " + DEEPEST_NESTING + " deep; split it into parameters");
    }
  }

  private String match(Pattern pattern) {
    skipBlanks();
    Matcher matcher = pattern.matcher(text).region(at, text.length());
    // Look past the end of a match, so that "S/m" is not found in the quotient "S/mast".
    matcher.useTransparentBounds(true);
    if (!matcher.lookingAt()) {
      return null;
    }
    at = matcher.end();
    return matcher.group();
  }

  private boolean take(char symbol) {
    skipBlanks();
    if (at < text.length() && text.charAt(at) == symbol) {
      at++;
      return true;
    }
    return false;
  }

  private void expect(char symbol) {
    if (!take(symbol)) {
      throw at < text.length()
          ? unexpected()
          : new UnitException("'" + text + "' ends early; expected '" + symbol + "'");
    }
  }

  private void skipBlanks() {
    while (at < text.length() && Character.isWhitespace(text.charAt(at))) {
      at++;
    }
  }

  private UnitException unexpected() {
    skipBlanks();
    String rest = at < text.length() ? "'" + text.substring(at) + "'" : "the end";
    return new UnitException(
        "cannot read '"
            + text
            + "' at "
            + rest
            + "; expected a number with a unit or an expression such as span / 2 - 0.5 m");
  }
}
