package org.spanwire.design;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.assertj.core.api.Assertions.within;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

class MeasuredSwrReaderTest {

  private static final String FILE =
      """
      format: spanwire-measured/1
      title: Larch hut
      plane: transformer-input
      reference: 75 ohm
      error: 3 %
      line: {impedance: 75 ohm, length: 8 m, velocity-factor: 0.8, loss: {frequency: 10 MHz, per: 100 m, value: 2 dB}}
      readings:
        - {at: 7.2 MHz, swr: 2.2, error: 10 %}
        - {at: 3.6 MHz, swr: 1.4}
      """;

  @TempDir private Path directory;

  private MeasuredSwr read(String text) throws IOException {
    return MeasuredSwrReader.read(Files.writeString(directory.resolve("swr.yaml"), text));
  }

  @Test
  void readsWhatIsWritten() throws IOException {
    MeasuredSwr measured = read(FILE);
    assertThat(measured.title()).isEqualTo("Larch hut");
    assertThat(measured.plane()).isEqualTo(MeasuredSwr.Plane.TRANSFORMER_INPUT);
    assertThat(measured.referenceOhm()).isEqualTo(75);
    assertThat(measured.line().orElseThrow().matchedLossDb(10e6)).isCloseTo(0.16, within(1e-12));
    assertThat(measured.readings())
        .containsExactly(
            new MeasuredSwr.Reading(3.6e6, 1.4, 0.03), new MeasuredSwr.Reading(7.2e6, 2.2, 0.1));
  }

  @Test
  void whatIsLeftOutIsUsual() throws IOException {
    MeasuredSwr measured =
        read("format: spanwire-measured/1\ntitle: t\nreadings: [{at: 7 MHz, swr: 1.0}]\n");
    assertThat(measured.plane()).isEqualTo(MeasuredSwr.Plane.TRANSMITTER);
    assertThat(measured.referenceOhm()).isEqualTo(50);
    assertThat(measured.line()).isEmpty();
    assertThat(measured.readings().get(0).error()).isEqualTo(MeasuredSwr.USUAL_ERROR);
  }

  @ParameterizedTest
  @CsvSource(
      delimiter = '|',
      value = {
        "swr: 1.4            | swr: 0.4            | swr.yaml:9:24: swr of item 2",
        "swr: 1.4            | swr: 1.4 dB         | swr.yaml:9:24: swr of item 2",
        "at: 3.6 MHz, swr    | at: 3.6 m, swr      | expected a frequency",
        "swr: 1.4            | return-loss: 12 dB  | unknown key 'return-loss'",
        "error: 10 %         | error: 150 %        | such as 5 %",
        "plane: transformer-input | plane: shack   | plane of the file is 'shack'",
        "spanwire-measured/1 | spanwire-readings/1 | expected spanwire-measured/1",
        "title: Larch hut    | # no title          | has no title",
        "length: 8 m         | length: 0 m         | expected more than 0",
      })
  void faultsAreLocated(String good, String bad, String message) {
    assertThatThrownBy(() -> read(FILE.replace(good, bad)))
        .isInstanceOf(DesignException.class)
        .hasMessageContaining(message)
        .hasMessageMatching(".*swr\\.yaml:\\d+:\\d+: .*");
  }

  @Test
  void noReadingsAreRefused() {
    assertThatThrownBy(() -> read(FILE.replaceAll("(?s)readings:.*", "readings: []\n")))
        .hasMessageContaining("no readings; add one");
  }
}
