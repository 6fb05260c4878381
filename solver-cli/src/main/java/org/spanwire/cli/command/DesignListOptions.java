package org.spanwire.cli.command;

import java.nio.file.Path;
import java.util.List;
import org.spanwire.design.Design;
import picocli.CommandLine.Parameters;

/** The designs to work on, and how they are solved. */
final class DesignListOptions extends ModelOptions {

  @Parameters(
      paramLabel = "DESIGN",
      arity = "1..*",
      description = "The design file, YAML or JSON. Several are compared.")
  private List<Path> files;

  List<Path> files() {
    return files;
  }

  /** Reads a design, sets its parameters, and makes sure that it has bands. */
  Design readWithBands(Path file) {
    Design design = read(file);
    if (design.bands().isEmpty()) {
      throw new InputException(
          design.source()
              + ": names no bands; add bands: {plan: iaru-region-1, use: [40 m, 20 m]}");
    }
    return design;
  }
}
