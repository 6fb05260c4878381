package org.spanwire.validation;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.ByteArrayInputStream;
import java.io.IOException;
import java.io.StringReader;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.LocalDate;
import java.util.List;
import java.util.Optional;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

class TestReachTest {

  private static final LocalDate DAY = LocalDate.of(2026, 1, 2);

  @TempDir private Path directory;

  private static MutationRecord.Group group(String name, int killed) {
    return new MutationRecord.Group(name, 100, killed, 1, DAY, "abc123");
  }

  private static MutationRecord all(int killedOfCircuit) {
    return new MutationRecord(
        List.of(
            group("unit", 75),
            group("circuit", killedOfCircuit),
            group("design", 99),
            group("check", 80),
            group("check-output", 98)));
  }

  @Test
  void countsOutcomesByTheirStatus() throws Exception {
    String xml =
        """
        <?xml version="1.0" encoding="UTF-8"?>
        <mutations partial="true">
        <mutation detected='true' status='KILLED'><sourceFile>A.java</sourceFile></mutation>
        <mutation detected='true' status='TIMED_OUT'><sourceFile>A.java</sourceFile></mutation>
        <mutation detected='false' status='SURVIVED'><sourceFile>A.java</sourceFile></mutation>
        <mutation detected='false' status='NO_COVERAGE'><sourceFile>A.java</sourceFile></mutation>
        </mutations>
        """;
    assertThat(
            MutationRecord.count(
                "unit",
                new ByteArrayInputStream(xml.getBytes(StandardCharsets.UTF_8)),
                DAY,
                "abc123"))
        .isEqualTo(new MutationRecord.Group("unit", 4, 2, 1, DAY, "abc123"));
  }

  /**
   * A module without mutation tests has no directory of them, a group that was stopped no report.
   */
  @Test
  void gathersTheGroupsOfAllModules() throws Exception {
    Path core = directory.resolve("core");
    Path cli = directory.resolve("cli");
    report(core.resolve("unit"), "KILLED");
    report(core.resolve("circuit"), "SURVIVED");
    report(cli.resolve("check-output"), "KILLED");
    Files.createDirectories(cli.resolve("stopped"));
    assertThat(MutationRecord.count(List.of(core, directory.resolve("none"), cli), DAY, "abc123"))
        .containsExactlyInAnyOrder(
            new MutationRecord.Group("unit", 1, 1, 0, DAY, "abc123"),
            new MutationRecord.Group("circuit", 1, 0, 0, DAY, "abc123"),
            new MutationRecord.Group("check-output", 1, 1, 0, DAY, "abc123"));
  }

  private static void report(Path group, String status) throws IOException {
    Files.createDirectories(group);
    Files.writeString(
        group.resolve("mutations.xml"),
        "<mutations><mutation detected='%s' status='%s'/></mutations>"
            .formatted(status.equals("KILLED"), status));
  }

  @Test
  void aLaterRunReplacesItsGroupsAndNoOthers() throws Exception {
    Path file = directory.resolve(MutationRecord.FILE);
    all(70).with(List.of(group("circuit", 90))).write(file);
    MutationRecord read = MutationRecord.read(new StringReader(Files.readString(file)));
    assertThat(read.groups()).containsExactlyInAnyOrderElementsOf(all(90).groups());
  }

  @Test
  void addsUpTheLinesOfAllClasses() throws Exception {
    Path file =
        Files.writeString(
            directory.resolve("jacoco.csv"),
            """
            GROUP,PACKAGE,CLASS,LINE_MISSED,LINE_COVERED
            core,org.spanwire,A,1,8
            core,org.spanwire,B,2,9
            """);
    assertThat(TestReach.lines(file)).contains(new TestReach.Lines(17, 20));
    assertThat(TestReach.lines(directory.resolve("none.csv"))).isEmpty();
  }

  @Test
  void tooLittleOrNothingIsAFault() {
    assertThat(TestReach.section(Optional.of(new TestReach.Lines(90, 100)), all(75)).faults())
        .isEmpty();
    assertThat(TestReach.section(Optional.empty(), all(75)).faults()).isEmpty();
    Section weak = TestReach.section(Optional.of(new TestReach.Lines(89, 100)), all(74));
    assertThat(weak.faults()).hasSize(2);
    assertThat(weak.markdown())
        .contains(
            "89.0 % of 100", "| circuit | 100 | 74 | 1 | 74.0 % | 2026-01-02, commit abc123 |");
    Section missing =
        TestReach.section(Optional.empty(), new MutationRecord(List.of(group("unit", 99))));
    assertThat(missing.faults()).hasSize(4).contains("no planted faults are on record for check");
    assertThat(missing.markdown())
        .contains("| check | | | | not run yet | |", "| check-output | | | | not run yet | |");
  }
}
