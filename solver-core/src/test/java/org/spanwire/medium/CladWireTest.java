package org.spanwire.medium;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatIllegalArgumentException;
import static org.assertj.core.api.Assertions.within;
import static org.assertj.core.api.Assertions.withinPercentage;

import org.apache.commons.math3.complex.Complex;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

class CladWireTest {

  private static final double RADIUS = 1.024e-3;
  private static final Material COPPER = new Material("copper", 5.8e7, 1, "check value");
  private static final Material STEEL = new Material("steel", 5e6, 200, "check value");

  private static Conductor copperCladSteel(double thickness) {
    return Conductor.bare(STEEL, RADIUS).withCladding(new Cladding(COPPER, thickness));
  }

  /**
   * Copper-clad steel of 1.024 mm radius: copper thickness in metres, frequency in hertz,
   * resistance and reactance per metre. Exact solution in two layers (Schelkunoff 1934; Ramo,
   * Whinnery and Van Duzer 1994, section 3.16), evaluated by mpmath with 30 digits.
   */
  @ParameterizedTest
  @CsvSource({
    "5e-05, 1900000, 0.06027455169, 0.03843750725",
    "5e-05, 3650000, 0.07302594828, 0.06797911952",
    "5e-05, 7100000, 0.1042467506, 0.1085061361",
    "5e-05, 14200000, 0.1543981615, 0.1541531665",
    "5e-05, 28500000, 0.2178866838, 0.2163151176",
    "0.0001024, 1900000, 0.05523847557, 0.0565528712",
    "0.0001024, 3650000, 0.07902552092, 0.07796807004",
    "0.0001024, 7100000, 0.1093963049, 0.1079649964",
    "0.0001024, 14200000, 0.154118919, 0.1527973603",
    "0.0001024, 28500000, 0.2177897212, 0.216469361",
    "2e-05, 1900000, 0.1327488338, 0.01904487032",
    "2e-05, 3650000, 0.134826644, 0.03254337794",
    "2e-05, 7100000, 0.1394325848, 0.05966514323",
    "2e-05, 14200000, 0.1543420204, 0.1130680036",
    "2e-05, 28500000, 0.200673791, 0.2020819211"
  })
  void copperCladSteel(double thickness, double hertz, double resistance, double reactance) {
    Complex z = copperCladSteel(thickness).surfaceImpedance(hertz);
    assertThat(z.getReal()).isCloseTo(resistance, withinPercentage(1e-7));
    assertThat(z.getImaginary()).isCloseTo(reactance, withinPercentage(1e-7));
  }

  /** At low frequency core and cladding carry direct current side by side. */
  @Test
  void directCurrentSharesByCrossSection() {
    double t = 1e-4;
    double core = Math.PI * (RADIUS - t) * (RADIUS - t);
    double layer = Math.PI * RADIUS * RADIUS - core;
    Complex z = copperCladSteel(t).surfaceImpedance(0.1);
    assertThat(z.getReal())
        .isCloseTo(
            1 / (core * STEEL.conductivity() + layer * COPPER.conductivity()),
            withinPercentage(1e-4));
  }

  @Test
  void claddingOfTheSameMetalChangesNothing() {
    for (double hertz = 0.1; hertz < 2e9; hertz *= 10) {
      Complex solid = Conductor.bare(COPPER, RADIUS).surfaceImpedance(hertz);
      for (double t : new double[] {1e-7, 1e-5, 3e-4, 1.02e-3}) {
        Complex clad =
            Conductor.bare(COPPER, RADIUS)
                .withCladding(new Cladding(COPPER, t))
                .surfaceImpedance(hertz);
        assertThat(clad.subtract(solid).abs() / solid.abs()).isLessThan(1e-10);
      }
    }
  }

  @Test
  void vanishingCladdingLeavesTheCore() {
    for (double hertz = 0.1; hertz < 2e9; hertz *= 10) {
      Complex core = Conductor.bare(STEEL, RADIUS).surfaceImpedance(hertz);
      Complex clad = copperCladSteel(1e-15).surfaceImpedance(hertz);
      assertThat(clad.subtract(core).abs() / core.abs()).isLessThan(1e-6);
    }
  }

  @Test
  void vanishingCoreLeavesTheCladding() {
    for (double hertz = 0.1; hertz < 2e9; hertz *= 10) {
      Complex solid = Conductor.bare(COPPER, RADIUS).surfaceImpedance(hertz);
      Complex clad = copperCladSteel(RADIUS * (1 - 1e-6)).surfaceImpedance(hertz);
      assertThat(clad.subtract(solid).abs() / solid.abs()).isLessThan(1e-6);
    }
  }

  /**
   * A passive wire over ten decades of frequency and of thickness: no NaN, R and X not negative but
   * for rounding, which a perfect core short-circuiting a thin layer leaves.
   */
  @Test
  void isPassiveEverywhere() {
    for (double hertz = 0.1; hertz < 2e9; hertz *= Math.sqrt(10)) {
      for (Material layer : new Material[] {COPPER, STEEL, Materials.STAINLESS_STEEL}) {
        double rounding = 1e-12 * Conductor.bare(layer, RADIUS).surfaceImpedance(hertz).abs();
        for (Material core : new Material[] {COPPER, STEEL, Materials.PERFECT}) {
          double least = core.isPerfect() ? -rounding : 0;
          for (double t = 1e-12; t < RADIUS; t *= 7) {
            Complex z =
                Conductor.bare(core, RADIUS)
                    .withCladding(new Cladding(layer, t))
                    .surfaceImpedance(hertz);
            assertThat(z.getReal()).isGreaterThan(least).isFinite();
            assertThat(z.getImaginary()).isGreaterThan(least).isFinite();
          }
        }
      }
    }
  }

  /**
   * Where the cladding is many skin depths thick the core is not seen: the resistance dips below
   * that of solid copper at a thickness of 1.5 depths first.
   */
  @Test
  void resistanceDipsBelowThatOfSolidCopper() {
    double solid = Conductor.bare(COPPER, RADIUS).surfaceImpedance(3.65e6).getReal();
    assertThat(copperCladSteel(5e-5).surfaceImpedance(3.65e6).getReal() / solid)
        .isCloseTo(0.92679, within(1e-5));
    assertThat(copperCladSteel(5e-4).surfaceImpedance(3.65e6).getReal() / solid)
        .isCloseTo(1, within(1e-10));
  }

  @Test
  void refusesACladdingThatDoesNotFit() {
    assertThatIllegalArgumentException()
        .isThrownBy(() -> copperCladSteel(RADIUS))
        .withMessageContaining("cladding thickness");
    assertThatIllegalArgumentException()
        .isThrownBy(() -> copperCladSteel(0))
        .withMessageContaining("cladding thickness");
  }
}
