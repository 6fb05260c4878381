package org.spanwire.validation.accuracy;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.EnumSource;

/** Convergence of two structures, and the tables of the theory notes held to what is computed. */
class ConvergenceTablesTest {

  private static final Path THEORY = Path.of("..", "solver-core", "THEORY.md");

  @ParameterizedTest
  @EnumSource(names = {"DIPOLE", "VEE"})
  void theoryNotesShowWhatTheCommandPrints(ConvergenceStructure structure) throws IOException {
    String notes = Files.readString(THEORY);
    String begin = "<!-- convergence tables: begin -->";
    String end = "<!-- convergence tables: end -->";
    String tables = notes.substring(notes.indexOf(begin), notes.indexOf(end));
    String heading = "### " + structure.title() + "\n";
    assertThat(tables).contains(heading);
    String from = tables.substring(tables.indexOf(heading) + heading.length());
    List<String> printed =
        rows(from.contains("###") ? from.substring(0, from.indexOf("###")) : from);
    List<String> computed = rows(ConvergenceTable.of(structure).markdown());
    assertThat(printed).hasSameSizeAs(computed);
    for (int i = 0; i < computed.size(); i++) {
      String[] expected = printed.get(i).split("\\|");
      String[] found = computed.get(i).split("\\|");
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
  @EnumSource(names = {"DIPOLE", "VEE", "FOLDED_DIPOLE"})
  void errorFallsFasterThanAnyFixedPower(ConvergenceStructure structure) {
    ConvergenceTable table = ConvergenceTable.of(structure);
    int last = table.runs().size() - 2;
    assertThat(last).isGreaterThanOrEqualTo(4);
    assertThat(table.error(last)).isLessThan(2e-6);
    // Halves: the mean slope over the finer half of the runs is steeper than over the coarser one.
    int middle = last / 2;
    assertThat(meanSlope(table, middle, last)).isGreaterThan(1.3 * meanSlope(table, 0, middle));
    // A uniform mesh stays at a slope near 1 at feeds and ends.
    assertThat(meanSlope(table, 0, middle)).isGreaterThan(2);
  }

  private static double meanSlope(ConvergenceTable table, int from, int to) {
    return Math.log(table.error(from) / table.error(to))
        / Math.log((double) table.runs().get(to).unknowns() / table.runs().get(from).unknowns());
  }
}
