package org.spanwire.cli.command;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.security.MessageDigest;
import java.security.NoSuchAlgorithmException;
import java.util.HexFormat;
import java.util.List;
import java.util.Optional;
import org.spanwire.Solver;
import org.spanwire.cli.output.BandsReport;
import org.spanwire.cli.report.DesignReport;
import org.spanwire.cli.report.PageKind;
import org.spanwire.design.Design;
import org.spanwire.design.ExposureRules;
import org.spanwire.design.Parameter;
import org.spanwire.study.BandPortrait;
import org.spanwire.study.BandResponse;
import org.spanwire.study.BandStudy;
import org.spanwire.study.CurveStudy;
import org.spanwire.study.Installation;
import org.spanwire.study.RatingStudy;
import org.spanwire.study.SweepPlan;
import org.spanwire.study.WorstSwrMap;
import picocli.CommandLine.Command;
import picocli.CommandLine.Mixin;
import picocli.CommandLine.Option;

/** {@code spanwire report}: everything about a design on one page. */
@Command(
    name = "report",
    description = {
      "Write a page about a design: answers, pictures, tables, cautions.",
      "One HTML file that needs no network and no scripts: SWR over every band with its spreads,"
          + " impedance, patterns, currents, where the power goes, voltages and limits, how far people must keep away, worst SWR by"
          + " feedpoint and height, cut list and trim."
    },
    footerHeading = "%nExamples:%n",
    footer = {
      "  spanwire report kit.yaml --output kit.html",
      "      everything about the kit",
      "  spanwire report kit.yaml --set height=6m --output low.html",
      "      the same hung lower",
      "  spanwire report kit.yaml --map share,mast --output kit.html",
      "      a map over parameters that have other names than offset and height"
    })
public final class ReportCommand implements Runnable {

  private static final List<Double> ELEVATIONS = List.of(10.0, 30.0, 60.0);
  private static final int POINTS = 11;

  /** The map looks at this many values on either side of the design's own. */
  private static final int ACROSS_PER_SIDE = 3;

  private static final int UP_PER_SIDE = 2;
  private static final int MAP_POINTS = 2;

  @Mixin private DesignOptions design;

  @Option(
      names = {"-o", "--output"},
      paramLabel = "FILE",
      required = true,
      description = "The page to write. FILE changes only once it is complete.")
  private Path output;

  @Option(
      names = "--map",
      paramLabel = "NAME,NAME",
      split = ",",
      arity = "1",
      description =
          "The two parameters to map the worst SWR against, across and upwards; default"
              + " offset,height.")
  private List<String> mapped = List.of("offset", "height");

  @Override
  public void run() {
    OutputOptions.checkTarget(output, design.file(), "the design");
    Design read = design.read();
    if (read.bands().isEmpty()) {
      throw new InputException(
          read.source() + ": names no bands; add bands: {plan: iaru-region-1, use: [40 m, 20 m]}");
    }
    Installation installation = ModelOptions.solve(read, () -> Installation.of(read));
    DesignReport report = ModelOptions.solve(read, () -> report(read, installation));
    OutputOptions.replace(output, report.html(PageKind.REPORT));
  }

  private DesignReport report(Design read, Installation installation) {
    Solver solver = design.solver();
    int threads = design.threads();
    List<BandResponse> bands =
        new BandStudy(installation, ELEVATIONS, POINTS).run(solver, read.bands(), threads);
    return new DesignReport(
        new BandsReport(
            design.conditions(
                read,
                bands.get(0).gapsMetres(),
                bands.stream().map(BandResponse::largestRelativeError).toList()),
            read.antenna().feeds().get(0).name(),
            bands,
            installation.powerWatts(),
            installation.warnings(),
            new RatingStudy(read).run(solver, read.bands(), threads),
            Optional.empty(),
            Optional.empty()),
        installation,
        new CurveStudy(read, true).run(solver, threads),
        BandPortrait.of(installation, solver, bands, ELEVATIONS, threads),
        map(read, solver, threads),
        ExposureCommand.report(read, read.exposureRules().orElse(ExposureRules.STRICT), design),
        CutCommand.report(read, design, false),
        new DesignReport.Input(sha256(), design.changes()));
  }

  private Optional<WorstSwrMap> map(Design read, Solver solver, int threads) {
    if (mapped.size() != 2) {
      throw new InputException(
          "--map " + String.join(",", mapped) + ": names two parameters, such as offset,height");
    }
    Parameter across = read.parameters().get(mapped.get(0));
    Parameter up = read.parameters().get(mapped.get(1));
    if (across == null || up == null) {
      return Optional.empty();
    }
    return Optional.of(
        WorstSwrMap.of(
            read,
            WorstSwrMap.axis(across, ACROSS_PER_SIDE),
            WorstSwrMap.axis(up, UP_PER_SIDE),
            MAP_POINTS,
            SweepPlan.rowByRow(solver),
            threads));
  }

  private String sha256() {
    try {
      MessageDigest digest = MessageDigest.getInstance("SHA-256");
      return HexFormat.of().formatHex(digest.digest(Files.readAllBytes(design.file())));
    } catch (NoSuchAlgorithmException e) {
      throw new IllegalStateException("every Java platform has SHA-256", e);
    } catch (IOException e) {
      throw new InputException(e.getMessage() + ": could not be read; check the path");
    }
  }
}
