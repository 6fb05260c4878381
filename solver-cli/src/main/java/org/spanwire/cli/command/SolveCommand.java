package org.spanwire.cli.command;

import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import org.spanwire.cli.chart.Chart;
import org.spanwire.cli.chart.PatternChart;
import org.spanwire.cli.chart.SmithChart;
import org.spanwire.cli.output.Numbers;
import org.spanwire.cli.output.SolveReport;
import org.spanwire.design.Design;
import org.spanwire.study.FrequencyStudy;
import org.spanwire.study.Installation;
import org.spanwire.study.Operation;
import org.spanwire.study.PatternCut;
import org.spanwire.study.Plane;
import org.spanwire.study.SolvedFeed;
import org.spanwire.study.SolvedFrequency;
import picocli.CommandLine.Command;
import picocli.CommandLine.Mixin;
import picocli.CommandLine.Option;

/** {@code spanwire solve}: one design at single frequencies. */
@Command(
    name = "solve",
    description = {
      "Solve a design at single frequencies.",
      "Prints the impedance at every feed with its estimated error, SWR at the feedpoint and at the"
          + " transmitter, peak gain and where it points, efficiency and power balance."
    },
    footerHeading = "%nExamples:%n",
    footer = {
      "  spanwire solve kit.yaml",
      "      at the frequencies the design names",
      "  spanwire solve kit.yaml --frequency 7.1MHz,14.15MHz --set height=8m",
      "      elsewhere, and hung lower",
      "  spanwire solve kit.yaml --frequency 7.1MHz --elevation 10,30,60 --azimuth 0,90",
      "      with the gain in six directions",
      "  spanwire solve kit.yaml --frequency 7.1MHz --plot kit.svg",
      "      with patterns and impedance drawn",
      "  spanwire solve kit.yaml --currents 50 --format csv --output currents.csv",
      "      the currents along every wire as a table",
      "  spanwire solve kit.yaml --power-balance --tolerance 0.01%%",
      "      where the power goes, the soil's share included, and tighter figures"
    })
public final class SolveCommand implements Runnable {

  private static final int PATTERN_STEPS = 180;

  /** Elevations in degrees of the azimuth patterns drawn. */
  private static final List<Double> AZIMUTH_CUTS = List.of(10.0, 30.0, 60.0);

  @Mixin private DesignOptions design;
  @Mixin private OutputOptions output;
  @Mixin private GainDirections directions;
  @Mixin private PlotOptions plot;

  @Option(
      names = "--frequency",
      paramLabel = "F",
      split = ",",
      converter = Converters.Frequency.class,
      description = "Frequencies instead of those of the design: 7.1MHz,14.15MHz")
  private List<Double> frequencies = List.of();

  @Option(
      names = "--currents",
      paramLabel = "N",
      description =
          "Give the current at N places of every wire; with --format csv they are the table.")
  private int currents;

  @Option(
      names = "--power-balance",
      description =
          "Show where the power goes from the transmitter to the sky, the power absorbed by soil"
              + " computed on its own.")
  private boolean powerBalance;

  @Override
  public void run() {
    check();
    Design read = design.read();
    List<Double> wanted = frequencies.isEmpty() ? read.frequencies() : frequencies;
    if (wanted.isEmpty()) {
      throw new InputException(
          read.source()
              + ": names no frequencies; add frequencies: [7.1 MHz], or give --frequency 7.1MHz");
    }
    FrequencyStudy study =
        new FrequencyStudy(directions.elevations(), directions.azimuths(), currents, powerBalance);
    Installation installation = ModelOptions.solve(read, () -> Installation.of(read));
    List<SolvedFrequency> solutions =
        ModelOptions.solve(
            read, () -> study.run(design.solver(), installation, wanted, design.threads()));
    output.write(
        new SolveReport(
            design.conditions(read, gaps(solutions.get(0)), errors(solutions)),
            solutions,
            !directions.azimuths().isEmpty(),
            installation.powerWatts(),
            installation.warnings()));
    plot.write(read.title(), () -> charts(read, installation, wanted));
  }

  private List<Chart> charts(Design read, Installation installation, List<Double> wanted) {
    List<Operation> operations =
        ModelOptions.solve(
            read, () -> wanted.stream().map(f -> installation.solve(design.solver(), f)).toList());
    List<Chart> charts = new ArrayList<>();
    String feed = read.antenna().feeds().get(0).name();
    for (Operation operation : operations) {
      double reference = operation.feed(feed).at(Plane.FEEDPOINT).referenceOhm();
      List<PatternCut> over = PatternCut.throughPeak(operation.solution(), PATTERN_STEPS);
      double top = PatternChart.top(over);
      String at = ", " + Numbers.megahertz(operation.solution().frequencyHz()) + " MHz";
      charts.add(new PatternChart("Elevation" + at, over, top));
      charts.add(
          new PatternChart(
              "Azimuth" + at,
              AZIMUTH_CUTS.stream()
                  .map(
                      e ->
                          PatternCut.of(
                              operation.solution(), PatternCut.Kind.AZIMUTH, e, PATTERN_STEPS))
                  .toList(),
              top));
      charts.add(
          new SmithChart(
              "Impedance" + at,
              reference,
              List.of(
                  new SmithChart.Trace(
                      List.of(operation.solution().frequencyHz()),
                      List.of(operation.feed(feed).at(Plane.FEEDPOINT).reflection())))));
    }
    return charts;
  }

  private void check() {
    output.check(design.file());
    plot.check(design.file(), output);
    directions.check();
    if (currents < 0 || currents == 1) {
      throw new InputException(
          "--currents " + currents + ": must be at least 2, both ends of a wire");
    }
  }

  private static Map<String, Double> gaps(SolvedFrequency solution) {
    Map<String, Double> gaps = new LinkedHashMap<>();
    solution.feeds().forEach(feed -> gaps.put(feed.name(), feed.gapMetres()));
    return gaps;
  }

  private static List<Double> errors(List<SolvedFrequency> solutions) {
    List<Double> errors = new ArrayList<>();
    solutions.forEach(
        solution -> solution.feeds().stream().map(SolvedFeed::relativeError).forEach(errors::add));
    return errors;
  }
}
