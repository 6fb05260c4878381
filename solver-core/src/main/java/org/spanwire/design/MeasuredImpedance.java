package org.spanwire.design;

import java.util.Locale;
import org.apache.commons.math3.complex.Complex;
import org.spanwire.circuit.NetworkData;
import org.spanwire.circuit.Touchstone;
import org.spanwire.circuit.TouchstoneException;
import org.spanwire.geometry.LumpedImpedance;

/**
 * A fitting's impedance measured as a one-port and given by a Touchstone file; between its samples
 * as {@link NetworkData} interpolates, outside them there is no answer.
 */
final class MeasuredImpedance implements LumpedImpedance {

  private final String fitting;
  private final String file;
  private final NetworkData data;

  private MeasuredImpedance(String fitting, String file, NetworkData data) {
    this.fitting = fitting;
    this.file = file;
    this.data = data;
  }

  /** Whether a file's name is that of a Touchstone one-port. */
  static boolean isNamedBy(Item item) {
    return item.text().toLowerCase(Locale.ROOT).endsWith(".s1p");
  }

  static MeasuredImpedance read(Item item, String fitting) {
    try {
      Touchstone touchstone = Touchstone.read(item.path());
      if (touchstone.ports() != 1) {
        throw item.fault(
            item.name() + " has " + touchstone.ports() + " ports; expected a file of one port");
      }
      return new MeasuredImpedance(fitting, item.path().toString(), touchstone.network());
    } catch (TouchstoneException e) {
      throw e.line() > 0
          ? new DesignException(e.file(), e.line(), e.column(), e.problem())
          : item.fault(e.getMessage());
    }
  }

  @Override
  public Complex at(double frequencyHz) {
    new TableRange(fitting, file, data.lowestHz(), data.highestHz(), "measure over a wider range")
        .check(frequencyHz);
    return data.at(frequencyHz).inputImpedance();
  }
}
