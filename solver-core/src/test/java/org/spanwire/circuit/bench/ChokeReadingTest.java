package org.spanwire.circuit.bench;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.assertj.core.api.Assertions.within;

import java.util.List;
import java.util.Optional;
import java.util.TreeMap;
import org.apache.commons.math3.complex.Complex;
import org.junit.jupiter.api.Test;
import org.spanwire.circuit.Ladder;
import org.spanwire.circuit.NPort;
import org.spanwire.circuit.Network;
import org.spanwire.circuit.NetworkData;
import org.spanwire.geometry.LumpedImpedance;

class ChokeReadingTest {

  private static final Complex O = Complex.ZERO;
  private static final double F = 30e6;
  private static final double W = 2 * Math.PI * F;

  /** Z = 100 (1/S21 − 1): 5 kΩ reads −34 dB (closed form). */
  @Test
  void seriesThrough() {
    Complex s21 = new Complex(100.0 / 5100, 0);
    assertThat(20 * Math.log10(s21.abs())).isCloseTo(-34.15, within(0.01));
    ChokeReading reading = ChokeReading.ofSeriesThrough(s21, 50, 1e-4);
    assertThat(reading.impedance().getReal()).isCloseTo(5000, within(1e-9));
    // The stated spread against an actual error of the reading.
    Complex off = ChokeReading.ofSeriesThrough(s21.add(1e-4), 50, 0).impedance();
    assertThat(off.subtract(reading.impedance()).abs())
        .isCloseTo(reading.uncertaintyOhm(), within(0.01 * reading.uncertaintyOhm()));
  }

  /** Reflection: an error of 0.005 in Γ is 25 % of 5 kΩ (closed form, first order). */
  @Test
  void reflection() {
    Complex gamma = new Complex(4950.0 / 5050, 0);
    ChokeReading reading = ChokeReading.ofReflection(gamma, 50, 0.005);
    assertThat(reading.impedance().getReal()).isCloseTo(5000, within(1e-8));
    assertThat(reading.uncertaintyOhm() / 5000).isCloseTo(0.255, within(0.001));
  }

  /** 1 pF at 30 MHz is 5.3 kΩ; taken away it gives the choke back, and its error counts. */
  @Test
  void fixtureCapacitance() {
    Complex choke = new Complex(4000, 2500);
    Complex seen = choke.reciprocal().add(new Complex(0, W * 1e-12)).reciprocal();
    assertThat(1 / (W * 1e-12)).isCloseTo(5305, within(1.0));
    ChokeReading raw = new ChokeReading(seen, 10);
    ChokeReading found = raw.withoutCapacitance(1e-12, 0, F);
    assertThat(found.impedance().subtract(choke).abs()).isLessThan(1e-8);
    double actual = raw.withoutCapacitance(1.01e-12, 0, F).impedance().subtract(choke).abs();
    double stated = raw.withoutCapacitance(1e-12, 0.01e-12, F).uncertaintyOhm();
    assertThat(stated - found.uncertaintyOhm()).isCloseTo(actual, within(0.02 * actual));
  }

  /** Shunt capacitance at either end and a bridging one leave no trace in the Y21 form. */
  @Test
  void twoPortInAFixture() {
    Complex choke = new Complex(3000, -1800);
    LumpedImpedance left = f -> new Complex(0, -1 / (W * 3e-12));
    LumpedImpedance right = f -> new Complex(0, -1 / (W * 5e-12));
    Complex bridge = new Complex(0, W * 0.4e-12);
    NPort empty = Ladder.pi(left, f -> bridge.reciprocal(), right).at(F);
    NPort full = Ladder.pi(left, f -> choke.reciprocal().add(bridge).reciprocal(), right).at(F);
    ChokeReading reading = ChokeReading.ofSeriesThrough(full, empty, 1e-4);
    assertThat(reading.impedance().subtract(choke).abs()).isLessThan(1e-7);
    assertThat(reading.uncertaintyOhm()).isBetween(1.0, 20.0);
    assertThat(ChokeReading.ofSeriesThrough(empty, empty, 1e-4).impedance().isInfinite()).isTrue();
  }

  private static NetworkData data(Network network) {
    TreeMap<Double, NPort> samples = new TreeMap<>();
    for (double f : new double[] {F / 2, F}) {
      samples.put(f, network.at(f));
    }
    return NetworkData.of(samples);
  }

  /** A choke of any kind of data, its port or ports referred to anything, is the choke. */
  @Test
  void everyKindOfData() {
    Complex choke = new Complex(3000, -1800);
    Network grounded = f -> NPort.load(choke, 75);
    Network series = f -> Ladder.of(Ladder.series(g -> choke)).at(f).renormalized(75);
    LumpedImpedance stray = f -> new Complex(0, -1 / (2 * Math.PI * f * 3e-12));
    Network empty = Ladder.pi(stray, f -> new Complex(1e7, 0), stray);
    Network full =
        Ladder.pi(stray, f -> choke.reciprocal().add(new Complex(1e-7, 0)).reciprocal(), stray);
    for (List<BenchReadings.ChokeAt> found :
        List.of(
            ChokeReading.ofData(data(grounded), Optional.empty(), 1e-4),
            ChokeReading.ofData(data(series), Optional.empty(), 1e-4),
            ChokeReading.ofData(data(full), Optional.of(data(empty)), 1e-4))) {
      assertThat(found).extracting(BenchReadings.ChokeAt::frequencyHz).containsExactly(F / 2, F);
      assertThat(found)
          .allMatch(at -> at.reading().impedance().subtract(choke).abs() < 1e-5)
          .allMatch(at -> at.reading().uncertaintyOhm() > 1);
    }
    assertThatThrownBy(() -> ChokeReading.ofData(data(grounded), Optional.of(data(empty)), 1e-4))
        .hasMessage(
            "has 1 ports and a fixture; expected 1, or 2 with or without an empty fixture of 2");
    Network three = f -> NPort.ofScattering(new Complex[][] {{O, O, O}, {O, O, O}, {O, O, O}}, 50);
    assertThatThrownBy(() -> ChokeReading.ofData(data(three), Optional.empty(), 1e-4))
        .hasMessageStartingWith("has 3 ports; expected 1");
  }
}
