package org.spanwire.cli.command;

import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.concurrent.Callable;
import org.spanwire.Solver;
import org.spanwire.cli.output.CheckReport;
import org.spanwire.cli.output.JunitXml;
import org.spanwire.design.Design;
import org.spanwire.study.RequirementCheck;
import picocli.CommandLine.Command;
import picocli.CommandLine.Mixin;
import picocli.CommandLine.Option;
import picocli.CommandLine.Parameters;

/** {@code spanwire check}: designs held to their requirements. */
@Command(
    name = "check",
    description = {
      "Hold designs to the requirements written in them.",
      "Prints limit, value, numerical error and margin of each, and ends with exit code 1 if one is"
          + " not kept, with what is nearest to its cause. A value closer to its limit than the"
          + " numerical error is solved for again, ten times as accurately; if that does not"
          + " decide, the requirement is undecided and fails."
    },
    footerHeading = "%nExamples:%n",
    footer = {
      "  spanwire check kit.yaml",
      "  spanwire check designs/*.yaml --junit check.xml",
      "      a report that build servers show as tests",
      "  spanwire check kit.yaml --set offset=30%% --format json",
      "      would it still do, fed elsewhere?"
    })
public final class CheckCommand implements Callable<Integer> {

  @Parameters(paramLabel = "DESIGN", arity = "1..*", description = "Design files, YAML or JSON.")
  private List<Path> files = List.of();

  @Mixin private ModelOptions model;
  @Mixin private OutputOptions output;

  @Option(
      names = "--junit",
      paramLabel = "FILE",
      description = "Write the outcome to FILE too, as JUnit XML: one test per requirement.")
  private Optional<Path> junit = Optional.empty();

  @Override
  public Integer call() {
    for (Path file : files) {
      output.check(file);
      junit.ifPresent(target -> OutputOptions.checkTarget(target, file, "the design"));
    }
    junit.ifPresent(target -> output.checkApart(target, "--junit"));
    List<Design> designs = files.stream().map(this::read).toList();
    Solver solver = model.solver();
    List<CheckReport.Checked> checked = new ArrayList<>();
    for (Design design : designs) {
      RequirementCheck check = new RequirementCheck(design);
      checked.add(
          new CheckReport.Checked(
              design, ModelOptions.solve(design, () -> check.run(solver, model.threads()))));
    }
    CheckReport report =
        new CheckReport(checked, ProgramVersion.number(), solver.options().tolerance());
    junit.ifPresent(file -> OutputOptions.replace(file, JunitXml.of(report)));
    output.write(report);
    return report.passed() ? ExitCode.DONE : ExitCode.FAILED;
  }

  private Design read(Path file) {
    Design design = model.read(file);
    if (design.requirements().isEmpty()) {
      throw new InputException(
          design.source()
              + ": has no requirements; add requirements: [{band: 40 m, swr: {max: 2}}]");
    }
    return design;
  }
}
