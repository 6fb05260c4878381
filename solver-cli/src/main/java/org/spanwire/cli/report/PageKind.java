package org.spanwire.cli.report;

import java.util.List;
import java.util.function.Function;

/** For whom a page about a design is written. */
public enum PageKind {
  /** Everything, for whoever designs it. */
  REPORT(
      "Antenna report",
      report ->
          List.of(
              new SummarySection(report),
              new SwrSection(report, true),
              new MapSection(report),
              new ImpedanceSection(report),
              new PatternSection(report),
              new CurrentSection(report),
              new PowerSection(report),
              new RatingSection(report),
              new ExposureSection(report),
              new MechanicsSection(report),
              new CutSection(report),
              new KitSection(report),
              new ConditionSection(report))),

  /** For whoever chooses one: what it does and what it bears. */
  DATASHEET(
      "Datasheet",
      report ->
          List.of(
              new FactSection(report),
              new SwrSection(report, false),
              new ConditionSection(report))),

  /** For whoever hangs it. */
  INSTALL_SHEET(
      "Install sheet",
      report ->
          List.of(
              new HangSection(report),
              new CutSection(report),
              new KitSection(report),
              new MechanicsSection(report),
              new LineSection(report),
              new ReadingSection(report),
              new ConditionSection(report)));

  private final String title;
  private final Function<DesignReport, List<Section>> sections;

  PageKind(String title, Function<DesignReport, List<Section>> sections) {
    this.title = title;
    this.sections = sections;
  }

  String title() {
    return title;
  }

  /** What it holds, in order; the page puts cautions after the first. */
  List<Section> sections(DesignReport report) {
    return sections.apply(report);
  }
}
