package org.spanwire.circuit.bench;

import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;

/**
 * What was typed at the bench.
 *
 * @param title what was measured
 * @param units readings of units, by every way that was used
 * @param choke choking impedance, rising in frequency; may be empty
 * @param heat a heat run, if there was one
 */
public record BenchReadings(
    String title, List<MeasuredUnit> units, List<ChokeAt> choke, Optional<Heat> heat) {

  /**
   * Choking impedance at a frequency.
   *
   * @param frequencyHz frequency in hertz
   * @param reading impedance with its uncertainty
   */
  public record ChokeAt(double frequencyHz, ChokeReading reading) {}

  /**
   * A heat run.
   *
   * @param run the exponential fitted to its temperatures
   * @param sentWatts power sent during the run, a steady carrier, in watts
   * @param dissipatedWatts what stayed in the unit, if it is known
   * @param allowedRise limit of the rise in kelvin
   */
  public record Heat(
      HeatRun run, double sentWatts, OptionalDouble dissipatedWatts, double allowedRise) {

    /** Largest peak envelope power in watts for key-down without end in a mode of operation. */
    public double safePeakPower(OperatingMode mode) {
      return run.safePeakPower(sentWatts, allowedRise, mode, Double.POSITIVE_INFINITY, 0);
    }
  }

  /** Takes copies. */
  public BenchReadings {
    units = List.copyOf(units);
    choke = List.copyOf(choke);
  }
}
