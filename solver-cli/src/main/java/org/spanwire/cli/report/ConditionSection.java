package org.spanwire.cli.report;

import java.util.LinkedHashSet;
import java.util.Set;
import org.jsoup.nodes.Element;
import org.spanwire.cli.output.BandsReport;
import org.spanwire.result.Warning;

/**
 * What all figures hold for, and what they were made from.
 *
 * @param bands with the conditions
 * @param input what identifies the input
 */
record ConditionSection(BandsReport bands, DesignReport.Input input) implements Section {

  ConditionSection(DesignReport report) {
    this(report.bands(), report.input());
  }

  @Override
  public String id() {
    return "conditions";
  }

  @Override
  public String title() {
    return "Model and conditions";
  }

  @Override
  public void write(Page page) {
    Element terms = page.terms();
    Page.term(
        terms,
        "model",
        "thin wires by a Galerkin method of moments, over soil with full Sommerfeld integrals; flat,"
            + " even ground; steady state at single frequencies");
    bands.conditions().entries().forEach(e -> Page.term(terms, e.name(), e.value()));
    if (!input.settings().isEmpty()) {
      Page.term(terms, "changed", String.join(", ", input.settings()));
    }
    Page.term(terms, "version", "Spanwire " + bands.conditions().version());
    Page.term(terms, "input", "SHA-256 of the design file " + input.sha256());
    Set<Warning> warnings = new LinkedHashSet<>(bands.warnings());
    if (!warnings.isEmpty()) {
      page.heading("Warnings");
      page.list(warnings.stream().map(w -> w.name() + ": " + w.message()).toList(), "plain");
    }
  }
}
