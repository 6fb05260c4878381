package org.spanwire.circuit;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.assertj.core.api.Assertions.within;
import static org.spanwire.circuit.Networks.assertClose;
import static org.spanwire.circuit.Networks.complex;

import java.util.SplittableRandom;
import java.util.TreeMap;
import org.apache.commons.math3.complex.Complex;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.spanwire.unit.PhysicalConstants;

class TransmissionLineTest {

  private static final double F = 10e6;
  private static final double WAVELENGTH = PhysicalConstants.wavelength(F);

  private static TransmissionLine lossless(double wavelengths) {
    return new TransmissionLine(50, wavelengths * WAVELENGTH, 1, LineAttenuation.NONE);
  }

  private static Complex input(TransmissionLine line, Complex load) {
    return line.at(F).terminated(2, load).inputImpedance();
  }

  /** Line equation (Pozar (2.44)): 1/8, 1/4 and 0.1 wavelength of a 50 ohm line. */
  @ParameterizedTest
  @CsvSource({
    "0.125, 100, 50, 50, -50, 1e-9",
    "0.25, 200, 0, 12.5, 0, 1e-9",
    "0.1, 300, 0, 22.914403, -63.562601, 1e-6",
    "0.5, 37, -20, 37, -20, 1e-9",
  })
  void lineEquation(double length, double r, double x, double re, double im, double tolerance) {
    assertClose(input(lossless(length), complex(r, x)), complex(re, im), tolerance);
  }

  /** Closed forms: (η/π) acosh(D/d), (η/2π) acosh(h/a), (η/2π√ε_r) ln(D/d), any line text. */
  @Test
  void characteristicImpedances() {
    double[] ratios = {5, 10, 20, 75, 100};
    double[] ohms = {274.9015, 358.9383, 442.2843, 600.8549, 635.3552};
    for (int i = 0; i < ratios.length; i++) {
      assertThat(TransmissionLine.twoWireImpedance(ratios[i], 1)).isCloseTo(ohms[i], within(1e-4));
    }
    assertThat(TransmissionLine.twoWireImpedance(6.142770, 1)).isCloseTo(300, within(1e-4));
    assertThat(TransmissionLine.twoWireImpedance(21.327535, 1)).isCloseTo(450, within(1e-4));
    assertThat(TransmissionLine.twoWireImpedance(74.467242, 1)).isCloseTo(600, within(1e-4));
    assertThat(TransmissionLine.wireOverGroundImpedance(100, 1)).isCloseTo(317.6776, within(1e-4));
    assertThat(TransmissionLine.coaxialImpedance(3.5, 1, 2.25)).isCloseTo(50.07586, within(1e-5));
    assertThatThrownBy(() -> TransmissionLine.twoWireImpedance(1, 1))
        .hasMessageContaining("above 1");
  }

  /** ARRL Antenna Book / Jasik: 1 dB of matched loss at SWR 2, 3, 5, 10. */
  @ParameterizedTest
  @CsvSource({"2, 1.195858", "3, 1.503853", "5, 2.123483", "10, 3.423703", "1, 1"})
  void totalLoss(double swr, double decibels) {
    assertThat(TransmissionLine.totalLossDb(1, swr)).isCloseTo(decibels, within(1e-6));
    // Equal parts of conductor and dielectric loss leave Z0 real, as the formula supposes.
    LineAttenuation equal = new LineAttenuation(0.5 / Math.sqrt(F), 0.5 / F);
    TransmissionLine line = new TransmissionLine(50, 1, 0.66, equal);
    FeedChain chain =
        new FeedChain(
            new FeedChain.Source(100, 50), java.util.List.of(FeedChain.Stage.of("line", line, 50)));
    for (double r : new double[] {50 * swr, 50 / swr}) {
      ChainState state = chain.at(F, complex(r, 0));
      assertThat(10 * Math.log10(state.acceptedPower() / state.deliveredPower()))
          .isCloseTo(decibels, within(1e-6));
    }
  }

  /**
   * The stated attenuation is the matched loss: with the line ended in its own Z0 the power wave
   * decays by it, |V2/V1| = e^−αl, whatever the parts.
   */
  @Test
  void decaysByTheStatedAttenuation() {
    for (double share : new double[] {0, 0.3, 1}) {
      LineAttenuation attenuation =
          new LineAttenuation(share * 0.08 / Math.sqrt(F), (1 - share) * 0.08 / F);
      TransmissionLine line = new TransmissionLine(50, 30, 0.66, attenuation);
      Complex z0 = line.characteristicImpedance(F);
      assertClose(input(line, z0), z0, 1e-10);
      Complex[][] abcd = line.at(F).chain();
      Complex ratio = abcd[0][0].add(abcd[0][1].divide(z0));
      assertThat(20 * Math.log10(ratio.abs())).isCloseTo(2.4, within(1e-10));
      assertThat(line.matchedLossDb(F)).isCloseTo(2.4, within(1e-12));
      assertThat(Math.signum(z0.getImaginary())).isEqualTo(Math.signum(0.5 - share));
    }
  }

  /** Heavily lossy lines of any mix stay passive and reciprocal; lossless ones stay lossless. */
  @Test
  void isPassive() {
    SplittableRandom random = new SplittableRandom(1);
    for (int i = 0; i < 300; i++) {
      LineAttenuation attenuation =
          new LineAttenuation(
              random.nextDouble(1e-5, 3e-4) * random.nextInt(2), random.nextDouble(0, 1e-7));
      TransmissionLine line =
          new TransmissionLine(
              random.nextDouble(20, 600), random.nextDouble(0, 80), 0.7, attenuation);
      NPort network = line.at(Math.pow(10, random.nextDouble(5, 8)));
      assertThat(network.largestGain()).isLessThan(1 + 1e-12);
      assertThat(network.reciprocityError()).isLessThan(1e-12);
    }
    assertThat(lossless(0.37).at(F).largestGain()).isCloseTo(1, within(1e-12));
  }

  /** Open and shorted stubs: −j Z0 cot βl and j Z0 tan βl (Pozar (2.45), (2.46)). */
  @Test
  void stubs() {
    TransmissionLine eighth = lossless(0.125);
    assertClose(eighth.stub(Complex.INF).at(F), complex(0, -50), 1e-9);
    assertClose(eighth.stub(Complex.ZERO).at(F), complex(0, 50), 1e-9);
    assertThat(lossless(0).stub(Complex.INF).at(F)).isEqualTo(Complex.INF);
    assertThat(lossless(0).stub(Complex.ZERO).at(F)).isEqualTo(Complex.ZERO);
  }

  @Test
  void attenuationIsFittedToATable() {
    TreeMap<Double, Double> table = new TreeMap<>();
    LineAttenuation known = new LineAttenuation(6e-6, 8e-12);
    for (double f : new double[] {1e6, 10e6, 30e6, 100e6, 400e6}) {
      table.put(f, known.decibelsPerMetre(f));
    }
    LineAttenuation found = LineAttenuation.fitted(table);
    assertThat(found.conductor()).isCloseTo(6e-6, within(1e-14));
    assertThat(found.dielectric()).isCloseTo(8e-12, within(1e-20));
    // A table that rises slower than √f has no dielectric part, never a negative one.
    table.clear();
    table.put(1e6, 0.010);
    table.put(100e6, 0.090);
    assertThat(LineAttenuation.fitted(table).dielectric()).isZero();
    table.put(100e6, 1.2);
    assertThat(LineAttenuation.fitted(table).conductor()).isZero();
    table.remove(1e6);
    assertThatThrownBy(() -> LineAttenuation.fitted(table)).hasMessageContaining("at least two");
    assertThat(LineAttenuation.ofConductor(10e6, 0.022).decibelsPerMetre(40e6))
        .isCloseTo(0.044, within(1e-15));
  }
}
