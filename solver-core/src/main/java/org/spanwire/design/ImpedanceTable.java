package org.spanwire.design;

import java.util.ArrayList;
import java.util.List;
import org.apache.commons.math3.complex.Complex;
import org.spanwire.geometry.GeometryException;
import org.spanwire.geometry.LumpedImpedance;
import org.spanwire.unit.Dimension;
import org.spanwire.unit.Quantity;

/**
 * A fitting's impedance given by a table of comma-separated values with the header {@code
 * frequency_hz,resistance_ohm,reactance_ohm}, frequencies rising. Between rows resistance and
 * reactance are interpolated linearly in frequency; outside the table there is no answer.
 */
final class ImpedanceTable implements LumpedImpedance {

  private static final String HEADER = "frequency_hz,resistance_ohm,reactance_ohm";

  private final String fitting;
  private final String file;
  private final double[][] rows;

  private ImpedanceTable(String fitting, String file, double[][] rows) {
    this.fitting = fitting;
    this.file = file;
    this.rows = rows;
  }

  static ImpedanceTable read(Item item, String fitting) {
    String file = item.path().toString();
    String[] lines = TextFile.read(item).split("\\R", -1);
    if (!lines[0].strip().equals(HEADER)) {
      throw new DesignException(
          file, 1, 1, "header " + Words.quote(lines[0]) + "; expected " + HEADER);
    }
    List<double[]> rows = new ArrayList<>();
    for (int i = 1; i < lines.length; i++) {
      if (!lines[i].isBlank()) {
        rows.add(row(file, i + 1, lines[i], rows.isEmpty() ? 0 : rows.get(rows.size() - 1)[0]));
      }
    }
    if (rows.isEmpty()) {
      throw new DesignException(file, 1, 1, "table has no rows; expected at least one");
    }
    return new ImpedanceTable(fitting, file, rows.toArray(new double[0][]));
  }

  private static double[] row(String file, int line, String text, double before) {
    String[] cells = text.split(",", -1);
    if (cells.length != 3) {
      throw new DesignException(
          file, line, 1, "row has " + cells.length + " values; expected three: " + HEADER);
    }
    double[] row = new double[3];
    for (int i = 0, column = 1; i < 3; column += cells[i].length() + 1, i++) {
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

  @Override
  public Complex at(double frequencyHz) {
    int last = rows.length - 1;
    if (!(frequencyHz >= rows[0][0] && frequencyHz <= rows[last][0])) {
      throw new GeometryException(
          GeometryException.Subject.FITTING,
          fitting,
          "frequency "
              + hertz(frequencyHz)
              + " lies outside "
              + file
              + ", which runs from "
              + hertz(rows[0][0])
              + " to "
              + hertz(rows[last][0])
              + "; extend the table");
    }
    int above = 0;
    while (rows[above][0] < frequencyHz) {
      above++;
    }
    double[] high = rows[above];
    double[] low = rows[Math.max(0, above - 1)];
    double t = high == low ? 0 : (frequencyHz - low[0]) / (high[0] - low[0]);
    return new Complex(low[1] + t * (high[1] - low[1]), low[2] + t * (high[2] - low[2]));
  }

  private static Quantity hertz(double frequency) {
    return new Quantity(frequency, Dimension.FREQUENCY);
  }
}
