package org.spanwire.circuit;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.assertj.core.api.Assertions.within;
import static org.spanwire.circuit.Networks.assertClose;
import static org.spanwire.circuit.Networks.complex;

import java.util.SplittableRandom;
import org.apache.commons.math3.complex.Complex;
import org.junit.jupiter.api.Test;

class NPortTest {

  private static final Complex ZERO = Complex.ZERO;
  private static final Complex ONE = Complex.ONE;

  /**
   * Pozar, Microwave Engineering, 4th edition, table 4.1 and problem-class closed forms: a series
   * impedance Z between equal references has S11 = Z/(Z + 2 Z0), S21 = 2 Z0/(Z + 2 Z0).
   */
  @Test
  void seriesImpedance() {
    Complex z = complex(30, 70);
    NPort series = NPort.ofChain(new Complex[][] {{ONE, z}, {ZERO, ONE}}, complex(50, 0));
    assertClose(series.s(1, 1), z.divide(z.add(100)), 1e-15);
    assertClose(series.s(2, 1), complex(100, 0).divide(z.add(100)), 1e-15);
    assertThatThrownBy(series::impedance).isInstanceOf(CircuitException.class);
    assertClose(series.admittance()[0][1], z.reciprocal().negate(), 1e-16);
  }

  /** Pozar (4.25), example 4.3: the 3 dB pad of 8.56 and 141.8 ohm is matched, S21 = 0.707. */
  @Test
  void threeDecibelPad() {
    Complex shunt = complex(141.8, 0);
    Complex arm = complex(8.56 + 141.8, 0);
    NPort pad = NPort.ofImpedance(new Complex[][] {{arm, shunt}, {shunt, arm}}, complex(50, 0));
    assertThat(pad.s(1, 1).abs()).isLessThan(1e-3);
    assertThat(pad.s(2, 1).getReal()).isCloseTo(0.707, within(1e-3));
  }

  @Test
  void everyConversionComesBack() {
    SplittableRandom random = new SplittableRandom(2);
    for (int trial = 0; trial < 200; trial++) {
      int ports = 1 + trial % 4;
      NPort network = Networks.randomPassive(random, ports, 0.8);
      Complex[] z = Networks.randomReferences(random, ports);
      NPort other = network.renormalized(z);
      assertClose(other.renormalized(50).scattering(), network.scattering(), 1e-11);
      assertClose(
          NPort.ofImpedance(network.impedance(), z).scattering(), other.scattering(), 1e-10);
      assertClose(
          NPort.ofAdmittance(network.admittance(), z).scattering(), other.scattering(), 1e-10);
      if (ports == 2) {
        assertClose(NPort.ofChain(network.chain(), z).scattering(), other.scattering(), 1e-10);
        assertClose(
            HybridParameters.network(HybridParameters.of(network), z).scattering(),
            other.scattering(),
            1e-10);
        assertClose(
            HybridParameters.inverseNetwork(HybridParameters.inverseOf(network), z).scattering(),
            other.scattering(),
            1e-10);
      }
    }
  }

  /** Power waves keep power (Kurokawa 1965): the extreme gain depends on no reference. */
  @Test
  void passivityAndReciprocityOutliveRenormalization() {
    SplittableRandom random = new SplittableRandom(3);
    for (int trial = 0; trial < 100; trial++) {
      int ports = 2 + trial % 3;
      Complex[][] z = Networks.randomMatrix(random, ports);
      for (int i = 0; i < ports; i++) {
        for (int j = 0; j < ports; j++) {
          // Reciprocal and without resistance.
          z[i][j] = complex(0, 100 * z[Math.max(i, j)][Math.min(i, j)].getReal());
        }
      }
      NPort lossless = NPort.ofImpedance(z, Networks.randomReferences(random, ports));
      assertThat(lossless.largestGain()).isCloseTo(1, within(1e-10));
      assertThat(lossless.reciprocityError()).isLessThan(1e-10);
      NPort lossy = Networks.randomPassive(random, ports, 0.5);
      assertThat(lossy.isPassive(0)).isTrue();
      assertThat(lossy.reciprocityError()).isGreaterThan(1e-3);
      assertThat(lossy.renormalized(Networks.randomReferences(random, ports)).isPassive(1e-12))
          .isTrue();
    }
    assertThat(NPort.ofScattering(new Complex[][] {{complex(1.001, 0)}}, 50).isPassive(1e-6))
        .isFalse();
  }

  /** Known gain: the largest singular value of [[0, g], [0, 0]] is g. */
  @Test
  void gainOfAnIdealAmplifier() {
    NPort amplifier = NPort.ofScattering(new Complex[][] {{ZERO, ZERO}, {complex(0, 3), ZERO}}, 50);
    assertThat(amplifier.largestGain()).isCloseTo(9, within(1e-12));
  }

  /** Chain matrices multiply (Pozar (4.70)); joining waves must say the same. */
  @Test
  void cascadeMultipliesChainMatrices() {
    SplittableRandom random = new SplittableRandom(4);
    for (int trial = 0; trial < 100; trial++) {
      NPort a = Networks.randomPassive(random, 2, 0.9);
      NPort b = Networks.randomPassive(random, 2, 0.9);
      Complex[][] product =
          ComplexMatrix.of(a.chain()).times(ComplexMatrix.of(b.chain())).toArray();
      NPort whole =
          a.renormalized(Networks.randomReferences(random, 2))
              .cascade(b.renormalized(Networks.randomReferences(random, 2)));
      assertClose(
          whole.renormalized(50).scattering(),
          NPort.ofChain(product, complex(50, 0)).scattering(),
          1e-9);
    }
  }

  /** Closing a port of an n-port given by Z: Z11 − Z12 Z21/(Z22 + ZL), any circuit text. */
  @Test
  void terminationObeysTheImpedanceMatrix() {
    SplittableRandom random = new SplittableRandom(5);
    for (int trial = 0; trial < 100; trial++) {
      NPort network = Networks.randomPassive(random, 2, 0.9);
      Complex[][] z = network.impedance();
      Complex load = complex(random.nextDouble(0, 500), random.nextDouble(-500, 500));
      Complex expected = z[0][0].subtract(z[0][1].multiply(z[1][0]).divide(z[1][1].add(load)));
      NPort skewed = network.renormalized(Networks.randomReferences(random, 2));
      double scale = 1e-10 * (1 + expected.abs() * expected.abs());
      assertClose(skewed.terminated(2, load).inputImpedance(), expected, scale);
      assertClose(skewed.terminated(2, Complex.INF).inputImpedance(), z[0][0], 1e-8);
      NPort joined = skewed.join(2, NPort.load(load, 75), 1);
      assertClose(joined.inputImpedance(), expected, scale);
    }
  }

  /** A tee of three equal lines joined to loads behaves as the parallel connection of those. */
  @Test
  void portsOfAJunctionJoinToLoads() {
    Complex third = complex(-1.0 / 3, 0);
    Complex rest = complex(2.0 / 3, 0);
    NPort tee =
        NPort.ofScattering(
            new Complex[][] {{third, rest, rest}, {rest, third, rest}, {rest, rest, third}}, 50);
    Complex z =
        tee.join(3, NPort.load(complex(0, 40), 50), 1)
            .terminated(2, complex(100, 0))
            .inputImpedance();
    assertClose(z, complex(100, 0).multiply(complex(0, 40)).divide(complex(100, 40)), 1e-12);
    Complex loop = tee.joined(2, 3).inputImpedance();
    assertThat(loop.isInfinite() || loop.abs() > 1e14).as("a loop of wire draws nothing").isTrue();
  }

  @Test
  void openAndShortAreExact() {
    NPort through = NPort.ofScattering(new Complex[][] {{ZERO, ONE}, {ONE, ZERO}}, 50);
    assertThat(through.terminated(2, Complex.INF).inputImpedance()).isEqualTo(Complex.INF);
    assertThat(through.terminated(2, ZERO).inputImpedance()).isEqualTo(ZERO);
    // A break in series: what hangs behind it cannot be seen, nor make the answer undefined.
    NPort broken = NPort.ofScattering(new Complex[][] {{ONE, ZERO}, {ZERO, ONE}}, 50);
    assertThat(broken.terminated(2, Complex.INF).inputImpedance()).isEqualTo(Complex.INF);
    assertThat(broken.cascade(broken).s(1, 1)).isEqualTo(ONE);
  }

  /**
   * An amplifier whose output reflects all, left open, rings up without end: there is no answer.
   */
  @Test
  void refusesALoopWithoutAnswer() {
    NPort amplifier = NPort.ofScattering(new Complex[][] {{ZERO, ONE}, {ONE, ONE}}, 50);
    assertThat(amplifier.isPassive(1e-6)).isFalse();
    assertThatThrownBy(() -> amplifier.terminated(2, Complex.INF))
        .isInstanceOf(CircuitException.class)
        .hasMessageContaining("without a unique answer");
  }

  @Test
  void deembeddingFindsTheUnknown() {
    SplittableRandom random = new SplittableRandom(6);
    for (int trial = 0; trial < 50; trial++) {
      NPort left = Networks.randomPassive(random, 2, 0.9);
      NPort unknown = Networks.randomPassive(random, 2, 0.9);
      NPort right = Networks.randomPassive(random, 2, 0.9);
      NPort found = left.cascade(unknown).cascade(right).deembedded(left, right);
      assertClose(found.renormalized(50).scattering(), unknown.scattering(), 1e-9);
    }
  }

  /**
   * Bockelman and Eisenstadt 1995: the ideal 180 degree splitter drives the differential mode
   * alone, and two uncoupled equal lines carry both modes alike.
   */
  @Test
  void mixedMode() {
    double h = Math.sqrt(0.5);
    NPort splitter =
        NPort.ofScattering(
            new Complex[][] {
              {ZERO, complex(h, 0), complex(-h, 0)},
              {complex(h, 0), complex(0.5, 0), complex(0.5, 0)},
              {complex(-h, 0), complex(0.5, 0), complex(0.5, 0)}
            },
            50);
    NPort modes = splitter.mixedMode(2, 3);
    assertClose(modes.s(2, 1), ONE, 1e-15);
    assertClose(modes.s(3, 1), ZERO, 1e-15);
    assertThat(modes.reference(2)).isEqualTo(complex(100, 0));
    assertThat(modes.reference(3)).isEqualTo(complex(25, 0));

    SplittableRandom random = new SplittableRandom(7);
    NPort any = Networks.randomPassive(random, 3, 0.7);
    assertThat(any.mixedMode(1, 3).largestGain()).isCloseTo(0.7, within(1e-12));
    // A floating load between two terminals sees the differential mode with the common one open.
    Complex[][] z = any.impedance();
    Complex between = z[0][0].subtract(z[0][2]).subtract(z[2][0]).add(z[2][2]);
    Complex seen =
        any.mixedMode(1, 3).terminated(3, Complex.INF).terminated(2, Complex.INF).inputImpedance();
    assertClose(seen, between, 1e-9);
    assertThatThrownBy(() -> any.renormalized(complex(50, 0), ONE, ONE).mixedMode(1, 2))
        .isInstanceOf(IllegalArgumentException.class);
  }

  @Test
  void refusesNonsense() {
    assertThatThrownBy(() -> NPort.ofScattering(new Complex[][] {{Complex.NaN}}, 50))
        .isInstanceOf(IllegalArgumentException.class);
    assertThatThrownBy(() -> NPort.ofScattering(new Complex[][] {{ONE, ONE}}, 50))
        .isInstanceOf(IllegalArgumentException.class);
    assertThatThrownBy(() -> NPort.ofScattering(new Complex[][] {{ONE}}, complex(0, 50)))
        .hasMessageContaining("positive real part");
    NPort one = NPort.load(ONE, 50);
    assertThatThrownBy(() -> one.s(2, 1)).hasMessageContaining("port 2");
    assertThatThrownBy(one::chain).isInstanceOf(IllegalArgumentException.class);
    assertThatThrownBy(() -> one.terminated(1, ONE)).isInstanceOf(IllegalArgumentException.class);
  }
}
