package org.spanwire.cli.report;

import java.util.stream.Collectors;
import org.jsoup.nodes.Element;
import org.spanwire.cli.output.Numbers;
import org.spanwire.study.Sweep;

/**
 * What the values hold for.
 *
 * @param grid the rows
 * @param tolerance wanted relative accuracy of impedances
 * @param version version of the program
 */
record SweepConditions(SweepGrid grid, double tolerance, String version) implements Section {

  @Override
  public String id() {
    return "conditions";
  }

  @Override
  public String title() {
    return "Conditions";
  }

  @Override
  public void write(Page page) {
    Sweep sweep = grid.sweep();
    Element terms = page.terms();
    Page.term(terms, "design", sweep.base().source());
    String others =
        sweep.base().parameters().values().stream()
            .filter(each -> !sweep.space().parameters().contains(each.name()))
            .map(each -> each.name() + " " + each.value())
            .collect(Collectors.joining(", "));
    if (!others.isEmpty()) {
      Page.term(terms, "held still", others);
    }
    Page.term(
        terms,
        "impedance and SWR",
        "of feed " + sweep.request().feed() + ", at the " + sweep.request().plane().label());
    Page.term(terms, "frame on a map", "the design as it stands, where it lies on the grid");
    Page.term(
        terms,
        "accuracy",
        "impedances wanted to " + Numbers.significant(100 * tolerance, 2) + " %");
    Page.term(terms, "program", "Spanwire " + version);
  }
}
