package org.spanwire.cli.command;

import org.spanwire.design.Schemas;
import picocli.CommandLine.Command;
import picocli.CommandLine.Model.CommandSpec;
import picocli.CommandLine.Parameters;
import picocli.CommandLine.Spec;

/** {@code spanwire schema}: the published JSON Schemas. */
@Command(
    name = "schema",
    description =
        "Print the JSON Schema (draft 2020-12) of design files, of JSON results, or of the files of balun and fit.",
    footerHeading = "%nExamples:%n",
    footer = {
      "  spanwire schema design > design.schema.json",
      "      lets an editor check and complete a design while you write it",
      "  spanwire schema result"
    })
public final class SchemaCommand implements Runnable {

  @Spec private CommandSpec spec;

  @Parameters(paramLabel = "SUBJECT", description = "Which schema: ${COMPLETION-CANDIDATES}.")
  private Subject subject;

  /** What a schema describes. */
  enum Subject {
    design,
    result,
    measured,
    readings,
    transformer
  }

  @Override
  public void run() {
    String schema =
        switch (subject) {
          case design -> Schemas.design();
          case result -> Schemas.result();
          case measured -> Schemas.measured();
          case readings -> Schemas.readings();
          case transformer -> Schemas.transformer();
        };
    spec.commandLine().getOut().print(schema);
    spec.commandLine().getOut().flush();
  }
}
