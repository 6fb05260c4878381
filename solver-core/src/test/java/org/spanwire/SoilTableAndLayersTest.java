package org.spanwire;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.spanwire.LawAntennas.p;

import java.util.List;
import org.junit.jupiter.api.Test;
import org.spanwire.geometry.GeometryException;
import org.spanwire.geometry.Position;
import org.spanwire.medium.Soil;
import org.spanwire.medium.SoilLayer;
import org.spanwire.medium.SoilTable;
import org.spanwire.result.Warning;

/** A soil of a table is the soil of its row; what is left out is told. */
class SoilTableAndLayersTest {

  private static Antenna over(Soil soil) {
    return Antenna.builder()
        .wire("w", LawAntennas.THIN, p(0, 0, 6), p(20, 0, 8))
        .feed("feed", "w", Position.fraction(0.4))
        .ground(soil)
        .build();
  }

  @Test
  void tableActsAsTheSoilOfEachFrequency() {
    Soil varied =
        Soil.of(
            "meadow",
            new SoilTable(
                List.of(new SoilTable.Row(7e6, 20, 0.02), new SoilTable.Row(14e6, 10, 0.05))),
            "measured");
    Solver solver = new Solver();
    assertThat(solver.solve(over(varied), 7e6).impedance())
        .isEqualTo(solver.solve(over(Soil.of(20, 0.02)), 7e6).impedance());
    assertThat(solver.solve(over(varied), 14e6).impedance())
        .isEqualTo(solver.solve(over(Soil.of(10, 0.05)), 14e6).impedance());
    assertThatThrownBy(() -> solver.solve(over(varied), 15e6))
        .isInstanceOf(GeometryException.class)
        .hasMessageContaining(
            "15 MHz lies outside the table of soil 'meadow', which runs from 7 MHz to 14 MHz");
  }

  @Test
  void layersGiveNamedWarningsWithTheirSize() {
    Soil soil =
        Soil.of(13, 0.005)
            .withLayers(
                List.of(
                    SoilLayer.snow(0.8),
                    new SoilLayer(SoilLayer.Place.BENEATH_THE_SOIL, 1.5, 30, 0.02)));
    Solution solution = new Solver().solve(over(soil), 7.1e6);
    List<Warning> warnings = solution.warnings();
    assertThat(warnings)
        .extracting(Warning::name)
        .containsExactly("snow-over-soil", "layered-soil");
    assertThat(warnings.get(0).message())
        .contains(
            "layer of 800 mm on the soil, of relative permittivity 1.57, left out; at 7.1 MHz",
            "Wait 1962",
            "mm higher");
    assertThat(solution.impedance())
        .isEqualTo(new Solver().solve(over(Soil.of(13, 0.005)), 7.1e6).impedance());
  }
}
