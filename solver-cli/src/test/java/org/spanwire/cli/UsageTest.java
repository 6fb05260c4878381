package org.spanwire.cli;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.MethodSource;
import picocli.CommandLine;

class UsageTest {

  private static final String DESIGN = Run.EXAMPLES.resolve("hut-kit-short.yaml").toString();

  private static final String READINGS =
      Run.EXAMPLES.resolve("workshop/balun-readings.yaml").toString();

  @TempDir private Path directory;

  @Test
  void bareCommandShowsTheHelp() {
    Run bare = Run.of();
    assertThat(bare.code()).isZero();
    assertThat(bare.err()).isEmpty();
    assertThat(bare.out())
        .contains(
            "solve", "bands", "sweep", "merge", "schema", "completion", "Examples:", "Exit codes:");
    assertThat(Run.of("--help").out()).isEqualTo(bare.out());
  }

  static List<String> commands() {
    return List.copyOf(new CommandLine(new Spanwire()).getSubcommands().keySet());
  }

  @Test
  void theHelpNamesEveryCommand() {
    assertThat(commands()).contains("report", "exposure", "cut").hasSizeGreaterThan(12);
    assertThat(Run.of("--help").out()).contains(commands());
  }

  @ParameterizedTest
  @MethodSource("commands")
  void everyCommandTeachesByExample(String command) {
    Run help = Run.of(command, "--help");
    assertThat(help.code()).isZero();
    assertThat(help.out()).containsSubsequence("Examples:", "spanwire " + command);
  }

  @Test
  void helpFitsAnOrdinaryTerminal() {
    for (String command : commands()) {
      assertThat(Run.of(command, "--help").out().lines()).allMatch(line -> line.length() <= 80);
    }
  }

  @Test
  void versionIsThatOfTheBuild() {
    assertThat(Run.of("--version").out()).matches("spanwire \\d+\\.\\d+\\.\\d+(-SNAPSHOT)?\\R");
  }

  @Test
  void completionScriptKnowsCommandsAndOptions() {
    Run run = Run.of("completion");
    assertThat(run.code()).isZero();
    assertThat(run.out()).startsWith("#!/usr/bin/env bash").contains("solve", "--power-balance");
  }

  @ParameterizedTest
  @CsvSource(
      delimiter = '|',
      quoteCharacter = '"',
      value = {
        "solve                               | DESIGN          | solve --help",
        "frobnicate                          | 'frobnicate'    | spanwire --help",
        "solve D --frequenzy 7MHz            | --frequenzy     | did you mean --frequency",
        "solve D --frequency 7m              | '7m' is a length| 7.1MHz",
        "solve D --frequency 0Hz             | frequency 0Hz   | 7.1MHz",
        "solve D --frequency 7.1             | frequency 7.1 has no unit | 7.1MHz",
        "solve D --frequency 7,1MHz          | frequency 7 has no unit   | 7.1MHz",
        "response D --range 7:8              | frequency 7 has no unit   | 7.1MHz",
        "solve D --tolerance 0.1             | tolerance 0.1 has no unit | such as 0.1%",
        "solve D --frequency -7MHz           | above zero      | 7.1MHz",
        "solve D --frequency 7.1GMHz         | GMHz            | --frequency",
        "solve D --elevation 91              | --elevation 91  | between -90 and 90",
        "solve D --azimuth 0                 | --azimuth       | --elevation 30",
        "solve D --currents 1                | --currents 1    | at least 2",
        "solve D --currents -5               | --currents -5   | at least 2",
        "solve D --tolerance 50%             | --tolerance     | between 0.00001% and 10%",
        "solve D --tolerance 1m              | '1m' is a length| number",
        "solve D --threads 0                 | --threads 0     | at least 1",
        "solve D --format xml                | 'xml'           | TEXT, JSON, CSV",
        "solve D --set height                | Value for option '--set' | NAME=VALUE",
        "solve D --set heigth=9m             | 'heigth'        | did you mean height",
        "solve D --set height=9MHz           | 9MHz            | length",
        "solve D --output a.svg --plot ./a.svg       | ./a.svg: is named by --output and --plot | two files",
        "response D --output a.s1p --touchstone a.s1p | a.s1p: is named by --output and --touch | two files",
        "bands D --points 2                  | --points 2      | between 3 and 200",
        "sweep D --vary height=6m,9m --of swr --points 3 | --points 3 | for --bands; add it",
        "bands D --choke-limit 15W           | --choke-limit   | add it, such as --line-lengths",
        "yield D --seed x                    | 'x' is no whole number | yield --help",
        "exposure D --transmitting 150%      | --transmitting  | at most 100%",
        "exposure D --floors -3m             | --floors        | such as 0m,3m",
        "solve D --threads two               | 'two' is no whole number | solve --help",
        "bands D --points many               | 'many'          | bands --help",
        "report D -o a.html --map offset,offset     | offset,offset   | two parameters",
        "report D -o a.html --map offset,mast       | unknown parameter 'mast' | known are span, tail, offset, height",
        "report D -o a.html --heights 5m,7m         | --heights       | add --on-site",
        "report D -o a.html --soils very-dry        | --soils         | add --on-site",
        "report D -o a.html --line-lengths 5m:9m:3  | --line-lengths  | --install-sheet",
        "balun bench U --min-return-loss -14dB  | --min-return-loss -14 | above zero",
        "balun bench U --max-loss 0dB           | --max-loss 0    | above zero",
        "balun bench U --fixture empty.s2p      | --fixture       | add --choke",
        "schema report                       | 'report'        | design, result"
      })
  void badUsageIsOneLineThatNamesTheFaultAndTheRemedy(String line, String fault, String remedy) {
    Run run = Run.of(line.replace(" D", " " + DESIGN).replace(" U", " " + READINGS).split(" "));
    assertThat(run.err()).startsWith("spanwire: ").contains(fault, remedy).hasLineCount(1);
    assertThat(run.code()).isEqualTo(2);
    assertThat(run.out()).isEmpty();
  }

  @Test
  void anOutputFileThatCannotBeWrittenIsRefusedBeforeTheWorkBegins() throws IOException {
    Path nowhere = directory.resolve("missing").resolve("result.json");
    Run run = Run.of("solve", DESIGN, "--output", nowhere.toString());
    assertThat(run.code()).isEqualTo(2);
    assertThat(run.err()).contains("no directory").hasLineCount(1);

    Run onDirectory = Run.of("solve", DESIGN, "--output", directory.toString());
    assertThat(onDirectory.code()).isEqualTo(2);
    assertThat(onDirectory.err()).contains("is a directory").hasLineCount(1);
  }

  @Test
  void theDesignIsNeverOverwritten() throws IOException {
    Path design = Files.copy(Path.of(DESIGN), directory.resolve("kit.yaml"));
    byte[] before = Files.readAllBytes(design);
    Run run = Run.of("solve", design.toString(), "--output", design.toString());
    assertThat(run.code()).isEqualTo(2);
    assertThat(run.err()).contains("is the design itself").hasLineCount(1);
    assertThat(Files.readAllBytes(design)).isEqualTo(before);
  }

  @Test
  void aDesignWithoutFrequenciesOrBandsSaysHowToGiveThem() throws IOException {
    Path design = directory.resolve("kit.yaml");
    Files.writeString(
        design,
        Files.readString(Path.of(DESIGN))
            .replaceAll("(?ms)^(bands|frequencies|requirements):.*?(?=^\\S|\\z)", ""));
    assertThat(Run.of("solve", design.toString()).err())
        .contains("--frequency 7.1MHz")
        .hasLineCount(1);
    assertThat(Run.of("bands", design.toString()).err()).contains("iaru-region-1").hasLineCount(1);
  }
}
