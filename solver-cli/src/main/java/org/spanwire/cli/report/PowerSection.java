package org.spanwire.cli.report;

import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import org.spanwire.cli.chart.LedgerChart;
import org.spanwire.cli.output.Numbers;
import org.spanwire.study.BandPortrait;
import org.spanwire.study.Ledger;

/**
 * Where the transmitter's power goes.
 *
 * @param report what is reported
 */
record PowerSection(DesignReport report) implements Section {

  @Override
  public String id() {
    return "power";
  }

  @Override
  public String title() {
    return "Where the power goes";
  }

  @Override
  public void write(Page page) {
    Map<String, Ledger> ledgers = new LinkedHashMap<>();
    for (BandPortrait portrait : report.portraits()) {
      portrait.ledger().ifPresent(ledger -> ledgers.put(portrait.band(), ledger));
    }
    if (ledgers.isEmpty()) {
      page.paragraph("Not drawn: the design has several feeds, and a feed chain serves one.");
      return;
    }
    page.paragraph(
        "At the best match of each band, before any tuner: mismatch is what the transmitter could"
            + " give but the line does not take. Every part is computed on its own, so the sum is a"
            + " check.");
    page.picture(page.gallery(), new LedgerChart(ledgers), "", "");
    table(page, ledgers);
    if (!report.bands().unknownHeat().isEmpty()) {
      page.paragraph(
          "Not counted, for nothing is known of its heat: "
              + String.join("; ", report.bands().unknownHeat())
              + ".");
    }
  }

  private void table(Page page, Map<String, Ledger> ledgers) {
    List<String> columns = new ArrayList<>(List.of("band"));
    ledgers.values().iterator().next().entries().forEach(entry -> columns.add(entry.part()));
    columns.add("sum");
    Page.TableRows rows =
        page.table(
            "Watts of " + Numbers.significant(report.bands().powerWatts(), 6) + " W",
            columns.toArray(new String[0]));
    ledgers.forEach(
        (band, ledger) -> {
          List<String> cells = new ArrayList<>(List.of(band));
          ledger
              .entries()
              .forEach(entry -> cells.add(Numbers.heat(entry.part(), entry.watts(), 1)));
          cells.add(Numbers.fixed(ledger.availableWatts() * (1 + ledger.closure()), 1));
          rows.bandRow(cells.toArray(new String[0]));
        });
  }
}
