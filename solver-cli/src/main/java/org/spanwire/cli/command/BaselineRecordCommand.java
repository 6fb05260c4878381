package org.spanwire.cli.command;

import java.nio.file.Path;
import java.util.List;
import org.spanwire.Solver;
import org.spanwire.cli.output.BaselineFile;
import org.spanwire.design.Design;
import org.spanwire.study.Baseline;
import picocli.CommandLine.Command;
import picocli.CommandLine.Mixin;
import picocli.CommandLine.Model.CommandSpec;
import picocli.CommandLine.Spec;

/** {@code spanwire baseline record}. */
@Command(
    name = "record",
    description = {
      "Record the results of designs.",
      "Writes impedance, SWR, gain and efficiency at the design's frequencies and in the middle of"
          + " its bands, and the extremes of SWR and the choke's heat over the bands."
    },
    footerHeading = "%nExamples:%n",
    footer = {
      "  spanwire baseline record kit.yaml",
      "      writes kit.baseline.csv",
      "  spanwire baseline record designs/*.yaml --directory baselines"
    })
public final class BaselineRecordCommand implements Runnable {

  @Mixin private BaselineOptions baseline;
  @Spec private CommandSpec spec;

  @Override
  public void run() {
    for (Path file : baseline.files()) {
      OutputOptions.checkTarget(baseline.recordOf(file), file, "the design");
    }
    List<Design> designs = baseline.files().stream().map(baseline::recordable).toList();
    Solver solver = baseline.solver();
    // All before the first is written: records of one run belong together.
    List<Baseline> all = designs.stream().map(each -> baseline.solve(each, solver)).toList();
    for (int i = 0; i < designs.size(); i++) {
      Design design = designs.get(i);
      Baseline recorded = all.get(i);
      Path target = baseline.recordOf(baseline.files().get(i));
      OutputOptions.replace(
          target,
          BaselineFile.text(
              recorded, design.title(), ProgramVersion.number(), solver.options().tolerance()));
      spec.commandLine()
          .getOut()
          .println(target + ": " + recorded.entries().size() + " results recorded");
    }
    spec.commandLine().getOut().flush();
  }
}
