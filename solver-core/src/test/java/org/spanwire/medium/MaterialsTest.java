package org.spanwire.medium;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatIllegalArgumentException;

import java.util.OptionalDouble;
import org.junit.jupiter.api.Test;

class MaterialsTest {

  @Test
  void everyMaterialIsFoundByItsName() {
    assertThat(Materials.all()).extracting(Material::name).doesNotHaveDuplicates();
    for (Material material : Materials.all()) {
      assertThat(Materials.find(material.name())).contains(material);
      assertThat(material.source()).isNotBlank();
    }
    assertThat(Materials.find("unobtainium")).isEmpty();
  }

  /** IEC 60028: the conductivity of annealed copper at 20 °C is 58 MS/m. */
  @Test
  void copperIsThatOfTheStandard() {
    assertThat(Materials.COPPER.conductivity()).isEqualTo(58e6);
    assertThat(Materials.COPPER.isPerfect()).isFalse();
    assertThat(Materials.PERFECT.isPerfect()).isTrue();
  }

  @Test
  void refusesWhatCannotBe() {
    assertThatIllegalArgumentException()
        .isThrownBy(() -> new Material("m", 0, 1, "test"))
        .withMessageContaining("conductivity");
    assertThatIllegalArgumentException()
        .isThrownBy(() -> new Material("m", Double.NaN, 1, "test"))
        .withMessageContaining("conductivity");
    assertThatIllegalArgumentException()
        .isThrownBy(() -> new Material("m", 1e7, 0, "test"))
        .withMessageContaining("permeability");
  }

  /** The densities of metals lie where handbooks have them; an ideal one has none. */
  @Test
  void everyMetalHasItsDensity() {
    for (Material material : Materials.all()) {
      if (!material.isPerfect()) {
        assertThat(material.density().orElseThrow()).isBetween(2_600.0, 9_000.0);
      }
    }
    assertThat(Materials.PERFECT.density()).isEmpty();
    assertThatIllegalArgumentException()
        .isThrownBy(() -> new Material("m", 1e7, 1, OptionalDouble.of(0), "test"))
        .withMessageContaining("density");
  }
}
