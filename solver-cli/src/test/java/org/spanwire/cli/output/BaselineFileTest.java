package org.spanwire.cli.output;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.NoSuchFileException;
import java.nio.file.Path;
import java.util.List;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.ValueSource;
import org.spanwire.study.Baseline;

class BaselineFileTest {

  private static final String RECORD =
      """
      # spanwire-baseline/1
      # Hut kit
      # recorded by Spanwire 1.2.3, tolerance 0.001
      place,quantity,value,limit
      7.1 MHz,resistance_ohm,67.25,0.21
      "middle of ""40 m"", low",swr,1.5,0
      """;

  private static final Baseline BASELINE =
      new Baseline(
          List.of(
              new Baseline.Entry("7.1 MHz", "resistance_ohm", 67.25, 0.21),
              new Baseline.Entry("middle of \"40 m\", low", "swr", 1.5, 0)));

  @TempDir private Path directory;
  private Path file;

  @BeforeEach
  void nameTheFile() {
    file = directory.resolve("kit.baseline.csv");
  }

  private Baseline read(String text) throws IOException, BaselineFile.UnfitException {
    return BaselineFile.read(Files.writeString(file, text));
  }

  private void refused(String text, String problem) {
    assertThatThrownBy(() -> read(text))
        .isInstanceOf(BaselineFile.UnfitException.class)
        .hasMessage(file + problem);
  }

  @Test
  void aRecordIsForReading() {
    assertThat(BaselineFile.text(BASELINE, "Hut kit", "1.2.3", 0.001)).isEqualTo(RECORD);
  }

  @Test
  void whatIsWrittenIsRead() throws Exception {
    assertThat(read(BaselineFile.text(BASELINE, "Hut kit", "1.2.3", 0.001))).isEqualTo(BASELINE);
  }

  @Test
  void valuesKeepSevenDigitsAndLimitsTwo() {
    Baseline digits =
        new Baseline(List.of(new Baseline.Entry("40 m", "swr", 1.23456789, 0.00123456)));
    assertThat(BaselineFile.text(digits, "Hut kit", "1.2.3", 0.001))
        .endsWith("\n40 m,swr,1.234568,0.0012\n");
  }

  /** A title of two lines stays a comment. */
  @Test
  void noTitleSpoilsTheRecord() throws Exception {
    assertThat(read(BaselineFile.text(BASELINE, "Hut kit\nplace,x", "1.2.3", 0.001)))
        .isEqualTo(BASELINE);
  }

  @Test
  void emptyLinesAndCommentsDoNotCount() throws Exception {
    assertThat(read(RECORD.replace("7.1 MHz", "\n# moved with the new wire\n7.1 MHz") + "\n\n"))
        .isEqualTo(BASELINE);
  }

  @Test
  void aRecordMayHoldNothing() throws Exception {
    assertThat(read(RECORD.substring(0, RECORD.indexOf("7.1 MHz"))).entries()).isEmpty();
  }

  @ParameterizedTest
  @CsvSource({"67.25, x", "67.25, NaN", "67.25, Infinity", "0.21, x", "0.21, -1", "0.21, NaN"})
  void whatIsNoNumberIsRefusedWithItsLine(String number, String other) {
    refused(
        RECORD.replace(number, other),
        ":5: value must be a number, limit a number not below 0;" + " record it again");
  }

  @ParameterizedTest
  @ValueSource(strings = {"40 m,swr,1\n", "40 m,swr,1,1,1\n", "40 m\n"})
  void aRowTooShortOrTooLongIsRefusedWithItsLine(String row) {
    refused(RECORD + row, ":7: expected place,quantity,value,limit");
  }

  @Test
  void anotherFormatIsRefused() {
    refused(
        RECORD.replace("baseline/1", "baseline/2"),
        ":1: expected # spanwire-baseline/1; is it the right file?");
    refused(
        "place,quantity,value,limit\n",
        ":1: expected # spanwire-baseline/1; is it the right file?");
  }

  @Test
  void otherColumnsAreRefusedWithTheirLine() {
    refused(
        RECORD.replace("place,quantity", "quantity,place"),
        ":4: expected place,quantity,value,limit");
  }

  @Test
  void aResultThatStandsThereTwiceIsRefused() {
    refused(
        RECORD + "7.1 MHz,resistance_ohm,67,0.2\n",
        ":7: resistance_ohm at 7.1 MHz stands in line 5 already; remove one of them");
  }

  @ParameterizedTest
  @ValueSource(strings = {"", "\n", "# spanwire-baseline/1\n"})
  void aFileWithoutARowIsEmpty(String text) {
    refused(text, ": is empty; record it again");
  }

  @Test
  void aQuotationMarkLeftOpenIsRefused() {
    refused(RECORD + "\"40 m,swr,1,1\n", ": has a quotation mark left open; record it again");
  }

  @Test
  void otherEncodingsAreRefused() throws IOException {
    Files.write(file, new byte[] {'#', ' ', (byte) 0xfc, '\n'});
    assertThatThrownBy(() -> BaselineFile.read(file))
        .isInstanceOf(BaselineFile.UnfitException.class)
        .hasMessage(file + ": is no UTF-8 text; record it again");
  }

  @Test
  void aByteOrderMarkDoesNotCount() throws Exception {
    assertThat(read("\uFEFF" + RECORD)).isEqualTo(BASELINE);
  }

  @Test
  void aMissingFileIsNoUnfitOne() {
    assertThatThrownBy(() -> BaselineFile.read(file)).isInstanceOf(NoSuchFileException.class);
  }
}
