package org.spanwire.study;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.assertj.core.api.Assertions.entry;
import static org.assertj.core.api.Assertions.within;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.Random;
import org.apache.commons.math3.complex.Complex;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;
import org.spanwire.Antenna;
import org.spanwire.Solver;
import org.spanwire.circuit.Mismatch;
import org.spanwire.design.Design;
import org.spanwire.design.DesignReader;
import org.spanwire.result.Direction;
import org.spanwire.result.Warning;

/** Responses over a range against solutions made at frequencies that the response has not seen. */
class InstallationResponseTest {

  private static final FrequencyRange RANGE = new FrequencyRange(3e6, 16e6);
  private static final double ACCURACY = 1e-3;
  private static final Solver JUDGE = new Solver().withTolerance(2e-5);
  private static final List<Direction> DIRECTIONS =
      List.of(new Direction(0, 0), new Direction(30, 40), new Direction(90, 0));

  /** An off-centre-fed wire; what stands in the chain, and whether the line is part of it. */
  private static Installation installation(String chain, String route) {
    Design design =
        DesignReader.read(
            """
            format: spanwire-design/1
            title: Hut wire
            conductors: {strand: {material: copper, diameter: 2 mm}}
            wires: {radiator: {conductor: strand, path: [[0, 0, 9], [20.2, 0, 9]]}}
            feeds: {main: {wire: radiator, at: 36 %, gap: 30 mm, capacitance: 5 pF}}
            ground: {soil: medium-dry}
            feed-chain:
            """
                + chain.indent(2)
                + route,
            "wire.yaml");
    return Installation.of(design);
  }

  private static final String LINE =
      """
      - line:
          impedance: 50 ohm
          length: 9 m
          velocity-factor: 0.66
          loss: {frequency: 10 MHz, per: 100 m, value: 4.5 dB}
      """;

  private static final String TRANSFORMER = "- transformer: {ratio: 4}\n";

  /** Matches sharply near 7 MHz, where an error of the antenna counts many times. */
  private static final String STUB =
      """
      - stub: {impedance: 450 ohm, length: 8 m, velocity-factor: 0.9, end: shorted, connection: shunt, \
      loss: {frequency: 10 MHz, per: 100 m, value: 0.2 dB}}
      """;

  private static final String CHOKE = "- choke: {impedance: {r: 600 ohm, x: 300 ohm}}\n";
  private static final String ROUTE =
      "feed-line: {conductor: strand, path: [[7.272, 0, 3], [7.272, 4, 3]]}\n";

  private static InstallationResponse response(Installation installation, int threads) {
    return InstallationResponse.of(
        installation, new Solver(), RANGE, ACCURACY, DIRECTIONS, threads);
  }

  private static void hold(Installation installation, InstallationResponse response) {
    Random random = new Random(11);
    double wrong = 0;
    double wrongGain = 0;
    for (int i = 0; i < 40; i++) {
      double f = RANGE.lowHz() + (RANGE.highHz() - RANGE.lowHz()) * random.nextDouble();
      Operation right = installation.solve(JUDGE, f);
      for (PlaneMismatch seen : response.planes(f)) {
        Complex known = right.feeds().get(0).at(seen.plane()).reflection();
        wrong = Math.max(wrong, known.subtract(seen.mismatch().reflection()).abs());
      }
      double square = 0;
      double apart = 0;
      for (Direction direction : DIRECTIONS) {
        double gain = ratio(right.solution().gainDbi(direction));
        square += gain * gain;
        apart = Math.max(apart, Math.abs(ratio(response.gainDbi(direction, f)) - gain));
      }
      wrongGain = Math.max(wrongGain, apart / Math.sqrt(square));
    }
    assertThat(response.reflectionError()).isBetween(wrong, ACCURACY);
    assertThat(response.gainError()).isBetween(wrongGain, ACCURACY);
    assertThat(response.solvedFrequencies()).hasSizeLessThan(60);
  }

  private static double ratio(double decibels) {
    return Math.pow(10, decibels / 10);
  }

  @Test
  void theStatedErrorHoldsBehindATransformerAndALine() {
    Installation installation = installation(TRANSFORMER + LINE, "");
    InstallationResponse response = response(installation, 2);
    hold(installation, response);
    assertThat(response.planes(7e6))
        .extracting(PlaneMismatch::plane)
        .containsExactlyInAnyOrder(Plane.values());
  }

  @Test
  void theStatedErrorHoldsBehindAStub() {
    Installation installation = installation(STUB + LINE, "");
    hold(installation, response(installation, 2));
  }

  @Test
  void theStatedErrorHoldsWithTheLineAsAConductor() {
    Installation installation = installation(TRANSFORMER + CHOKE + LINE, ROUTE);
    hold(installation, response(installation, 2));
  }

  @ParameterizedTest
  @ValueSource(strings = {"", ROUTE})
  void bandwidthsMatchesAndResonancesAreRoots(String route) {
    Installation installation = installation(TRANSFORMER + CHOKE + LINE, route);
    InstallationResponse response = response(installation, 2);
    List<FrequencyRange> ranges = response.within(Plane.TRANSMITTER, 3);
    List<SwrAt> matches = response.bestMatches(Plane.TRANSMITTER);
    assertThat(ranges).isNotEmpty();
    for (FrequencyRange range : ranges) {
      for (double edge : new double[] {range.lowHz(), range.highHz()}) {
        if (!RANGE.isEdge(edge)) {
          assertThat(response.at(Plane.TRANSMITTER, edge).swr()).isCloseTo(3, within(1e-6));
        }
      }
    }
    for (SwrAt match : matches) {
      for (double f : new double[] {match.frequencyHz() - 1e3, match.frequencyHz() + 1e3}) {
        assertThat(response.at(Plane.TRANSMITTER, f).swr()).isGreaterThan(match.swr());
      }
    }
    List<FrequencyResponse.Resonance> resonances = response.resonances(Plane.FEEDPOINT);
    assertThat(resonances).hasSizeGreaterThan(2);
    for (FrequencyResponse.Resonance resonance : resonances) {
      Complex z = response.at(Plane.FEEDPOINT, resonance.frequencyHz()).impedance();
      assertThat(z.getReal()).isEqualTo(resonance.resistanceOhm());
      assertThat(Math.abs(z.getImaginary())).isLessThan(1e-5 * z.getReal());
      double above = resonance.frequencyHz() + 1e3;
      assertThat(response.at(Plane.FEEDPOINT, above).impedance().getImaginary() > 0)
          .isEqualTo(resonance.series());
    }
  }

  /** Over soil nothing is radiated along the ground; the fit of zeros is zero. */
  @Test
  void theGainAtTheHorizonIsNone() {
    Direction horizon = new Direction(0, 0);
    InstallationResponse response =
        InstallationResponse.of(
            installation(LINE, ""),
            new Solver(),
            new FrequencyRange(6e6, 8e6),
            1e-2,
            List.of(horizon),
            1);
    assertThat(response.gainDbi(horizon, 7.1e6)).isEqualTo(Double.NEGATIVE_INFINITY);
  }

  /** The same antenna without a chain: the two kinds of response agree within their errors. */
  @Test
  void aResponseOfTheAntennaAloneIsTheSame() {
    Installation installation = installation(LINE, "");
    Antenna antenna = installation.antenna();
    FrequencyResponse alone =
        FrequencyResponse.of(new Solver(), antenna, RANGE, ACCURACY, DIRECTIONS, 2);
    InstallationResponse response = response(installation, 2);
    assertThat(alone.gainError()).isPositive().isLessThan(ACCURACY);
    Direction up = DIRECTIONS.get(2);
    for (double f = 3.01e6; f < 16e6; f += 0.5e6) {
      Mismatch seen = response.at(Plane.FEEDPOINT, f);
      Complex reflection =
          Mismatch.of(alone.impedance("main", f), seen.referenceOhm()).reflection();
      assertThat(reflection.subtract(seen.reflection()).abs()).isLessThan(ACCURACY);
      assertThat(ratio(alone.gainDbi(up, f)))
          .isCloseTo(ratio(response.gainDbi(up, f)), within(10 * ACCURACY));
    }
    assertThatThrownBy(() -> alone.gainDbi(up, 2e6)).hasMessageContaining("must lie between");
    assertThatThrownBy(() -> alone.gainDbi(new Direction(5, 0), 7e6))
        .hasMessageContaining("none of the directions asked for");
  }

  @Test
  void doesNotDependOnTheNumberOfThreads() {
    Installation installation = installation(TRANSFORMER + LINE, "");
    InstallationResponse one = response(installation, 1);
    InstallationResponse three = response(installation, 3);
    assertThat(three.solvedFrequencies()).isEqualTo(one.solvedFrequencies());
    assertThat(three.planes(7.123e6)).isEqualTo(one.planes(7.123e6));
    assertThat(three.gainDbi(DIRECTIONS.get(1), 7.123e6))
        .isEqualTo(one.gainDbi(DIRECTIONS.get(1), 7.123e6));
  }

  @Test
  void refusesWhatItDoesNotKnow() {
    Installation installation = installation(LINE, "");
    InstallationResponse response =
        InstallationResponse.of(
            installation, new Solver(), new FrequencyRange(6e6, 8e6), 1e-2, List.of(), 1);
    assertThat(response.gainError()).isZero();
    assertThatThrownBy(() -> response.planes(8.1e6))
        .isInstanceOf(IllegalArgumentException.class)
        .hasMessage("frequency 8100000.0 Hz must lie between 6000000.0 and 8000000.0 Hz");
    assertThatThrownBy(() -> response.at(Plane.TRANSFORMER_INPUT, 7e6))
        .hasMessage("the chain has no plane transformer-input");
    assertThatThrownBy(() -> response.gainDbi(DIRECTIONS.get(0), 7e6))
        .hasMessageContaining("none of the directions asked for");
    assertThatThrownBy(
            () ->
                InstallationResponse.of(
                    installation, new Solver(), new FrequencyRange(7e6, 7e6), 1e-3, List.of(), 1))
        .hasMessageContaining("must end at a higher frequency");
    assertThatThrownBy(
            () -> InstallationResponse.of(installation, new Solver(), RANGE, 0.1, List.of(), 1))
        .hasMessageContaining("accuracy 0.1 must lie between");
  }

  /** Soil that is wet and dry by turns in frequency is no rational function. */
  @Test
  void saysSoWhenItDoesNotSettle(@TempDir Path directory) throws IOException {
    StringBuilder table =
        new StringBuilder("frequency_hz,relative_permittivity,conductivity_s_per_m\n");
    for (int kilohertz = 6900; kilohertz <= 7100; kilohertz++) {
      table.append(kilohertz).append(kilohertz % 2 == 0 ? "e3,3,0.0001\n" : "e3,80,1\n");
    }
    Path soil = Files.writeString(directory.resolve("soil.csv"), table);
    Design design =
        DesignReader.read(
            """
            format: spanwire-design/1
            title: Hut wire
            conductors: {strand: {material: copper, diameter: 2 mm}}
            wires: {radiator: {conductor: strand, path: [[0, 0, 3], [20.2, 0, 3]]}}
            feeds: {main: {wire: radiator, at: 50 %, gap: 30 mm}}
            ground: {table: TABLE}
            """
                .replace("TABLE", soil.toString()),
            "wire.yaml");
    InstallationResponse response =
        InstallationResponse.of(
            Installation.of(design),
            new Solver(),
            new FrequencyRange(6.9e6, 7.1e6),
            1e-2,
            List.of(),
            2);
    assertThat(response.reflectionError()).isGreaterThan(1e-2);
    assertThat(response.warnings())
        .extracting(Warning::name)
        .contains(InstallationResponse.UNSETTLED);
  }

  @Test
  void tellsWhatTheSolutionsTold() {
    Installation installation = installation(TRANSFORMER + LINE, "");
    InstallationResponse response = response(installation, 2);
    assertThat(response.gaps()).containsExactly(entry("main", 0.03));
    assertThat(response.impedanceError()).isPositive().isLessThan(1e-4);
    assertThat(response.warnings()).isEmpty();
    assertThat(response(installation(TRANSFORMER + CHOKE + LINE, ""), 2).warnings())
        .extracting(Warning::name)
        .containsExactly(Installation.NO_ROUTE);
  }
}
