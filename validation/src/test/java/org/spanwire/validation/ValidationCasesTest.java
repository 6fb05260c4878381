package org.spanwire.validation;

import static org.assertj.core.api.Assertions.assertThat;
import static org.junit.jupiter.api.DynamicContainer.dynamicContainer;
import static org.junit.jupiter.api.DynamicTest.dynamicTest;

import java.io.IOException;
import java.nio.file.Path;
import java.util.List;
import java.util.stream.Stream;
import org.junit.jupiter.api.BeforeAll;
import org.junit.jupiter.api.DynamicContainer;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.TestFactory;

/** Runs every case once, writes the report to the build directory, then gives one test per case. */
class ValidationCasesTest {

  private static ValidationRun run;
  private static List<Section> sections;

  @BeforeAll
  static void runOnceAndReport() throws IOException {
    run = ValidationRun.of(RunStamp.now(), CaseLibrary.load());
    sections = ValidationReport.sections(run.groups());
    ValidationReport.write(run, sections, Path.of("target"));
  }

  @TestFactory
  Stream<DynamicContainer> cases() {
    return run.groups().stream()
        .map(
            group ->
                dynamicContainer(
                    group.number() + " " + group.title(),
                    run.outcomes().stream()
                        .filter(outcome -> outcome.subject().group() == group.number())
                        .map(
                            outcome ->
                                dynamicTest(outcome.subject().id(), () -> mustPass(outcome)))));
  }

  @Test
  void sectionsHaveNoFault() {
    assertThat(sections).allSatisfy(section -> assertThat(section.faults()).isEmpty());
  }

  private static void mustPass(Outcome outcome) {
    ValidationCase subject = outcome.subject();
    assertThat(outcome.failure()).isEmpty();
    assertThat(outcome.deviation())
        .as(
            "%s: expected %s, got %s; tolerance because: %s",
            CaseText.name(subject.quantity()),
            CaseText.value(subject.expected()),
            outcome.got().map(CaseText::value).orElse("nothing"),
            subject.tolerance().reason())
        .isLessThanOrEqualTo(subject.tolerance().limit());
  }
}
