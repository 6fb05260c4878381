package org.spanwire.medium;

import java.util.List;

/**
 * A soil's constants against frequency. Between rows permittivity and conductivity are interpolated
 * linearly against the logarithm of frequency; outside the table there is no answer.
 *
 * @param rows at least one, frequencies rising
 */
public record SoilTable(List<Row> rows) {

  /**
   * The constants at one frequency.
   *
   * @param frequencyHz frequency in hertz, positive
   * @param relativePermittivity real relative permittivity, at least 1
   * @param conductivity conductivity in S/m, not negative
   */
  public record Row(double frequencyHz, double relativePermittivity, double conductivity) {

    /** Checks the ranges. */
    public Row {
      if (!(frequencyHz > 0) || Double.isInfinite(frequencyHz)) {
        throw new IllegalArgumentException(
            "frequency " + frequencyHz + " Hz must be positive and finite");
      }
      Soil.checkConstants(relativePermittivity, conductivity);
    }
  }

  /** Checks the order. */
  public SoilTable {
    rows = List.copyOf(rows);
    if (rows.isEmpty()) {
      throw new IllegalArgumentException("a soil table needs at least one row");
    }
    for (int i = 1; i < rows.size(); i++) {
      if (!(rows.get(i).frequencyHz > rows.get(i - 1).frequencyHz)) {
        throw new IllegalArgumentException(
            "frequency " + rows.get(i).frequencyHz + " Hz must be above the one before");
      }
    }
  }

  /** Lowest frequency in hertz. */
  public double lowestHz() {
    return rows.get(0).frequencyHz;
  }

  /** Highest frequency in hertz. */
  public double highestHz() {
    return rows.get(rows.size() - 1).frequencyHz;
  }

  /** Whether a frequency in hertz lies within the table. */
  public boolean covers(double frequencyHz) {
    return frequencyHz >= lowestHz() && frequencyHz <= highestHz();
  }

  /**
   * The constants at a frequency.
   *
   * @throws IllegalArgumentException outside the table
   */
  public Row at(double frequencyHz) {
    if (!covers(frequencyHz)) {
      throw new IllegalArgumentException(
          "frequency "
              + frequencyHz
              + " Hz must lie within the soil's table, "
              + lowestHz()
              + " Hz to "
              + highestHz()
              + " Hz");
    }
    int above = 0;
    while (rows.get(above).frequencyHz < frequencyHz) {
      above++;
    }
    Row high = rows.get(above);
    if (high.frequencyHz == frequencyHz) {
      return high;
    }
    Row low = rows.get(above - 1);
    double t =
        Math.log(frequencyHz / low.frequencyHz) / Math.log(high.frequencyHz / low.frequencyHz);
    return new Row(
        frequencyHz,
        low.relativePermittivity + t * (high.relativePermittivity - low.relativePermittivity),
        low.conductivity + t * (high.conductivity - low.conductivity));
  }
}
