package org.spanwire.circuit.bench;

import java.util.Objects;
import org.apache.commons.math3.complex.Complex;
import org.spanwire.circuit.Mismatch;
import org.spanwire.circuit.NPort;
import org.spanwire.circuit.ToroidCore;
import org.spanwire.circuit.Winding;
import org.spanwire.circuit.WoundTransformer.Connection;

/**
 * What a winding does in a transformer before it is wound: small-signal permeability, a floating
 * antenna.
 *
 * @param winding core, turns and line
 * @param unbalancedOhm resistance at the unbalanced port, in ohms
 */
public record TransformerDesign(Winding winding, double unbalancedOhm) {

  /**
   * Heat given off per square metre and kelvin by still air and radiation together, W/(m² K), for a
   * core in the open. Common practice, no source: 8 to 12; a closed box gives less.
   */
  public static final double HEAT_TRANSFER = 10;

  /** Most turns the search for a winding goes to. */
  private static final int MOST_TURNS = 200;

  /** Checks the ranges. */
  public TransformerDesign {
    Objects.requireNonNull(winding, "winding");
    if (!(unbalancedOhm > 0) || Double.isInfinite(unbalancedOhm)) {
      throw new IllegalArgumentException(
          "resistance " + unbalancedOhm + " ohm must be positive and finite");
    }
  }

  /**
   * Fewest turns whose impedance reaches a value at the lowest frequency.
   *
   * @param core core
   * @param lowestHz lowest frequency in hertz
   * @param minimumOhm impedance wanted there in ohms; common practice, no source: 1 kohm at least,
   *     5 kohm for a choke on an antenna fed off its centre
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
    return winding.core().winding(winding.turns(), winding.strayCapacitance()).at(frequencyHz);
  }

  /**
   * The transformer between nominal resistances: loss in dB of the power that enters, core, line
   * and leakage together.
   */
  public double lossDb(double frequencyHz) {
    return BackToBack.lossDb(nominal(frequencyHz), 1, 2);
  }

  /** SWR at the unbalanced port with the nominal resistance across the antenna side. */
  public double inputSwr(double frequencyHz) {
    return Mismatch.ofReflection(nominal(frequencyHz).s(1, 1), unbalancedOhm).swr();
  }

  /** What the antenna's common-mode current meets, in ohms. */
  public Complex commonModeImpedance(double frequencyHz) {
    return winding.transformer().commonModeImpedance(frequencyHz);
  }

  private NPort nominal(double frequencyHz) {
    return winding
        .transformer()
        .floating()
        .at(frequencyHz)
        .renormalized(
            new Complex(unbalancedOhm, 0),
            new Complex(winding.connection().ratio() * unbalancedOhm, 0));
  }

  /**
   * Peak flux density in tesla in the core with the largest voltage along its winding, √2 V/(ω N A)
   * (Faraday), the mean over the section.
   *
   * @param peakWatts peak envelope power at the unbalanced port
   * @param swr SWR on the antenna side, which raises the squared voltage by up to as much
   */
  public double fluxDensity(double frequencyHz, double peakWatts, double swr) {
    requireSwr(swr);
    double volts =
        Math.sqrt(winding.connection().largestWindingShare() * peakWatts * unbalancedOhm * swr);
    return Math.sqrt(2)
        * volts
        / (2 * Math.PI * frequencyHz * winding.turns() * winding.core().section());
  }

  /**
   * Share of the power at the unbalanced port that the cores turn into heat, into a resistive load
   * of SWR 1, with short lines: windingShare · R Re(1/Z).
   */
  public double coreShare(double frequencyHz) {
    double conductance = chokingImpedance(frequencyHz).reciprocal().getReal();
    double watts = winding.connection().windingShare() * unbalancedOhm * conductance;
    return watts / (1 + watts);
  }

  /**
   * Worst share of the power lost in the cores for an SWR on the antenna side: the squared voltage
   * rises by up to the SWR.
   */
  public double worstCoreShare(double frequencyHz, double swr) {
    requireSwr(swr);
    double share = coreShare(frequencyHz);
    double watts = swr * share / (1 - share);
    return watts / (1 + watts);
  }

  /**
   * Share of the power that heats the hottest core: its own, and what the line wound on it loses,
   * which grows with the SWR in the same way.
   */
  public double hottestShare(double frequencyHz, double swr) {
    Connection connection = winding.connection();
    double all = connection.windingShare();
    double core =
        all > 0 ? worstCoreShare(frequencyHz, swr) * connection.largestWindingShare() / all : 0;
    double line = 1 - Math.pow(10, -winding.line().matchedLossDb(frequencyHz) / 10);
    return Math.min(1, core + Math.min(1, swr * line) / connection.windings());
  }

  /**
   * Temperature rise in kelvin of the hottest core, its heat over {@link #HEAT_TRANSFER} times its
   * surface: steady state, a core in still air that is hot all through.
   *
   * @param averageWatts average power at the unbalanced port
   */
  public double temperatureRise(double frequencyHz, double averageWatts, double swr) {
    return averageWatts
        * hottestShare(frequencyHz, swr)
        / (HEAT_TRANSFER * winding.core().surface());
  }

  /**
   * Average power in watts that heats the hottest core by a rise in kelvin; infinite if none does.
   */
  public double safeAveragePower(double frequencyHz, double allowedRise, double swr) {
    double perWatt = temperatureRise(frequencyHz, 1, swr);
    return perWatt > 0 ? allowedRise / perWatt : Double.POSITIVE_INFINITY;
  }

  /** Peak envelope power in watts that drives the core up to a flux density in tesla. */
  public double fluxLimitedPower(double frequencyHz, double fluxDensity, double swr) {
    double perRootWatt = fluxDensity(frequencyHz, 1, swr);
    double root = fluxDensity / perRootWatt;
    return perRootWatt > 0 ? root * root : Double.POSITIVE_INFINITY;
  }

  /**
   * Largest peak envelope power and what sets it.
   *
   * @param allowedRise limit of the temperature rise in kelvin
   * @param fluxDensity limit of the flux density in tesla
   * @param mode sets average over peak
   */
  public PowerLimit safePower(
      double frequencyHz, double allowedRise, double fluxDensity, double swr, OperatingMode mode) {
    double heat = safeAveragePower(frequencyHz, allowedRise, swr) / mode.duty();
    double flux = fluxLimitedPower(frequencyHz, fluxDensity, swr);
    return new PowerLimit(Math.min(heat, flux), heat <= flux ? Cause.HEAT : Cause.FLUX);
  }

  /** What limits the power of a core. */
  public enum Cause {
    /** Its temperature. */
    HEAT,
    /** Its flux, beyond which the small-signal permeability does not hold. */
    FLUX
  }

  /**
   * A limit of power.
   *
   * @param peakWatts peak envelope power in watts, infinite for no limit
   * @param cause what sets it
   */
  public record PowerLimit(double peakWatts, Cause cause) {}

  private static void requireSwr(double swr) {
    if (!(swr >= 1)) {
      throw new IllegalArgumentException("SWR " + swr + " must be at least 1");
    }
  }
}
