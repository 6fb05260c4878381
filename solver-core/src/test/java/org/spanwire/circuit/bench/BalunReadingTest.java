package org.spanwire.circuit.bench;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.assertj.core.api.Assertions.within;

import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;
import org.apache.commons.math3.complex.Complex;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.spanwire.circuit.LineAttenuation;
import org.spanwire.circuit.NPort;
import org.spanwire.circuit.TransmissionLine;
import org.spanwire.circuit.WoundTransformer;

class BalunReadingTest {

  /** Vector addition: −20 log10 cos(φ/2); common over differential tan(φ/2). */
  @ParameterizedTest
  @CsvSource({
    "10, 0.03312",
    "20, 0.13297",
    "30, 0.30112",
    "45, 0.68769",
    "90, 3.01030",
  })
  void phaseError(double degrees, double decibels) {
    Imbalance imbalance = new Imbalance(0, degrees);
    assertThat(imbalance.combiningLossDb())
        .isCloseTo(decibels, within(5e-6))
        .isCloseTo(-20 * Math.log10(Math.cos(Math.toRadians(degrees / 2))), within(1e-12));
    assertThat(imbalance.rejectionDb())
        .isCloseTo(-20 * Math.log10(Math.tan(Math.toRadians(degrees / 2))), within(1e-10));
  }

  /** Vector addition, amplitude alone. */
  @ParameterizedTest
  @CsvSource({"0.5, 0.003594", "1, 0.014336", "2, 0.056688", "3, 0.125167"})
  void amplitudeError(double amplitude, double decibels) {
    assertThat(new Imbalance(amplitude, 0).combiningLossDb()).isCloseTo(decibels, within(1e-6));
    assertThat(new Imbalance(-amplitude, 0).combiningLossDb()).isCloseTo(decibels, within(1e-6));
  }

  /** Closed form |1 + g e^jφ|/|1 − g e^jφ|, and the share 1/(1 + CMRR²). */
  @ParameterizedTest
  @CsvSource({
    "0, 1, 41.2",
    "0.5, 1, 30.4",
    "1, 1, 24.7",
    "0.5, 10, 20.7",
    "1, 20, 14.6",
    "1, 30, 11.2",
  })
  void rejection(double amplitude, double degrees, double decibels) {
    Imbalance imbalance = new Imbalance(amplitude, degrees);
    assertThat(imbalance.rejectionDb()).isCloseTo(decibels, within(0.06));
    double ratio = Math.pow(10, imbalance.rejectionDb() / 10);
    assertThat(imbalance.commonShare()).isCloseTo(1 / (1 + ratio), within(1e-12));
  }

  @Test
  void perfectBalance() {
    Imbalance none = Imbalance.of(new Complex(0.7, 0.1), new Complex(-0.7, -0.1));
    assertThat(none.rejectionDb()).isEqualTo(Double.POSITIVE_INFINITY);
    assertThat(none.combiningLossDb()).isZero();
  }

  /** A shift of 1 ns at 10 MHz is 3.6 degrees; √R brings voltages to waves. */
  @Test
  void typedReadings() {
    Imbalance read = Imbalance.ofTraces(1, 1.1, 1e-9, 10e6);
    assertThat(read.phaseDegrees()).isCloseTo(-3.6, within(1e-12));
    assertThat(read.amplitudeDb()).isCloseTo(20 * Math.log10(1.1), within(1e-12));
    Imbalance corrected = read.withoutProbes(new Imbalance(0.2, -1)).withTerminations(100, 121);
    assertThat(corrected.phaseDegrees()).isCloseTo(-2.6, within(1e-12));
    assertThat(corrected.amplitudeDb()).isCloseTo(-0.2, within(1e-12));
  }

  /** Ideal Guanella 4:1: no loss into the differential mode, in balance, also from 50 ohm data. */
  @Test
  void idealBalun() {
    WoundTransformer ideal =
        new WoundTransformer(
            new WoundTransformer.EqualDelay(2),
            new TransmissionLine(100, 0.3, 1, LineAttenuation.NONE),
            f -> Complex.INF,
            0);
    BalunReading reading = BalunReading.of(10e6, ideal.at(10e6).renormalized(50), 50, 200);
    assertThat(reading.lossDb()).isCloseTo(0, within(1e-10));
    assertThat(reading.returnLossDb()).isGreaterThan(200);
    assertThat(reading.imbalance().rejectionDb()).isGreaterThan(200);
    assertThat(reading.conversionDb()).isGreaterThan(200);
    assertThatThrownBy(() -> BalunReading.of(1, NPort.load(Complex.ONE, 50), 50, 200))
        .hasMessageContaining("3 ports");
  }

  /** A unit serves a range that it was measured over and keeps its limits in, and no other. */
  @Test
  void judgement() {
    Limits limits = new Limits(1, 1, 10, 14);
    List<UnitReading> readings =
        List.of(reading(3e6, 0.5, 1, 20), reading(30e6, 0.5, -8, 16), reading(50e6, 0.8, -12, 9));
    assertThat(limits.judge(readings, new Limits.Range(3.5e6, 30e6)).passed()).isTrue();
    Limits.Judgement wide = limits.judge(readings, new Limits.Range(3.5e6, 50e6));
    assertThat(wide.passed()).isFalse();
    assertThat(wide.covered()).isTrue();
    assertThat(wide.breaches()).hasSize(2).allMatch(breach -> breach.frequencyHz() == 50e6);
    // At 40 MHz no reading breaks a limit, but the line to the next one does.
    Limits.Judgement between = limits.judge(readings, new Limits.Range(3.5e6, 45e6));
    assertThat(between.passed()).isFalse();
    assertThat(between.breaches()).isEmpty();
    Limits.Judgement beyond = limits.judge(readings, new Limits.Range(1.8e6, 30e6));
    assertThat(beyond.passed()).isFalse();
    assertThat(beyond.covered()).isFalse();
    // What a pair does not show is not judged.
    UnitReading pair = UnitReading.ofLoss(3e6, 0.4, OptionalDouble.empty());
    assertThat(limits.breaches(List.of(pair))).isEmpty();
  }

  /** Two units by hand: mean and sample deviation, and the mean's distance from a golden unit. */
  @Test
  void batchOfMeasuredUnits() {
    List<MeasuredUnit> units =
        List.of(
            new MeasuredUnit("a", MeasuredUnit.Method.UNIT, List.of(reading(3e6, 0.5, 1, 20))),
            new MeasuredUnit(
                "b",
                MeasuredUnit.Method.UNIT,
                List.of(reading(3e6, 0.7, 2, 20), reading(5e6, 0.7, 2, 20))));
    BatchStatistics statistics = BatchStatistics.of(units, Optional.of(units.get(1)));
    assertThat(statistics.rows()).hasSize(4).allMatch(row -> row.frequencyHz() == 3e6);
    BatchStatistics.Row loss = statistics.rows().get(0);
    assertThat(loss.quantity()).isEqualTo(BenchQuantity.LOSS);
    assertThat(loss.batch().mean()).isCloseTo(0.6, within(1e-12));
    assertThat(loss.batch().deviation()).isCloseTo(0.1 * Math.sqrt(2), within(1e-12));
    assertThat(loss.offset().orElseThrow()).isCloseTo(-0.1, within(1e-12));
  }

  /** Voltage balun into equal grounded loads balances; a one-sided transformer does not. */
  @Test
  void oneSidedTransformerIsAllImbalance() {
    TransmissionLine line = new TransmissionLine(100, 0.1, 1, LineAttenuation.NONE);
    NPort balanced =
        new WoundTransformer(new WoundTransformer.Autotransformer(true), line, f -> Complex.INF, 0)
            .at(3e6);
    assertThat(BalunReading.of(3e6, balanced, 50, 200).imbalance().rejectionDb()).isGreaterThan(40);
    NPort single =
        new WoundTransformer(new WoundTransformer.Autotransformer(false), line, f -> Complex.INF, 0)
            .at(3e6);
    assertThatThrownBy(() -> BalunReading.of(3e6, single, 50, 200))
        .hasMessageContaining("no signal");
  }

  private static UnitReading reading(double f, double loss, double phase, double returnLoss) {
    return UnitReading.of(new BalunReading(f, loss, returnLoss, new Imbalance(0.1, phase), 40));
  }

  @Test
  void usableRangeAndBreaches() {
    Limits limits = new Limits(1, 1, 10, 14);
    List<UnitReading> readings =
        List.of(
            reading(1e6, 2, 1, 20),
            reading(3e6, 0.5, 1, 20),
            reading(10e6, 0.3, -4, Double.POSITIVE_INFINITY),
            reading(30e6, 0.5, -8, 15),
            reading(50e6, 0.8, -12, 9));
    List<Limits.Range> ranges = limits.usableRanges(readings);
    assertThat(ranges).hasSize(1);
    // Loss falls from 2 to 0.5 dB, return loss from 15 to 9 dB: by hand.
    assertThat(ranges.get(0).fromHz()).isCloseTo(1e6 + 2e6 * 2 / 3, within(1e-3));
    assertThat(ranges.get(0).toHz()).isCloseTo(30e6 + 20e6 / 6, within(1e-3));
    assertThat(limits.breaches(readings))
        .extracting(Limits.Breach::quantity)
        .containsExactly(BenchQuantity.LOSS, BenchQuantity.RETURN_LOSS, BenchQuantity.PHASE);
    assertThat(limits.breaches(readings.subList(1, 4))).isEmpty();
    assertThatThrownBy(() -> limits.usableRanges(List.of(readings.get(1), readings.get(0))))
        .hasMessageContaining("sort");
  }

  @Test
  void batch() {
    Batch batch = Batch.of(List.of(0.2, 0.3, 0.4));
    assertThat(batch.mean()).isCloseTo(0.3, within(1e-15));
    assertThat(batch.deviation()).isCloseTo(0.1, within(1e-15));
    assertThat(batch.standing(0.5)).isCloseTo(2, within(1e-12));
    assertThat(batch.offset(0.25)).isCloseTo(0.05, within(1e-15));
    assertThat(Batch.of(List.of(1.0)).deviation()).isZero();
  }
}
