package org.spanwire.cli.command;

import java.io.IOException;
import java.io.UncheckedIOException;
import org.spanwire.cli.output.Format;
import org.spanwire.cli.output.Report;
import picocli.CommandLine.Option;

/** Where and how results are written. */
final class OutputOptions extends FileOptions {

  @Option(
      names = "--format",
      paramLabel = "FORMAT",
      defaultValue = "text",
      description = "text (default), json or csv. JSON and CSV hold SI units in full precision.")
  private Format format;

  Format format() {
    return format;
  }

  /** Writes a report in the format asked for. */
  void write(Report report) {
    try {
      write(report.render(format, palette()));
      if (format == Format.CSV) {
        explain(report.warnings());
      }
    } catch (IOException e) {
      throw new UncheckedIOException(e);
    }
  }
}
