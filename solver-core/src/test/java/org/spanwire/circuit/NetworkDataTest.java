package org.spanwire.circuit;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.spanwire.circuit.Networks.complex;

import java.util.Arrays;
import java.util.SplittableRandom;
import java.util.TreeMap;
import org.apache.commons.math3.complex.Complex;
import org.junit.jupiter.api.Test;

class NetworkDataTest {

  /** A series resonant circuit in series between two 50 ohm ports, Q about 3. */
  private static NPort resonator(double f) {
    double x = 150 * (f / 10e6 - 10e6 / f);
    return NPort.ofChain(
        new Complex[][] {{Complex.ONE, complex(20, x)}, {Complex.ZERO, Complex.ONE}},
        complex(50, 0));
  }

  private static NetworkData sampled(int count) {
    TreeMap<Double, NPort> samples = new TreeMap<>();
    for (int i = 0; i < count; i++) {
      double f = 2e6 + 28e6 * i / (count - 1);
      samples.put(f, resonator(f));
    }
    return NetworkData.of(samples);
  }

  /** The estimate bounds the true error nearly everywhere and is not idle. */
  @Test
  void statesItsError() {
    NetworkData data = sampled(57);
    SplittableRandom random = new SplittableRandom(1);
    int covered = 0;
    double worst = 0;
    for (int i = 0; i < 1000; i++) {
      double f = random.nextDouble(2e6, 30e6);
      double error = data.at(f).matrix().minus(resonator(f).matrix()).largestMagnitude();
      worst = Math.max(worst, error);
      covered += error <= data.errorAt(f) ? 1 : 0;
    }
    assertThat(covered).isGreaterThan(990);
    double largestEstimate =
        Arrays.stream(data.frequencies()).map(f -> data.errorAt(f + 1)).limit(56).max().orElse(0);
    assertThat(largestEstimate).isLessThan(30 * worst);
    assertThat(sampled(113).errorAt(10.1e6)).isLessThan(data.errorAt(10.1e6) / 8);
  }

  @Test
  void samplesComeBackUntouched() {
    NetworkData data = sampled(9);
    for (double f : data.frequencies()) {
      assertThat(data.at(f).scattering()).isDeepEqualTo(resonator(f).scattering());
      assertThat(data.errorAt(f)).isZero();
    }
  }

  @Test
  void refusesToExtrapolate() {
    NetworkData data = sampled(9);
    for (double f : new double[] {1.999e6, 30.001e6, Double.NaN}) {
      assertThatThrownBy(() -> data.at(f))
          .isInstanceOf(CircuitException.class)
          .hasMessageContaining("extend the data");
      assertThatThrownBy(() -> data.errorAt(f)).isInstanceOf(CircuitException.class);
    }
  }

  @Test
  void fewSamplesSayHowLittleTheyKnow() {
    NetworkData two = sampled(2);
    double difference = resonator(2e6).matrix().minus(resonator(30e6).matrix()).largestMagnitude();
    assertThat(two.errorAt(10e6)).isEqualTo(difference);
    TreeMap<Double, NPort> one = new TreeMap<>();
    one.put(7e6, resonator(7e6));
    assertThat(NetworkData.of(one).at(7e6).s(1, 1)).isEqualTo(resonator(7e6).s(1, 1));
  }
}
