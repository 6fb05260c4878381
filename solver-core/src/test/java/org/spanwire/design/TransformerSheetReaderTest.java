package org.spanwire.design;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.spanwire.circuit.Winding;
import org.spanwire.circuit.bench.Limits;
import org.spanwire.circuit.bench.TransformerSheet;

/** Transformers to be wound: what is stated, what is taken where nothing is, what is refused. */
class TransformerSheetReaderTest {

  private static final String LEAST =
      """
      format: spanwire-transformer/1
      title: 4:1 for the short kit
      ratio: 4
      wound:
        connection: equal-delay
        core: {outer: 61 mm, inner: 35.5 mm, height: 12.7 mm, material: generic-nickel-zinc}
        line: {impedance: 100 ohm, velocity-factor: 0.75}
      lowest: 5 MHz
      frequencies: [7 MHz, 14 MHz]
      """;

  @TempDir private Path directory;

  private TransformerSheet read(String text) throws IOException {
    return TransformerSheetReader.read(Files.writeString(directory.resolve("sheet.yaml"), text));
  }

  @Test
  void whatIsNotStatedIsUsual() throws IOException {
    TransformerSheet sheet = read(LEAST);
    assertThat(sheet.title()).isEqualTo("4:1 for the short kit");
    assertThat(sheet.minimumOhm()).isEqualTo(1000);
    assertThat(sheet.powerWatts()).isEqualTo(100);
    assertThat(sheet.swr()).containsExactly(1.0, 2.0, 3.0);
    assertThat(sheet.allowedRise()).isEqualTo(60);
    assertThat(sheet.fluxLimit()).isEqualTo(0.05);
    assertThat(sheet.limits()).isEmpty();
    assertThat(sheet.spots())
        .containsExactly(
            new TransformerSheet.Spot("lowest", 5e6),
            new TransformerSheet.Spot("-", 7e6),
            new TransformerSheet.Spot("-", 14e6));
  }

  /** No turn fewer than the impedance asks for, no turn more. */
  @Test
  void turnsAreTheFewestThatReachTheImpedance() throws IOException {
    TransformerSheet sheet = read(LEAST + "minimum-impedance: 2 kohm\n");
    assertThat(sheet.turnsFound()).isTrue();
    assertThat(sheet.minimumOhm()).isEqualTo(2000);
    Winding winding = sheet.design().winding();
    assertThat(ohms(winding, winding.turns())).isGreaterThanOrEqualTo(2000);
    assertThat(ohms(winding, winding.turns() - 1)).isLessThan(2000);
    assertThat(winding.line().length())
        .isGreaterThanOrEqualTo(winding.turns() * winding.core().turnLength() * (1 - 1e-9));
    TransformerSheet stated = read(LEAST.replace("wound:\n", "wound:\n  turns: 9\n"));
    assertThat(stated.turnsFound()).isFalse();
    assertThat(stated.design().winding().turns()).isEqualTo(9);
  }

  private static double ohms(Winding winding, int turns) {
    return winding.core().winding(turns, 0).at(5e6).abs();
  }

  @Test
  void whatIsStatedCounts() throws IOException {
    TransformerSheet sheet =
        read(
            LEAST.replace(
                    "frequencies: [7 MHz, 14 MHz]",
                    "bands: {plan: iaru-region-1, use: [60 m, 40 m]}")
                + """
                power: 400 W
                swr: [1, 5]
                temperature-rise: 40 K
                flux-density: 20 mT
                limits: {loss: 1 dB, amplitude: 0.5 dB, phase: 10 deg, return-loss: 14 dB, from: 5 MHz, to: 30 MHz}
                """);
    assertThat(sheet.powerWatts()).isEqualTo(400);
    assertThat(sheet.swr()).containsExactly(1.0, 5.0);
    assertThat(sheet.allowedRise()).isEqualTo(40);
    assertThat(sheet.fluxLimit()).isEqualTo(0.02);
    assertThat(sheet.spots())
        .extracting(TransformerSheet.Spot::name)
        .containsExactly("lowest", "60 m", "60 m", "40 m", "40 m");
    assertThat(sheet.limits())
        .contains(
            new TransformerSheet.Acceptance(
                new Limits(1, 0.5, Math.toDegrees(Math.toRadians(10)), 14),
                new Limits.Range(5e6, 30e6)));
  }

  @ParameterizedTest
  @CsvSource(
      delimiter = '|',
      textBlock =
          """
          transformer/1   | transformer/2   | is not known here; expected spanwire-transformer/1
          ratio: 4        | ratio: 5        | expected the square of a number of lines: 1, 4, 9, 16
          ratio: 4        | ratio: 100      | expected the square of a number of lines
          equal-delay     | autotransformer-of-ours | expected one of autotransformer, equal-delay
          inner: 35.5 mm  | inner: 61 mm    | give positive sizes, the inner smaller
          lowest: 5 MHz   | lowest: 0 Hz    | expected more than 0
          """)
  void mistakesAreRefusedWithTheirPlace(String good, String bad, String message) {
    assertThat(LEAST).contains(good);
    assertThatThrownBy(() -> read(LEAST.replace(good, bad)))
        .isInstanceOf(DesignException.class)
        .hasMessageContaining("sheet.yaml:")
        .hasMessageContaining(message);
  }

  @Test
  void listsAndRangesAreRefusedWithTheirPlace() {
    assertThatThrownBy(() -> read(LEAST + "swr: [0.5]\n"))
        .hasMessageContaining("sheet.yaml:10:")
        .hasMessageContaining("expected an SWR of at least 1");
    assertThatThrownBy(() -> read(LEAST + "swr: []\n")).hasMessageContaining("is empty; expected");
    assertThatThrownBy(
            () ->
                read(
                    LEAST
                        + "limits: {loss: 1 dB, amplitude: 1 dB, phase: 9 deg, return-loss: 9 dB,"
                        + " from: 3 MHz, to: 3 MHz}\n"))
        .hasMessageContaining("to is not above from; exchange them");
  }
}
