package org.spanwire.cli;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.regex.MatchResult;
import java.util.regex.Pattern;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.MethodSource;
import org.spanwire.Solver;
import org.spanwire.design.Band;
import org.spanwire.design.Design;
import org.spanwire.design.DesignReader;
import org.spanwire.design.Parameter;
import org.spanwire.design.Spread;
import org.spanwire.study.Installation;
import org.spanwire.unit.Quantity;

class ExamplesTest {

  private static final Pattern SET = Pattern.compile("--set (\\w+)=(\\S+)");

  static List<Path> examples() throws IOException {
    return Run.examples();
  }

  /**
   * Unlike the schema, the solver's check knows wires that cross, touch the ground or miss their
   * feed.
   */
  private static void check(Design design) {
    assertThat(design.bands()).isNotEmpty();
    for (Band band : design.bands()) {
      new Solver().check(Installation.of(design).modelled(), band.lowHz());
      new Solver().check(Installation.of(design).modelled(), band.highHz());
    }
  }

  @Test
  void twoOrMoreShowTheRouteOfTheirLine() throws IOException {
    assertThat(examples().stream().map(DesignReader::read).filter(d -> d.feedLine().isPresent()))
        .hasSizeGreaterThanOrEqualTo(2)
        .allMatch(
            design ->
                Installation.of(design).warnings().stream()
                    .noneMatch(warning -> warning.name().equals(Installation.LINE_LENGTH)));
  }

  @Test
  void thereAreFourOrMore() throws IOException {
    assertThat(examples()).hasSizeGreaterThanOrEqualTo(4);
  }

  @ParameterizedTest
  @MethodSource("examples")
  void canBeBuiltAsGivenAndAtEveryLimit(Path example) {
    Design design = DesignReader.read(example);
    check(design);
    for (Parameter parameter : design.parameters().values()) {
      if (parameter.limits().isPresent()) {
        Parameter.Limits limits = parameter.limits().get();
        for (Quantity end : List.of(limits.low(), limits.high())) {
          check(design.with(parameter.name(), end.toString()));
        }
      }
    }
  }

  private static double size(Spread spread) {
    return spread instanceof Spread.Uniform uniform
        ? uniform.halfWidth().value()
        : ((Spread.Normal) spread).sigma().value();
  }

  /** Studies set every parameter to the ends of its spread. */
  @ParameterizedTest
  @MethodSource("examples")
  void spreadsLieWithinTheLimits(Path example) {
    for (Parameter parameter : DesignReader.read(example).parameters().values()) {
      if (parameter.limits().isPresent() && parameter.spread().isPresent()) {
        double value = parameter.value().value();
        double spread = size(parameter.spread().get());
        assertThat(value - spread).isGreaterThanOrEqualTo(parameter.limits().get().low().value());
        assertThat(value + spread).isLessThanOrEqualTo(parameter.limits().get().high().value());
      }
    }
  }

  @ParameterizedTest
  @MethodSource("examples")
  void theCommandsInItsCommentsFit(Path example) throws IOException {
    String text = Files.readString(example);
    assertThat(text).contains("#   spanwire ").contains(example.getFileName().toString());
    Design design = DesignReader.read(example);
    for (MatchResult set : SET.matcher(text).results().toList()) {
      check(design.with(set.group(1), set.group(2)));
    }
  }

  @ParameterizedTest
  @MethodSource("examples")
  void warnsOfPowerLinesVoltageAndLightning(Path example) throws IOException {
    assertThat(Files.readString(example))
        .containsPattern("power line|overhead line")
        .containsIgnoringCase("RF voltage")
        .containsPattern("[Dd]isconnect");
  }
}
