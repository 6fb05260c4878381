package org.spanwire.study;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.util.List;
import java.util.Optional;
import java.util.function.DoubleUnaryOperator;
import java.util.stream.IntStream;
import org.apache.commons.math3.complex.Complex;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.EnumSource;
import org.spanwire.study.CheckedRequirement.Quantity;

/** How finely a band is solved, from curves whose Chebyshev coefficients are known. */
class BandScanTest {

  private static final FrequencyRange RANGE = new FrequencyRange(1, 3);

  /** An operation that carries its frequency as the resistance and as the error. */
  private static Operation operation(double frequency) {
    SolvedFeed feed = new SolvedFeed("main", new Complex(frequency, 0), frequency, 0, List.of());
    return new Operation(null, List.of(feed), Optional.empty(), Optional.empty());
  }

  /** From −1 at the lower edge to 1 at the upper one. */
  private static double place(Operation operation) {
    return frequency(operation) - 2;
  }

  private static double frequency(Operation operation) {
    return operation.feed("main").impedance().getReal();
  }

  private static Gauge gauge(Quantity quantity, DoubleUnaryOperator reading) {
    return new Gauge(
        quantity,
        0,
        operation -> new Complex(reading.applyAsDouble(place(operation)), 0),
        operation -> operation.feed("main").errorOhm(),
        DoubleUnaryOperator.identity());
  }

  private static BandScan scan(double accepted, Gauge... gauges) {
    try (Workers workers = new Workers(1)) {
      return BandScan.of(RANGE, BandScanTest::operation, List.of(gauges), accepted, workers);
    }
  }

  private static int points(double accepted, Gauge... gauges) {
    return scan(accepted, gauges).operations().size();
  }

  /**
   * Its Chebyshev coefficients are 2 / √(a² − 1) · (a + √(a² − 1))^−k, 8/3 · 2^−k with a = 1.25:
   * the closed form follows from the generating function of the polynomials (NIST DLMF, section
   * 18.12).
   */
  private static double pole(double x) {
    return 1 / (1.25 - x);
  }

  /**
   * The points of degree n see coefficient n, and n − 1 with its mirror image n + 1: the error
   * counted is 2 · 8/3 · (1 + 2 + 1/2) · 2^−n, which is 1.17 for n = 4, 0.073 for 8, 2.8e-4 for 16,
   * 4.3e-9 for 32.
   */
  @Test
  void pointsAreAddedUntilTheCurveIsSmoothEnough() {
    Gauge steep = gauge(Quantity.SWR_FEEDPOINT, BandScanTest::pole);
    assertThat(points(1.2, steep)).isEqualTo(5);
    assertThat(points(1.1, steep)).isEqualTo(9);
    assertThat(points(0.074, steep)).isEqualTo(9);
    assertThat(points(0.072, steep)).isEqualTo(17);
    assertThat(points(4.4e-9, steep)).isEqualTo(33);
    assertThat(points(4.2e-9, steep)).isEqualTo(65);
  }

  @Test
  void theMostDemandingCurveDecides() {
    Gauge flat = gauge(Quantity.SWR_FEEDPOINT, x -> 0.5);
    Gauge steep = gauge(Quantity.SWR_FEEDPOINT, BandScanTest::pole);
    assertThat(points(1e-3, flat)).isEqualTo(5);
    assertThat(points(1e-3, flat, steep)).isEqualTo(points(1e-3, steep, flat)).isEqualTo(17);
  }

  /**
   * A gain as a ratio or a heat has no scale of its own: its error counts over its largest value.
   */
  @ParameterizedTest
  @EnumSource(names = {"GAIN", "EFFICIENCY", "CHOKE_HEAT"})
  void powersCountOverTheirLargestValue(Quantity quantity) {
    int plain = points(1e-3, gauge(quantity, BandScanTest::pole));
    for (double scale : new double[] {1e-6, 1e6}) {
      assertThat(points(1e-3, gauge(quantity, x -> scale * pole(x)))).isEqualTo(plain);
    }
    assertThat(points(1e-3, gauge(quantity, x -> 0))).isEqualTo(5);
  }

  @ParameterizedTest
  @EnumSource(names = {"SWR_FEEDPOINT", "SWR_TRANSMITTER", "VERDICT", "BANDWIDTH"})
  void reflectionCoefficientsCountAsTheyAre(Quantity quantity) {
    assertThat(points(1e-3, gauge(quantity, x -> 1e-6 * pole(x)))).isEqualTo(5);
    assertThat(points(1e-3, gauge(quantity, BandScanTest::pole))).isEqualTo(17);
  }

  /** A corner is never smooth enough; what is left is for the error of the curve to tell. */
  @Test
  void itGivesUpAtMostPoints() {
    Gauge corner = gauge(Quantity.SWR_FEEDPOINT, x -> Math.abs(x - 0.3));
    BandScan scan = scan(1e-6, corner);
    assertThat(scan.operations()).hasSize(129);
    assertThat(scan.curve(corner).error()).isGreaterThan(1e-6);
  }

  @Test
  void operationsRiseInFrequencyAndLieOnTheCurve() {
    Gauge steep = gauge(Quantity.SWR_FEEDPOINT, BandScanTest::pole);
    BandScan scan = scan(1e-3, steep);
    double[] frequencies =
        scan.operations().stream().mapToDouble(BandScanTest::frequency).toArray();
    assertThat(frequencies).isSorted().containsExactly(ReflectionCurve.frequencies(RANGE, 17));
    IntStream.range(0, 17)
        .forEach(
            i ->
                assertThat(scan.curve(steep).at(frequencies[i]).getReal())
                    .isCloseTo(pole(frequencies[i] - 2), within(1e-12)));
    assertThat(scan.solverError(steep)).isEqualTo(3);
  }
}
