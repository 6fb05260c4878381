package org.spanwire.medium;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatIllegalArgumentException;
import static org.assertj.core.api.Assertions.within;
import static org.assertj.core.api.Assertions.withinPercentage;

import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

class StrandingTest {

  private static final double STRAND = 0.25e-3;

  /**
   * Full layers: count, enclosing radius in strand radii (geometry), then radius of equal
   * capacitance and resistance at strong skin effect, both relative to the enclosing round wire.
   * The last two by numpy: Laplace's equation around the 6, 12 or 18 touching circles of the outer
   * layer by a single-layer potential with 60 to 480 points per circle, extrapolated; resistance as
   * ∮q².
   */
  @ParameterizedTest
  @CsvSource({"7, 3, 0.9387, 1.1375", "19, 5, 0.9687, 1.1146", "37, 7, 0.9790, 1.1069"})
  void agreesWithLaplacesEquationAroundTheStrands(
      int count, double enclosing, double radius, double resistance) {
    Stranding strands = new Stranding(count, STRAND);
    assertThat(strands.enclosingRadius() / STRAND).isCloseTo(enclosing, within(1e-12));
    assertThat(strands.equivalentRadius() / strands.enclosingRadius())
        .isCloseTo(radius, withinPercentage(0.3));
    assertThat(strands.resistanceFactor()).isCloseTo(resistance, withinPercentage(4.1));
    assertThat(strands.resistanceFactor()).isGreaterThan(resistance * 0.995);
  }

  @Test
  void directCurrentFlowsInTheStrandsOnly() {
    Stranding strands = new Stranding(7, STRAND);
    double resistance = Conductor.stranded(Materials.COPPER, strands).surfaceImpedance(1).getReal();
    double area = 7 * Math.PI * STRAND * STRAND;
    assertThat(resistance)
        .isCloseTo(1 / (area * Materials.COPPER.conductivity()), withinPercentage(1e-4));
  }

  /** The factor is what the model gives far above the skin effect's onset. */
  @Test
  void resistanceFactorHoldsAtHighFrequency() {
    for (int count : new int[] {7, 19, 41}) {
      Stranding strands = new Stranding(count, STRAND);
      double hertz = 1e12;
      double stranded =
          Conductor.stranded(Materials.COPPER, strands).surfaceImpedance(hertz).getReal();
      double solid =
          Conductor.bare(Materials.COPPER, strands.enclosingRadius())
              .surfaceImpedance(hertz)
              .getReal();
      assertThat(stranded / solid).isCloseTo(strands.resistanceFactor(), withinPercentage(0.01));
    }
  }

  @Test
  void moreStrandsMakeAThickerWire() {
    double before = 0;
    for (int count = 7; count < 200; count++) {
      double radius = new Stranding(count, STRAND).equivalentRadius();
      assertThat(radius).isGreaterThan(before);
      before = radius;
    }
  }

  @Test
  void refusesWhatIsNoRoundWire() {
    assertThatIllegalArgumentException()
        .isThrownBy(() -> new Stranding(3, STRAND))
        .withMessageContaining("strand count 3 must be at least 7");
    assertThatIllegalArgumentException()
        .isThrownBy(() -> new Stranding(7, 0))
        .withMessageContaining("strand radius");
  }
}
