package org.spanwire.cli.command;

import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import java.util.concurrent.Callable;
import org.spanwire.circuit.CircuitException;
import org.spanwire.circuit.NetworkData;
import org.spanwire.circuit.Touchstone;
import org.spanwire.circuit.TouchstoneException;
import org.spanwire.circuit.bench.BatchStatistics;
import org.spanwire.circuit.bench.BenchReadings;
import org.spanwire.circuit.bench.ChokeReading;
import org.spanwire.circuit.bench.Limits;
import org.spanwire.circuit.bench.MeasuredUnit;
import org.spanwire.circuit.bench.TransformerSheet;
import org.spanwire.cli.chart.BenchCharts;
import org.spanwire.cli.output.BenchReport;
import org.spanwire.cli.output.Numbers;
import org.spanwire.design.BenchReader;
import org.spanwire.design.TransformerSheetReader;
import picocli.CommandLine.Command;
import picocli.CommandLine.Mixin;
import picocli.CommandLine.Option;
import picocli.CommandLine.Parameters;

/** {@code spanwire balun bench}: loss, balance and usable range of measured units. */
@Command(
    name = "bench",
    description = {
      "Judge measured transformers and chokes: loss, balance, usable range, choking impedance, heat.",
      "A Touchstone file of 3 ports is one unit: port 1 unbalanced, ports 2 and 3 its outputs,"
          + " measured into whatever reference the file states. A file of 2 ports is a pair of"
          + " equal units back to back, joined at their antenna sides: half of its loss is that of"
          + " one unit, and of balance it says nothing. Any other file holds typed readings in"
          + " YAML. With --over every unit passes or fails; one that fails ends with exit code 1."
    },
    footerHeading = "%nExamples:%n",
    footer = {
      "  spanwire balun bench unit-07.s3p",
      "      one unit of 50 to 200 ohm",
      "  spanwire balun bench batch/*.s3p --over 3.5MHz:30MHz --golden unit-01.s3p",
      "      a batch: pass or fail, statistics, comparison with a golden unit",
      "  spanwire balun bench batch/*.s3p --plot batch.png",
      "      loss and balance of all of them drawn",
      "  spanwire balun bench pair.s2p --against balun.yaml",
      "      two equal units back to back against the limits of their design",
      "  spanwire balun bench readings.yaml",
      "      readings of a series resistor, a pad, three units, two traces, a heat run",
      "  spanwire balun bench choke.s2p --choke --fixture empty.s2p",
      "      choking impedance in series between two ports, without what the fixture adds"
    })
public final class BalunBenchCommand implements Callable<Integer> {

  @Parameters(
      paramLabel = "INPUT",
      arity = "1..*",
      description = "Touchstone files (.s1p, .s2p, .s3p) or files of typed readings.")
  private List<Path> inputs;

  @Mixin private OutputOptions output;
  @Mixin private PlotOptions plot;

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

  @Option(
      names = "--over",
      paramLabel = "LOW:HIGH",
      converter = Converters.Frequencies.class,
      description = "Judge every unit over this range.")
  private Optional<Limits.Range> over = Optional.empty();

  @Option(
      names = "--against",
      paramLabel = "FILE",
      description =
          "Judge against the limits of a transformer's design file, instead of the above.")
  private Optional<Path> against = Optional.empty();

  @Option(
      names = "--golden",
      paramLabel = "FILE",
      description = "Compare the batch with this unit.")
  private Optional<Path> golden = Optional.empty();

  @Option(names = "--choke", description = "The Touchstone files are chokes, of 1 or 2 ports.")
  private boolean choke;

  @Option(
      names = "--fixture",
      paramLabel = "FILE",
      description = "The fixture measured without the choke, 2 ports.")
  private Optional<Path> fixture = Optional.empty();

  @Option(
      names = "--reading-error",
      paramLabel = "E",
      converter = Converters.Ratio.class,
      description = "Error of the choke's scattering parameters; default 0.005.")
  private double readingError = BenchReader.READING_ERROR;

  @Override
  public Integer call() {
    inputs.forEach(output::check);
    inputs.forEach(file -> plot.check(file, output));
    checkLimits();
    if (fixture.isPresent() && !choke) {
      throw new InputException("--fixture: is for chokes; add --choke");
    }
    Optional<TransformerSheet.Acceptance> acceptance = against.map(this::acceptance);
    Limits limits =
        acceptance
            .map(TransformerSheet.Acceptance::limits)
            .orElseGet(
                () ->
                    new Limits(
                        maximumLossDb,
                        maximumAmplitudeDb,
                        maximumPhaseDegrees,
                        minimumReturnLossDb));
    Optional<Limits.Range> range = over.or(() -> acceptance.map(a -> a.range()));
    List<BenchReport.Unit> units = new ArrayList<>();
    List<BenchReport.Choke> chokes = new ArrayList<>();
    List<BenchReport.HeatRun> heatRuns = new ArrayList<>();
    for (Path input : inputs) {
      if (choke && isTouchstone(input)) {
        chokes.add(choke(input));
        continue;
      }
      BenchReadings readings = readings(input);
      readings.units().forEach(unit -> units.add(judged(input, unit, limits, range)));
      if (!readings.choke().isEmpty()) {
        chokes.add(new BenchReport.Choke(input.toString(), readings.choke()));
      }
      readings
          .heat()
          .ifPresent(run -> heatRuns.add(new BenchReport.HeatRun(input.toString(), run)));
    }
    if (units.isEmpty() && (range.isPresent() || golden.isPresent())) {
      throw new InputException(
          (over.isPresent() ? "--over" : against.isPresent() ? "--against" : "--golden")
              + ": there is no transformer to judge among the inputs; leave it out");
    }
    BenchReport report =
        new BenchReport(
            ProgramVersion.number(),
            limits,
            range,
            units,
            chokes,
            heatRuns,
            batch(units),
            golden.map(Path::toString));
    output.write(report);
    if (!units.isEmpty() || !chokes.isEmpty()) {
      plot.write("Bench readings", () -> new BenchCharts(report).charts());
    }
    return report.passed() ? ExitCode.DONE : ExitCode.FAILED;
  }

  /** A return loss of −14 dB, as instruments show reflection, would pass whatever was wound. */
  private void checkLimits() {
    positive("--max-loss", maximumLossDb, "dB");
    positive("--max-amplitude", maximumAmplitudeDb, "dB");
    positive("--max-phase", maximumPhaseDegrees, "deg");
    positive("--min-return-loss", minimumReturnLossDb, "dB");
  }

  private static void positive(String option, double limit, String unit) {
    if (!(limit > 0)) {
      throw new InputException(
          option
              + " "
              + Numbers.significant(limit, 4)
              + unit
              + ": must be above zero, as losses and imbalances are stated here; leave out the sign");
    }
  }

  private Optional<BatchStatistics> batch(List<BenchReport.Unit> units) {
    List<MeasuredUnit> measured = units.stream().map(BenchReport.Unit::measured).toList();
    boolean oneWay = measured.stream().map(MeasuredUnit::method).distinct().count() == 1;
    if (!oneWay || measured.size() < 2 && golden.isEmpty()) {
      return Optional.empty();
    }
    return Optional.of(BatchStatistics.of(measured, golden.map(this::unit)));
  }

  private static BenchReport.Unit judged(
      Path input, MeasuredUnit unit, Limits limits, Optional<Limits.Range> range) {
    boolean all = unit.method() == MeasuredUnit.Method.UNIT;
    return new BenchReport.Unit(
        input.toString(),
        unit,
        all ? Optional.of(limits.usableRanges(unit.readings())) : Optional.empty(),
        range.map(served -> limits.judge(unit.readings(), served)));
  }

  private BenchReadings readings(Path input) {
    return isTouchstone(input)
        ? new BenchReadings(input.toString(), List.of(unit(input)), List.of(), Optional.empty())
        : BenchReader.read(input, unbalancedOhm, balancedOhm);
  }

  private MeasuredUnit unit(Path file) {
    NetworkData data = network(file);
    try {
      return MeasuredUnit.of(file.toString(), data, unbalancedOhm, balancedOhm);
    } catch (CircuitException | IllegalArgumentException e) {
      throw new InputException(file + ": " + e.getMessage());
    }
  }

  private BenchReport.Choke choke(Path file) {
    NetworkData data = network(file);
    Optional<NetworkData> empty = fixture.map(BalunBenchCommand::network);
    try {
      return new BenchReport.Choke(file.toString(), ChokeReading.ofData(data, empty, readingError));
    } catch (CircuitException | IllegalArgumentException e) {
      throw new InputException(file + ": " + e.getMessage());
    }
  }

  private static NetworkData network(Path file) {
    try {
      return Touchstone.read(file).network();
    } catch (TouchstoneException e) {
      throw new InputException(e.getMessage());
    }
  }

  private static boolean isTouchstone(Path file) {
    return file.toString().toLowerCase(Locale.ROOT).matches(".*\\.(s[0-9]+p|ts)");
  }

  private TransformerSheet.Acceptance acceptance(Path file) {
    return TransformerSheetReader.read(file)
        .limits()
        .orElseThrow(
            () ->
                new InputException(
                    file
                        + ": has no limits; add limits: {loss: 1 dB, amplitude: 1 dB, phase: 10"
                        + " deg, return-loss: 14 dB, from: 3.5 MHz, to: 30 MHz}"));
  }
}
