package org.spanwire.study;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.Objects;
import org.spanwire.unit.Quantity;

/**
 * Every combination of the values of several parameters, the last parameter fastest.
 *
 * @param axes the parameters; none for a grid of one place
 */
public record ParameterGrid(List<Axis> axes) implements ParameterSpace {

  /**
   * The values of one parameter.
   *
   * @param parameter its name
   * @param values at least one, in the order of the grid
   */
  public record Axis(String parameter, List<Quantity> values) {

    /** Takes a copy. */
    public Axis {
      Objects.requireNonNull(parameter, "parameter");
      values = List.copyOf(values);
      if (values.isEmpty()) {
        throw new IllegalArgumentException(parameter + " has no value; give at least one");
      }
    }

    /**
     * Evenly spaced values, both ends included; the first one alone if there is one only.
     *
     * @param count at least 1
     */
    public static Axis even(String parameter, Quantity from, Quantity to, int count) {
      double end = to.in(from.dimension());
      List<Quantity> values = new ArrayList<>();
      for (int i = 0; i < count; i++) {
        double share = count == 1 ? 0 : (double) i / (count - 1);
        // Exact at both ends.
        double value = from.value() * (1 - share) + end * share;
        values.add(new Quantity(value, from.dimension()));
      }
      return new Axis(parameter, values);
    }
  }

  /** Takes a copy. */
  public ParameterGrid {
    axes = List.copyOf(axes);
    if (axes.stream().map(Axis::parameter).distinct().count() < axes.size()) {
      throw new IllegalArgumentException("a parameter is varied twice; vary each one once");
    }
    count(axes);
  }

  @Override
  public List<String> parameters() {
    return axes.stream().map(Axis::parameter).toList();
  }

  @Override
  public long count() {
    return count(axes);
  }

  private static long count(List<Axis> axes) {
    long count = 1;
    for (Axis axis : axes) {
      count = Math.multiplyExact(count, (long) axis.values().size());
    }
    return count;
  }

  @Override
  public List<Quantity> at(long place) {
    Objects.checkIndex(place, count());
    Quantity[] values = new Quantity[axes.size()];
    long rest = place;
    for (int i = values.length - 1; i >= 0; i--) {
      List<Quantity> axis = axes.get(i).values();
      values[i] = axis.get((int) (rest % axis.size()));
      rest /= axis.size();
    }
    return Arrays.asList(values);
  }
}
