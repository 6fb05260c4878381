package org.spanwire.unit;

import java.util.List;
import java.util.function.DoubleBinaryOperator;
import java.util.function.DoubleUnaryOperator;

/** Dimension-checked operations on the parts of an expression. */
final class Arithmetic {

  private Arithmetic() {}

  static Expression.Node sum(Expression.Node left, Expression.Node right, int sign) {
    return names -> {
      Quantity a = left.value(names);
      Quantity b = right.value(names);
      same(sign > 0 ? "add" : "subtract", a, b);
      return new Quantity(a.value() + sign * b.value(), a.dimension());
    };
  }

  static Expression.Node product(Expression.Node left, Expression.Node right) {
    return names -> {
      Quantity a = left.value(names);
      Quantity b = right.value(names);
      return new Quantity(a.value() * b.value(), a.dimension().times(b.dimension()));
    };
  }

  static Expression.Node quotient(Expression.Node left, Expression.Node right) {
    return names -> {
      Quantity a = left.value(names);
      Quantity b = right.value(names);
      if (b.value() == 0) {
        throw new UnitException(
            "division by zero: " + a + " / " + b + "; give a divisor other than 0");
      }
      return new Quantity(a.value() / b.value(), a.dimension().per(b.dimension()));
    };
  }

  static Expression.Node negative(Expression.Node inner) {
    return names -> {
      Quantity a = inner.value(names);
      return new Quantity(-a.value(), a.dimension());
    };
  }

  static Expression.Node call(String function, List<Expression.Node> arguments) {
    return switch (function) {
      case "sqrt" -> {
        Expression.Node a = only(function, arguments);
        yield names -> root(a.value(names));
      }
      case "abs" -> {
        Expression.Node a = only(function, arguments);
        yield names -> magnitude(a.value(names));
      }
      case "sin" -> circular(function, Math::sin, arguments);
      case "cos" -> circular(function, Math::cos, arguments);
      case "tan" -> circular(function, Math::tan, arguments);
      case "min" -> extreme(function, Math::min, arguments);
      case "max" -> extreme(function, Math::max, arguments);
      default ->
          throw new UnitException(
              "unknown function '" + function + "'; expected sqrt, sin, cos, tan, abs, min or max");
    };
  }

  private static Quantity magnitude(Quantity a) {
    return new Quantity(Math.abs(a.value()), a.dimension());
  }

  private static Quantity root(Quantity a) {
    if (a.value() < 0) {
      throw new UnitException("square root of " + a + "; expected a value of at least 0");
    }
    return new Quantity(Math.sqrt(a.value()), a.dimension().root());
  }

  private static Expression.Node circular(
      String function, DoubleUnaryOperator operator, List<Expression.Node> arguments) {
    Expression.Node argument = only(function, arguments);
    return names -> {
      Quantity a = argument.value(names);
      if (!a.dimension().equals(Dimension.ANGLE)) {
        throw new UnitException(
            function + " of " + a + "; expected an angle such as " + Dimension.ANGLE.example());
      }
      return new Quantity(operator.applyAsDouble(a.value()), Dimension.NUMBER);
    };
  }

  private static Expression.Node extreme(
      String function, DoubleBinaryOperator operator, List<Expression.Node> arguments) {
    return names -> {
      Quantity best = arguments.get(0).value(names);
      for (Expression.Node argument : arguments.subList(1, arguments.size())) {
        Quantity next = argument.value(names);
        same(function.equals("min") ? "take the smaller of" : "take the larger of", best, next);
        best = new Quantity(operator.applyAsDouble(best.value(), next.value()), best.dimension());
      }
      return best;
    };
  }

  private static Expression.Node only(String function, List<Expression.Node> arguments) {
    if (arguments.size() != 1) {
      throw new UnitException(function + " has " + arguments.size() + " arguments; expected one");
    }
    return arguments.get(0);
  }

  private static void same(String verb, Quantity a, Quantity b) {
    if (!a.dimension().equals(b.dimension())) {
      throw new UnitException(
          "cannot "
              + verb
              + " "
              + a
              + " ("
              + a.dimension().describe()
              + ") and "
              + b
              + " ("
              + b.dimension().describe()
              + "); give both in units of one kind");
    }
  }
}
