package org.spanwire.medium;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.util.OptionalDouble;
import org.junit.jupiter.api.Test;

/** Mass of a length of wire: volume times density, part by part. */
class WireMassTest {

  private static final Insulation POLYETHYLENE =
      new Insulation(0.6e-3, 2.3, 0, OptionalDouble.of(930));

  private static Conductor copper() {
    return Conductor.bare(Materials.COPPER, 1e-3);
  }

  @Test
  void theCoatComesOnTopOfTheMetal() {
    Conductor coated = copper().withInsulation(POLYETHYLENE);
    double metal = copper().massPerMetre().orElseThrow();

    assertThat(metal).isCloseTo(8960 * Math.PI * 1e-6, within(1e-12));
    assertThat(coated.metalMassPerMetre()).hasValue(metal);
    assertThat(coated.massPerMetre().orElseThrow() - metal)
        .isCloseTo(930 * Math.PI * (1.6e-3 * 1.6e-3 - 1e-6), within(1e-12));
  }

  @Test
  void aCladWireLiesBetweenItsMetals() {
    double steel = Conductor.bare(Materials.STEEL, 1e-3).massPerMetre().orElseThrow();
    double all = copper().massPerMetre().orElseThrow();
    Conductor clad =
        Conductor.bare(Materials.STEEL, 1e-3).withCladding(new Cladding(Materials.COPPER, 1e-4));

    // The outer tenth of the radius holds 19 % of the area.
    assertThat(clad.massPerMetre().orElseThrow())
        .isCloseTo(0.81 * steel + 0.19 * all, within(1e-12));
  }

  @Test
  void strandsWeighWhatTheyAre() {
    Conductor strand = Conductor.stranded(Materials.COPPER, new Stranding(7, 0.25e-3));

    assertThat(strand.massPerMetre().orElseThrow())
        .isCloseTo(7 * 8960 * Math.PI * 0.25e-3 * 0.25e-3, within(1e-12));
  }

  @Test
  void whatIsNotKnownIsNotGuessed() {
    Conductor coated = copper().withInsulation(new Insulation(0.6e-3, 2.3, 0));

    assertThat(coated.massPerMetre()).isEmpty();
    assertThat(coated.metalMassPerMetre()).isPresent();
    assertThat(Conductor.perfect(1e-3).massPerMetre()).isEmpty();
    assertThat(
            Conductor.perfect(1e-3)
                .withCladding(new Cladding(Materials.COPPER, 1e-4))
                .metalMassPerMetre())
        .isEmpty();
  }
}
