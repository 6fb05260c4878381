package org.spanwire.validation.accuracy;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.regex.Pattern;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;
import org.spanwire.Solver;

/** The figures of the theory notes show what the solver gives. */
class HeightCurvesTest {

  private static final Pattern PATH = Pattern.compile(" d=\"(M[-\\d. L]+)\"");
  private static final Pattern NUMBER = Pattern.compile("-?\\d+(\\.\\d+)?");

  private static final Path NOTES = Path.of("..", "solver-core");

  /** Every sixteenth height over every soil, to the tolerance asked for. */
  @ParameterizedTest
  @ValueSource(strings = {"sea-water", "wet-ground", "medium-dry", "very-dry"})
  void keptCurvesAreThoseOfTheSolver(String soil) {
    List<HeightCurves.Place> kept = HeightCurves.kept().over(soil);
    assertThat(kept).hasSizeGreaterThan(60);
    assertThat(kept.get(0).height()).isEqualTo(0.01);
    assertThat(kept.get(kept.size() - 1).height()).isEqualTo(1);
    Solver solver = new Solver();
    for (int i = 0; i < kept.size(); i += 16) {
      HeightCurves.Place then = kept.get(i);
      HeightCurves.Place now = HeightCurves.solve(solver, soil, then.height());
      double size = Math.hypot(then.resistance(), then.reactance());
      assertThat(now.resistance()).isCloseTo(then.resistance(), within(1e-3 * size));
      assertThat(now.reactance()).isCloseTo(then.reactance(), within(1e-3 * size));
      assertThat(now.gainDbi()).isCloseTo(then.gainDbi(), within(0.01));
    }
  }

  /** The figures lie beside the notes, which show them, and are drawn from the kept curves. */
  @Test
  void figuresAreThere(@TempDir Path directory) throws IOException {
    HeightPlots.draw(HeightCurves.kept(), directory);
    String notes = Files.readString(NOTES.resolve("THEORY.md"));
    for (String name : List.of("resistance", "reactance", "gain")) {
      String file = "figures/height-" + name + ".svg";
      assertThat(notes).contains("](" + file + ")");
      List<double[]> shown = curves(Files.readString(NOTES.resolve(file)));
      List<double[]> drawn = curves(Files.readString(directory.resolve("height-" + name + ".svg")));
      assertThat(shown).hasSize(HeightCurves.SOILS.size()).hasSameSizeAs(drawn);
      for (int i = 0; i < shown.size(); i++) {
        assertThat(shown.get(i)).containsExactly(drawn.get(i), within(0.01));
      }
    }
  }

  /**
   * Coordinates of the curves, each axis scaled to the curve's own extent: where a picture puts
   * them depends on the machine's fonts.
   */
  private static List<double[]> curves(String svg) {
    return PATH.matcher(svg)
        .results()
        .map(found -> NUMBER.matcher(found.group(1)).results())
        .map(numbers -> numbers.mapToDouble(n -> Double.parseDouble(n.group())).toArray())
        .filter(coordinates -> coordinates.length > 100)
        .map(HeightCurvesTest::scaled)
        .toList();
  }

  private static double[] scaled(double[] coordinates) {
    double[] scaled = new double[coordinates.length];
    for (int axis = 0; axis < 2; axis++) {
      double low = Double.POSITIVE_INFINITY;
      double high = Double.NEGATIVE_INFINITY;
      for (int i = axis; i < coordinates.length; i += 2) {
        low = Math.min(low, coordinates[i]);
        high = Math.max(high, coordinates[i]);
      }
      for (int i = axis; i < coordinates.length; i += 2) {
        scaled[i] = (coordinates[i] - low) / (high - low);
      }
    }
    return scaled;
  }
}
