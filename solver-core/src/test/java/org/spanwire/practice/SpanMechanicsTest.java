package org.spanwire.practice;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.assertj.core.api.Assertions.within;

import java.util.OptionalDouble;
import org.junit.jupiter.api.Test;
import org.spanwire.design.Weather;
import org.spanwire.geometry.Point;
import org.spanwire.geometry.Span;
import org.spanwire.geometry.SpanShape;
import org.spanwire.medium.MechanicalProperties;

class SpanMechanicsTest {

  private static final double GRAVITY = 9.80665;
  private static final double STIFFNESS = 110e9 * Math.PI * 1e-6;
  private static final MechanicalProperties COPPER =
      new MechanicalProperties(
          0.028149, OptionalDouble.of(900), OptionalDouble.of(STIFFNESS), OptionalDouble.of(17e-6));

  private static SpanShape strung(double newtons) {
    return Span.ofWeight(new Point(0, 0, 9), new Point(40, 0, 9), 0.028149 * GRAVITY)
        .ofTension(newtons);
  }

  /** By hand: ½ · 1.225 · 30² · 1.2 · 2 mm; and the trade's 1.3 and 2.9 N/m at 30 and 45 m/s. */
  @Test
  void windOnABareWire() {
    assertThat(new Weather(30, 0, 0).windForce(0.002)).isCloseTo(1.323, within(1e-12));
    assertThat(new Weather(45, 0, 0).windForce(0.002)).isCloseTo(2.9, within(0.1));
  }

  /** A ring of 10 mm around 2 mm: area π(11² − 1²) mm². */
  @Test
  void iceIsARing() {
    assertThat(new Weather(0, 0.010, 0).iceMass(0.002))
        .isCloseTo(900 * Math.PI * (0.011 * 0.011 - 0.001 * 0.001), within(1e-12));
    assertThat(new Weather(10, 0.010, 0).windForce(0.002))
        .isCloseTo(11 * new Weather(10, 0, 0).windForce(0.002), within(1e-9));
  }

  /** In wind a level span hangs in a tilted plane: a catenary of the resultant load. */
  @Test
  void windTiltsTheCatenary() {
    SpanMechanics mechanics =
        new SpanMechanics(
            strung(60),
            new MechanicalProperties(
                0.028149, OptionalDouble.empty(), OptionalDouble.empty(), OptionalDouble.empty()),
            0.002);
    Weather storm = new Weather(30, 0, 0);
    SpanShape shape = mechanics.in(storm);
    double resultant = Math.hypot(0.028149 * GRAVITY, storm.windForce(0.002));
    SpanShape tilted =
        Span.ofWeight(new Point(0, 0, 9), new Point(40, 0, 9), resultant)
            .ofLength(strung(60).length());
    assertThat(shape.firstTension()).isCloseTo(tilted.firstTension(), within(1e-6));
    assertThat(shape.swing() / shape.sag())
        .isCloseTo(storm.windForce(0.002) / (0.028149 * GRAVITY), within(1e-9));
    assertThat(Math.hypot(shape.swing(), shape.sag())).isCloseTo(tilted.sag(), within(1e-8));
  }

  /** Hooke's law for a taut wire that cannot shorten: tension rises by EA·α·ΔT. */
  @Test
  void coldTightensATautWire() {
    SpanMechanics mechanics = new SpanMechanics(strung(400), COPPER, 0.002);
    double rise =
        mechanics.in(new Weather(0, 0, -10)).largestTension() - mechanics.strung().largestTension();
    double hooke = STIFFNESS * 17e-6 * 10;
    // The wire's own sag takes up a part of it.
    assertThat(rise).isBetween(0.9 * hooke, hooke);
    assertThat(mechanics.in(Weather.STILL).largestTension()).isCloseTo(400, within(1e-6));
  }

  /** 40 K are 28 mm in 40 m at 17.5 ppm/K, 27.2 mm at 17. */
  @Test
  void warmthLengthensIt() {
    SpanMechanics mechanics = new SpanMechanics(strung(100), COPPER, 0.002);
    SpanShape warm = mechanics.in(new Weather(0, 0, 40));
    assertThat(warm.unstretchedLength() - mechanics.strung().unstretchedLength())
        .isCloseTo(0.0272, within(2e-4));
    assertThat(warm.sag()).isGreaterThan(mechanics.strung().sag());
  }

  @Test
  void marginIsStrengthOverTheLargestTension() {
    SpanMechanics mechanics = new SpanMechanics(strung(90), COPPER, 0.002);
    assertThat(mechanics.breakingMargin(mechanics.strung()).orElseThrow())
        .isCloseTo(10, within(1e-6));
    assertThat(mechanics.breakingMargin(mechanics.in(new Weather(30, 0.01, -20))).orElseThrow())
        .isLessThan(5);
  }

  @Test
  void saysWhatIsMissing() {
    SpanMechanics mechanics =
        new SpanMechanics(
            strung(100),
            new MechanicalProperties(
                0.028149, OptionalDouble.empty(), OptionalDouble.empty(), OptionalDouble.empty()),
            0.002);
    assertThatThrownBy(() -> mechanics.in(new Weather(0, 0, -10)))
        .hasMessageContaining("give expansion");
    assertThat(mechanics.breakingMargin(mechanics.strung())).isEmpty();
  }
}
