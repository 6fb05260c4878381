package org.spanwire.circuit;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.junit.jupiter.params.provider.Arguments.arguments;

import java.util.List;
import java.util.Map;
import java.util.TreeMap;
import java.util.stream.Stream;
import org.apache.commons.math3.complex.Complex;
import org.assertj.core.api.ThrowableAssert.ThrowingCallable;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.Arguments;
import org.junit.jupiter.params.provider.MethodSource;
import org.spanwire.circuit.bench.BackToBack;
import org.spanwire.circuit.bench.Batch;
import org.spanwire.circuit.bench.HeatRun;
import org.spanwire.circuit.bench.Imbalance;
import org.spanwire.circuit.bench.Pad;

/** Values that no part can have are refused by name; those at the edge of the range are not. */
class RefusalTest {

  private static final double NONE = Double.NaN;
  private static final double ENDLESS = Double.POSITIVE_INFINITY;
  private static final LineAttenuation LOSSLESS = LineAttenuation.NONE;
  private static final PermeabilityTable FERRITE = PermeabilityTable.genericNickelZinc();

  private static TransmissionLine line(double ohm, double length, double velocity) {
    return new TransmissionLine(ohm, length, velocity, LOSSLESS);
  }

  private static Arguments refused(String message, ThrowingCallable call) {
    return arguments(message, call);
  }

  static Stream<Arguments> wrong() {
    return Stream.of(
        refused("positive reference", () -> new Tuner(0, 3, 0.1, 0.2)),
        refused("SWR of at least 1", () -> new Tuner(50, 0.99, 0.1, 0.2)),
        refused("finite SWR", () -> new Tuner(50, ENDLESS, 0.1, 0.2)),
        refused("neither be negative", () -> new Tuner(50, 3, -0.1, 0.2)),
        refused("nor fall", () -> new Tuner(50, 3, 0.3, 0.2)),
        refused("transformer ratio 0.0", () -> Transformer.ideal(0, 50)),
        refused("transformer ratio", () -> Transformer.ideal(ENDLESS, 50)),
        refused(
            "transformer has 1 ports",
            () -> Transformer.floating(f -> NPort.load(Complex.ONE, 50)).at(1)),
        refused("line impedance", () -> line(0, 1, 1)),
        refused("line impedance", () -> line(ENDLESS, 1, 1)),
        refused("line length", () -> line(50, -1e-9, 1)),
        refused("line length", () -> line(50, ENDLESS, 1)),
        refused("velocity factor", () -> line(50, 1, 0)),
        refused("velocity factor", () -> line(50, 1, 1.001)),
        refused("matched loss", () -> TransmissionLine.totalLossDb(-0.1, 1)),
        refused("not below 1", () -> TransmissionLine.totalLossDb(1, 0.9)),
        refused("spacing over diameter", () -> TransmissionLine.twoWireImpedance(1, 1)),
        refused("height over radius", () -> TransmissionLine.wireOverGroundImpedance(NONE, 1)),
        refused("outer over inner", () -> TransmissionLine.coaxialImpedance(1, 0, 1)),
        refused("positive power", () -> new FeedChain.Source(0, 50)),
        refused("impedance, got", () -> new FeedChain.Source(100, 0)),
        refused("reference of stage line", () -> FeedChain.Stage.of("line", line(50, 1, 1), 0)),
        refused("loss -0.1 dB", () -> new Attenuator(-0.1, 50)),
        refused("attenuation parts", () -> new LineAttenuation(-1, 0)),
        refused("attenuation parts", () -> new LineAttenuation(0, -1)),
        refused("attenuation parts", () -> new LineAttenuation(ENDLESS, 0)),
        refused("frequency 0.0 Hz", () -> LineAttenuation.ofConductor(0, 0.1)),
        refused("has 1 rows", () -> LineAttenuation.fitted(new TreeMap<>(Map.of(1e6, 1.0)))),
        refused(
            "must be positive",
            () -> LineAttenuation.fitted(new TreeMap<>(Map.of(1e6, 1.0, 2e6, 0.0)))),
        refused("core of", () -> new ToroidCore(0.02, 0.02, 0.01, 1, FERRITE)),
        refused("core of", () -> new ToroidCore(0.02, 0, 0.01, 1, FERRITE)),
        refused("core of", () -> new ToroidCore(0.02, 0.01, 0, 1, FERRITE)),
        refused("core of", () -> new ToroidCore(0.02, 0.01, 0.01, 0, FERRITE)),
        refused("winding of 0 turns", () -> core().winding(0, 0)),
        refused("no negative capacitance", () -> core().winding(1, -1e-12)),
        refused("needs a provenance", () -> PermeabilityTable.of(" ", rows(100, -10))),
        refused("at least one row", () -> PermeabilityTable.of("bench", new TreeMap<>())),
        refused("permeability at", () -> PermeabilityTable.of("bench", rows(100, 0))),
        refused("permeability at", () -> PermeabilityTable.of("bench", rows(0, -10))),
        refused(
            "lies outside the permeability table",
            () -> PermeabilityTable.of("bench", rows(9, -1)).at(2e6)),
        refused("t.csv:3:1: expected three positive", () -> table("1e6,100,0")),
        refused("t.csv:3:1: expected three positive", () -> table("1e6,100")),
        refused("t.csv:3:1: row holds a word", () -> table("1e6,a,1")),
        refused("t.csv:4:1: frequency is not above", () -> table("1e6,9,1\n1e6,9,1")),
        refused(
            "expected the header", () -> PermeabilityTable.parse("t.csv", "# bench\nf,a,b\n1,2,3")),
        refused("none may be negative", () -> new Pad(-1, 50, 50)),
        refused("none may be negative", () -> new Pad(1, 0, 50)),
        refused("none may be negative", () -> new Pad(1, 50, ENDLESS)),
        refused("high side", () -> Pad.minimumLoss(50, 50)),
        refused("must be finite", () -> new Imbalance(NONE, 0)),
        refused("must be finite", () -> new Imbalance(0, ENDLESS)),
        refused(
            "a pair has 2 ports, not 1",
            () -> BackToBack.ofEqualUnits(NPort.load(Complex.ONE, 50))),
        refused("lets nothing in", () -> BackToBack.withoutReflectionDb(1, 0)),
        refused("passes no power from port 1 to port 2", () -> BackToBack.lossDb(apart(), 1, 2)),
        refused("at least one unit", () -> Batch.of(List.of())),
        refused("give at least four", () -> HeatRun.fitted(new TreeMap<>(Map.of(0.0, 1.0)))),
        refused("temperature must rise", () -> new HeatRun(20, -1, 300, 0).thermalResistance(5)),
        refused("dissipated power 0.0 W", () -> new HeatRun(20, 30, 300, 0).thermalResistance(0)));
  }

  private static ToroidCore core() {
    return new ToroidCore(0.02, 0.01, 0.01, 1, FERRITE);
  }

  private static TreeMap<Double, Complex> rows(double real, double imaginary) {
    return new TreeMap<>(Map.of(1e6, new Complex(real, imaginary)));
  }

  private static PermeabilityTable table(String rows) {
    return PermeabilityTable.parse("t.csv", "# bench\nfrequency_hz,mu_real,mu_imaginary\n" + rows);
  }

  /** Two ports that know nothing of each other. */
  private static NPort apart() {
    Complex[][] nothing = {{Complex.ZERO, Complex.ZERO}, {Complex.ZERO, Complex.ZERO}};
    return NPort.ofScattering(nothing, 50);
  }

  @ParameterizedTest
  @MethodSource("wrong")
  void wrongValuesAreRefused(String message, ThrowingCallable call) {
    assertThatThrownBy(call).hasMessageContaining(message);
  }

  @Test
  void theEdgesOfTheRangesAreNot() {
    assertThat(new Tuner(50, 1, 0, 0).lossDb(new Complex(50, 0))).isZero();
    assertThat(line(50, 0, 1).at(1e6).s(2, 1).subtract(1).abs()).isZero();
    assertThat(new Attenuator(0, 50).at(1e6).s(2, 1).subtract(1).abs()).isZero();
    assertThat(TransmissionLine.totalLossDb(0, ENDLESS)).isZero();
    assertThat(TransmissionLine.totalLossDb(0.1, ENDLESS)).isEqualTo(ENDLESS);
    assertThat(core().winding(1, 0).at(1e6).getImaginary()).isPositive();
    assertThat(PermeabilityTable.of("bench", rows(100, -10)).at(1e6))
        .isEqualTo(new Complex(100, -10));
    assertThat(new Pad(0, ENDLESS, 50).correctionDb()).isZero();
    assertThat(Batch.of(List.of(2.0)).standing(3)).isZero();
    assertThat(Batch.of(List.of(1.0, 3.0)).offset(1.5)).isEqualTo(0.5);
  }
}
