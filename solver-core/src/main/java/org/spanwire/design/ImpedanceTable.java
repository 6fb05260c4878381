package org.spanwire.design;

import org.apache.commons.math3.complex.Complex;
import org.spanwire.geometry.LumpedImpedance;

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
    return new ImpedanceTable(fitting, item.path().toString(), NumberTable.read(item, HEADER));
  }

  @Override
  public Complex at(double frequencyHz) {
    new TableRange(fitting, file, rows[0][0], rows[rows.length - 1][0], "extend the table")
        .check(frequencyHz);
    int above = 0;
    while (rows[above][0] < frequencyHz) {
      above++;
    }
    double[] high = rows[above];
    double[] low = rows[Math.max(0, above - 1)];
    double t = high == low ? 0 : (frequencyHz - low[0]) / (high[0] - low[0]);
    return new Complex(low[1] + t * (high[1] - low[1]), low[2] + t * (high[2] - low[2]));
  }
}
