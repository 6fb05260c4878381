package org.spanwire.cli.command;

import java.nio.file.Path;
import org.spanwire.design.Design;
import picocli.CommandLine.Parameters;

/** The design to work on, and how it is solved. */
final class DesignOptions extends ModelOptions {

  @Parameters(paramLabel = "DESIGN", description = "The design file, YAML or JSON.")
  private Path file;

  Path file() {
    return file;
  }

  /** Reads the design and sets its parameters. */
  Design read() {
    return read(file);
  }
}
