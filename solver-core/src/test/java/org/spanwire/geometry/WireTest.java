package org.spanwire.geometry;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import org.junit.jupiter.api.Test;
import org.spanwire.medium.Conductor;
import org.spanwire.medium.Materials;

class WireTest {

  private static final Wire BENT =
      Wire.of(
          "bent",
          Conductor.bare(Materials.COPPER, 1e-3),
          new Point(0, 0, 9),
          new Point(4, 0, 9),
          new Point(4, 3, 9),
          new Point(4, 3, 7));

  @Test
  void placesLieAlongThePath() {
    assertThat(BENT.at(0)).isEqualTo(new Point(0, 0, 9));
    assertThat(BENT.at(4)).isEqualTo(new Point(4, 0, 9));
    assertThat(BENT.at(5.5)).isEqualTo(new Point(4, 1.5, 9));
    assertThat(BENT.at(8)).isEqualTo(new Point(4, 3, 8));
    assertThat(BENT.at(9)).isEqualTo(new Point(4, 3, 7));
  }

  @Test
  void thereIsNoPlaceBeyondTheEnds() {
    assertThatThrownBy(() -> BENT.at(9.001)).hasMessageContaining("0 to 9.0 m");
    assertThatThrownBy(() -> BENT.at(-0.1)).hasMessageContaining("must lie on wire 'bent'");
  }
}
