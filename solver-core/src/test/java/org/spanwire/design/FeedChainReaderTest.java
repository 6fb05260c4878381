package org.spanwire.design;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.assertj.core.api.Assertions.within;

import java.util.List;
import org.apache.commons.math3.complex.Complex;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.spanwire.circuit.LineAttenuation;
import org.spanwire.circuit.PermeabilityTable;
import org.spanwire.circuit.ToroidCore;
import org.spanwire.circuit.TransmissionLine;
import org.spanwire.circuit.Winding;
import org.spanwire.circuit.WoundTransformer.Autotransformer;
import org.spanwire.circuit.WoundTransformer.EqualDelay;

/** What stages of the feed chain are after reading: figures of data sheets in SI units. */
class FeedChainReaderTest {

  private static Stage stage(String text) {
    String design = Designs.spoilt("- transformer: {ratio: 4}", "- " + text);
    List<Stage> chain = DesignReader.read(design, "chain.yaml").feedChain();
    assertThat(chain).hasSize(1);
    return chain.get(0);
  }

  private static LineAttenuation loss(String text) {
    String line = "line: {impedance: 50 ohm, length: 20 m, velocity-factor: 0.66, loss: {%s}}";
    return ((Stage.Line) stage(line.formatted(text))).line().attenuation();
  }

  @Test
  void lossIsPerLengthOfTheDataSheet() {
    LineAttenuation one = loss("frequency: 10 MHz, per: 100 ft, value: 0.6 dB");
    assertThat(one.decibelsPerMetre(10e6)).isCloseTo(0.6 / 30.48, within(1e-15));
    // Skin effect: twice as much at four times the frequency.
    assertThat(one.decibelsPerMetre(40e6)).isCloseTo(1.2 / 30.48, within(1e-15));
    LineAttenuation parts =
        loss("frequency: 25 MHz, per: 100 m, conductor: 4 dB, dielectric: 1 dB");
    assertThat(parts.decibelsPerMetre(25e6)).isCloseTo(0.05, within(1e-15));
    assertThat(parts.decibelsPerMetre(100e6)).isCloseTo(0.12, within(1e-15));
    // Two rows, two unknowns: 4 dB √(f/25 MHz) + 1 dB f/25 MHz again.
    LineAttenuation table = loss("per: 100 m, table: [[25 MHz, 5 dB], [100 MHz, 12 dB]]");
    assertThat(table.conductor()).isCloseTo(parts.conductor(), within(1e-12 * parts.conductor()));
    assertThat(table.dielectric())
        .isCloseTo(parts.dielectric(), within(1e-12 * parts.dielectric()));
  }

  @ParameterizedTest
  @CsvSource(
      delimiter = '|',
      value = {
        "table: [[25 MHz, 5 dB], [25 MHz, 6 dB]] | sort the rows by frequency",
        "table: [[25 MHz, 5 dB, 6 dB], [30 MHz, 6 dB]] | has 3 values; expected frequency and loss",
        "table: [[25 MHz, 5 dB], [30 MHz, 6 dB]], frequency: 7 MHz | keep the table",
        "table: [[25 MHz, 5 dB]] | give at least two",
        "frequency: 7 MHz, value: 2 dB, conductor: 1 dB | value",
      })
  void lossThatIsStatedTwiceOrHalfIsRefused(String loss, String message) {
    assertThatThrownBy(() -> loss("per: 100 m, " + loss))
        .isInstanceOf(DesignException.class)
        .hasMessageContaining("chain.yaml:")
        .hasMessageContaining(message);
  }

  @Test
  void linesAndStubs() {
    String line = "impedance: 450 ohm, length: 12.5 m, velocity-factor: 0.91";
    TransmissionLine ladder = new TransmissionLine(450, 12.5, 0.91, LineAttenuation.NONE);
    Stage.Line read = (Stage.Line) stage("line: {" + line + "}");
    assertThat(read).isEqualTo(new Stage.Line(ladder));
    assertThat(read.length()).isEqualTo(12.5);
    assertThat(stage("stub: {" + line + ", end: open}"))
        .isEqualTo(new Stage.Stub(ladder, false, false));
    assertThat(stage("stub: {" + line + ", end: shorted, connection: shunt}"))
        .isEqualTo(new Stage.Stub(ladder, true, false));
    assertThat(stage("stub: {" + line + ", end: shorted, connection: series}"))
        .isEqualTo(new Stage.Stub(ladder, true, true));
    for (String kind : List.of("line: {", "stub: {end: open, ")) {
      assertThatThrownBy(() -> stage(kind + line.replace("12.5", "0") + "}"))
          .isInstanceOf(DesignException.class)
          .hasMessageContaining("chain.yaml:");
    }
  }

  @Test
  void networksKeepTheOrderFromTheFeedpoint() {
    Stage.Matching l =
        (Stage.Matching) stage("matching: [shunt: {c: 120 pF}, series: {l: 1.2 uH, r: 0.5 ohm}]");
    assertThat(l.parts())
        .containsExactly(
            new Stage.Part(false, 0, 0, 120e-12),
            new Stage.Part(true, 0.5, 1.2e-6, Double.POSITIVE_INFINITY));
    // Port 1 lies towards the transmitter: with the far port open the coil and the capacitor are
    // in series there, and the capacitor alone is across the other.
    double w = 2 * Math.PI * 7e6;
    Complex capacitor = new Complex(0, -1 / (w * 120e-12));
    Complex[][] z = l.ladder().at(7e6).impedance();
    assertThat(z[1][1].subtract(capacitor).abs()).isLessThan(1e-9);
    assertThat(z[0][0].subtract(capacitor.add(new Complex(0.5, w * 1.2e-6))).abs())
        .isLessThan(1e-9);
    assertThatThrownBy(() -> stage("matching: []"))
        .isInstanceOf(DesignException.class)
        .hasMessageContaining("chain.yaml:");
  }

  @Test
  void attenuatorsAndTuners() {
    assertThat(stage("attenuator: {loss: 3 dB}")).isEqualTo(new Stage.Attenuator(3));
    assertThat(stage("attenuator: {loss: 0 dB}")).isEqualTo(new Stage.Attenuator(0));
    Stage.Tuner tuner = (Stage.Tuner) stage("tuner: {swr: 10, loss: 0.2 dB, limit-loss: 1 dB}");
    assertThat(tuner).isEqualTo(new Stage.Tuner(10, 0.2, 1));
    assertThat(tuner.at(75)).isEqualTo(new org.spanwire.circuit.Tuner(75, 10, 0.2, 1));
    assertThat(stage("tuner: {swr: 3}")).isEqualTo(new Stage.Tuner(3, 0, 0));
    assertThat(stage("tuner: {swr: 3, loss: 0.5 dB}")).isEqualTo(new Stage.Tuner(3, 0.5, 0.5));
    assertThatThrownBy(() -> stage("tuner: {swr: 0.9}")).isInstanceOf(DesignException.class);
  }

  @Test
  void aStageCallsItselfByItsKey() {
    String line = "{impedance: 50 ohm, length: 1 m, velocity-factor: 1}";
    for (String text :
        List.of(
            "transformer: {ratio: 4}",
            "choke: {impedance: 3 kohm}",
            "line: " + line,
            "stub: " + line.replace("}", ", end: open}"),
            "attenuator: {loss: 1 dB}",
            "matching: [series: {l: 1 uH}]",
            "tuner: {swr: 3}")) {
      assertThat(stage(text).kind()).isEqualTo(text.substring(0, text.indexOf(':')));
    }
  }

  private static final String WOUND =
      "transformer: {ratio: 4, wound: {connection: equal-delay, core: {outer: 61 mm, inner: 35.5"
          + " mm, height: 12.7 mm, count: 2, material: generic-nickel-zinc}, turns: 9, line:"
          + " {impedance: 100 ohm, velocity-factor: 0.7}}}";

  private static Winding wound(String text) {
    Stage.Transformer transformer = (Stage.Transformer) stage(text);
    assertThat(transformer.isIdeal()).isFalse();
    return transformer.wound().orElseThrow();
  }

  @Test
  void windings() {
    Winding winding = wound(WOUND);
    ToroidCore core =
        new ToroidCore(61e-3, 35.5e-3, 12.7e-3, 2, PermeabilityTable.genericNickelZinc());
    assertThat(winding.core()).usingRecursiveComparison().isEqualTo(core);
    assertThat(winding.connection()).isEqualTo(new EqualDelay(2));
    assertThat(winding.turns()).isEqualTo(9);
    // Unless it is stated the line is as long as its turns.
    assertThat(winding.line().length()).isEqualTo(9 * core.turnLength());
    assertThat(winding.leakageInductance()).isZero();
    assertThat(winding.strayCapacitance()).isZero();
    Winding stated =
        wound(
            WOUND
                .replace("turns: 9", "turns: 9, leakage: 50 nH, capacitance: 4 pF")
                .replace("{impedance", "{length: 1.5 m, impedance"));
    assertThat(stated.line().length()).isEqualTo(1.5);
    assertThat(stated.leakageInductance()).isEqualTo(50e-9);
    assertThat(stated.strayCapacitance()).isEqualTo(4e-12);
    assertThat(((Stage.Transformer) stage("transformer: {ratio: 4}")).isIdeal()).isTrue();
  }

  @Test
  void connectionsFitTheirRatio() {
    for (int lines = 1; lines <= 8; lines++) {
      assertThat(wound(WOUND.replace("ratio: 4", "ratio: " + lines * lines)).connection())
          .isEqualTo(new EqualDelay(lines));
    }
    for (String ratio : List.of("81", "2", "0.01")) {
      assertThatThrownBy(() -> wound(WOUND.replace("ratio: 4", "ratio: " + ratio)))
          .isInstanceOf(DesignException.class)
          .hasMessageContaining("expected the square of a number of lines");
    }
    String auto = WOUND.replace("equal-delay", "autotransformer");
    assertThat(wound(auto).connection()).isEqualTo(new Autotransformer(true));
    assertThat(wound(auto.replace("ratio: 4", "ratio: 4, output: unbalanced")).connection())
        .isEqualTo(new Autotransformer(false));
    assertThatThrownBy(() -> wound(auto.replace("ratio: 4", "ratio: 9")))
        .hasMessageContaining("expected ratio: 4");
    assertThatThrownBy(() -> wound(WOUND.replace("ratio: 4", "ratio: 4, output: balanced")))
        .hasMessageContaining("remove the key output");
  }

  @Test
  void turnsAreWholeAndFew() {
    assertThat(wound(WOUND.replace("turns: 9", "turns: 1")).turns()).isEqualTo(1);
    for (String turns : List.of("2.5", "1e9", "0")) {
      assertThatThrownBy(() -> wound(WOUND.replace("turns: 9", "turns: " + turns)))
          .isInstanceOf(DesignException.class)
          .hasMessageContaining("chain.yaml:");
    }
  }
}
