package org.spanwire.validation;

import static org.assertj.core.api.Assertions.assertThat;

import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.ObjectMapper;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.Duration;
import java.time.Instant;
import java.util.List;
import java.util.Map;
import org.apache.commons.math3.complex.Complex;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

class ReportTest {

  private static final RunStamp STAMP =
      new RunStamp("abc123", "JDK 17", "two processors", Instant.parse("2026-01-02T03:04:05Z"));

  @Test
  void deviationDecidesAndNothingElse() {
    ValidationCase one = example("1-1");
    assertThat(Outcome.of(one, new Complex(100.9, 0)).passes()).isTrue();
    assertThat(Outcome.of(one, new Complex(101.1, 0)).passes()).isFalse();
    assertThat(Outcome.of(one, new Complex(100, 1.1)).passes()).isFalse();
    assertThat(Outcome.of(one, new Complex(Double.NaN, 0)).passes()).isFalse();
    assertThat(Outcome.of(one, Complex.INF).passes()).isFalse();
    assertThat(Outcome.failed(one, "no answer").passes()).isFalse();
  }

  @Test
  void bothFormsNameEveryCaseAndTheRun(@TempDir Path directory) throws IOException {
    ValidationRun run = run();
    Section section = new Section("## Stated error\n\nHeld.\n", List.of("moved"));
    ValidationReport.write(run, List.of(section), directory);
    String text = Files.readString(directory.resolve("spanwire-validation.md"));
    assertThat(text)
        .contains("1 of 3 cases pass", "abc123", "JDK 17", "two processors", "2026-01-02")
        .contains(
            "| 1-1 | input impedance (ohm) | 100.0000 | 100.5000 | 0.500 % | 1.00 % | Hallén 1938; integral equation | yes |")
        .contains("| 1-2 |", "| **no** |", "no answer", "because")
        .endsWith("\n## Stated error\n\nHeld.\n");

    JsonNode json =
        new ObjectMapper().readTree(directory.resolve("spanwire-validation.json").toFile());
    assertThat(json.get("passed").intValue()).isEqualTo(1);
    assertThat(json.get("commit").textValue()).isEqualTo("abc123");
    assertThat(json.get("cases")).hasSize(3);
    assertThat(json.get("cases").get(0).get("pass").booleanValue()).isTrue();
    assertThat(json.get("cases").get(1).get("pass").booleanValue()).isFalse();
    assertThat(json.get("cases").get(2).get("failure").textValue()).isEqualTo("no answer");
    assertThat(json.at("/faults/0").textValue()).isEqualTo("moved");
  }

  private static ValidationRun run() {
    List<ValidationCase> cases = List.of(example("1-1"), example("1-2"), example("1-3"));
    List<Outcome> outcomes =
        List.of(
            Outcome.of(cases.get(0), new Complex(100.5)),
            Outcome.of(cases.get(1), new Complex(150)),
            Outcome.failed(cases.get(2), "no answer"));
    List<CaseGroup> groups = List.of(new CaseGroup(1, "Dipole", cases));
    return new ValidationRun(STAMP, groups, outcomes, Duration.ofSeconds(2));
  }

  private static ValidationCase example(String id) {
    Structure structure = new Structure(Shape.DIPOLE, new Parameters(Map.of()));
    return new ValidationCase(
        id,
        1,
        structure,
        structure,
        Quantity.INPUT_IMPEDANCE,
        new Complex(100),
        new Tolerance(0.01, true, "because"),
        "Hallén 1938",
        Origin.INTEGRAL_EQUATION);
  }
}
