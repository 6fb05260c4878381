package org.spanwire.study;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import org.apache.commons.math3.complex.Complex;
import org.spanwire.Solution;
import org.spanwire.circuit.ChainState;
import org.spanwire.circuit.NPort;
import org.spanwire.circuit.PortState;
import org.spanwire.design.FeedLine;
import org.spanwire.geometry.Feed;
import org.spanwire.result.CurrentSample;
import org.spanwire.result.Sensitivity;

/**
 * A cut antenna driven through its feed chain. The choke at the top of the line becomes one of its
 * fittings.
 *
 * <p>Against the node of the three wires, which is the common node o of {@link Terminals}, the
 * terminals carry v_A = −V1, i_A = −I1 (positive current of the first arm runs towards the node),
 * v_B = V2, i_B = I2, v_O = V3, i_O = I3. The node itself is a length of wire: lifting it against
 * all three terminals changes next to nothing, so the matrix of admittances is nearly singular
 * along (1, 1, 1) and is never inverted; all is done in waves.
 */
final class FeedLineCircuit {

  private static final int SAMPLES = 21;

  private final SplitAntenna split;
  private final ChainModel chain;
  private final double frequencyHz;
  private final NPort antenna;
  private final DrivenChain driven;

  private FeedLineCircuit(SplitAntenna split, ChainModel chain, Solution solution) {
    this.split = split;
    this.chain = chain;
    frequencyHz = solution.frequencyHz();
    antenna = antenna(split, solution);
    driven =
        new DrivenChain(
            chain,
            frequencyHz,
            Terminals.across(antenna, split.feed().shuntAdmittance(frequencyHz)));
  }

  /**
   * An operation with what it was computed from.
   *
   * @param terminals the antenna's three terminals against the node, or without a line its feed;
   *     without a capacitance across the feed
   * @param antenna the solution of the antenna alone
   */
  record Solved(Operation operation, NPort terminals, Solution antenna) {}

  /** At the transmitter's power; the solution is scaled to the design's feed voltage. */
  static Solved operate(SplitAntenna split, ChainModel chain, Solution unscaled) {
    FeedLineCircuit circuit = new FeedLineCircuit(split, chain, unscaled);
    return new Solved(circuit.operate(unscaled), circuit.antenna, unscaled);
  }

  private Operation operate(Solution unscaled) {
    PortState full = driven.full();
    DrivenChain.End end = driven.end();
    Complex seen = end.feedpoint();
    ChainState state = end.state();
    boolean direct = split.line().polarity() == FeedLine.Polarity.FIRST_POINT;
    Complex first = full.voltages().get(direct ? 1 : 2);
    Complex last = full.voltages().get(direct ? 2 : 1);
    Complex toDesign = split.feed().voltage().divide(last.subtract(first));
    Solution solution =
        unscaled
            .closed(f -> driven.choke())
            .driven(List.of(first.negate().multiply(toDesign), last.multiply(toDesign)));
    SolvedFeed feed =
        new SolvedFeed(
            split.feed().name(),
            seen,
            relativeError(solution) * seen.abs(),
            split.gap(),
            chain.planes(state));
    return new Operation(
        solution,
        List.of(feed),
        Optional.of(state),
        Optional.of(commonMode(full, solution, toDesign.reciprocal())));
  }

  /** The larger of the relative errors at the two halves of the gap. */
  private double relativeError(Solution solution) {
    double relative = 0;
    for (Feed half : split.antenna().feeds().subList(0, 2)) {
      double magnitude = solution.impedance(half.name()).abs();
      if (magnitude > 0 && !Double.isInfinite(magnitude)) {
        relative = Math.max(relative, solution.impedanceErrorOhm(half.name()) / magnitude);
      }
    }
    return relative;
  }

  /** The antenna's three terminals against the node. */
  private static NPort antenna(SplitAntenna split, Solution solution) {
    return NPort.ofAdmittance(
        terminals(split, solution.admittanceMatrix()),
        new Complex(DrivenChain.CIRCUIT_REFERENCE, 0));
  }

  /** Admittances of the terminals from those of the feeds, or slopes from slopes. */
  private static Complex[][] terminals(SplitAntenna split, Complex[][] feeds) {
    int[] order =
        split.line().polarity() == FeedLine.Polarity.FIRST_POINT
            ? new int[] {0, 1, 2}
            : new int[] {1, 0, 2};
    Complex[][] y = new Complex[3][3];
    for (int i = 0; i < 3; i++) {
      for (int j = 0; j < 3; j++) {
        Complex entry = feeds[order[i]][order[j]];
        y[i][j] = (order[i] == 0) == (order[j] == 0) ? entry : entry.negate();
      }
    }
    return y;
  }

  /**
   * Slopes of the terminals' scattering parameters, dS = −½ (1 + S) R dY (1 + S), from S = (1 −
   * RY)/(1 + RY).
   */
  static Complex[][] slopes(SplitAntenna split, NPort terminals, Sensitivity sensitivity) {
    Complex[][] feeds =
        sensitivity.admittance().stream()
            .map(row -> row.toArray(Complex[]::new))
            .toArray(Complex[][]::new);
    Complex[][] dy = terminals(split, feeds);
    Complex[][] sum = new Complex[3][3];
    for (int i = 0; i < 3; i++) {
      for (int j = 0; j < 3; j++) {
        Complex s = terminals.s(i + 1, j + 1);
        sum[i][j] = i == j ? s.add(1) : s;
      }
    }
    Complex[][] slopes = new Complex[3][3];
    for (int i = 0; i < 3; i++) {
      for (int j = 0; j < 3; j++) {
        slopes[i][j] = Complex.ZERO;
        for (int k = 0; k < 9; k++) {
          Complex term = sum[i][k / 3].multiply(dy[k / 3][k % 3]).multiply(sum[k % 3][j]);
          slopes[i][j] = slopes[i][j].add(term.multiply(-0.5 * DrivenChain.CIRCUIT_REFERENCE));
        }
      }
    }
    return slopes;
  }

  private CommonMode commonMode(PortState full, Solution solution, Complex toPower) {
    List<CommonMode.ChokeHeat> heat = new ArrayList<>();
    heat.add(new CommonMode.ChokeHeat(0, full.voltages().get(3).abs(), full.power(4)));
    double length = split.lineWire().length();
    for (int i = 0; i < split.line().chokes().size(); i++) {
      FeedLine.Choke each = split.line().chokes().get(i);
      double voltage = solution.fittingVoltage(SplitAntenna.choke(i)).multiply(toPower).abs();
      Complex z = each.impedance().at(frequencyHz);
      double current = z.abs() > 0 ? voltage / z.abs() : 0;
      heat.add(
          new CommonMode.ChokeHeat(
              each.at().distanceAlong(length), voltage, current * current * z.getReal()));
    }
    List<CurrentSample> samples = new ArrayList<>();
    for (int i = 0; i < SAMPLES; i++) {
      double at = length * i / (SAMPLES - 1);
      samples.add(
          new CurrentSample(
              FeedLine.NAME, at, solution.current(FeedLine.NAME, at).multiply(toPower)));
    }
    return new CommonMode(
        driven.drive(),
        driven.choke(),
        full.currents().get(3).negate(),
        split.kirchhoff(solution),
        heat,
        samples);
  }
}
