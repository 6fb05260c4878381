package org.spanwire.internal.math;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.util.stream.IntStream;
import org.junit.jupiter.api.Test;

class LejaNodesTest {

  private static final double[] POINTS =
      IntStream.rangeClosed(0, 40).mapToDouble(i -> i < 20 ? 1 + 0.01 * i : 7 + 0.02 * i).toArray();

  /** A polynomial of degree n − 1 is its own interpolant through n nodes. */
  @Test
  void reproducesPolynomials() {
    LejaNodes nodes = new LejaNodes(POINTS, 6);
    for (double x : new double[] {1, 1.111, 7.5, 7.8}) {
      double[] weights = nodes.weights(6, x);
      double sum = 0;
      for (int i = 0; i < 6; i++) {
        double t = nodes.node(i) - 4;
        sum += weights[i] * (t * t * t * t * t - 2 * t * t + 3);
      }
      double t = x - 4;
      double expected = t * t * t * t * t - 2 * t * t + 3;
      assertThat(sum).isCloseTo(expected, within(1e-11 * Math.abs(expected)));
    }
  }

  /** Leja's rule by its definition: the next node has the largest product of distances. */
  @Test
  void picksWhereTheProductOfDistancesIsLargest() {
    LejaNodes nodes = new LejaNodes(POINTS, 8);
    assertThat(nodes.node(0)).isEqualTo(POINTS[40]);
    for (int count = 1; count < 8; count++) {
      double chosen = product(nodes, count, nodes.node(count));
      for (double point : POINTS) {
        assertThat(product(nodes, count, point)).isLessThanOrEqualTo(chosen * (1 + 1e-12));
      }
      assertThat(nodes.node(count)).isEqualTo(POINTS[nodes.index(count)]);
    }
  }

  private static double product(LejaNodes nodes, int count, double x) {
    double product = 1;
    for (int i = 0; i < count; i++) {
      product *= Math.abs(x - nodes.node(i));
    }
    return product;
  }

  /** Two intervals far apart are served without the gap between them. */
  @Test
  void coversItsPointsAndWhatLiesBetweenThem() {
    LejaNodes nodes = new LejaNodes(POINTS, 8);
    assertThat(nodes.covers(8, 1.005)).isTrue();
    assertThat(nodes.covers(8, 7.77)).isTrue();
    assertThat(nodes.covers(8, 4)).isFalse();
    assertThat(nodes.covers(8, 9)).isFalse();
    LejaNodes all = new LejaNodes(new double[] {1, 2, 3}, 8);
    assertThat(all.count()).isEqualTo(3);
    assertThat(all.isAll(3)).isTrue();
    assertThat(all.covers(3, 2)).isTrue();
    assertThat(all.covers(3, 2.1)).isFalse();
  }
}
