package org.spanwire.cli;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

/** {@code spanwire baseline}: notices what a supplier's wire does, and no more than that. */
class BaselineTest {

  @TempDir private Path directory;
  private Path kit;
  private Path record;

  @BeforeEach
  void recordAnExample() throws IOException {
    kit = directory.resolve("kit.yaml");
    Files.copy(Run.EXAMPLES.resolve("mast-inverted-v.yaml"), kit);
    record = directory.resolve("kit.baseline.csv");
    Run run = Run.of("baseline", "record", kit.toString());
    assertThat(run.code()).as(run.err()).isZero();
    assertThat(run.out()).isEqualTo(record + ": 19 results recorded\n");
  }

  private Run compare(String... options) {
    String[] all = new String[options.length + 3];
    all[0] = "baseline";
    all[1] = "compare";
    all[2] = kit.toString();
    System.arraycopy(options, 0, all, 3, options.length);
    return Run.of(all);
  }

  @Test
  void theRecordIsShortAndForReading() throws IOException {
    String text = Files.readString(record);
    assertThat(text)
        .startsWith("# spanwire-baseline/1\n# Inverted V on a mast\n# recorded by Spanwire ")
        .contains("\nplace,quantity,value,limit\n7.1 MHz,resistance_ohm,")
        .contains("\nmiddle of 15 m,gain_peak_dbi,", "\n40 m,swr_maximum,")
        .hasLineCount(23);
    assertThat(text.length()).isLessThan(1200);
  }

  @Test
  void theSameDesignHasNotMoved() {
    Run run = compare();
    assertThat(run.code()).isZero();
    assertThat(run.out()).contains("0 of 19 results moved by more than their limits");
  }

  /** 10.2 m of leg, longer by a millionth: noise between versions of a program. */
  @Test
  void aMillionthIsNoDrift() {
    assertThat(compare("--set", "leg=10.2000102m").code()).isZero();
  }

  @Test
  void aTighterToleranceIsNoDrift() {
    assertThat(compare("--tolerance", "0.01%").code()).isZero();
  }

  @Test
  void halfAPercentOfWireIsADrift() {
    Run run = compare("--set", "leg=10.251m");
    assertThat(run.code()).isEqualTo(1);
    assertThat(run.out())
        .contains("was", "is", "limit")
        .containsPattern("7\\.1 MHz +reactance_ohm +-?\\d")
        .contains("of 19 results moved");
    assertThat(run.out().lines()).allMatch(line -> line.length() <= 118);
    Run json = compare("--set", "leg=10.251m", "--format", "json");
    assertThat(json.code()).isEqualTo(1);
    assertThat(JsonSchema.result().faultsOfJson(json.out())).isEmpty();
    assertThat(json.out()).contains("\"drifted\" : true", "\"drifted\" : false");
    Run csv = compare("--set", "leg=10.251m", "--format", "csv");
    assertThat(csv.out()).hasLineCount(20).contains(",true\n", ",false\n");
  }

  @Test
  void whatAppearsOrVanishesIsADrift() throws IOException {
    Files.writeString(record, Files.readString(record).replace("7.1 MHz,swr,", "7.2 MHz,swr,"));
    Run run = compare("--format", "json");
    assertThat(run.code()).isEqualTo(1);
    assertThat(JsonSchema.result().faultsOfJson(run.out())).isEmpty();
    assertThat(run.out()).contains("\"was\" : null", "\"is\" : null");
    assertThat(compare().out()).contains("2 of 20 results moved");
  }

  @Test
  void aSpoiltRecordIsBadInputWithItsLine() throws IOException {
    String good = Files.readString(record);
    spoilt(good.replace("7.1 MHz,swr,1", "7.1 MHz,swr,x"), ":7: value must be a number");
    spoilt(good.replace("baseline/1", "baseline/9"), ":1: expected # spanwire-baseline/1");
    spoilt(good.replace("place,quantity", "quantity,place"), ":4: expected place,quantity");
    spoilt(good + "7.1 MHz,swr,1,1\n", ":24: swr at 7.1 MHz stands in line 7 already");
    spoilt(good + "\"7.1 MHz,swr,1,1\n", ": has a quotation mark left open");
    spoilt("", "is empty");
    Files.delete(record);
    Run missing = compare();
    assertThat(missing.code()).isEqualTo(2);
    assertThat(missing.err()).contains("run spanwire baseline record first").hasLineCount(1);
  }

  private void spoilt(String text, String message) throws IOException {
    Files.writeString(record, text);
    Run run = compare();
    assertThat(run.err()).contains(record.toString(), message).hasLineCount(1);
    assertThat(run.code()).isEqualTo(2);
  }

  @Test
  void recordsMayLieElsewhere() throws IOException {
    Path elsewhere = Files.createDirectory(directory.resolve("records"));
    Run run = Run.of("baseline", "record", kit.toString(), "--directory", elsewhere.toString());
    assertThat(run.code()).isZero();
    assertThat(elsewhere.resolve("kit.baseline.csv")).hasSameTextualContentAs(record);
    Run nowhere = Run.of("baseline", "record", kit.toString(), "--directory", elsewhere + "/none");
    assertThat(nowhere.code()).isEqualTo(2);
    assertThat(nowhere.err()).contains("there is no directory " + elsewhere).hasLineCount(1);
  }

  @Test
  void neverWritesOverADesign() throws IOException {
    String design = Files.readString(kit);
    Run compared = compare("--output", kit.toString());
    assertThat(compared.code()).isEqualTo(2);
    assertThat(compared.err()).contains("is the design itself").hasLineCount(1);
    assertThat(kit).hasContent(design);
  }

  /** Five results at a frequency and in the middle of a band, two extremes of SWR over the band. */
  @ParameterizedTest
  @CsvSource(
      delimiter = '|',
      value = {"frequencies: [7.1 MHz] | 5", "'bands: {plan: iaru-region-1, use: [40 m]}' | 7"})
  void aFrequencyOrABandIsEnough(String places, int results) throws IOException {
    Run run = Run.of("baseline", "record", dipole(places).toString());
    assertThat(run.code()).as(run.err()).isZero();
    assertThat(run.out()).endsWith(": " + results + " results recorded\n");
  }

  @Test
  void nothingToRecordIsBadInput() throws IOException {
    Path dipole = dipole("");
    for (String command : new String[] {"record", "compare"}) {
      Run run = Run.of("baseline", command, dipole.toString());
      assertThat(run.code()).isEqualTo(2);
      assertThat(run.err())
          .contains("dipole.yaml: names no frequencies and no bands; add frequencies: [7.1 MHz]")
          .hasLineCount(1);
    }
  }

  private Path dipole(String places) throws IOException {
    return Files.writeString(
        directory.resolve("dipole.yaml"),
        """
        format: spanwire-design/1
        title: Dipole
        conductors: {strand: {material: copper, diameter: 2 mm}}
        wires: {radiator: {conductor: strand, path: [[0, 0, 10], [20.2, 0, 10]]}}
        feeds: {main: {wire: radiator, at: 50 %}}
        ground: perfect
        """
            + places);
  }

  @Test
  void withoutACommandItShowsWhatCanBeDone() {
    Run run = Run.of("baseline");
    assertThat(run.code()).isZero();
    assertThat(run.out()).contains("Record the results of designs", "Compare the results");
  }

  @Test
  void twoDesignsDoNotShareARecord() throws IOException {
    Path elsewhere = Files.createDirectory(directory.resolve("records"));
    Path other = Files.createDirectory(directory.resolve("other")).resolve("kit.yaml");
    Files.copy(kit, other);
    for (String command : new String[] {"record", "compare"}) {
      Run run =
          Run.of(
              "baseline",
              command,
              kit.toString(),
              other.toString(),
              "--directory",
              elsewhere.toString());
      assertThat(run.code()).isEqualTo(2);
      assertThat(run.err())
          .contains("kit.baseline.csv: is the record of two designs, " + kit + " and " + other)
          .hasLineCount(1);
    }
    assertThat(elsewhere).isEmptyDirectory();
  }

  /** Records of one run belong together: a design that cannot be solved stops them all. */
  @Test
  void recordsAllOrNone() throws IOException {
    Path good = dipole("frequencies: [7.1 MHz]");
    Path crossing =
        Files.writeString(
            directory.resolve("crossing.yaml"),
            Files.readString(good)
                .replace(
                    "[20.2, 0, 10]]}",
                    "[20.2, 0, 10]]}, other: {conductor: strand, path: [[5, -3, 10], [5, 3, 10]]}"));
    Run run = Run.of("baseline", "record", good.toString(), crossing.toString());
    assertThat(run.code()).isEqualTo(2);
    assertThat(run.err()).contains("crossing.yaml").hasLineCount(1);
    assertThat(run.out()).isEmpty();
    assertThat(directory.resolve("dipole.baseline.csv")).doesNotExist();
  }
}
