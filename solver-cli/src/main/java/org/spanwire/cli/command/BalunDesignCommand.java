package org.spanwire.cli.command;

import java.nio.file.Path;
import org.spanwire.circuit.CircuitException;
import org.spanwire.cli.output.TransformerReport;
import org.spanwire.design.TransformerSheetReader;
import picocli.CommandLine.Command;
import picocli.CommandLine.Mixin;
import picocli.CommandLine.Parameters;

/** {@code spanwire balun design}: what a winding does before it is wound. */
@Command(
    name = "design",
    description = {
      "Say what a transformer will do, from core, turns and line.",
      "Without turns in the file the fewest are taken that reach the wanted impedance at the lowest"
          + " frequency. Prints loss, SWR, choking impedance, flux and temperature against"
          + " frequency, and the largest power by band, SWR and mode with what sets it."
    },
    footerHeading = "%nExamples:%n",
    footer = {
      "  spanwire balun design balun.yaml",
      "  spanwire balun design balun.yaml --format json --output balun.json",
      "A file to begin with:",
      "  format: spanwire-transformer/1",
      "  title: 4:1 for the long kit",
      "  ratio: 4",
      "  wound:",
      "    connection: equal-delay",
      "    core: {outer: 61 mm, inner: 35.5 mm, height: 12.7 mm, count: 2, material:"
          + " generic-nickel-zinc}",
      "    line: {impedance: 100 ohm, velocity-factor: 0.75}",
      "  lowest: 3.5 MHz",
      "  bands: {plan: iaru-region-1, use: [80 m, 40 m, 20 m, 10 m]}"
    })
public final class BalunDesignCommand implements Runnable {

  @Parameters(paramLabel = "INPUT", description = "The transformer's file, YAML or JSON.")
  private Path input;

  @Mixin private OutputOptions output;

  @Override
  public void run() {
    output.check(input);
    TransformerReport report =
        new TransformerReport(ProgramVersion.number(), TransformerSheetReader.read(input));
    try {
      output.write(report);
    } catch (CircuitException e) {
      throw new InputException(input + ": " + e.getMessage());
    }
  }
}
