package org.spanwire.cli.command;

import java.nio.file.Path;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import java.util.function.Supplier;
import org.spanwire.cli.chart.Chart;
import org.spanwire.cli.chart.Sheet;
import picocli.CommandLine.Option;

/** Whether to draw the result too. Nothing of the charts is loaded unless it is asked for. */
final class PlotOptions {

  @Option(
      names = "--plot",
      paramLabel = "FILE",
      description = "Draw the result too, as FILE.svg or FILE.png.")
  private Optional<Path> plot;

  /**
   * Refuses a file that cannot be written, before the work begins.
   *
   * @param input file that must not be overwritten
   * @param output where the result goes, which must not be overwritten either
   */
  void check(Path input, FileOptions output) {
    plot.ifPresent(
        file -> {
          String name = file.toString().toLowerCase(Locale.ROOT);
          if (!name.endsWith(".svg") && !name.endsWith(".png")) {
            throw new InputException("--plot " + file + ": must end in .svg or .png");
          }
          OutputOptions.checkTarget(file, input, "the input");
          output.checkApart(file, "--plot");
        });
  }

  boolean wanted() {
    return plot.isPresent();
  }

  /** Draws charts if they are asked for. */
  void write(String title, Supplier<List<Chart>> charts) {
    plot.ifPresent(
        file -> OutputOptions.replace(file, new Sheet(title, charts.get()).file(file.toString())));
  }
}
