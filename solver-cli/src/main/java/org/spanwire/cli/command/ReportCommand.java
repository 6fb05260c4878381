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
import java.util.OptionalDouble;
import java.util.stream.Collectors;
import org.spanwire.Solver;
import org.spanwire.cli.output.BandsReport;
import org.spanwire.cli.output.ExposureReport;
import org.spanwire.cli.output.LineLengths;
import org.spanwire.cli.report.DesignReport;
import org.spanwire.cli.report.PageKind;
import org.spanwire.cli.report.RangeEntry;
import org.spanwire.cli.report.RangeReport;
import org.spanwire.cli.report.SiteReport;
import org.spanwire.design.Band;
import org.spanwire.design.Design;
import org.spanwire.design.ExposureRules;
import org.spanwire.design.Parameter;
import org.spanwire.design.PartRating;
import org.spanwire.study.BandCurves;
import org.spanwire.study.BandPortrait;
import org.spanwire.study.BandRating;
import org.spanwire.study.BandResponse;
import org.spanwire.study.BandStudy;
import org.spanwire.study.CurveStudy;
import org.spanwire.study.FrequencyRange;
import org.spanwire.study.Installation;
import org.spanwire.study.InstallationResponse;
import org.spanwire.study.LineLengthStudy;
import org.spanwire.study.RatingStudy;
import org.spanwire.study.SiteStudy;
import org.spanwire.study.SiteTable;
import org.spanwire.study.WorstSwrMap;
import picocli.CommandLine.ArgGroup;
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
          + " feedpoint and height, cut list, trim and kit list. Or, for others than the designer, a"
          + " datasheet, an install sheet, or a page to compare readings with on site. All of them carry"
          + " the cautions.",
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
      "  spanwire report kit.yaml --datasheet --output kit-datasheet.html",
      "      what the kit does and bears, for whoever chooses one",
      "  spanwire report kit.yaml --install-sheet --output kit-install.html",
      "      where to hang it, what to cut, what to read at first switch-on",
      "  spanwire report kit.yaml --on-site --heights 5m,7m,9m --output kit-site.html",
      "      choose height, soil and line there, and enter readings beside",
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

  /** Parts of a report that the progress line tells of. */
  private static final int PARTS = 7;

  /** Heat in watts that a choke without a rating is kept to: common practice, no source. */
  private static final double CHOKE_LIMIT = 10;

  /** What a map is drawn over if nothing is said, where a design has both. */
  private static final List<String> USUAL_MAP = List.of("offset", "height");

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
  private List<String> map = List.of();

  @ArgGroup private Kind kind = new Kind();

  @Mixin private SiteOptions site;

  /** Which page, if not the report. */
  static final class Kind {
    @Option(
        names = "--datasheet",
        description = "What it does and bears, on a page or two, for whoever chooses one.")
    private boolean datasheet;

    @Option(
        names = "--install-sheet",
        description = "Where and how to hang it and what to read, for whoever hangs it.")
    private boolean installSheet;

    @Option(
        names = "--on-site",
        description =
            "A page for the site: choose height, soil and feed line, see the SWR to expect, enter"
                + " readings beside. May take some minutes.")
    private boolean onSite;

    private PageKind page() {
      return datasheet
          ? PageKind.DATASHEET
          : installSheet ? PageKind.INSTALL_SHEET : PageKind.REPORT;
    }
  }

  @Override
  public void run() {
    if (!map.isEmpty() && map.stream().distinct().count() != 2) {
      throw new InputException(
          "--map " + String.join(",", map) + ": names two parameters, such as offset,height");
    }
    site.check(kind.onSite, kind.installSheet);
    if (design.files().size() > 1) {
      compare();
      return;
    }
    Path file = design.files().get(0);
    OutputOptions.checkTarget(output, file, "the design");
    Design read = design.readWithBands(file);
    checkMap(List.of(read));
    try (ProgressLine progress = progress(1)) {
      OutputOptions.replace(
          output,
          kind.onSite
              ? onSite(file, read, progress)
              : report(file, read, progress).html(kind.page()));
    }
  }

  /** A page for each design and one that compares them; all of them are written, or none. */
  private void compare() {
    if (kind.onSite) {
      throw new InputException("--on-site: is for one design; write a page for each");
    }
    RangeFiles files = RangeFiles.of(output, design.files());
    Map<Path, Design> designs = new LinkedHashMap<>();
    design.files().forEach(file -> designs.put(file, design.readWithBands(file)));
    checkMap(List.copyOf(designs.values()));
    Map<Path, String> pages = new LinkedHashMap<>();
    List<RangeEntry> entries = new ArrayList<>();
    try (ProgressLine progress = progress(designs.size())) {
      designs.forEach(
          (file, read) -> {
            DesignReport report = report(file, read, progress);
            Path page = files.pages().get(file);
            entries.add(RangeEntry.of(report, page.getFileName().toString()));
            pages.put(page, report.html(kind.page()));
          });
    }
    pages.put(files.comparison(), new RangeReport(ProgramVersion.number(), entries).html());
    OutputOptions.replaceAll(pages);
  }

  /** Of several designs one has to know a parameter; those without it have no map. */
  private void checkMap(List<Design> designs) {
    for (String name : map) {
      if (designs.stream().noneMatch(each -> each.parameters().containsKey(name))) {
        throw new InputException(
            "--map "
                + String.join(",", map)
                + ": unknown parameter '"
                + name
                + "'; known are "
                + designs.stream()
                    .flatMap(each -> each.parameters().keySet().stream())
                    .distinct()
                    .collect(Collectors.joining(", ")));
      }
    }
  }

  private ProgressLine progress(int reports) {
    return ProgressLine.ofParts("report", kind.onSite ? 1 : reports * PARTS);
  }

  private DesignReport report(Path file, Design read, ProgressLine progress) {
    return ModelOptions.solve(
        read, () -> report(file, read, Installation.of(read), design.solver(), progress));
  }

  private DesignReport report(
      Path file, Design read, Installation installation, Solver solver, ProgressLine progress) {
    int threads = design.threads();
    progress.begin("bands and ratings");
    BandsReport bands =
        bands(
            read,
            installation,
            new RatingStudy(read).run(solver, read.bands(), threads),
            kind.installSheet ? lineLengths(read, installation) : Optional.empty());
    progress.begin("curves");
    List<BandCurves> curves = new CurveStudy(read, true).run(solver, threads);
    progress.begin("range of frequencies");
    Optional<InstallationResponse> response = response(read, installation, solver, threads);
    progress.begin("patterns");
    List<BandPortrait> portraits =
        kind.page() == PageKind.REPORT
            ? BandPortrait.of(installation, solver, bands.bands(), ELEVATIONS, threads)
            : List.of();
    progress.begin("map");
    Optional<WorstSwrMap> map = map(read, solver, threads);
    progress.begin("exposure");
    ExposureReport exposure =
        ExposureCommand.report(read, read.exposureRules().orElse(ExposureRules.STRICT), design);
    progress.begin("cut list");
    return new DesignReport(
        bands,
        installation,
        curves,
        response,
        portraits,
        map,
        exposure,
        CutCommand.report(read, design, false),
        input(file));
  }

  private Optional<InstallationResponse> response(
      Design read, Installation installation, Solver solver, int threads) {
    List<Band> bands = read.bands();
    if (kind.page() != PageKind.REPORT || bands.size() < 2) {
      return Optional.empty();
    }
    FrequencyRange range =
        new FrequencyRange(
            bands.stream().mapToDouble(Band::lowHz).min().orElseThrow(),
            bands.stream().mapToDouble(Band::highHz).max().orElseThrow());
    double accuracy = ResponseCommand.accuracy(solver.options().tolerance());
    return Optional.of(
        InstallationResponse.of(installation, solver, range, accuracy, List.of(), threads));
  }

  private BandsReport bands(
      Design read,
      Installation installation,
      List<BandRating> ratings,
      Optional<LineLengths> lineLengths) {
    List<BandResponse> bands =
        new BandStudy(installation, ELEVATIONS, POINTS)
            .run(design.solver(), read.bands(), design.threads());
    return new BandsReport(
        design.conditions(
            read,
            bands.get(0).gapsMetres(),
            bands.stream().map(BandResponse::largestRelativeError).toList()),
        read.antenna().feeds().get(0).name(),
        bands,
        installation.powerWatts(),
        installation.warnings(),
        ratings,
        lineLengths,
        Optional.empty());
  }

  private Optional<LineLengths> lineLengths(Design read, Installation installation) {
    List<Double> lengths = site.lengthsToAvoid(read);
    if (lengths.isEmpty()) {
      return Optional.empty();
    }
    OptionalDouble rated =
        Optional.ofNullable(read.ratings().get(PartRating.CHOKE))
            .map(PartRating::heatWatts)
            .orElse(OptionalDouble.empty());
    return Optional.of(
        new LineLengths(
            new LineLengthStudy(read, lengths).run(design.solver(), design.threads()),
            rated.orElse(CHOKE_LIMIT),
            installation.powerWatts()));
  }

  private String onSite(Path file, Design read, ProgressLine progress) {
    SiteStudy study = site.study(read, mapped().get(1));
    progress.begin("table of sites");
    return ModelOptions.solve(
        read,
        () -> {
          Installation installation = Installation.of(read);
          BandsReport bands = bands(read, installation, List.of(), Optional.empty());
          SiteTable table = study.run(design.solver(), design.threads());
          SiteReport.Nominal nominal =
              ModelOptions.accept(read, () -> SiteReport.Nominal.of(table, read));
          return new SiteReport(bands, table, nominal, input(file)).html();
        });
  }

  private List<String> mapped() {
    return map.isEmpty() ? USUAL_MAP : map;
  }

  private Optional<WorstSwrMap> map(Design read, Solver solver, int threads) {
    Parameter across = read.parameters().get(mapped().get(0));
    Parameter up = read.parameters().get(mapped().get(1));
    if (across == null || up == null) {
      return Optional.empty();
    }
    return Optional.of(
        WorstSwrMap.of(
            read,
            WorstSwrMap.axis(across, ACROSS_PER_SIDE),
            WorstSwrMap.axis(up, UP_PER_SIDE),
            MAP_POINTS,
            solver,
            threads));
  }

  private DesignReport.Input input(Path file) {
    try {
      MessageDigest digest = MessageDigest.getInstance("SHA-256");
      return new DesignReport.Input(
          HexFormat.of().formatHex(digest.digest(Files.readAllBytes(file))), design.changes());
    } catch (NoSuchAlgorithmException e) {
      throw new IllegalStateException("every Java platform has SHA-256", e);
    } catch (IOException e) {
      throw new InputException(e.getMessage() + ": could not be read; check the path");
    }
  }
}
