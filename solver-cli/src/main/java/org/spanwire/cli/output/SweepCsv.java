package org.spanwire.cli.output;

import java.io.IOException;
import java.util.ArrayList;
import java.util.List;
import org.apache.commons.csv.CSVFormat;
import org.spanwire.study.Sweep;
import org.spanwire.study.SweepRow;

/**
 * A sweep as CSV, one row per point and frequency, in SI units with angles of directions in
 * degrees. An infinite value is {@code inf}, an undefined one is empty, and so is every quantity of
 * a row whose status is not {@code ok}.
 *
 * @param sweep the sweep
 * @param out takes the lines
 */
public record SweepCsv(Sweep sweep, Appendable out) implements SweepWriter {

  private static final CSVFormat RFC = CSVFormat.RFC4180.builder().setRecordSeparator('\n').get();

  /** The header row, with its line end. */
  public static String header(Sweep sweep) {
    List<String> header = new ArrayList<>(sweep.space().parameters());
    header.add("frequency_hz");
    header.addAll(sweep.request().columns());
    header.add("status");
    return line(header);
  }

  /** A row, with its line end. */
  public static String line(Sweep sweep, SweepRow row) {
    List<Object> cells = new ArrayList<>();
    row.parameters().forEach(value -> cells.add(value.value()));
    cells.add(row.frequencyHz());
    int columns = sweep.request().columns().size();
    for (int i = 0; i < columns; i++) {
      cells.add(row.values().isEmpty() ? "" : SolveCsv.cell(row.values().get(i)));
    }
    cells.add(row.status());
    return line(cells);
  }

  private static String line(List<?> cells) {
    return RFC.format(cells.toArray()) + "\n";
  }

  @Override
  public void begin() throws IOException {
    out.append(header(sweep));
  }

  @Override
  public void row(SweepRow row) throws IOException {
    out.append(line(sweep, row));
  }

  @Override
  public void end() {
    // Nothing stands after the rows.
  }
}
