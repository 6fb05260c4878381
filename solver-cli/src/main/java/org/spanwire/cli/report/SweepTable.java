package org.spanwire.cli.report;

import java.util.ArrayList;
import java.util.List;
import org.spanwire.cli.chart.ParameterText;
import org.spanwire.cli.chart.SweepCharts;
import org.spanwire.cli.output.Numbers;
import org.spanwire.study.SweepRow;

/**
 * Every row of the sweep.
 *
 * @param grid the rows
 */
record SweepTable(SweepGrid grid) implements Section {

  private static final int DIGITS = 4;

  @Override
  public String id() {
    return "rows";
  }

  @Override
  public String title() {
    return "All values";
  }

  @Override
  public void write(Page page) {
    page.fold("Show all " + grid.rows().size() + " rows");
    List<String> columns = new ArrayList<>();
    grid.axes().forEach(axis -> columns.add(axis.parameter()));
    columns.add("MHz");
    grid.columns().forEach(column -> columns.add(SweepCharts.words(column)));
    boolean whole = grid.rows().stream().allMatch(row -> row.failure().isEmpty());
    if (!whole) {
      columns.add("why not");
    }
    Page.TableRows table = page.table("Values solved", columns.toArray(String[]::new));
    for (SweepRow row : grid.rows()) {
      List<String> cells = new ArrayList<>();
      for (int i = 0; i < row.parameters().size(); i++) {
        ParameterText words = new ParameterText(grid.axes().get(i).values());
        cells.add(words.text(row.parameters().get(i)));
      }
      cells.add(Numbers.megahertz(row.frequencyHz()));
      for (int i = 0; i < grid.columns().size(); i++) {
        double value = row.values().isEmpty() ? Double.NaN : row.values().get(i);
        cells.add(Double.isNaN(value) ? "-" : Numbers.significant(value, DIGITS));
      }
      if (!whole) {
        cells.add(row.failure().map(SweepRow.Failure::message).orElse(""));
      }
      table.row(cells.toArray(String[]::new));
    }
  }
}
