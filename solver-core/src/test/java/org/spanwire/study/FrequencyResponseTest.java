package org.spanwire.study;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.assertj.core.api.Assertions.within;

import java.util.List;
import java.util.Random;
import java.util.stream.IntStream;
import org.apache.commons.math3.complex.Complex;
import org.junit.jupiter.api.Test;
import org.spanwire.Antenna;
import org.spanwire.Solver;
import org.spanwire.SolverOptions;
import org.spanwire.circuit.Mismatch;
import org.spanwire.geometry.Feed;
import org.spanwire.geometry.Point;
import org.spanwire.geometry.Position;
import org.spanwire.medium.Conductor;
import org.spanwire.medium.Materials;
import org.spanwire.medium.Soil;
import org.spanwire.medium.Soils;
import org.spanwire.unit.PhysicalConstants;

class FrequencyResponseTest {

  private static final FrequencyRange SHORT_WAVE = new FrequencyRange(1.8e6, 30e6);
  private static final Feed FEED = Feed.of("main", "stub", Position.fraction(0.5));

  private static final double STUB_OHM = 300;
  private static final double STUB_LENGTH = 20;

  /**
   * An open lossy stub, Z = Z0 coth((α + jβ)l), with α growing like the square root of frequency as
   * skin effect makes it: Pozar, Microwave Engineering, 4th edition (2012), section 2.7. Not
   * rational.
   */
  private static Complex[][] stub(double frequencyHz) {
    double attenuation = 0.06 * Math.sqrt(frequencyHz / 10e6);
    Complex gamma =
        new Complex(attenuation, PhysicalConstants.wavenumber(frequencyHz) * STUB_LENGTH);
    return new Complex[][] {{gamma.cosh().divide(gamma.sinh()).multiply(STUB_OHM)}};
  }

  private static FrequencyResponse stubResponse(int threads) {
    return FrequencyResponse.of(
        List.of(FEED),
        SHORT_WAVE,
        FrequencyResponseTest::stub,
        1e-9,
        new AdaptiveFit.Goal(1e-4, 100),
        threads);
  }

  @Test
  void theStatedErrorOfAStubHoldsEverywhere() {
    FrequencyResponse response = stubResponse(2);
    double worst = 0;
    for (int i = 0; i <= 28200; i++) {
      double f = 1.8e6 + 1e3 * i;
      Complex exact = stub(f)[0][0];
      worst = Math.max(worst, response.impedance("main", f).subtract(exact).abs() / exact.abs());
    }
    assertThat(worst).isLessThan(1e-4);
    assertThat(response.relativeError()).isBetween(worst, 1e-4);
    assertThat(response.solvedFrequencies()).hasSizeLessThan(60);
  }

  /**
   * 28,201 frequencies of an off-centre-fed wire over soil cost some tens of solves; solutions of
   * ten times the accuracy tell the error at random ones.
   */
  @Test
  void shortWaveInStepsOfAKilohertzCostsSomeTensOfSolves() {
    Antenna antenna =
        Antenna.builder()
            .wire(
                "radiator",
                Conductor.bare(Materials.COPPER, 1e-3),
                new Point(0, 0, 10),
                new Point(40, 0, 10))
            .feed("main", "radiator", Position.fraction(0.36))
            .ground(Soil.of(13, 5e-3))
            .build();
    FrequencyResponse response = FrequencyResponse.of(antenna, SHORT_WAVE, 1e-3, 2);
    assertThat(response.solvedFrequencies()).hasSizeLessThanOrEqualTo(80);
    assertThat(response.relativeError()).isLessThan(1e-3);
    Solver judge = new Solver().withTolerance(1e-4);
    for (int step : new Random(28_201).ints(200, 0, 28_201).toArray()) {
      double f = 1.8e6 + 1e3 * step;
      Complex right = judge.solve(antenna, f).impedance();
      assertThat(response.impedance("main", f).subtract(right).abs())
          .as("at %s Hz", f)
          .isLessThan(1e-3 * right.abs());
    }
  }

  /** Reactance vanishes near every multiple of a quarter wavelength, moved by the loss. */
  @Test
  void resonancesOfAStubLieAtQuarterWavelengths() {
    List<FrequencyResponse.Resonance> found = stubResponse(1).resonances("main");
    double quarter = PhysicalConstants.SPEED_OF_LIGHT / (4 * STUB_LENGTH);
    assertThat(found).hasSize((int) (30e6 / quarter));
    for (int i = 0; i < found.size(); i++) {
      assertThat(found.get(i).series()).isEqualTo(i % 2 == 0);
      double f = found.get(i).frequencyHz();
      assertThat(f).isCloseTo((i + 1) * quarter, within(2e-3 * f));
      assertThat(Math.abs(stub(f)[0][0].getImaginary())).isLessThan(2e-4 * stub(f)[0][0].abs());
    }
  }

  @Test
  void bandwidthsEndWhereTheSwrIsTheLimit() {
    FrequencyResponse response = stubResponse(1);
    List<FrequencyRange> ranges = response.within("main", 25, 3);
    List<SwrAt> matches = response.bestMatches("main", 25);
    assertThat(ranges).hasSizeGreaterThan(2);
    for (FrequencyRange range : ranges) {
      for (double edge : new double[] {range.lowHz(), range.highHz()}) {
        if (!SHORT_WAVE.isEdge(edge)) {
          assertThat(Mismatch.of(stub(edge)[0][0], 25).swr()).isCloseTo(3, within(2e-3));
        }
      }
      assertThat(matches)
          .anyMatch(m -> m.frequencyHz() > range.lowHz() && m.frequencyHz() < range.highHz());
    }
    for (SwrAt match : matches) {
      double aside = 1e-3 * match.frequencyHz();
      for (double f : new double[] {match.frequencyHz() - aside, match.frequencyHz() + aside}) {
        assertThat(Mismatch.of(stub(f)[0][0], 25).swr()).isGreaterThan(match.swr());
      }
    }
  }

  @Test
  void doesNotDependOnTheNumberOfThreads() {
    FrequencyResponse one = stubResponse(1);
    FrequencyResponse three = stubResponse(3);
    assertThat(three.solvedFrequencies()).isEqualTo(one.solvedFrequencies());
    assertThat(three.impedance("main", 7.123e6)).isEqualTo(one.impedance("main", 7.123e6));
  }

  @Test
  void saysSoWhenTheWantedAccuracyIsOutOfReach() {
    Random random = new Random(3);
    FrequencyResponse noise =
        FrequencyResponse.of(
            List.of(FEED),
            SHORT_WAVE,
            f -> new Complex[][] {{new Complex(50 + random.nextDouble(), 0)}},
            1e-5,
            new AdaptiveFit.Goal(1e-4, 50),
            1);
    assertThat(noise.relativeError()).isGreaterThan(1e-3);
  }

  private static Antenna wire() {
    return Antenna.builder()
        .wire(
            "radiator",
            Conductor.bare(Materials.COPPER, 1e-3),
            new Point(0, 0, 10),
            new Point(40, 0, 10))
        .feed("main", "radiator", Position.fraction(1.0 / 3))
        .ground(Soils.find("medium-dry").orElseThrow())
        .build();
  }

  @Test
  void shortWaveInSomeTensOfSolves() {
    FrequencyResponse response = FrequencyResponse.of(wire(), SHORT_WAVE, 1e-3, 2);
    Solver solver = new Solver(SolverOptions.defaults().withTolerance(1e-4));
    Random random = new Random(20);
    double worst =
        IntStream.range(0, 200)
            .mapToDouble(i -> 1.8e6 + 28.2e6 * random.nextDouble())
            .boxed()
            .toList()
            .parallelStream()
            .mapToDouble(
                f -> {
                  Complex direct = solver.solve(wire(), f).impedance();
                  return response.impedance("main", f).subtract(direct).abs() / direct.abs();
                })
            .max()
            .orElseThrow();
    assertThat(worst).isLessThan(1e-3);
    assertThat(response.relativeError()).isLessThan(1e-3);
    assertThat(response.solvedFrequencies()).hasSizeLessThanOrEqualTo(80);
  }

  @Test
  void severalFeedsShareTheirPoles() {
    Antenna pair = wire().toBuilder().feed("second", "radiator", Position.fraction(0.6)).build();
    FrequencyRange range = new FrequencyRange(5e6, 9e6);
    FrequencyResponse response = FrequencyResponse.of(pair, range, 1e-3, 2);
    Solver solver = new Solver(SolverOptions.defaults().withTolerance(1e-4));
    for (double f : new double[] {5.3e6, 6.61e6, 7.07e6, 8.8e6}) {
      Complex direct = solver.solve(pair, f).impedance("second");
      assertThat(response.impedance("second", f).subtract(direct).abs())
          .isLessThan(3e-3 * direct.abs());
      Complex[][] matrix = response.portMatrix(f);
      assertThat(matrix[0][1]).isEqualTo(matrix[1][0]);
    }
  }

  @Test
  void refusesWhatLiesOutside() {
    FrequencyResponse response = stubResponse(1);
    assertThatThrownBy(() -> response.impedance("main", 31e6)).hasMessageContaining("3.0E7");
    assertThatThrownBy(() -> response.impedance("other", 7e6)).hasMessageContaining("'other'");
    assertThatThrownBy(() -> FrequencyResponse.of(wire(), SHORT_WAVE, 0.5, 1))
        .hasMessageContaining("0.05");
  }
}
