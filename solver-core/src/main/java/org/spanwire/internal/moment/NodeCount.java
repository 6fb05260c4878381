package org.spanwire.internal.moment;

import java.util.ArrayList;
import java.util.List;
import java.util.OptionalInt;
import java.util.function.DoubleFunction;
import org.spanwire.internal.math.LejaNodes;

/** How many nodes it takes to interpolate functions. */
final class NodeCount {

  private NodeCount() {}

  /**
   * The fewest first nodes through which complex functions are interpolated within a tolerance at
   * the next node, the place that is worst for polynomials. At the points themselves that is all of
   * them at most.
   *
   * @param function values at a place, real and imaginary parts in turn, of size about 1
   * @return empty if the nodes there are do not suffice
   */
  static OptionalInt of(LejaNodes nodes, DoubleFunction<double[]> function, double tolerance) {
    List<double[]> values = new ArrayList<>();
    values.add(function.apply(nodes.node(0)));
    for (int count = 1; count < nodes.count(); count++) {
      double[] next = function.apply(nodes.node(count));
      if (missed(values, nodes.weights(count, nodes.node(count)), next) <= tolerance) {
        return OptionalInt.of(count);
      }
      values.add(next);
    }
    return nodes.isAll(nodes.count()) ? OptionalInt.of(nodes.count()) : OptionalInt.empty();
  }

  private static double missed(List<double[]> values, double[] weights, double[] expected) {
    double worst = 0;
    for (int v = 0; v < expected.length; v += 2) {
      double re = -expected[v];
      double im = -expected[v + 1];
      for (int i = 0; i < weights.length; i++) {
        re += weights[i] * values.get(i)[v];
        im += weights[i] * values.get(i)[v + 1];
      }
      worst = Math.max(worst, Math.hypot(re, im));
    }
    return worst;
  }
}
