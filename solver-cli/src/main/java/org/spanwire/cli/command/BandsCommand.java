package org.spanwire.cli.command;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import org.spanwire.cli.chart.Chart;
import org.spanwire.cli.chart.SmithChart;
import org.spanwire.cli.chart.SwrChart;
import org.spanwire.cli.output.BandsReport;
import org.spanwire.cli.output.LineLengths;
import org.spanwire.design.Design;
import org.spanwire.geometry.Feed;
import org.spanwire.result.Warning;
import org.spanwire.study.BandCurves;
import org.spanwire.study.BandFixes;
import org.spanwire.study.BandRating;
import org.spanwire.study.BandResponse;
import org.spanwire.study.BandStudy;
import org.spanwire.study.CurveStudy;
import org.spanwire.study.FixStudy;
import org.spanwire.study.Installation;
import org.spanwire.study.LineLengthStudy;
import org.spanwire.study.RatingStudy;
import picocli.CommandLine.Command;
import picocli.CommandLine.Mixin;
import picocli.CommandLine.Option;

/** {@code spanwire bands}: one design over the bands of its plan. */
@Command(
    name = "bands",
    description = {
      "Judge a design over every band of its plan.",
      "Says first which bands need what tuner and which part gets hottest. Then prints SWR at both"
          + " edges, in the middle, at its best and at its worst over the whole band, at the"
          + " transmitter and nearer to the antenna, the impedance and the gain at the best match,"
          + " and the heat of line, transformer and choke."
    },
    footerHeading = "%nExamples:%n",
    footer = {
      "  spanwire bands kit.yaml",
      "  spanwire bands kit.yaml --set height=6m --set offset=30%%",
      "      the same kit hung lower and fed elsewhere",
      "  spanwire bands kit.yaml --format csv --output kit-bands.csv",
      "      one row per band for a spreadsheet",
      "  spanwire bands kit.yaml --ratings",
      "      which part limits the power on which band",
      "  spanwire bands kit.yaml --fix",
      "      what single change would help",
      "  spanwire bands kit.yaml --plot kit.svg",
      "      with SWR and impedance of every band drawn, spreads included",
      "  spanwire bands kit.yaml --points 21",
      "      for antennas of narrow bandwidth",
      "  spanwire bands kit.yaml --line-lengths 5m:30m:26 --choke-limit 15W",
      "      which lengths of the feed line overheat the choke"
    })
public final class BandsCommand implements Runnable {

  /** Name of the warning that only the first of several feeds is judged. */
  private static final String SEVERAL_FEEDS = "first-feed-only";

  private static final double USUAL_CHOKE_LIMIT = 10;
  private static final List<Double> ELEVATIONS = List.of(10.0, 30.0, 60.0);

  @Mixin private DesignOptions design;
  @Mixin private OutputOptions output;
  @Mixin private PlotOptions plot;

  @Option(
      names = "--points",
      paramLabel = "N",
      description =
          "Frequencies solved per band to begin with, 3 to 200; default 5. More are added where"
              + " the curve needs them.")
  private int points = 5;

  @Option(
      names = "--ratings",
      description =
          "Print voltages, currents and heat of the parts too, and which of them limits the power in"
              + " which mode. What transformer, choke, line, feedpoint, ends and fittings bear is stated"
              + " in the design under ratings: {choke: {heat: 10 W, voltage: 3 kV}}.")
  private boolean ratings;

  @Option(
      names = "--line-lengths",
      paramLabel = "FROM:TO:COUNT",
      converter = Converters.Lengths.class,
      description = "Say too which lengths of the feed line to avoid: --line-lengths 5m:30m:26.")
  private Optional<List<Double>> lineLengths = Optional.empty();

  @Option(
      names = "--choke-limit",
      paramLabel = "W",
      converter = Converters.Watts.class,
      description =
          "Heat of the choke above which a length is to be avoided; default 10W (common practice,"
              + " no source: what a large core stands in a closed box).")
  private Optional<Double> chokeLimit;

  @Option(
      names = "--fix",
      description =
          "Say too what single change would give each band the next better verdict: of a parameter,"
              + " of the transformer's ratio, of the choke.")
  private boolean fix;

  @Override
  public void run() {
    output.check(design.file());
    plot.check(design.file(), output);
    if (points < 3 || points > 200) {
      throw new InputException("--points " + points + ": must lie between 3 and 200");
    }
    if (chokeLimit.isPresent() && lineLengths.isEmpty()) {
      throw new InputException(
          "--choke-limit: is for --line-lengths; add it, such as --line-lengths 5m:30m:26");
    }
    Design read = design.read();
    if (read.bands().isEmpty()) {
      throw new InputException(
          read.source() + ": names no bands; add bands: {plan: iaru-region-1, use: [40 m, 20 m]}");
    }
    Feed feed = read.antenna().feeds().get(0);
    Installation installation = ModelOptions.solve(read, () -> Installation.of(read));
    Optional<LineLengthStudy> lengths = lineLengths.map(each -> lengthStudy(read, each));
    BandStudy study = new BandStudy(installation, ELEVATIONS, points);
    List<BandResponse> bands =
        ModelOptions.solve(read, () -> study.run(design.solver(), read.bands(), design.threads()));
    output.write(
        new BandsReport(
            design.conditions(
                read,
                bands.get(0).gapsMetres(),
                bands.stream().map(BandResponse::largestRelativeError).toList()),
            feed.name(),
            bands,
            installation.powerWatts(),
            doubts(installation, feed),
            ratings ? ratings(read) : List.of(),
            lengths.map(each -> lineLengths(read, each, installation.powerWatts())),
            fix ? Optional.of(fixes(read)) : Optional.empty()));
    plot.write(read.title(), () -> charts(read));
  }

  private List<BandRating> ratings(Design read) {
    RatingStudy study = new RatingStudy(read);
    return ModelOptions.solve(
        read, () -> study.run(design.solver(), read.bands(), design.threads()));
  }

  private static LineLengthStudy lengthStudy(Design read, List<Double> lengths) {
    try {
      return new LineLengthStudy(read, lengths);
    } catch (IllegalArgumentException e) {
      throw new InputException(read.source() + ": --line-lengths: " + e.getMessage());
    }
  }

  private LineLengths lineLengths(Design read, LineLengthStudy study, double power) {
    return new LineLengths(
        ModelOptions.solve(read, () -> study.run(design.solver(), design.threads())),
        chokeLimit.orElse(USUAL_CHOKE_LIMIT),
        power);
  }

  private List<BandFixes> fixes(Design read) {
    return ModelOptions.solve(
        read, () -> new FixStudy(read).run(design.solver(), design.threads()));
  }

  private List<Chart> charts(Design read) {
    List<BandCurves> bands = new CurveStudy(read, true).run(design.solver(), design.threads());
    List<Chart> charts = new ArrayList<>();
    bands.forEach(curves -> charts.add(new SwrChart(curves)));
    bands.forEach(curves -> charts.add(SmithChart.of(curves, read.feedpointReferenceOhm())));
    return charts;
  }

  private static List<Warning> doubts(Installation installation, Feed judged) {
    List<Warning> doubts = new ArrayList<>(installation.warnings());
    int feeds = installation.antenna().feeds().size();
    if (feeds > 1) {
      doubts.add(
          new Warning(
              SEVERAL_FEEDS,
              "the design has "
                  + feeds
                  + " feeds, all driven as stated; the bands are judged at '"
                  + judged.name()
                  + "' only; use solve for the others"));
    }
    return doubts;
  }
}
