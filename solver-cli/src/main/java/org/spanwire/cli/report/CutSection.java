package org.spanwire.cli.report;

import java.util.List;
import org.spanwire.cli.output.CutReport;
import org.spanwire.cli.output.CutText;
import org.spanwire.cli.output.Numbers;
import org.spanwire.practice.Leg;
import org.spanwire.practice.Trim;
import org.spanwire.result.Warning;
import org.spanwire.study.TrimRow;

/**
 * What to cut and to trim.
 *
 * @param report what is reported
 */
record CutSection(DesignReport report) implements Section {

  @Override
  public String id() {
    return "cut";
  }

  @Override
  public String title() {
    return "Cut list and trim";
  }

  @Override
  public void write(Page page) {
    CutReport cut = report.cut();
    Page.TableRows legs =
        page.table("Lengths in metres", "wire", "from", "to", "cut to", "made up", "in the model");
    for (Leg leg : cut.legs()) {
      legs.row(
          leg.wire(),
          CutText.place(leg.from()),
          CutText.place(leg.to()),
          Numbers.fixed(leg.cutLength(), 3),
          Numbers.fixed(leg.madeUpLength(), 3),
          Numbers.fixed(leg.modelLength(), 3));
    }
    page.list(
        cut.rulesInWords().stream().map(entry -> entry.name() + ": " + entry.value()).toList(),
        "plain");
    cut.trim().ifPresent(trim -> trim(page, trim, cut.rows()));
    cut.warnings().stream()
        .filter(warning -> !MechanicsSection.concerns(warning))
        .map(Warning::message)
        .forEach(page::paragraph);
  }

  private void trim(Page page, Trim trim, List<TrimRow> rows) {
    if (rows.isEmpty()) {
      return;
    }
    Page.TableRows table =
        page.table(
            "Trimming wire " + trim.wire(), "band", "best match, MHz", "kHz for each cm taken off");
    for (TrimRow row : rows) {
      table.bandRow(
          row.band(),
          row.effect().map(e -> Numbers.fixed(e.bestMatchHz() / 1e6, 3)).orElse("-"),
          row.effect().map(e -> Numbers.significant(e.hertzPerMetre() / 1e5, 3)).orElse("-"));
    }
    page.paragraph(CutText.sharing(trim));
  }
}
