package org.spanwire.cli.command;

import java.nio.file.Path;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import org.spanwire.Solver;
import org.spanwire.design.Design;
import org.spanwire.study.Baseline;
import picocli.CommandLine.Option;
import picocli.CommandLine.Parameters;

/** The designs of a baseline and where their records lie. */
final class BaselineOptions extends ModelOptions {

  @Parameters(paramLabel = "DESIGN", arity = "1..*", description = "Design files, YAML or JSON.")
  private List<Path> files = List.of();

  @Option(
      names = "--directory",
      paramLabel = "DIR",
      description = "Where the records lie; default: each beside its design.")
  private Optional<Path> directory = Optional.empty();

  /**
   * The designs, each with a record of its own: a second one would overwrite the first's.
   *
   * @throws InputException if two designs share a record
   */
  List<Path> files() {
    Map<Path, Path> designs = new HashMap<>();
    for (Path file : files) {
      Path design = file.toAbsolutePath().normalize();
      Path record = recordOf(file);
      Path other = designs.putIfAbsent(record.toAbsolutePath().normalize(), design);
      if (other != null && !other.equals(design)) {
        throw new InputException(
            record
                + ": is the record of two designs, "
                + other
                + " and "
                + design
                + "; rename one, or give each run its own --directory");
      }
    }
    return files;
  }

  /** The record of a design. */
  Path recordOf(Path design) {
    String name = design.getFileName().toString().replaceFirst("\\.(ya?ml|json)$", "");
    String own = name + ".baseline.csv";
    return directory.map(dir -> dir.resolve(own)).orElseGet(() -> design.resolveSibling(own));
  }

  /** Reads a design that has something to record. */
  Design recordable(Path file) {
    Design design = read(file);
    if (design.frequencies().isEmpty() && design.bands().isEmpty()) {
      throw new InputException(
          design.source()
              + ": names no frequencies and no bands; add frequencies: [7.1 MHz] or bands: {plan:"
              + " iaru-region-1, use: [40 m]}");
    }
    return design;
  }

  Baseline solve(Design design, Solver solver) {
    return ModelOptions.solve(design, () -> Baseline.of(design, solver, threads()));
  }
}
