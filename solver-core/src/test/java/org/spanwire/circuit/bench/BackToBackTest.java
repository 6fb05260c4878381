package org.spanwire.circuit.bench;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.assertj.core.api.Assertions.within;

import org.apache.commons.math3.complex.Complex;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.spanwire.circuit.LineAttenuation;
import org.spanwire.circuit.NPort;
import org.spanwire.circuit.PermeabilityTable;
import org.spanwire.circuit.ToroidCore;
import org.spanwire.circuit.Transformer;
import org.spanwire.circuit.TransmissionLine;
import org.spanwire.circuit.WoundTransformer;

class BackToBackTest {

  private static final Complex FIFTY = new Complex(50, 0);
  private static final Complex HUNDRED = new Complex(100, 0);

  /**
   * A 4:1 on real cores, its windings of 75 instead of 100 ohm and 60 cm long: not well matched.
   */
  private static WoundTransformer unit() {
    ToroidCore core =
        new ToroidCore(0.061, 0.03555, 0.0127, 1, PermeabilityTable.genericNickelZinc());
    return new WoundTransformer(
        new WoundTransformer.EqualDelay(2),
        new TransmissionLine(75, 0.6, 0.8, new LineAttenuation(8e-6, 0)),
        core.winding(9, 1.5e-12),
        10e-9);
  }

  /** The second unit turned round, both terminals of the first on those of the second. */
  private static NPort pair(NPort first, NPort second) {
    return first
        .renormalized(FIFTY, HUNDRED, HUNDRED)
        .join(2, second.renormalized(FIFTY, HUNDRED, HUNDRED), 2)
        .joined(2, 4);
  }

  /**
   * The parts of the pair are known: half of its loss is that of one unit into 200 ohm within 0.02
   * dB from 1.8 to 30 MHz, mismatch included.
   */
  @Test
  void findsTheLossOfTheUnitsItWasMadeFrom() {
    double worst = 0;
    double worstReturn = 99;
    double worstNaive = 0;
    for (double f = 1.8e6; f <= 30e6; f += 0.2e6) {
      NPort one = Transformer.floating(unit()).at(f).renormalized(FIFTY, new Complex(200, 0));
      double known = BackToBack.lossDb(one, 1, 2);
      BackToBack found = BackToBack.ofEqualUnits(pair(unit().at(f), unit().at(f)));
      double through = pair(unit().at(f), unit().at(f)).s(2, 1).abs();
      worstNaive = Math.max(worstNaive, Math.abs(-10 * Math.log10(through) - known));
      worst = Math.max(worst, Math.abs(found.unitLossDb() - known));
      worstReturn = Math.min(worstReturn, -20 * Math.log10(one.s(1, 1).abs()));
      assertThat(known).isBetween(0.02, 1.0);
    }
    assertThat(worst).isLessThan(0.02);
    assertThat(worstNaive).as("half of −20 log10|S21|, reflection left in").isGreaterThan(0.04);
    assertThat(worstReturn).as("the units are mismatched").isLessThan(19);
  }

  /** Phase error in both units: the pair shows next to none of it, the 3-port all of it. */
  @Test
  void hidesImbalance() {
    NPort bad = unbalanced(25);
    BackToBack pair = BackToBack.ofEqualUnits(pair(bad, bad));
    BalunReading alone = BalunReading.of(14e6, bad, 50, 200);
    assertThat(alone.imbalance().phaseDegrees()).isCloseTo(-25, within(1e-9));
    assertThat(pair.unitLossDb()).isLessThan(0.01);
    assertThat(alone.lossDb()).isGreaterThan(0.2);
    assertThat(BackToBack.BLIND_SPOT).contains("hides imbalance");
  }

  /** An ideal 180 degree splitter, matched at port 1, one of whose outputs lags by some degrees. */
  private static NPort unbalanced(double degrees) {
    double h = Math.sqrt(0.5);
    Complex lag = new Complex(0, -Math.toRadians(degrees)).exp();
    Complex up = new Complex(h, 0);
    Complex down = lag.multiply(-h);
    Complex half = new Complex(0.5, 0);
    return NPort.ofScattering(
        new Complex[][] {
          {Complex.ZERO, up, down},
          {up, half.negate(), half.negate().multiply(lag)},
          {down, half.negate().multiply(lag), half.negate().multiply(lag).multiply(lag)}
        },
        FIFTY,
        HUNDRED,
        HUNDRED);
  }

  /** L_A = (AB + AC − BC)/2, arithmetic. */
  @Test
  void threeUnits() {
    assertThat(BackToBack.firstOfThreeDb(0.3 + 0.5, 0.3 + 0.9, 0.5 + 0.9))
        .isCloseTo(0.3, within(1e-12));
  }

  /** 20 log10(1 + Γ²): 0.09 dB at 20 dB return loss, 0.27 dB at 15 dB (closed form). */
  @ParameterizedTest
  @CsvSource({"20, 0.0864", "15, 0.2704"})
  void ripple(double returnLoss, double decibels) {
    assertThat(BackToBack.rippleDb(returnLoss)).isCloseTo(decibels, within(1e-4));
  }

  /** 150 ohm to 50 ohm: 6.0206 dB; minimum-loss pad 200 to 50: 173.2 and 57.7 ohm, 11.44 dB. */
  @Test
  void pads() {
    Pad series = Pad.seriesResistor(200, 50);
    assertThat(series.seriesOhm()).isEqualTo(150);
    assertThat(series.inputOhm()).isEqualTo(200);
    assertThat(series.correctionDb()).isCloseTo(6.0206, within(1e-4));
    Pad minimum = Pad.minimumLoss(200, 50);
    assertThat(minimum.seriesOhm()).isCloseTo(173.205, within(1e-3));
    assertThat(minimum.shuntOhm()).isCloseTo(57.735, within(1e-3));
    assertThat(minimum.inputOhm()).isCloseTo(200, within(1e-12));
    // 20 log10(√4 + √3), the closed form of the matched pad.
    assertThat(minimum.correctionDb())
        .isCloseTo(20 * Math.log10(2 + Math.sqrt(3)), within(1e-12))
        .isCloseTo(11.44, within(0.005));
    assertThatThrownBy(() -> Pad.minimumLoss(50, 200)).hasMessageContaining("above");
  }

  @Test
  void refusesADeadPair() {
    NPort dead =
        NPort.ofScattering(
            new Complex[][] {{Complex.ZERO, Complex.ZERO}, {Complex.ZERO, Complex.ZERO}}, 50);
    assertThatThrownBy(() -> BackToBack.ofEqualUnits(dead)).hasMessageContaining("no power");
  }
}
