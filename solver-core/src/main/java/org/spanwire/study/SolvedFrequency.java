package org.spanwire.study;

import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;
import org.apache.commons.math3.complex.Complex;
import org.spanwire.result.CurrentSample;
import org.spanwire.result.GainSample;
import org.spanwire.result.PeakGain;
import org.spanwire.result.PowerBudget;
import org.spanwire.result.Warning;

/**
 * Everything asked for at one frequency.
 *
 * @param frequencyHz frequency in hertz
 * @param feeds the feeds in the order of the design
 * @param portMatrix open-circuit impedance matrix in ohms, rows and columns in the order of the
 *     feeds
 * @param peak largest gain over all directions
 * @param gainSamples gains in the directions asked for
 * @param radiationEfficiency power radiated into the sky over power accepted
 * @param powerBalance power accounted for over power accepted; empty over soil unless the budget
 *     was asked for
 * @param powerBudget where the power goes, if asked for
 * @param ledger where the transmitter's watts go, if the budget was asked for and there is one feed
 * @param commonMode current on the outside of the feed line, if its route is given
 * @param currents currents along the wires, if asked for
 * @param unknowns number of unknowns solved for
 * @param warnings named doubts
 */
public record SolvedFrequency(
    double frequencyHz,
    List<SolvedFeed> feeds,
    Complex[][] portMatrix,
    PeakGain peak,
    List<GainSample> gainSamples,
    double radiationEfficiency,
    OptionalDouble powerBalance,
    Optional<PowerBudget> powerBudget,
    Optional<Ledger> ledger,
    Optional<CommonMode> commonMode,
    List<CurrentSample> currents,
    int unknowns,
    List<Warning> warnings) {

  /** Takes copies. */
  public SolvedFrequency {
    feeds = List.copyOf(feeds);
    portMatrix = copy(portMatrix);
    gainSamples = List.copyOf(gainSamples);
    currents = List.copyOf(currents);
    warnings = List.copyOf(warnings);
  }

  /** A fresh copy of the port matrix in ohms. */
  @Override
  public Complex[][] portMatrix() {
    return copy(portMatrix);
  }

  private static Complex[][] copy(Complex[][] matrix) {
    Complex[][] copy = matrix.clone();
    for (int i = 0; i < copy.length; i++) {
      copy[i] = copy[i].clone();
    }
    return copy;
  }
}
