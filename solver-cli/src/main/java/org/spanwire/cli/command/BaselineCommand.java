package org.spanwire.cli.command;

import picocli.CommandLine.Command;
import picocli.CommandLine.Model.CommandSpec;
import picocli.CommandLine.Spec;

/** {@code spanwire baseline}: results kept under review. */
@Command(
    name = "baseline",
    subcommands = {BaselineRecordCommand.class, BaselineCompareCommand.class},
    description = {
      "Record results of designs, and tell later what moved.",
      "The record of kit.yaml is kit.baseline.csv beside it: one line per result with how far it"
          + " may move. Keep it with the design; its changes can be reviewed like any other."
    },
    footerHeading = "%nExamples:%n",
    footer = {
      "  spanwire baseline record kit.yaml",
      "  spanwire baseline compare kit.yaml",
      "      ends with exit code 1 if a result moved by more than its limit"
    })
public final class BaselineCommand implements Runnable {

  @Spec private CommandSpec spec;

  /** Without a subcommand there is nothing to do, so show what can be done. */
  @Override
  public void run() {
    spec.commandLine().usage(spec.commandLine().getOut());
  }
}
