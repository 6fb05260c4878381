package org.spanwire.cli.command;

import org.spanwire.design.Schemas;
import picocli.CommandLine.Command;
import picocli.CommandLine.Model.CommandSpec;
import picocli.CommandLine.Parameters;
import picocli.CommandLine.Spec;

/** {@code spanwire schema}: the published JSON Schemas. */
@Command(
    name = "schema",
    description = "Print the JSON Schema (draft 2020-12) of design files or of JSON results.",
    footerHeading = "%nExamples:%n",
    footer = {
      "  spanwire schema design > design.schema.json",
      "      lets an editor check and complete a design while you write it",
      "  spanwire schema result"
    })
public final class SchemaCommand implements Runnable {

  @Spec private CommandSpec spec;

  @Parameters(paramLabel = "design|result", description = "Which schema: ${COMPLETION-CANDIDATES}.")
  private Subject subject;

  /** What a schema describes. */
  enum Subject {
    design,
    result
  }

  @Override
  public void run() {
    String schema =
        switch (subject) {
          case design -> Schemas.design();
          case result -> Schemas.result();
        };
    spec.commandLine().getOut().print(schema);
    spec.commandLine().getOut().flush();
  }
}
