package org.spanwire.circuit.bench;

import java.util.Objects;
import org.apache.commons.math3.complex.Complex;
import org.spanwire.circuit.ToroidCore;
import org.spanwire.circuit.WoundTransformer.Connection;

/**
 * What a core does in a transformer before any is wound: small-signal permeability, short lines, a
 * floating antenna.
 *
 * @param core core (stack) of each winding
 * @param connection how the lines are joined
 * @param turns turns of each winding
 * @param strayCapacitance across each winding, farads
 * @param unbalancedOhm resistance at the unbalanced port, in ohms
 */
public record TransformerDesign(
    ToroidCore core,
    Connection connection,
    int turns,
    double strayCapacitance,
    double unbalancedOhm) {

  /**
   * Heat given off per square metre and kelvin by still air and radiation together, W/(m² K), for a
   * core in the open. Common practice, no source: 8 to 12; a closed box gives less.
   */
  public static final double HEAT_TRANSFER = 10;

  /** Most turns the search for a winding goes to. */
  private static final int MOST_TURNS = 200;

  /** Checks the ranges. */
  public TransformerDesign {
    Objects.requireNonNull(core, "core");
    Objects.requireNonNull(connection, "connection");
    if (turns < 1 || !(strayCapacitance >= 0) || !(unbalancedOhm > 0)) {
      throw new IllegalArgumentException(
          "design of %d turns, %s F and %s ohm: give positive values"
              .formatted(turns, strayCapacitance, unbalancedOhm));
    }
  }

  /**
   * Fewest turns whose impedance reaches a value at the lowest frequency.
   *
   * @param core core
   * @param lowestHz lowest frequency in hertz
   * @param minimumOhm impedance wanted there in ohms; common practice, no source: four to five
   *     times the resistance across the winding
   * @throws IllegalArgumentException if even 200 turns do not reach it
   */
  public static int turns(ToroidCore core, double lowestHz, double minimumOhm) {
    double one = core.winding(1, 0).at(lowestHz).abs();
    double turns = Math.ceil(Math.sqrt(minimumOhm / one) * (1 - 1e-12));
    if (!(turns <= MOST_TURNS)) {
      throw new IllegalArgumentException(
          "%s ohm at %s Hz needs more than %d turns; take more or larger cores"
              .formatted(minimumOhm, lowestHz, MOST_TURNS));
    }
    return (int) Math.max(1, turns);
  }

  /** Choking impedance of one winding in ohms. */
  public Complex chokingImpedance(double frequencyHz) {
    return core.winding(turns, strayCapacitance).at(frequencyHz);
  }

  /**
   * Share of the power at the unbalanced port that the cores turn into heat, into a resistive load
   * of SWR 1: windingShare · R Re(1/Z).
   */
  public double lossShare(double frequencyHz) {
    double conductance = chokingImpedance(frequencyHz).reciprocal().getReal();
    double watts = connection.windingShare() * unbalancedOhm * conductance;
    return watts / (1 + watts);
  }

  /** The same as a loss in dB. */
  public double lossDb(double frequencyHz) {
    return -10 * Math.log10(1 - lossShare(frequencyHz));
  }

  /**
   * Worst share of the power lost for an SWR on the antenna side: the squared voltage rises by up
   * to the SWR.
   */
  public double worstLossShare(double frequencyHz, double swr) {
    if (!(swr >= 1)) {
      throw new IllegalArgumentException("SWR " + swr + " must be at least 1");
    }
    double share = lossShare(frequencyHz);
    double watts = swr * share / (1 - share);
    return watts / (1 + watts);
  }

  /**
   * Temperature rise in kelvin of the hottest core, its heat over {@link #HEAT_TRANSFER} times its
   * surface: steady state, a core in still air that is hot all through.
   *
   * @param averageWatts average power at the unbalanced port
   */
  public double temperatureRise(double frequencyHz, double averageWatts, double swr) {
    return averageWatts
        * worstLossShare(frequencyHz, swr)
        * hottestShare()
        / (HEAT_TRANSFER * core.surface());
  }

  /**
   * Average power in watts that heats the hottest core by a rise in kelvin; infinite if none does.
   */
  public double safeAveragePower(double frequencyHz, double allowedRise, double swr) {
    double perWatt = temperatureRise(frequencyHz, 1, swr);
    return perWatt > 0 ? allowedRise / perWatt : Double.POSITIVE_INFINITY;
  }

  /** Peak envelope power in watts for the same, by mode of operation. */
  public double safePeakPower(
      double frequencyHz, double allowedRise, double swr, OperatingMode mode) {
    return safeAveragePower(frequencyHz, allowedRise, swr) / mode.duty();
  }

  private double hottestShare() {
    double all = connection.windingShare();
    return all > 0 ? connection.largestWindingShare() / all : 0;
  }
}
