package org.spanwire.validation;

import java.io.IOException;
import java.io.PrintStream;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;

/**
 * Runs every case and writes the report {@code spanwire-validation} as Markdown and JSON, stamped
 * with commit, runtime, machine and date.
 */
public final class ValidationReport {

  private static final String NAME = "spanwire-validation";

  /** Left by the build of the library; from the directory of this module. */
  private static final Path COVERAGE = Path.of("../solver-core/target/site/jacoco/jacoco.csv");

  private ValidationReport() {}

  /**
   * Writes the report and exits with 0 if every case passes, 1 if one fails or a section has a
   * fault, 2 if the report cannot be written.
   *
   * @param arguments the directory to write to; the working directory if there is none
   */
  public static void main(String[] arguments) {
    Path directory = Path.of(arguments.length == 0 ? "." : arguments[0]);
    System.exit(run(directory, System.out, System.err));
  }

  private static int run(Path directory, PrintStream out, PrintStream err) {
    ValidationRun run = ValidationRun.of(RunStamp.now(), CaseLibrary.load());
    List<Section> sections = sections(run.groups());
    try {
      write(run, sections, directory);
    } catch (IOException e) {
      err.println("cannot write the report: " + e.getMessage() + "; name a directory to write to");
      return 2;
    }
    out.println(
        run.passed()
            + " of "
            + run.outcomes().size()
            + " cases pass; see "
            + directory.resolve(NAME + ".md"));
    boolean sound = sections.stream().allMatch(section -> section.faults().isEmpty());
    return run.allPass() && sound ? 0 : 1;
  }

  /** What the report has besides its cases. */
  static List<Section> sections(List<CaseGroup> groups) {
    return List.of(
        Section.statedError(),
        TestReach.section(TestReach.lines(COVERAGE), MutationRecord.kept()),
        CheckValues.section(groups));
  }

  /** Writes both forms of a run's report to a directory, which is created if need be. */
  static void write(ValidationRun run, List<Section> sections, Path directory) throws IOException {
    Files.createDirectories(directory);
    Files.writeString(directory.resolve(NAME + ".md"), MarkdownReport.of(run, sections));
    Files.writeString(directory.resolve(NAME + ".json"), JsonReport.of(run, sections));
  }
}
