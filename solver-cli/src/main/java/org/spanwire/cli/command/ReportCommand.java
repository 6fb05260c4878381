package org.spanwire.cli.command;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.security.MessageDigest;
import java.security.NoSuchAlgorithmException;
import java.util.ArrayList;
import java.util.HexFormat;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import org.spanwire.Solver;
import org.spanwire.cli.output.BandsReport;
import org.spanwire.cli.report.DesignReport;
import org.spanwire.cli.report.PageKind;
import org.spanwire.cli.report.RangeEntry;
import org.spanwire.cli.report.RangeReport;
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
          + " feedpoint and height, cut list, trim and kit list.",
      "Several designs are compared: bands and verdicts, worst SWR over the spreads, power, distance to keep,"
          + " size and weight on one page, with a link to the page of each."
    },
    footerHeading = "%nExamples:%n",
    footer = {
      "  spanwire report kit.yaml --output kit.html",
      "      everything about the kit",
      "  spanwire report kit.yaml --set height=6m --output low.html",
      "      the same hung lower",
      "  spanwire report kit.yaml --map share,mast --output kit.html",
      "      a map over parameters that have other names than offset and height",
      "  spanwire report kit.yaml loop.yaml vertical.yaml --output range.html",
      "      three designs side by side, and range-kit.html, range-loop.html, range-vertical.html"
    })
public final class ReportCommand implements Runnable {

  private static final List<Double> ELEVATIONS = List.of(10.0, 30.0, 60.0);
  private static final int POINTS = 11;

  /** The map looks at this many values on either side of the design's own. */
  private static final int ACROSS_PER_SIDE = 3;

  private static final int UP_PER_SIDE = 2;
  private static final int MAP_POINTS = 2;

  @Mixin private DesignListOptions design;

  @Option(
      names = {"-o", "--output"},
      paramLabel = "FILE",
      required = true,
      description =
          "The page to write. FILE changes only once it is complete. For several designs it is the"
              + " comparison, with their pages beside it, or a directory for index.html and theirs.")
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
    if (design.files().size() > 1) {
      compare();
      return;
    }
    Path file = design.files().get(0);
    OutputOptions.checkTarget(output, file, "the design");
    OutputOptions.replace(output, report(file, design.readWithBands(file)).html(PageKind.REPORT));
  }

  /** A page for each design and one that compares them; all of them are written, or none. */
  private void compare() {
    RangeFiles files = RangeFiles.of(output, design.files());
    Map<Path, Design> designs = new LinkedHashMap<>();
    design.files().forEach(file -> designs.put(file, design.readWithBands(file)));
    Map<Path, String> pages = new LinkedHashMap<>();
    List<RangeEntry> entries = new ArrayList<>();
    designs.forEach(
        (file, read) -> {
          DesignReport report = report(file, read);
          Path page = files.pages().get(file);
          entries.add(RangeEntry.of(report, page.getFileName().toString()));
          pages.put(page, report.html(PageKind.REPORT));
        });
    pages.put(files.comparison(), new RangeReport(ProgramVersion.number(), entries).html());
    OutputOptions.replaceAll(pages);
  }

  private DesignReport report(Path file, Design read) {
    return ModelOptions.solve(read, () -> report(file, read, Installation.of(read)));
  }

  private DesignReport report(Path file, Design read, Installation installation) {
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
        new DesignReport.Input(sha256(file), design.changes()));
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

  private static String sha256(Path file) {
    try {
      MessageDigest digest = MessageDigest.getInstance("SHA-256");
      return HexFormat.of().formatHex(digest.digest(Files.readAllBytes(file)));
    } catch (NoSuchAlgorithmException e) {
      throw new IllegalStateException("every Java platform has SHA-256", e);
    } catch (IOException e) {
      throw new InputException(e.getMessage() + ": could not be read; check the path");
    }
  }
}
