package org.spanwire.cli.command;

import java.io.IOException;
import java.nio.file.NoSuchFileException;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.concurrent.Callable;
import org.spanwire.Solver;
import org.spanwire.cli.output.BaselineFile;
import org.spanwire.cli.output.BaselineReport;
import org.spanwire.design.Design;
import org.spanwire.study.Baseline;
import picocli.CommandLine.Command;
import picocli.CommandLine.Mixin;

/** {@code spanwire baseline compare}. */
@Command(
    name = "compare",
    description = {
      "Compare the results of designs with their records.",
      "Prints every result that moved by more than its limit: what it was, what it is, how far it"
          + " may move. Ends with exit code 1 if there is one."
    },
    footerHeading = "%nExamples:%n",
    footer = {
      "  spanwire baseline compare kit.yaml",
      "  spanwire baseline compare kit.yaml --set span=27.0m",
      "      what would a longer wire change?",
      "  spanwire baseline compare kit.yaml --format json",
      "      all results, for a program to read"
    })
public final class BaselineCompareCommand implements Callable<Integer> {

  @Mixin private BaselineOptions baseline;
  @Mixin private OutputOptions output;

  @Override
  public Integer call() {
    List<Design> designs = new ArrayList<>();
    List<Baseline> records = new ArrayList<>();
    for (Path file : baseline.files()) {
      output.check(file);
      designs.add(baseline.recordable(file));
      records.add(read(baseline.recordOf(file)));
    }
    Solver solver = baseline.solver();
    List<BaselineReport.Compared> compared = new ArrayList<>();
    for (int i = 0; i < designs.size(); i++) {
      Design design = designs.get(i);
      compared.add(
          new BaselineReport.Compared(
              design,
              baseline.recordOf(baseline.files().get(i)).toString(),
              records.get(i).compare(baseline.solve(design, solver))));
    }
    BaselineReport report = new BaselineReport(compared, ProgramVersion.number());
    output.write(report);
    return report.passed() ? ExitCode.DONE : ExitCode.FAILED;
  }

  private static Baseline read(Path file) {
    try {
      return BaselineFile.read(file);
    } catch (NoSuchFileException e) {
      throw new InputException(file + ": no such file; run spanwire baseline record first");
    } catch (BaselineFile.UnfitException e) {
      throw new InputException(e.getMessage());
    } catch (IOException e) {
      throw new InputException(
          file
              + ": cannot be read ("
              + e.getClass().getSimpleName()
              + "); check its access rights");
    }
  }
}
