package org.spanwire.study;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.util.List;
import java.util.SplittableRandom;
import java.util.function.Function;
import org.junit.jupiter.api.Test;

/** On functions whose values are known. */
class SparseInterpolantTest {

  private static SparseInterpolant through(
      Function<double[], Double> function, int variables, double tolerance) {
    SparseInterpolant interpolant = new SparseInterpolant(variables);
    while (!interpolant.wanted().isEmpty() || interpolant.uncertainty() > tolerance) {
      List<double[]> points = interpolant.wanted();
      interpolant.take(points.stream().map(p -> new double[] {function.apply(p)}).toList());
      if (interpolant.wanted().isEmpty() && interpolant.uncertainty() > tolerance) {
        interpolant.grow(tolerance);
      }
    }
    return interpolant;
  }

  private static double largestError(
      SparseInterpolant interpolant, Function<double[], Double> function, int variables) {
    SplittableRandom random = new SplittableRandom(4);
    double worst = 0;
    for (int i = 0; i < 500; i++) {
      double[] x = random.doubles(variables, -1, 1).toArray();
      worst = Math.max(worst, Math.abs(interpolant.at(x)[0] - function.apply(x)));
    }
    return worst;
  }

  @Test
  void polynomialOfLowDegreeIsExact() {
    Function<double[], Double> cubic =
        x -> 1 + x[0] - 2 * x[1] * x[2] + 3 * x[0] * x[0] * x[1] + x[2] * x[2] * x[2];
    SparseInterpolant interpolant = through(cubic, 3, 1e-9);
    assertThat(largestError(interpolant, cubic, 3)).isLessThan(1e-12);
    assertThat(interpolant.size()).isLessThan(64);
  }

  /**
   * The tolerance is one of corrections; the error is of their order, and one that ignored mixed
   * terms would stay at a tenth.
   */
  @Test
  void smoothFunctionIsMetToTheTolerance() {
    Function<double[], Double> smooth =
        x -> Math.cos(3 * x[0] + x[1] + 0.3) / (1.7 + 0.5 * x[2] * (x[0] + 0.4));
    SparseInterpolant loose = through(smooth, 3, 1e-2);
    SparseInterpolant tight = through(smooth, 3, 1e-5);
    assertThat(largestError(loose, smooth, 3)).isLessThan(5e-2);
    assertThat(largestError(tight, smooth, 3)).isLessThan(2e-3);
    assertThat(tight.size()).isGreaterThan(loose.size()).isLessThan(400);
  }

  @Test
  void moreDegreesGoWhereTheFunctionMovesMore() {
    Function<double[], Double> lopsided = x -> Math.sin(9 * x[0]) + 0.1 * x[1];
    SparseInterpolant interpolant = through(lopsided, 2, 1e-6);
    assertThat(interpolant.degree(0)).isGreaterThan(12);
    assertThat(interpolant.degree(1)).isLessThanOrEqualTo(3);
    assertThat(largestError(interpolant, lopsided, 2)).isLessThan(1e-5);
  }

  @Test
  void meetsTheValuesItWasGiven() {
    Function<double[], Double> function = x -> Math.exp(x[0]) * Math.abs(x[1] - 0.3);
    SparseInterpolant interpolant = new SparseInterpolant(2);
    for (int round = 0; round < 6; round++) {
      List<double[]> points = interpolant.wanted();
      interpolant.take(points.stream().map(p -> new double[] {function.apply(p)}).toList());
      for (double[] point : points) {
        assertThat(interpolant.at(point)[0]).isCloseTo(function.apply(point), within(1e-12));
      }
      interpolant.grow(0);
    }
  }

  /** The first points are those of the literature: 0, 1, −1, 1/√3. */
  @Test
  void lejaPointsBeginAsTheyMust() {
    LejaPoints points = new LejaPoints(5);
    assertThat(points.at(0)).isZero();
    assertThat(points.at(1)).isEqualTo(1);
    assertThat(points.at(2)).isEqualTo(-1);
    assertThat(Math.abs(points.at(3))).isCloseTo(Math.sqrt(1.0 / 3), within(2e-4));
  }
}
