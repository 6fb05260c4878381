package org.spanwire.cli.command;

import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import org.spanwire.circuit.CircuitException;
import org.spanwire.circuit.NPort;
import org.spanwire.circuit.NetworkData;
import org.spanwire.circuit.Touchstone;
import org.spanwire.circuit.TouchstoneException;
import org.spanwire.circuit.bench.BackToBack;
import org.spanwire.circuit.bench.BalunReading;
import org.spanwire.circuit.bench.Limits;
import org.spanwire.cli.output.BenchReport;
import picocli.CommandLine.Command;
import picocli.CommandLine.Mixin;
import picocli.CommandLine.Option;
import picocli.CommandLine.Parameters;

/** {@code spanwire balun bench}: loss, balance and usable range of measured units. */
@Command(
    name = "bench",
    description = {
      "Judge measured transformers: loss, balance and usable range.",
      "A Touchstone file of 3 ports is one unit: port 1 unbalanced, ports 2 and 3 its outputs,"
          + " measured into whatever reference the file states. A file of 2 ports is a pair of"
          + " equal units back to back, joined at their antenna sides: half of its loss is that of"
          + " one unit, and of balance it says nothing."
    },
    footerHeading = "%nExamples:%n",
    footer = {
      "  spanwire balun bench unit-07.s3p",
      "      one unit of 50 to 200 ohm",
      "  spanwire balun bench batch/*.s3p --max-phase 5deg --format csv",
      "      a batch against a tighter limit, one row per reading",
      "  spanwire balun bench pair.s2p",
      "      loss of one of two equal units back to back"
    })
public final class BalunBenchCommand implements Runnable {

  @Parameters(
      paramLabel = "INPUT",
      arity = "1..*",
      description = "Touchstone files of 2 or 3 ports.")
  private List<Path> inputs;

  @Mixin private OutputOptions output;

  @Option(
      names = "--unbalanced",
      paramLabel = "Z",
      converter = Converters.Ohms.class,
      description = "Nominal impedance of the unbalanced port; default 50ohm.")
  private double unbalancedOhm = 50;

  @Option(
      names = "--balanced",
      paramLabel = "Z",
      converter = Converters.Ohms.class,
      description = "Nominal impedance across the outputs; default 200ohm.")
  private double balancedOhm = 200;

  @Option(
      names = "--max-loss",
      paramLabel = "DB",
      converter = Converters.Decibels.class,
      description = "Largest loss of the usable range; default 1dB.")
  private double maximumLossDb = 1;

  @Option(
      names = "--max-amplitude",
      paramLabel = "DB",
      converter = Converters.Decibels.class,
      description = "Largest amplitude imbalance of the usable range; default 1dB.")
  private double maximumAmplitudeDb = 1;

  @Option(
      names = "--max-phase",
      paramLabel = "ANGLE",
      converter = Converters.Degrees.class,
      description = "Largest phase imbalance of the usable range; default 10deg.")
  private double maximumPhaseDegrees = 10;

  @Option(
      names = "--min-return-loss",
      paramLabel = "DB",
      converter = Converters.Decibels.class,
      description = "Least return loss of the usable range; default 14dB.")
  private double minimumReturnLossDb = 14;

  @Override
  public void run() {
    inputs.forEach(output::check);
    Limits limits =
        new Limits(maximumLossDb, maximumAmplitudeDb, maximumPhaseDegrees, minimumReturnLossDb);
    List<BenchReport.Unit> units = inputs.stream().map(input -> unit(input, limits)).toList();
    output.write(new BenchReport(ProgramVersion.number(), limits, units));
  }

  private BenchReport.Unit unit(Path file, Limits limits) {
    try {
      NetworkData data = Touchstone.read(file).network();
      return switch (data.ports()) {
        case 2 -> pair(file, data);
        case 3 -> single(file, data, limits);
        default ->
            throw new InputException(
                file + ": has " + data.ports() + " ports; expected 3 of a unit, or 2 of a pair");
      };
    } catch (TouchstoneException e) {
      throw new InputException(e.getMessage());
    } catch (CircuitException | IllegalArgumentException e) {
      throw new InputException(file + ": " + e.getMessage());
    }
  }

  private BenchReport.Unit single(Path file, NetworkData data, Limits limits) {
    List<BalunReading> readings = new ArrayList<>();
    List<BenchReport.Row> rows = new ArrayList<>();
    for (int i = 0; i < data.frequencies().length; i++) {
      double frequency = data.frequencies()[i];
      BalunReading reading = BalunReading.of(frequency, data.sample(i), unbalancedOhm, balancedOhm);
      readings.add(reading);
      rows.add(
          new BenchReport.Row(
              frequency,
              reading.lossDb(),
              reading.returnLossDb(),
              Optional.of(new BenchReport.Balance(reading.imbalance(), reading.conversionDb()))));
    }
    return new BenchReport.Unit(
        file.toString(),
        rows,
        Optional.of(readings.size() < 2 ? List.of() : limits.usableRanges(readings)));
  }

  private BenchReport.Unit pair(Path file, NetworkData data) {
    List<BenchReport.Row> rows = new ArrayList<>();
    for (int i = 0; i < data.frequencies().length; i++) {
      NPort nominal = data.sample(i).renormalized(unbalancedOhm);
      BackToBack loss = BackToBack.ofEqualUnits(nominal);
      rows.add(
          new BenchReport.Row(
              data.frequencies()[i],
              loss.unitLossDb(),
              loss.inputReturnLossDb(),
              Optional.empty()));
    }
    return new BenchReport.Unit(file.toString(), rows, Optional.empty());
  }
}
