package org.spanwire.cli.command;

import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import java.util.SortedMap;
import java.util.TreeMap;
import java.util.stream.Stream;
import org.apache.commons.math3.complex.Complex;
import org.spanwire.circuit.Mismatch;
import org.spanwire.circuit.NPort;
import org.spanwire.circuit.NetworkData;
import org.spanwire.circuit.Touchstone;
import org.spanwire.circuit.TouchstoneOptions;
import org.spanwire.circuit.bench.Limits;
import org.spanwire.cli.chart.Chart;
import org.spanwire.cli.chart.LineChart;
import org.spanwire.cli.chart.ResponseChart;
import org.spanwire.cli.output.Numbers;
import org.spanwire.cli.output.ResponseReport;
import org.spanwire.design.Design;
import org.spanwire.result.Direction;
import org.spanwire.study.FrequencyRange;
import org.spanwire.study.Installation;
import org.spanwire.study.InstallationResponse;
import org.spanwire.study.Plane;
import picocli.CommandLine.Command;
import picocli.CommandLine.Mixin;
import picocli.CommandLine.Option;

/** {@code spanwire response}: one design at every frequency of a range. */
@Command(
    name = "response",
    description = {
      "Show a design over a whole range of frequencies.",
      "Solves it at some tens of frequencies, which it chooses, and computes all others from those:"
          + " resonances, best matches and where SWR stays low as text, a row for every step as CSV"
          + " or JSON, a Touchstone file to lay beside a measurement."
    },
    footerHeading = "%nExamples:%n",
    footer = {
      "  spanwire response kit.yaml",
      "      from the lowest to the highest edge of the design's bands",
      "  spanwire response kit.yaml --range 1.8MHz:30MHz --step 1kHz --format csv \\",
      "      --output kit.csv",
      "      28,201 rows",
      "  spanwire response kit.yaml --range 1.8MHz:30MHz --touchstone kit.s1p",
      "      what an instrument at the transmitter's end should show",
      "  spanwire response kit.yaml --range 6MHz:8MHz --plane feedpoint --plot kit.svg",
      "      SWR at the feedpoint as a curve",
      "  spanwire response kit.yaml --elevation 10,30 --azimuth 90 --format csv",
      "      with the gain in two directions"
    })
public final class ResponseCommand implements Runnable {

  /** Rows that a result holds in memory. */
  private static final int MOST_ROWS = 1_000_000;

  @Mixin private DesignOptions design;
  @Mixin private OutputOptions output;
  @Mixin private PlotOptions plot;

  @Option(
      names = "--range",
      paramLabel = "FROM:TO",
      converter = Converters.Frequencies.class,
      description =
          "Range of frequency; default: from the lowest to the highest that the design's bands and"
              + " frequencies name.")
  private Limits.Range range;

  @Option(
      names = "--step",
      paramLabel = "F",
      defaultValue = "10kHz",
      converter = Converters.Frequency.class,
      description = "Step of the rows of CSV, JSON and Touchstone; default 10kHz.")
  private double step;

  @Option(
      names = "--plane",
      paramLabel = "PLANE",
      defaultValue = "transmitter",
      converter = Converters.PlaneLabel.class,
      description =
          "Where impedance and SWR are seen: feedpoint, transformer-input or transmitter"
              + " (default).")
  private Plane plane;

  @Option(
      names = "--elevation",
      paramLabel = "E",
      split = ",",
      converter = Converters.Degrees.class,
      description = "Elevations in degrees to give the gain at, for every --azimuth.")
  private List<Double> elevations = List.of();

  @Option(
      names = "--azimuth",
      paramLabel = "A",
      split = ",",
      converter = Converters.Degrees.class,
      description = "Azimuths in degrees, counter-clockwise from +x, for every --elevation.")
  private List<Double> azimuths = List.of();

  @Option(
      names = "--touchstone",
      paramLabel = "FILE",
      description =
          "Write the reflection coefficient at the plane to FILE.s1p too, one port, version 1.")
  private Optional<Path> touchstone;

  @Override
  public void run() {
    check();
    Design read = design.read();
    FrequencyRange wanted = range(read);
    List<Double> frequencies = frequencies(wanted);
    Installation installation = ModelOptions.solve(read, () -> Installation.of(read));
    InstallationResponse response =
        ModelOptions.solve(
            read,
            () ->
                InstallationResponse.of(
                    installation,
                    design.solver(),
                    wanted,
                    design.tolerance(),
                    directions(),
                    design.threads()));
    if (response.planes(wanted.lowHz()).stream().noneMatch(each -> each.plane() == plane)) {
      throw new InputException(
          "--plane "
              + plane.label()
              + ": the feed chain of "
              + read.source()
              + " has no such place");
    }
    output.write(
        new ResponseReport(
            design.conditions(read, response.gaps(), List.of(response.impedanceError())),
            response,
            plane,
            directions(),
            frequencies));
    touchstone.ifPresent(
        file -> OutputOptions.replace(file, comment(read) + onePort(response, frequencies).text()));
    plot.write(read.title(), () -> charts(read, response));
  }

  /** The accuracy that a response can have nearest to a tolerance. */
  static double accuracy(double tolerance) {
    return Math.max(
        InstallationResponse.LEAST_ACCURACY,
        Math.min(InstallationResponse.MOST_ACCURACY, tolerance));
  }

  private void check() {
    output.check(design.file());
    plot.check(design.file(), output);
    touchstone.ifPresent(
        file -> {
          if (!file.toString().toLowerCase(Locale.ROOT).endsWith(".s1p")) {
            throw new InputException("--touchstone " + file + ": must end in .s1p");
          }
          OutputOptions.checkTarget(file, design.file(), "the design");
          output.checkApart(file, "--touchstone");
        });
    if (elevations.isEmpty() != azimuths.isEmpty()) {
      throw new InputException(
          elevations.isEmpty()
              ? "--azimuth: needs --elevation; add one such as --elevation 30"
              : "--elevation: needs --azimuth here; add one such as --azimuth 90");
    }
    GainDirections.checkElevations(elevations);
    if (design.tolerance() != accuracy(design.tolerance())) {
      throw new InputException(
          "--tolerance "
              + Numbers.significant(100 * design.tolerance(), 4)
              + "%: must lie between "
              + Numbers.significant(100 * InstallationResponse.LEAST_ACCURACY, 4)
              + "% and "
              + Numbers.significant(100 * InstallationResponse.MOST_ACCURACY, 4)
              + "% for a response");
    }
  }

  private FrequencyRange range(Design read) {
    if (range != null) {
      return new FrequencyRange(range.fromHz(), range.toHz());
    }
    List<Double> named =
        Stream.concat(
                read.frequencies().stream(),
                read.bands().stream().flatMap(band -> Stream.of(band.lowHz(), band.highHz())))
            .sorted()
            .toList();
    if (named.isEmpty() || named.get(0).equals(named.get(named.size() - 1))) {
      throw new InputException(
          read.source() + ": names no range of frequencies; give one such as --range 1.8MHz:30MHz");
    }
    return new FrequencyRange(named.get(0), named.get(named.size() - 1));
  }

  private List<Double> frequencies(FrequencyRange over) {
    double steps = Math.floor((over.highHz() - over.lowHz()) / step * (1 + 1e-12));
    if (steps >= MOST_ROWS) {
      throw new InputException(
          String.format(
              Locale.ROOT,
              "--step %s MHz: makes %.0f rows, at most %d; take a larger one",
              Numbers.significant(step * 1e-6, 6),
              steps + 1,
              MOST_ROWS));
    }
    List<Double> frequencies = new ArrayList<>();
    for (int i = 0; i <= (int) steps; i++) {
      frequencies.add(Math.min(over.highHz(), over.lowHz() + i * step));
    }
    return frequencies;
  }

  /** Each once: another column of the same name would tell nothing. */
  private List<Direction> directions() {
    return elevations.stream()
        .flatMap(elevation -> azimuths.stream().map(azimuth -> new Direction(elevation, azimuth)))
        .distinct()
        .toList();
  }

  /** Whoever finds the file should not take it for a measurement. */
  private String comment(Design read) {
    return "! "
        + read.title().replaceAll("\\s+", " ")
        + ", at the "
        + plane.label()
        + ", computed by Spanwire "
        + ProgramVersion.number()
        + "\n";
  }

  private Touchstone onePort(InstallationResponse response, List<Double> frequencies) {
    SortedMap<Double, NPort> samples = new TreeMap<>();
    for (double frequency : frequencies) {
      Mismatch seen = response.at(plane, frequency);
      samples.put(
          frequency,
          NPort.ofScattering(new Complex[][] {{seen.reflection()}}, seen.referenceOhm()));
    }
    return Touchstone.of(
        NetworkData.of(samples),
        TouchstoneOptions.version1(TouchstoneOptions.Unit.HZ, TouchstoneOptions.Format.RI));
  }

  private List<Chart> charts(Design read, InstallationResponse response) {
    List<Chart> charts = new ArrayList<>();
    ResponseChart swr = ResponseChart.of(response, plane, read.bands(), ResponseChart.WIDE);
    charts.add(swr);
    if (!directions().isEmpty()) {
      List<Double> drawn = swr.frequenciesHz();
      charts.add(
          new LineChart(
              "Gain",
              "frequency, MHz",
              "gain, dBi",
              directions().stream()
                  .map(
                      direction ->
                          new LineChart.Line(
                              ResponseReport.label(direction),
                              drawn.stream().map(f -> f * 1e-6).toList(),
                              drawn.stream().map(f -> response.gainDbi(direction, f)).toList()))
                  .toList()));
    }
    return charts;
  }
}
