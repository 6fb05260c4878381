package org.spanwire.design;

import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;

/**
 * A table of comma-separated numbers below a header that is fixed, the first column a frequency in
 * hertz that rises.
 */
final class NumberTable {

  private NumberTable() {}

  /** Reads the file that a value names; a fault names its line and column. */
  static double[][] read(Item item, String header) {
    Path path = item.path();
    String file = path.toString();
    String[] lines = content(item, path).split("\\R", -1);
    if (!lines[0].strip().equals(header)) {
      throw new DesignException(
          file, 1, 1, "header " + Words.quote(lines[0]) + "; expected " + header);
    }
    List<double[]> rows = new ArrayList<>();
    for (int i = 1; i < lines.length; i++) {
      if (!lines[i].isBlank()) {
        double before = rows.isEmpty() ? 0 : rows.get(rows.size() - 1)[0];
        rows.add(row(file, i + 1, lines[i], header, before));
      }
    }
    if (rows.isEmpty()) {
      throw new DesignException(file, 1, 1, "table has no rows; expected at least one");
    }
    return rows.toArray(new double[0][]);
  }

  // A file that is missing is the fault of the line that names it.
  private static String content(Item item, Path path) {
    try {
      return TextFile.read(path);
    } catch (DesignException e) {
      throw e.line() > 0 ? e : item.fault(e.getMessage());
    }
  }

  private static double[] row(String file, int line, String text, String header, double before) {
    String[] cells = text.split(",", -1);
    int columns = header.split(",", -1).length;
    if (cells.length != columns) {
      throw new DesignException(
          file,
          line,
          1,
          "row has " + cells.length + " values; expected " + columns + ": " + header);
    }
    double[] row = new double[columns];
    for (int i = 0, column = 1; i < columns; column += cells[i].length() + 1, i++) {
      row[i] = number(file, line, column, cells[i]);
    }
    if (!(row[0] > before)) {
      throw new DesignException(
          file,
          line,
          1,
          "frequency " + cells[0].strip() + " Hz is not above the one before; sort the rows");
    }
    return row;
  }

  private static double number(String file, int line, int column, String cell) {
    try {
      double value = Double.parseDouble(cell.strip());
      if (Double.isFinite(value)) {
        return value;
      }
    } catch (NumberFormatException e) {
      // Told below, together with numbers that are not finite.
    }
    throw new DesignException(
        file, line, column, "value " + Words.quote(cell) + " is no finite number; expected one");
  }
}
