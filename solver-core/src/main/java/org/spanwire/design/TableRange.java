package org.spanwire.design;

import org.spanwire.geometry.GeometryException;
import org.spanwire.unit.Dimension;
import org.spanwire.unit.Quantity;

/**
 * The frequencies that a fitting's file knows.
 *
 * @param fitting name of the fitting
 * @param file the file
 * @param lowestHz lowest frequency in hertz
 * @param highestHz highest frequency in hertz
 * @param remedy what to do about one that lies outside
 */
record TableRange(String fitting, String file, double lowestHz, double highestHz, String remedy) {

  /** Refuses a frequency in hertz that lies outside. */
  void check(double frequencyHz) {
    if (!(frequencyHz >= lowestHz && frequencyHz <= highestHz)) {
      throw new GeometryException(
          GeometryException.Subject.FITTING,
          fitting,
          "frequency "
              + hertz(frequencyHz)
              + " lies outside "
              + file
              + ", which runs from "
              + hertz(lowestHz)
              + " to "
              + hertz(highestHz)
              + "; "
              + remedy);
    }
  }

  private static Quantity hertz(double frequency) {
    return new Quantity(frequency, Dimension.FREQUENCY);
  }
}
