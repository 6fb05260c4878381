package org.spanwire;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;
import static org.spanwire.LawAntennas.FREQUENCY;
import static org.spanwire.LawAntennas.THIN;
import static org.spanwire.LawAntennas.difference;
import static org.spanwire.LawAntennas.impedance;
import static org.spanwire.LawAntennas.p;

import java.util.stream.Stream;
import org.apache.commons.math3.complex.Complex;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.Arguments;
import org.junit.jupiter.params.provider.MethodSource;
import org.spanwire.geometry.Position;
import org.spanwire.geometry.Wire;
import org.spanwire.medium.Conductor;
import org.spanwire.medium.Ground;
import org.spanwire.medium.Materials;
import org.spanwire.medium.Soil;
import org.spanwire.medium.Soils;
import org.spanwire.result.PowerBudget;

/** Limits and laws over soil. σ is chosen for a frequency at which one metre is a wavelength. */
class SoilLawsTest {

  /** ε = 13 − j12.7 at 7.1 MHz, scaled to this frequency. */
  private static final Soil MEDIUM = Soil.of(13, 5e-3 * FREQUENCY / 7.1e6);

  private static final double TOLERANCE = 1e-3;

  private static Antenna horizontal(double height) {
    return LawAntennas.moved(LawAntennas.dipole(THIN, 0.36), q -> p(q.x(), q.y(), height));
  }

  private static Antenna vertical() {
    return LawAntennas.moved(LawAntennas.dipole(THIN, 0.36), q -> p(0, 0, 0.3 + q.x()));
  }

  private static Antenna slanted() {
    return Antenna.builder()
        .wire("wire", THIN, p(-0.1, 0.05, 0.03), p(0.2, 0.1, 0.4))
        .feed("feed", "wire", Position.fraction(0.4))
        .build();
  }

  private static Antenna bent() {
    return Antenna.builder()
        .wire("wire", THIN, p(-0.2, 0, 0.05), p(0, 0.03, 0.25), p(0.25, 0.1, 0.04))
        .feed("feed", "wire", Position.fraction(0.3))
        .build();
  }

  private static Antenna over(Antenna antenna, Ground ground) {
    return antenna.toBuilder().ground(ground).build();
  }

  static Stream<Arguments> antennas() {
    return Stream.of(
        Arguments.of("horizontal", horizontal(0.1)),
        Arguments.of("low", horizontal(0.01)),
        Arguments.of("vertical", vertical()),
        Arguments.of("slanted", slanted()),
        Arguments.of("bent", bent()));
  }

  /** ε = 1 is no soil at all; next to it the effect is in proportion to ε − 1. */
  @ParameterizedTest
  @MethodSource("antennas")
  void emptySoilIsFreeSpace(String name, Antenna antenna) {
    Complex free = impedance(antenna, TOLERANCE);
    assertThat(difference(impedance(over(antenna, Soil.of(1, 0)), TOLERANCE), free)).isZero();
    assertThat(difference(impedance(over(antenna, Soil.of(1 + 1e-6, 0)), TOLERANCE), free))
        .isLessThan(2e-6);
  }

  /** The reflection differs from a perfect one in proportion to 1/√|ε|. */
  @ParameterizedTest
  @MethodSource("antennas")
  void metallicSoilIsPerfectGround(String name, Antenna antenna) {
    Complex perfect = impedance(over(antenna, Ground.perfect()), TOLERANCE);
    double before = difference(impedance(over(antenna, Soil.of(1, 1e5)), TOLERANCE), perfect);
    assertThat(before).as(name).isLessThan(0.03);
    for (double sigma : new double[] {1e7, 1e9}) {
      double off = difference(impedance(over(antenna, Soil.of(1, sigma)), TOLERANCE), perfect);
      assertThat(off).as("%s, sigma %g", name, sigma).isLessThan(0.15 * before + 2e-6);
      before = off;
    }
  }

  @ParameterizedTest
  @MethodSource("antennas")
  void turningAboutTheVerticalChangesNothing(String name, Antenna antenna) {
    Antenna turned =
        LawAntennas.moved(
            antenna,
            q ->
                p(
                    5 + Math.cos(1) * q.x() - Math.sin(1) * q.y(),
                    -2 + Math.sin(1) * q.x() + Math.cos(1) * q.y(),
                    q.z()));
    assertThat(
            difference(
                impedance(over(turned, MEDIUM), TOLERANCE),
                impedance(over(antenna, MEDIUM), TOLERANCE)))
        .isLessThan(1e-9);
  }

  @Test
  void portsAreReciprocal() {
    Solver solver = new Solver();
    Solution a = solver.solve(over(LawAntennas.pair(Complex.ONE, Complex.ZERO), MEDIUM), FREQUENCY);
    Solution b = solver.solve(over(LawAntennas.pair(Complex.ZERO, Complex.ONE), MEDIUM), FREQUENCY);
    assertThat(difference(a.feedCurrent("b"), b.feedCurrent("a"))).isLessThan(1e-9);
  }

  /**
   * Sky, soil and wire take what the feed gives. The powers come from the far field and from the
   * flux through the surface, not from the potentials; a wrong sign of the slanted wires' cross
   * term would show here. The star's wires have loss.
   */
  @ParameterizedTest
  @MethodSource("balances")
  void powerIsConserved(String name, Soil soil, Antenna antenna) {
    Solution solution = new Solver(new SolverOptions(1e-4)).solve(over(antenna, soil), FREQUENCY);
    PowerBudget budget = solution.powerBudgetWithSoil();
    double absorbed = budget.soilAbsorbed().orElseThrow();
    assertThat(absorbed).isPositive();
    assertThat(
            (budget.radiated() + absorbed + budget.conductorLoss() + budget.fittingLoss())
                / budget.accepted())
        .as(name)
        .isCloseTo(1, within(2e-6));
  }

  /** Five antennas, one of them 0.01 λ up, over five soils whose constants hold at 7.1 MHz. */
  static Stream<Arguments> balances() {
    Conductor copper = Conductor.bare(Materials.COPPER, 1e-4);
    Antenna star = LawAntennas.moved(LawAntennas.star(copper), q -> p(q.x(), q.y(), q.z() + 0.4));
    return Stream.of("sea-water", "wet-ground", "medium-dry", "dry", "very-dry")
        .map(name -> scaled(Soils.find(name).orElseThrow(), FREQUENCY / 7.1e6))
        .flatMap(
            soil ->
                Stream.of(
                    Arguments.of("low over " + soil.name(), soil, horizontal(0.01)),
                    Arguments.of("vertical over " + soil.name(), soil, vertical()),
                    Arguments.of("slanted over " + soil.name(), soil, slanted()),
                    Arguments.of("bent over " + soil.name(), soil, bent()),
                    Arguments.of("star of copper over " + soil.name(), soil, star)));
  }

  private static Soil scaled(Soil soil, double factor) {
    return new Soil(
        soil.name(), soil.relativePermittivity(), factor * soil.conductivity(), soil.source());
  }

  /**
   * Ten times the frequency and the conductivity, a tenth of the size: the same impedance, but for
   * the tables of the reflected kernels, whose grid does not scale (1e-5 asked for).
   */
  @ParameterizedTest
  @MethodSource("antennas")
  void sizeFrequencyAndConductivityScaleTogether(String name, Antenna antenna) {
    double factor = 10;
    Antenna small =
        LawAntennas.rewired(
            antenna,
            antenna.wires().stream()
                .map(
                    w ->
                        new Wire(
                            w.name(),
                            Conductor.perfect(w.conductor().outerRadius() / factor),
                            w.path().stream()
                                .map(q -> p(q.x() / factor, q.y() / factor, q.z() / factor))
                                .toList()))
                .toList());
    Complex scaled =
        new Solver().solve(over(small, scaled(MEDIUM, factor)), factor * FREQUENCY).impedance();
    assertThat(difference(scaled, impedance(over(antenna, MEDIUM), TOLERANCE))).isLessThan(1e-7);
    Complex unscaled = new Solver().solve(over(small, MEDIUM), factor * FREQUENCY).impedance();
    assertThat(difference(scaled, unscaled)).as("conductivity matters").isGreaterThan(1e-3);
  }

  /** Balance alone is not offered over soil: half of it would be missing. */
  @Test
  void balanceWithoutTheSoilIsNotStated() {
    Solution solution = new Solver().solve(over(slanted(), MEDIUM), FREQUENCY);
    assertThat(solution.powerBalance()).isEmpty();
    assertThat(solution.powerBudget().soilAbsorbed()).isEmpty();
  }

  @Test
  void sameSolverSameBits() {
    Antenna antenna = over(bent(), MEDIUM);
    Solver solver = new Solver();
    Complex first = solver.solve(antenna, FREQUENCY).impedance();
    solver.solve(over(vertical(), MEDIUM), FREQUENCY);
    assertThat(solver.solve(antenna, FREQUENCY).impedance()).isEqualTo(first);
    assertThat(new Solver().solve(antenna, FREQUENCY).impedance()).isEqualTo(first);
  }
}
