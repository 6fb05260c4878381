package org.spanwire.cli.command;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import org.spanwire.cli.chart.SweepCharts;
import org.spanwire.cli.output.SweepPart;
import org.spanwire.cli.report.SweepPage;
import org.spanwire.design.Band;
import org.spanwire.design.Design;
import org.spanwire.design.Stage;
import org.spanwire.geometry.Feed;
import org.spanwire.study.Installation;
import org.spanwire.study.ParameterGrid;
import org.spanwire.study.ParameterSample;
import org.spanwire.study.ParameterSpace;
import org.spanwire.study.Plane;
import org.spanwire.study.Sweep;
import org.spanwire.study.SweepPlan;
import org.spanwire.study.SweepQuantity;
import org.spanwire.study.SweepRequest;
import org.spanwire.study.SweepRow;
import picocli.CommandLine.ArgGroup;
import picocli.CommandLine.Command;
import picocli.CommandLine.Mixin;
import picocli.CommandLine.Model.CommandSpec;
import picocli.CommandLine.Option;
import picocli.CommandLine.Spec;

/** {@code spanwire sweep}: one design over values of its parameters. */
@Command(
    name = "sweep",
    description = {
      "Solve a design for many values of its parameters.",
      "One row per point and frequency, the last --vary fastest, frequency innermost. A point that cannot be modelled has its"
          + " reason in the status column and no values."
    },
    footerHeading = "%nExamples:%n",
    footer = {
      "  spanwire sweep kit.yaml --vary height=5m:12m:15 --of impedance,swr",
      "      at the frequencies the design names",
      "  spanwire sweep kit.yaml --vary offset=20%%:50%%:31 --vary height=6m,8m,11m \\",
      "      --of swr --bands --format csv --output map.csv --resume",
      "      over all bands; the same line again goes on where it was interrupted",
      "  spanwire sweep kit.yaml --vary height=5m:12m:8 --vary offset=20%%:50%%:11 \\",
      "      --of swr --bands --points 3 --plot map.svg",
      "      with a map of the worst SWR",
      "  spanwire sweep kit.yaml --vary height=5m:12m:8 --vary offset=20%%:50%%:11 \\",
      "      --of swr,gain --format html --output map.html",
      "      a page to look at and to send",
      "  spanwire sweep kit.yaml --vary span=25m:30m --vary height=5m:12m \\",
      "      --sample 500 --of swr,gain --format csv --output cloud.csv",
      "      500 places spread evenly over both ranges",
      "  spanwire sweep kit.yaml --vary height=5m:12m:701 --of swr --bands \\",
      "      --format csv --shard auto --output map.$SLURM_ARRAY_TASK_ID.csv --resume",
      "      one task of a job array; 'spanwire merge' puts the parts together"
    })
public final class SweepCommand implements Runnable {

  private static final int USUAL_POINTS = 11;

  @Spec private CommandSpec spec;

  @Mixin private DesignOptions design;
  @Mixin private FileOptions output;
  @Mixin private GainDirections directions;
  @Mixin private PlotOptions plot;

  @Option(
      names = "--format",
      paramLabel = "FORMAT",
      defaultValue = "text",
      description =
          "text (default), json, csv, or html: a page with maps, curves and a table. JSON and CSV"
              + " hold SI units in full precision.")
  private SweepFormat format;

  @Option(
      names = "--vary",
      required = true,
      paramLabel = "NAME=VALUES",
      description = "FROM:TO:COUNT evenly spaced, or V1,V2,…; with --sample FROM:TO. Repeatable.")
  private List<String> vary;

  @Option(
      names = "--of",
      required = true,
      split = ",",
      paramLabel = "QUANTITY",
      converter = Converters.Wanted.class,
      description =
          "What to give: impedance, impedance-error, swr, return-loss, mismatch-loss, gain (the largest, and where it points),"
              + " efficiency, unknowns.")
  private List<SweepQuantity> quantities;

  @ArgGroup private At at = new At();

  /** Where in frequency. */
  private static final class At {
    @Option(names = "--bands", description = "At N frequencies of every band of the design.")
    private boolean bands;

    @Option(
        names = "--frequency",
        paramLabel = "F",
        split = ",",
        converter = Converters.Frequency.class,
        description = "Frequencies instead of those of the design: 7.1MHz,14.15MHz")
    private List<Double> frequencies = List.of();
  }

  @Option(
      names = "--points",
      paramLabel = "N",
      description = "Frequencies per band with --bands, edges included; default 11.")
  private Optional<Integer> pointsWanted;

  @Option(
      names = "--plane",
      paramLabel = "PLANE",
      defaultValue = "feedpoint",
      converter = Converters.PlaneLabel.class,
      description =
          "Where impedance and SWR are seen: feedpoint (default), transformer-input or transmitter.")
  private Plane plane;

  @Option(
      names = "--feed",
      paramLabel = "NAME",
      description = "The feed that impedance and SWR are those of; default: the first.")
  private Optional<String> feed;

  @Option(
      names = "--sample",
      paramLabel = "N",
      description = "N places spread evenly over the ranges (Sobol sequence) instead of a grid.")
  private Optional<Integer> sample;

  @Option(
      names = "--resume",
      description =
          "Go on where an interrupted run of the same sweep ended; begin if there is none. CSV to a file only.")
  private boolean resume;

  @Option(
      names = "--shard",
      paramLabel = "K/N",
      description =
          "Solve the K-th of N parts only; auto: as the job-array scheduler says, auto/N where it does not tell N.")
  private Optional<String> shard;

  @Option(
      names = "--cost",
      description = "Say how many solves the sweep takes and how long at most, and stop.")
  private boolean cost;

  @Override
  public void run() {
    output.check(design.file());
    plot.check(design.file(), output);
    Shard part = shard.map(text -> Shard.parse(text, System.getenv())).orElse(Shard.WHOLE);
    boolean rowsMustLast = resume || shard.isPresent();
    if (rowsMustLast && (format != SweepFormat.CSV || output.file().isEmpty())) {
      throw new InputException(
          (resume ? "--resume" : "--shard")
              + ": needs a CSV file; add --format csv --output map.csv");
    }
    Design read = design.read();
    Sweep sweep = new Sweep(read, space(read), frequencies(read), request(read));
    checkPlot(sweep, rowsMustLast);
    checkPage(sweep);
    List<SweepRow> drawn = new ArrayList<>();
    output.explain(ModelOptions.solve(read, () -> Installation.of(read)).warnings());
    SweepRun run =
        new SweepRun(
            sweep,
            SweepPlan.shared(sweep, design.solver()),
            sweep.rows().part(part.index(), part.count()),
            design.threads(),
            spec.commandLine().getErr(),
            plot.wanted() || format == SweepFormat.HTML ? drawn::add : row -> {});
    if (cost) {
      run.announce(run.rows());
      return;
    }
    SweepDestination destination = new SweepDestination(sweep, design, output);
    if (format == SweepFormat.CSV && output.file().isPresent()) {
      refuseToOverwrite();
      String fingerprint = SweepFingerprint.of(sweep, design, vary, sample);
      destination.toPart(run, fingerprint, part, resume);
    } else if (format == SweepFormat.HTML) {
      run.run(run.rows().first(), row -> {});
      output.write(new SweepPage(sweep, drawn, design.tolerance(), ProgramVersion.number()).html());
    } else {
      destination.stream(run, format);
    }
    plot.write(read.title(), () -> new SweepCharts(sweep, drawn).charts());
  }

  private void checkPlot(Sweep sweep, boolean rowsMustLast) {
    if (!plot.wanted()) {
      return;
    }
    String obstacle =
        rowsMustLast
            ? "draws a sweep done in one go; leave out --resume and --shard"
            : SweepCharts.obstacle(sweep);
    if (!obstacle.isEmpty()) {
      throw new InputException("--plot: " + obstacle);
    }
  }

  private void checkPage(Sweep sweep) {
    String obstacle = format == SweepFormat.HTML ? SweepPage.obstacle(sweep) : "";
    if (!obstacle.isEmpty()) {
      throw new InputException("--format html: " + obstacle);
    }
  }

  private void refuseToOverwrite() {
    output
        .file()
        .map(SweepPart::beside)
        .filter(part -> !resume && part.toFile().exists())
        .ifPresent(
            part -> {
              throw new InputException(
                  part
                      + ": rows of an interrupted sweep; add --resume to go on with it, or delete it");
            });
  }

  private ParameterSpace space(Design read) {
    List<Variation> variations = vary.stream().map(v -> Variation.parse(v, read)).toList();
    try {
      if (sample.isPresent()) {
        if (sample.get() < 1 || sample.get() > Variation.MOST_VALUES) {
          throw new InputException(
              "--sample " + sample.get() + ": must lie between 1 and " + Variation.MOST_VALUES);
        }
        return new ParameterSample(variations.stream().map(Variation::ends).toList(), sample.get());
      }
      return new ParameterGrid(variations.stream().map(Variation::axis).toList());
    } catch (IllegalArgumentException e) {
      throw new InputException("--vary: " + e.getMessage());
    } catch (ArithmeticException e) {
      throw new InputException("--vary: more points than can be counted; give smaller counts");
    }
  }

  private List<Double> frequencies(Design read) {
    if (pointsWanted.isPresent() && !at.bands) {
      throw new InputException("--points " + pointsWanted.get() + ": is for --bands; add it");
    }
    if (!at.frequencies.isEmpty()) {
      return at.frequencies;
    }
    if (!at.bands) {
      if (read.frequencies().isEmpty()) {
        throw new InputException(
            read.source()
                + ": names no frequencies; add frequencies: [7.1 MHz], or give --frequency 7.1MHz or --bands");
      }
      return read.frequencies();
    }
    if (read.bands().isEmpty()) {
      throw new InputException(
          read.source() + ": names no bands; add bands: {plan: iaru-region-1, use: [40 m, 20 m]}");
    }
    int points = pointsWanted.orElse(USUAL_POINTS);
    if (points < 2 || points > 100_000) {
      throw new InputException("--points " + points + ": must lie between 2 and 100000");
    }
    List<Double> frequencies = new ArrayList<>();
    for (Band band : read.bands()) {
      for (int i = 0; i < points; i++) {
        double share = (double) i / (points - 1);
        frequencies.add(band.lowHz() * (1 - share) + band.highHz() * share);
      }
    }
    return frequencies;
  }

  private SweepRequest request(Design read) {
    directions.check();
    List<String> feeds = read.antenna().feeds().stream().map(Feed::name).toList();
    String name = feed.orElse(feeds.get(0));
    if (!feeds.contains(name)) {
      throw new InputException(
          "--feed " + name + ": there is no such feed; the design has " + String.join(", ", feeds));
    }
    if (plane == Plane.TRANSFORMER_INPUT
        && read.feedChain().stream().noneMatch(Stage.Transformer.class::isInstance)) {
      throw new InputException(
          "--plane "
              + plane.label()
              + ": the design's feed-chain has no transformer; choose another");
    }
    return new SweepRequest(
        name,
        plane,
        quantities.stream().distinct().toList(),
        directions.elevations(),
        directions.azimuths());
  }
}
