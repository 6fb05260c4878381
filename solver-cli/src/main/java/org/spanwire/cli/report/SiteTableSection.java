package org.spanwire.cli.report;

import java.util.ArrayList;
import java.util.List;
import java.util.stream.IntStream;
import org.spanwire.cli.output.Numbers;
import org.spanwire.design.Band;
import org.spanwire.study.SiteTable;

/**
 * The same in figures, for paper and for readers without scripts.
 *
 * @param report what is reported
 */
record SiteTableSection(SiteReport report) implements Section {

  @Override
  public String id() {
    return "table";
  }

  @Override
  public String title() {
    return "The table";
  }

  @Override
  public void write(Page page) {
    SiteTable table = report.table();
    page.paragraph(
        "SWR at the lower edge, the lowest in the band, and at the upper edge. Drawn through solved"
            + " frequencies; error of |reflection coefficient| between them at most "
            + Numbers.significant(Math.max(table.interpolationError(), 1e-6), 1)
            + ".");
    List<String> columns = new ArrayList<>(List.of("height", "feed line"));
    table.bands().forEach(band -> columns.add(band.name()));
    for (int ground = 0; ground < table.grounds().size(); ground++) {
      Page.TableRows rows =
          page.table("Soil " + report.grounds().get(ground), columns.toArray(new String[0]));
      for (int line = 0; line < table.lines(); line++) {
        for (int height = 0; height < table.heights().size(); height++) {
          rows.row(cells(ground, line, height));
        }
      }
    }
    report
        .missing()
        .ifPresent(reason -> page.paragraph("A dash: cannot be modelled, such as: " + reason));
  }

  private String[] cells(int ground, int line, int height) {
    SiteTable table = report.table();
    List<String> cells =
        new ArrayList<>(List.of(report.heights().get(height), report.lines().get(line)));
    SiteTable.Place place = table.at(ground, line, height);
    for (int band = 0; band < table.bands().size(); band++) {
      cells.add(place.reason().isPresent() ? "-" : inBand(place, band));
    }
    return cells.toArray(new String[0]);
  }

  private String inBand(SiteTable.Place place, int index) {
    Band band = report.table().bands().get(index);
    List<Double> frequencies = report.table().frequenciesHz().get(index);
    double[] inside =
        IntStream.range(0, frequencies.size())
            .filter(i -> band.contains(frequencies.get(i)))
            .mapToDouble(i -> place.swr().get(index).get(i))
            .toArray();
    return Numbers.swr(inside[0])
        + " / "
        + Numbers.swr(java.util.Arrays.stream(inside).min().orElseThrow())
        + " / "
        + Numbers.swr(inside[inside.length - 1]);
  }
}
