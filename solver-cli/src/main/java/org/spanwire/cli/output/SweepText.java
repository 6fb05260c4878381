package org.spanwire.cli.output;

import java.io.IOException;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import org.spanwire.study.Sweep;
import org.spanwire.study.SweepRow;
import org.spanwire.unit.Quantity;

/**
 * A sweep for reading: columns of fixed width, so that rows can be printed as they come.
 *
 * @param sweep the sweep
 * @param palette colours
 * @param out takes the lines
 */
public record SweepText(Sweep sweep, Palette palette, Appendable out) implements SweepWriter {

  private static final int NARROWEST = 11;

  @Override
  public void begin() throws IOException {
    out.append(palette.heading(sweep.base().title())).append("\n\n");
    List<String> names = names();
    cells(names, "status");
  }

  private List<String> names() {
    List<String> names = new ArrayList<>(sweep.space().parameters());
    names.add("frequency");
    names.addAll(sweep.request().columns());
    return names;
  }

  @Override
  public void row(SweepRow row) throws IOException {
    List<String> cells = new ArrayList<>();
    row.parameters().stream().map(Quantity::toString).forEach(cells::add);
    cells.add(Numbers.megahertz(row.frequencyHz()) + " MHz");
    int columns = sweep.request().columns().size();
    for (int i = 0; i < columns; i++) {
      double value = row.values().isEmpty() ? Double.NaN : row.values().get(i);
      cells.add(Double.isNaN(value) ? "-" : Numbers.significant(value, 5));
    }
    cells(cells, row.status());
  }

  private void cells(List<String> cells, String status) throws IOException {
    List<String> names = names();
    for (int i = 0; i < cells.size(); i++) {
      int width = Math.max(NARROWEST, names.get(i).length());
      out.append(String.format(Locale.ROOT, "%" + width + "s  ", cells.get(i)));
    }
    out.append(status).append('\n');
  }

  @Override
  public void end() {
    // Nothing stands after the rows.
  }
}
