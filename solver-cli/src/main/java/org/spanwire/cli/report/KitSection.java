package org.spanwire.cli.report;

import java.util.List;
import org.spanwire.cli.output.KitText;

/**
 * What is packed, and what hangs.
 *
 * @param report what is reported
 */
record KitSection(DesignReport report) implements Section {

  @Override
  public String id() {
    return "kit";
  }

  @Override
  public String title() {
    return "Kit list";
  }

  @Override
  public void write(Page page) {
    KitText kit = report.cut().kitText();
    Page.TableRows rows =
        page.table(
            "What is packed; wire as it is cut, with its allowances",
            KitText.COLUMNS.toArray(new String[0]));
    for (List<String> row : kit.rows()) {
      rows.row(row.toArray(new String[0]));
    }
    page.paragraph(kit.sums());
  }
}
