package org.spanwire.study;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.function.Function;
import java.util.stream.IntStream;

/**
 * Of several designs those that are worse in one goal only where they are better in another.
 *
 * @param goals the goals
 * @param most number of designs to keep, evenly spaced along the front; at least 2
 */
record TradeOff(List<Goal> goals, int most) {

  /**
   * The front, the best in the first goal first.
   *
   * @param values values of the goals of a design
   */
  <T> List<T> of(List<T> designs, Function<T, double[]> values) {
    List<T> front = new ArrayList<>();
    for (T each : designs) {
      double[] own = values.apply(each);
      if (designs.stream().noneMatch(other -> dominates(values.apply(other), own))) {
        front.add(each);
      }
    }
    front.sort(Comparator.comparingDouble(each -> goals.get(0).cost(values.apply(each)[0])));
    if (front.size() <= most) {
      return front;
    }
    return IntStream.range(0, most)
        .mapToObj(i -> front.get(i * (front.size() - 1) / (most - 1)))
        .toList();
  }

  private boolean dominates(double[] one, double[] other) {
    boolean better = false;
    for (int i = 0; i < goals.size(); i++) {
      double cost = goals.get(i).cost(one[i]);
      double otherCost = goals.get(i).cost(other[i]);
      if (cost > otherCost) {
        return false;
      }
      better |= cost < otherCost;
    }
    return better;
  }
}
