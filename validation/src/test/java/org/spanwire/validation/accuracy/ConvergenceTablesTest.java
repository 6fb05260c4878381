package org.spanwire.validation.accuracy;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.Arrays;
import java.util.List;
import java.util.Map;
import java.util.stream.Collectors;
import org.junit.jupiter.api.BeforeAll;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.EnumSource;

/** Convergence of every structure, and the tables of the theory notes held to what is computed. */
class ConvergenceTablesTest {

  private static final Path THEORY = Path.of("..", "solver-core", "THEORY.md");

  private static Map<ConvergenceStructure, ConvergenceTable> tables;

  @BeforeAll
  static void computeTables() {
    tables =
        Arrays.stream(ConvergenceStructure.values())
            .parallel()
            .collect(Collectors.toConcurrentMap(s -> s, ConvergenceTable::of));
  }

  @ParameterizedTest
  @EnumSource
  void theoryNotesShowWhatTheCommandPrints(ConvergenceStructure structure) throws IOException {
    String notes = Files.readString(THEORY);
    String begin = "<!-- convergence tables: begin -->";
    String end = "<!-- convergence tables: end -->";
    String section = notes.substring(notes.indexOf(begin), notes.indexOf(end));
    String heading = "### " + structure.title() + "\n";
    assertThat(section).contains(heading);
    String from = section.substring(section.indexOf(heading) + heading.length());
    List<String> printed =
        rows(from.contains("###") ? from.substring(0, from.indexOf("###")) : from);
    List<String> computed = rows(tables.get(structure).markdown());
    assertThat(printed).hasSameSizeAs(computed);
    for (int i = 0; i < computed.size(); i++) {
      String[] expected = printed.get(i).split("\\|", -1);
      String[] found = computed.get(i).split("\\|", -1);
      assertThat(found[1]).as("unknowns; print the tables anew").isEqualTo(expected[1]);
      for (int column = 2; column <= 3; column++) {
        assertThat(Double.parseDouble(found[column]))
            .isCloseTo(Double.parseDouble(expected[column]), within(2e-5));
      }
      assertThat(Double.parseDouble(found[5]))
          .as("stated error")
          .isCloseTo(
              Double.parseDouble(expected[5]), within(0.1 * Double.parseDouble(expected[5])));
    }
  }

  private static List<String> rows(String table) {
    return table.lines().filter(line -> line.matches("\\| \\d.*")).toList();
  }

  @ParameterizedTest
  @EnumSource
  void errorFallsFasterThanAnyFixedPower(ConvergenceStructure structure) {
    ConvergenceTable table = tables.get(structure);
    int finest = table.runs().size() - 1;
    assertThat(finest).isGreaterThanOrEqualTo(6);
    assertThat(table.runs().get(finest).statedError()).as("reference").isLessThan(1e-7);
    int last = finest - 1;
    assertThat(table.error(last)).isLessThan(1e-6);
    // Halves: the mean slope over the finer half of the runs is steeper than over the coarser one.
    // On the long wire the unknowns that carry the wave come on top, which steepens its first
    // steps.
    int middle = last / 2;
    double growth = structure == ConvergenceStructure.OFF_CENTRE ? 1.15 : 1.3;
    assertThat(meanSlope(table, middle, last)).isGreaterThan(growth * meanSlope(table, 0, middle));
    // A uniform mesh stays at a slope near 1 at feeds and ends, one of fixed low order near 2.
    assertThat(meanSlope(table, 0, last)).isGreaterThan(3);
  }

  private static double meanSlope(ConvergenceTable table, int from, int to) {
    return Math.log(table.error(from) / table.error(to))
        / Math.log((double) table.runs().get(to).unknowns() / table.runs().get(from).unknowns());
  }
}
