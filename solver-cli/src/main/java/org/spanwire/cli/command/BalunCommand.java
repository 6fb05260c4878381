package org.spanwire.cli.command;

import picocli.CommandLine.Command;
import picocli.CommandLine.Model.CommandSpec;
import picocli.CommandLine.Spec;

/** {@code spanwire balun}: transformers on the bench. */
@Command(
    name = "balun",
    subcommands = {BalunBenchCommand.class, BalunDesignCommand.class},
    description = "Design transformers, and judge them by what was measured on the bench.",
    footerHeading = "%nExamples:%n",
    footer = {
      "  spanwire balun bench unit-07.s3p",
      "      loss, balance and usable range of a unit",
      "  spanwire balun design balun.yaml",
      "      loss, heat and largest power of a winding before it is wound"
    })
public final class BalunCommand implements Runnable {

  @Spec private CommandSpec spec;

  /** Without a subcommand there is nothing to do, so show what can be done. */
  @Override
  public void run() {
    spec.commandLine().usage(spec.commandLine().getOut());
  }
}
