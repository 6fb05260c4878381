package org.spanwire;

import static org.assertj.core.api.Assertions.assertThatThrownBy;

import java.nio.file.Path;
import java.util.List;
import java.util.stream.Stream;
import org.junit.jupiter.api.Named;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.function.Executable;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.Arguments;
import org.junit.jupiter.params.provider.MethodSource;
import org.spanwire.circuit.Touchstone;
import org.spanwire.design.DesignReader;
import org.spanwire.geometry.GeometryException;
import org.spanwire.geometry.Point;
import org.spanwire.geometry.Position;
import org.spanwire.medium.Conductor;
import org.spanwire.study.FrequencyRange;
import org.spanwire.study.FrequencyResponse;
import org.spanwire.study.Installation;
import org.spanwire.study.InstallationResponse;

/** What a program does wrong at the library's doors is told by the name of the argument. */
class MisuseTest {

  private static final Antenna ANTENNA =
      Antenna.builder()
          .wire("dipole", Conductor.perfect(1e-3), new Point(0, 0, 9), new Point(20, 0, 9))
          .feed("main", "dipole", Position.fraction(0.5))
          .build();

  private static final FrequencyRange RANGE = new FrequencyRange(7e6, 7.1e6);
  private static final Solver SOLVER = new Solver();

  private static Arguments call(String argument, String name, Executable call) {
    return Arguments.of(argument, Named.of(name, call));
  }

  static Stream<Arguments> calls() {
    double[] one = {7e6};
    return Stream.of(
        call("antenna", "solve", () -> SOLVER.solve(null, 7e6)),
        call("antenna", "check", () -> SOLVER.check(null, 7e6)),
        call("antenna", "solveAll", () -> SOLVER.solveAll(null, 7e6)),
        call("frequenciesHz", "solveAll", () -> SOLVER.solveAll(ANTENNA, (double[]) null)),
        call("frequenciesHz", "family", () -> SOLVER.family(ANTENNA, null, one, 1)),
        call("lifts", "family", () -> SOLVER.family(ANTENNA, one, null, 1)),
        call("antenna", "movingFeed", () -> SOLVER.movingFeed(null, List.of(), one, one, 1)),
        call("places", "solveAlong", () -> SOLVER.solveAlong(ANTENNA, null, 7e6)),
        call("options", "Solver", () -> new Solver(null)),
        call("material", "bare", () -> Conductor.bare(null, 1e-3)),
        call("file", "DesignReader", () -> DesignReader.read((Path) null)),
        call("text", "DesignReader", () -> DesignReader.read(null, "kit")),
        call("text", "Touchstone", () -> Touchstone.parse("kit.s1p", null)),
        call("design", "Installation", () -> Installation.of(null)),
        call("antenna", "response", () -> FrequencyResponse.of(null, RANGE, 1e-3, 1)),
        call("range", "response", () -> FrequencyResponse.of(ANTENNA, null, 1e-3, 1)),
        call(
            "installation",
            "response of an installation",
            () -> InstallationResponse.of(null, SOLVER, RANGE, 1e-3, List.of(), 1)));
  }

  @ParameterizedTest(name = "{1} without {0}")
  @MethodSource("calls")
  void aMissingArgumentIsNamed(String argument, Executable call) {
    assertThatThrownBy(call::execute).isInstanceOf(NullPointerException.class).hasMessage(argument);
  }

  @Test
  void atLeastOneThreadIsNeeded() {
    assertThatThrownBy(() -> FrequencyResponse.of(ANTENNA, RANGE, 1e-3, 0))
        .isInstanceOf(IllegalArgumentException.class)
        .hasMessage("threads 0 must be at least 1");
  }

  @Test
  void twoWiresOfOneNameAreRefused() {
    Antenna twice =
        ANTENNA.toBuilder()
            .wire("dipole", Conductor.perfect(1e-3), new Point(0, 5, 9), new Point(20, 5, 9))
            .build();
    assertThatThrownBy(() -> SOLVER.solve(twice, 7e6))
        .isInstanceOf(GeometryException.class)
        .hasMessageContaining("dipole");
  }
}
