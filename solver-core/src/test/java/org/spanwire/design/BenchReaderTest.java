package org.spanwire.design;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.assertj.core.api.Assertions.within;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.Locale;
import org.apache.commons.math3.complex.Complex;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.spanwire.circuit.bench.BenchReadings;
import org.spanwire.circuit.bench.MeasuredUnit;
import org.spanwire.circuit.bench.MeasuredUnit.Method;
import org.spanwire.circuit.bench.OperatingMode;
import org.spanwire.circuit.bench.UnitReading;

/** Readings typed at the bench, against the closed form of each method. */
class BenchReaderTest {

  @TempDir private Path directory;

  private BenchReadings read(String text) throws IOException {
    Path file =
        Files.writeString(
            directory.resolve("unit.yaml"), "format: spanwire-readings/1\ntitle: Unit 07\n" + text);
    return BenchReader.read(file, 50, 200);
  }

  private MeasuredUnit unit(String text) throws IOException {
    BenchReadings readings = read(text);
    assertThat(readings.units()).hasSize(1);
    assertThat(readings.title()).isEqualTo("Unit 07");
    return readings.units().get(0);
  }

  private static void loses(UnitReading reading, double hertz, double decibels) {
    assertThat(reading.frequencyHz()).isEqualTo(hertz);
    assertThat(reading.lossDb().orElseThrow()).isCloseTo(decibels, within(1e-9));
  }

  /** 150 ohm before 50 ohm take three quarters of the power: 10 log10 4 dB. */
  @Test
  void aSeriesResistorTakesItsShare() throws IOException {
    MeasuredUnit unit =
        unit(
            "series-resistor: {readings: [{at: 7 MHz, loss: 6.4 dB},"
                + " {at: 14 MHz, loss: 6.5 dB, return-loss: 20 dB}]}\n");
    assertThat(unit.method()).isEqualTo(Method.SERIES_RESISTOR);
    loses(unit.readings().get(0), 7e6, 6.4 - 10 * Math.log10(4));
    assertThat(unit.readings().get(0).returnLossDb()).isEmpty();
    // Of the power sent one part in a hundred does not enter.
    loses(unit.readings().get(1), 14e6, 6.5 + 10 * Math.log10(0.99) - 10 * Math.log10(4));
    assertThat(unit.readings().get(1).returnLossDb()).hasValue(20);
    MeasuredUnit stated =
        unit("series-resistor: {resistor: 147 ohm, readings: [{at: 7 MHz, loss: 6.4 dB}]}\n");
    loses(stated.readings().get(0), 7e6, 6.4 - 10 * Math.log10(197.0 / 50));
  }

  /**
   * A pad of least loss takes 20 log10(√n + √(n − 1)) dB, n the ratio (filter texts, from memory).
   */
  @Test
  void aPadOfLeastLossTakesItsLoss() throws IOException {
    MeasuredUnit unit = unit("minimum-loss-pad: {readings: [{at: 7 MHz, loss: 12 dB}]}\n");
    assertThat(unit.method()).isEqualTo(Method.MINIMUM_LOSS_PAD);
    loses(unit.readings().get(0), 7e6, 12 - 20 * Math.log10(2 + Math.sqrt(3)));
  }

  @Test
  void pairsAndThreeUnitsShareTheirLoss() throws IOException {
    MeasuredUnit pair = unit("back-to-back: {readings: [{at: 7 MHz, loss: 1.2 dB}]}\n");
    assertThat(pair.method()).isEqualTo(Method.PAIR);
    loses(pair.readings().get(0), 7e6, 0.6);
    BenchReadings three =
        read("three-units: {readings: [{at: 7 MHz, ab: 0.6 dB, ac: 0.7 dB, bc: 0.5 dB}]}\n");
    assertThat(three.units())
        .extracting(MeasuredUnit::name)
        .containsExactly("Unit 07, unit A", "Unit 07, unit B", "Unit 07, unit C");
    assertThat(three.units()).allMatch(unit -> unit.method() == Method.THREE_UNITS);
    // a + b = 0.6, a + c = 0.7, b + c = 0.5.
    loses(three.units().get(0).readings().get(0), 7e6, 0.4);
    loses(three.units().get(1).readings().get(0), 7e6, 0.2);
    loses(three.units().get(2).readings().get(0), 7e6, 0.3);
  }

  private void balance(String text, double amplitudeDb, double phaseDegrees) throws IOException {
    MeasuredUnit unit = unit(text);
    assertThat(unit.method()).isEqualTo(Method.BALANCE);
    UnitReading reading = unit.readings().get(0);
    assertThat(reading.frequencyHz()).isEqualTo(7e6);
    assertThat(reading.imbalance().orElseThrow().amplitudeDb())
        .isCloseTo(amplitudeDb, within(1e-9));
    assertThat(reading.imbalance().orElseThrow().phaseDegrees())
        .isCloseTo(phaseDegrees, within(1e-9));
  }

  @Test
  void theOutputsAreSeenWithoutProbesAndUnequalEnds() throws IOException {
    String row = "readings: [{at: 7 MHz, amplitude: 0.2 dB, phase: 177 deg}]}\n";
    balance("balance: {" + row, 0.2, -3);
    balance("balance: {probes: {amplitude: 0.05 dB, phase: 1 deg}, " + row, 0.15, -4);
    balance(
        "balance: {terminations: [100 ohm, 102 ohm], " + row,
        0.2 + 10 * Math.log10(100.0 / 102),
        -3);
    // 1 ns of a period of 1/7 µs.
    balance(
        "balance: {readings: [{at: 7 MHz, amplitude: 0.2 dB, delay: 1 ns}]}\n",
        0.2,
        -360 * 7e6 * 1e-9);
  }

  @Test
  void aChokeIsFoundFromEitherReading() throws IOException {
    Complex choke = new Complex(1500, 900);
    Complex through = choke.divide(100).add(1).reciprocal();
    Complex reflection = choke.subtract(50).divide(choke.add(50));
    BenchReadings readings =
        read(
            "choke: {readings: [{at: 7 MHz, "
                + polar("through", through)
                + "}, {at: 14 MHz, "
                + polar("reflection", reflection)
                + "}]}\n");
    assertThat(readings.units()).isEmpty();
    for (BenchReadings.ChokeAt at : readings.choke()) {
      assertThat(at.reading().impedance().subtract(choke).abs()).isLessThan(1e-6);
    }
    assertThat(readings.choke())
        .extracting(BenchReadings.ChokeAt::frequencyHz)
        .containsExactly(7e6, 14e6);
    // An error δ of S21 moves Z by δ |Z + 100|²/100, where none is stated 0.005.
    double usual = 0.005 * Math.pow(choke.add(100).abs(), 2) / 100;
    assertThat(readings.choke().get(0).reading().uncertaintyOhm())
        .isCloseTo(usual, within(1e-6 * usual));
  }

  @Test
  void aFixtureIsTakenAway() throws IOException {
    double w = 2 * Math.PI * 7e6;
    Complex choke = new Complex(1500, 900);
    Complex seen = choke.reciprocal().add(new Complex(0, w * 2e-12)).reciprocal();
    String rows = "readings: [{at: 7 MHz, " + polar("through", through(seen)) + "}]}\n";
    BenchReadings.ChokeAt exact =
        read("choke: {reading-error: 1e-9, fixture-capacitance: 2 pF, " + rows).choke().get(0);
    assertThat(exact.reading().impedance().subtract(choke).abs()).isLessThan(1e-6);
    assertThat(exact.reading().uncertaintyOhm()).isLessThan(1e-3);
    BenchReadings.ChokeAt doubtful =
        read("choke: {reading-error: 1e-9, fixture-capacitance: 2 pF, capacitance-error: 0.1 pF, "
                + rows)
            .choke()
            .get(0);
    double stated = Math.pow(choke.abs(), 2) * w * 0.1e-12;
    assertThat(doubtful.reading().uncertaintyOhm()).isCloseTo(stated, within(1e-3 * stated));
  }

  private static Complex through(Complex z) {
    return z.divide(100).add(1).reciprocal();
  }

  private static String polar(String key, Complex value) {
    return String.format(
        Locale.ROOT,
        "%s: %.12f dB, phase: %.12f deg",
        key,
        20 * Math.log10(value.abs()),
        Math.toDegrees(value.getArgument()));
  }

  /** An exponential of 300 s that rises by 30 K. */
  private static String heatRun(double rise) {
    StringBuilder rows = new StringBuilder();
    for (int t = 0; t <= 1200; t += 100) {
      rows.append(
          String.format(
              Locale.ROOT,
              "%s{at: %d s, celsius: %.9f}",
              t == 0 ? "" : ", ",
              t,
              60 + rise * -Math.expm1(-t / 300.0)));
    }
    return "heat-run: {power: 100 W, dissipated: 5 W, allowed-rise: 60 K, readings: ["
        + rows
        + "]}\n";
  }

  @Test
  void aHeatRunTellsThePowerThatMayBeSent() throws IOException {
    BenchReadings.Heat heat = read(heatRun(30)).heat().orElseThrow();
    assertThat(heat.run().rise()).isCloseTo(30, within(1e-4));
    assertThat(heat.run().timeConstant()).isCloseTo(300, within(1e-2));
    assertThat(heat.dissipatedWatts()).hasValue(5);
    assertThat(heat.run().thermalResistance(5)).isCloseTo(6, within(1e-4));
    // Twice the rise is allowed; of speech a fifth is heat.
    assertThat(heat.safePeakPower(OperatingMode.CARRIER)).isCloseTo(200, within(1e-3));
    assertThat(heat.safePeakPower(OperatingMode.SSB)).isCloseTo(1000, within(1e-2));
  }

  @ParameterizedTest
  @CsvSource(
      delimiter = '|',
      textBlock =
          """
          back-to-back: {readings: [{at: 7 MHz, loss: -1 dB}]}                 | :3:45: loss of item 1 of readings of back-to-back of the file is -1 dB; expected at least 0
          back-to-back: {readings: [{at: 0 Hz, loss: 1 dB}]}                   | is 0 Hz; expected more than 0
          back-to-back: {readings: [{at: 7 MHz, loss: 1 dB, return-loss: 0 dB}]} | is 0 dB; expected more than 0
          back-to-back: {readings: [{at: 7 MHz, loss: 1 dB}, {at: 7 MHz, loss: 1 dB}]} | is not above the one before; sort them
          balance: {terminations: [50 ohm], readings: [{at: 7 MHz, amplitude: 0 dB, phase: 1 deg}]} | terminations of balance of the file has 1 values; expected two
          balance: {readings: [{at: 7 MHz, amplitude: 0 dB, phase: 1 deg, delay: 1 ns}]} | delay
          choke: {fixture-capacitance: -1 pF, readings: [{at: 7 MHz, through: -30 dB, phase: 0 deg}]} | is -1 pF; expected at least 0
          heat-run: {power: 9 W, allowed-rise: 9 K, readings: [{at: 1 s, celsius: 1}, {at: 1 s, celsius: 2}]} | is not after the one before; sort them by time
          heat-run: {power: 9 W, allowed-rise: 9 K, readings: [{at: 1 s, celsius: 1}]} | heat run has 1 readings; give at least four
          """)
  void mistakesNameTheirPlace(String text, String message) {
    assertThatThrownBy(() -> read(text + "\n"))
        .isInstanceOf(DesignException.class)
        .hasMessageContaining("unit.yaml:3:")
        .hasMessageContaining(message);
  }

  @Test
  void coolingNothingAndOtherFormatsAreRefused() throws IOException {
    assertThatThrownBy(() -> read(heatRun(-30)))
        .isInstanceOf(DesignException.class)
        .hasMessageContaining("the temperature falls; expected one that rises");
    assertThatThrownBy(() -> read("")).hasMessageContaining("the file holds no readings; add some");
    Path file =
        Files.writeString(
            directory.resolve("old.yaml"), "format: spanwire-readings/9\ntitle: Unit 07\n");
    assertThatThrownBy(() -> BenchReader.read(file, 50, 200))
        .hasMessageContaining("is not known here; expected spanwire-readings/1");
  }
}
