package org.spanwire.design;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.assertj.core.api.Assertions.within;

import java.util.List;
import org.junit.jupiter.api.Test;
import org.spanwire.design.FeedLine.Polarity;
import org.spanwire.geometry.Point;
import org.spanwire.medium.Conductor;

/** A line's route cut short, or led on the way it ends. */
class FeedLineLengthTest {

  private static final Point TOP = new Point(0, 0, 10);
  private static final Conductor SHEATH = Conductor.perfect(2e-3);

  /** Six metres down, then away. */
  private static final FeedLine LINE =
      new FeedLine(
          SHEATH,
          List.of(new Point(0, 0, 4), new Point(3, 0, 4)),
          false,
          List.of(),
          Polarity.FIRST_POINT);

  private static double length(FeedLine line) {
    double sum = 0;
    Point from = TOP;
    for (Point to : line.path()) {
      sum += from.distance(to);
      from = to;
    }
    return sum;
  }

  @Test
  void hasTheLengthAskedFor() {
    for (double metres : new double[] {0.1, 5.9, 6, 6.1, 9, 25}) {
      assertThat(length(LINE.ofLength(TOP, metres))).isCloseTo(metres, within(1e-12));
    }
    assertThat(LINE.ofLength(TOP, 4).path()).containsExactly(new Point(0, 0, 6));
    assertThat(LINE.ofLength(TOP, 9).path()).isEqualTo(LINE.path());
    assertThat(LINE.ofLength(TOP, 12).path())
        .containsExactly(new Point(0, 0, 4), new Point(6, 0, 4));
  }

  @Test
  void keepsAllElse() {
    FeedLine other = LINE.ofLength(TOP, 7).withPolarity(Polarity.LAST_POINT);
    assertThat(other.conductor()).isEqualTo(SHEATH);
    assertThat(other.earthed()).isFalse();
    assertThat(other.polarity()).isEqualTo(Polarity.LAST_POINT);
    assertThat(LINE.ofLength(TOP, 7).polarity()).isEqualTo(Polarity.FIRST_POINT);
    assertThatThrownBy(
            () -> new FeedLine(SHEATH, List.of(), false, List.of(), Polarity.FIRST_POINT))
        .hasMessageContaining("no point but the feedpoint");
  }
}
