package org.spanwire.study;

import java.util.Comparator;
import java.util.List;
import org.apache.commons.math3.complex.Complex;
import org.spanwire.circuit.CommonModeDrive;
import org.spanwire.result.CurrentSample;

/**
 * Current on the outside of the feed line, at the transmitter's stated power.
 *
 * @param drive open-circuit voltage and impedance of all the rest at the place of the choke at the
 *     top of the line
 * @param chokeOhm impedance of that choke in ohms, 0 for none
 * @param current current through it down the line, rms amperes
 * @param kirchhoff sum of the currents of the radiator's arms and the line at the feedpoint over
 *     the largest of them: 0 but for rounding
 * @param chokes the choke at the top and those along the line
 * @param samples current along the line, rms amperes
 */
public record CommonMode(
    CommonModeDrive drive,
    Complex chokeOhm,
    Complex current,
    double kirchhoff,
    List<ChokeHeat> chokes,
    List<CurrentSample> samples) {

  /**
   * What a choke bears.
   *
   * @param distanceMetres from the feedpoint along the line
   * @param voltage across it, rms volts
   * @param watts its heat
   */
  public record ChokeHeat(double distanceMetres, double voltage, double watts) {}

  /** Takes copies. */
  public CommonMode {
    chokes = List.copyOf(chokes);
    samples = List.copyOf(samples);
  }

  /** The sample with the largest current. */
  public CurrentSample largest() {
    return samples.stream()
        .max(Comparator.comparingDouble(sample -> sample.current().abs()))
        .orElseThrow();
  }

  /** Heat of the choke at the top of the line in watts. */
  public double topWatts() {
    return chokes.get(0).watts();
  }
}
