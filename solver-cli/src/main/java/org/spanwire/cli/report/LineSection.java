package org.spanwire.cli.report;

import org.jsoup.nodes.Element;
import org.spanwire.cli.output.LineLengths;

/**
 * Which way the feed line goes, and which lengths to avoid.
 *
 * @param report what is reported
 */
record LineSection(DesignReport report) implements Section {

  @Override
  public String id() {
    return "line";
  }

  @Override
  public String title() {
    return "Feed line";
  }

  @Override
  public void write(Page page) {
    page.paragraph(
        "Lead the line away from the wire at right angles, as far as the site allows, and not along"
            + " it. What the choke does not hold back flows on its outside: keep it off people, metal"
            + " and other cables.");
    if (report.bands().lineLengths().isEmpty()) {
      page.paragraph(
          "Which lengths to avoid is not known: the design does not give the line's route with a"
              + " free end. Should readings change when the line is moved or touched, add a choke or"
              + " another length of line.");
      return;
    }
    LineLengths lengths = report.bands().lineLengths().get();
    Element terms = page.terms();
    lengths.advice().forEach(entry -> Page.term(terms, entry.name(), entry.value()));
    if (lengths.allOverheat()) {
      page.paragraph(
          "With a steady carrier of full power every length overheats the choke: send with less power"
              + " or in a mode with less average power, or fit a choke that bears more.");
    }
    page.paragraph(lengths.method());
  }
}
