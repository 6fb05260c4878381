package org.spanwire.cli.command;

import java.io.IOException;
import java.nio.file.NoSuchFileException;
import java.nio.file.Path;
import java.util.List;
import org.spanwire.cli.output.SweepPart;
import org.spanwire.cli.output.SweepParts;
import picocli.CommandLine.Command;
import picocli.CommandLine.Option;
import picocli.CommandLine.Parameters;

/** {@code spanwire merge}: the shards of a sweep put together. */
@Command(
    name = "merge",
    description = {
      "Put the shards of a sweep together.",
      "The file is byte for byte what the sweep would have written in one run. All shards must be there and complete."
    },
    footerHeading = "%nExamples:%n",
    footer = {"  spanwire merge map.1.csv map.2.csv map.3.csv --output map.csv"})
public final class MergeCommand implements Runnable {

  @Parameters(arity = "1..*", paramLabel = "PART", description = "Files written by sweep --shard.")
  private List<Path> parts;

  @Option(
      names = "--output",
      required = true,
      paramLabel = "FILE",
      description = "The file to write.")
  private Path output;

  @Override
  public void run() {
    for (Path part : parts) {
      OutputOptions.checkTarget(output, part, "a part");
    }
    try {
      SweepParts.read(parts).write(output);
    } catch (NoSuchFileException e) {
      throw new InputException(e.getFile() + ": no such file; run its shard first");
    } catch (SweepPart.UnfitException e) {
      throw new InputException(e.getMessage());
    } catch (IOException e) {
      throw OutputOptions.unwritable(output, e);
    }
  }
}
