package org.spanwire.cli.command;

import picocli.AutoComplete;
import picocli.CommandLine.Command;
import picocli.CommandLine.Model.CommandSpec;
import picocli.CommandLine.Spec;

/** {@code spanwire completion}: a completion script for the shell. */
@Command(
    name = "completion",
    description = "Print a completion script for bash and zsh.",
    footerHeading = "%nExamples:%n",
    footer = {
      "  source <(spanwire completion)",
      "      in this shell; put the line into ~/.bashrc or ~/.zshrc for every shell"
    })
public final class CompletionCommand implements Runnable {

  @Spec private CommandSpec spec;

  @Override
  public void run() {
    CommandSpec root = spec.root();
    spec.commandLine().getOut().print(AutoComplete.bash(root.name(), root.commandLine()));
    spec.commandLine().getOut().flush();
  }
}
