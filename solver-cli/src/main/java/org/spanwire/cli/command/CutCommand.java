package org.spanwire.cli.command;

import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import org.spanwire.Antenna;
import org.spanwire.cli.output.CutReport;
import org.spanwire.design.CutRules;
import org.spanwire.design.Design;
import org.spanwire.geometry.Feed;
import org.spanwire.practice.CutList;
import org.spanwire.practice.KitList;
import org.spanwire.practice.Leg;
import org.spanwire.practice.SpanState;
import org.spanwire.practice.Trim;
import org.spanwire.result.Warning;
import org.spanwire.study.TrimRow;
import org.spanwire.study.TrimStudy;
import picocli.CommandLine.Command;
import picocli.CommandLine.Mixin;
import picocli.CommandLine.Option;

/** {@code spanwire cut}: lengths to cut and how to trim. */
@Command(
    name = "cut",
    description = {
      "Print the lengths to cut for every leg, what else is packed and weighs how much, and how the bands move"
          + " when the wire is trimmed.",
      "What eyes, terminals and stretch take is stated in the design under cut: {datum: eye, loop: 60 mm, fold-back: 150 mm,"
          + " terminal: 30 mm, stretch: 0.2 %%, tolerance: 5 mm}. Insulation is part of the model already.",
      "The kit list holds wire, feed chain and fittings, and what the design lists under kit: [{item: end insulator,"
          + " count: 2, mass: 40 g, hangs: true}, {item: transformer, mass: 620 g}].",
      "For wires that hang, sag, pull and margin to breaking follow in still air and in the design's"
          + " weather: {storm: {wind: 30 m/s}, frost: {ice: 10 mm, temperature-change: -20 K}}."
    },
    footerHeading = "%nExamples:%n",
    footer = {
      "  spanwire cut kit.yaml",
      "      a sheet for the bench",
      "  spanwire cut kit.yaml --format csv --output kit-cut.csv",
      "      one row per leg for a spreadsheet",
      "  spanwire cut kit.yaml --kit",
      "      the kit list alone, for whoever packs"
    })
public final class CutCommand implements Runnable {

  /** A smaller margin to breaking is warned of: common practice, no source. */
  private static final double LEAST_MARGIN = 2;

  @Mixin private DesignOptions design;
  @Mixin private OutputOptions output;

  @Option(
      names = "--kit",
      description = "Write the kit list alone, as text or CSV. JSON holds everything.")
  private boolean kitAlone;

  @Override
  public void run() {
    output.check(design.file());
    output.write(report(design.read(), design, kitAlone));
  }

  /**
   * Everything there is to say about cutting a design.
   *
   * @param kitAlone whether text and CSV are to hold the kit list only
   */
  static CutReport report(Design read, ModelOptions options, boolean kitAlone) {
    List<Warning> warnings = new ArrayList<>();
    CutRules rules = read.cutRules().orElse(CutRules.PLAIN);
    if (read.cutRules().isEmpty()) {
      warnings.add(
          new Warning(
              "no-cut-rules",
              "the design has no cut section: nothing is added for eyes and terminals; add"
                  + " cut: {datum: eye, loop: 60 mm, fold-back: 150 mm}"));
    }
    List<Leg> legs = legs(read, rules);
    Optional<Trim> trim = trim(read, warnings);
    List<TrimRow> rows = trim.isPresent() ? rows(read, options) : List.of();
    List<SpanState> spans = spans(read, warnings);
    KitList kit = KitList.of(read);
    kit.loadDifference(read).ifPresent(warnings::add);
    return new CutReport(
        read, ProgramVersion.number(), rules, legs, trim, rows, spans, kit, kitAlone, warnings);
  }

  private static List<SpanState> spans(Design read, List<Warning> warnings) {
    try {
      List<SpanState> states = SpanState.of(read);
      for (SpanState state : states) {
        double margin = state.breakingMargin().orElse(Double.POSITIVE_INFINITY);
        if (margin < LEAST_MARGIN) {
          warnings.add(
              new Warning(
                  CutReport.LOW_MARGIN,
                  String.format(
                      Locale.ROOT,
                      "wire '%s' in weather '%s': margin to breaking %.1f, less than %.0f; hang it with"
                          + " more sag, or take stronger wire",
                      state.wire(),
                      state.name(),
                      margin,
                      LEAST_MARGIN)));
        }
      }
      return states;
    } catch (IllegalArgumentException e) {
      warnings.add(new Warning(CutReport.NO_MECHANICS, e.getMessage()));
      return List.of();
    }
  }

  private static List<Leg> legs(Design read, CutRules rules) {
    return ModelOptions.accept(read, () -> CutList.of(read.antenna(), rules));
  }

  private static Optional<Trim> trim(Design read, List<Warning> warnings) {
    Antenna antenna = read.antenna();
    try {
      return Optional.of(Trim.of(antenna, antenna.feeds().get(0)));
    } catch (IllegalArgumentException e) {
      warnings.add(new Warning("no-trim-table", e.getMessage()));
      return Optional.empty();
    }
  }

  private static List<TrimRow> rows(Design read, ModelOptions options) {
    Feed feed = read.antenna().feeds().get(0);
    TrimStudy study = new TrimStudy(read.antenna(), feed, read.feedpointReferenceOhm());
    return ModelOptions.solve(
        read, () -> study.run(options.solver(), read.bands(), options.threads()));
  }
}
