package org.spanwire.study;

import java.util.ArrayList;
import java.util.List;
import org.apache.commons.math3.complex.Complex;
import org.spanwire.circuit.ChainState;
import org.spanwire.circuit.CommonModeDrive;
import org.spanwire.circuit.Mismatch;
import org.spanwire.circuit.NPort;
import org.spanwire.circuit.PortState;

/**
 * The feed chain at one frequency, joined to the three terminals of an antenna whose feed line is a
 * conductor of it, as {@link Terminals} has them. All is done in waves.
 */
final class DrivenChain {

  /** Reference in ohms of the antenna's scattering parameters. */
  static final double CIRCUIT_REFERENCE = 100;

  private final ChainModel chain;
  private final double frequencyHz;
  private final Complex choke;
  private final NPort antenna;
  private final Complex seen;

  DrivenChain(ChainModel chain, double frequencyHz, NPort antenna) {
    this.chain = chain;
    this.frequencyHz = frequencyHz;
    this.antenna = antenna;
    choke = chain.chokeImpedance(frequencyHz);
    seen = seen();
  }

  /**
   * The chain's planes and the impedance at the feedpoint.
   *
   * @param feedpoint impedance in ohms that the terminals show
   * @param state the planes, the last one at the feedpoint
   */
  record End(Complex feedpoint, ChainState state) {}

  /** Impedance of all chokes at the top of the line in ohms. */
  Complex choke() {
    return choke;
  }

  /** Everything, driven by the transmitter. */
  PortState full() {
    return driven(choke);
  }

  /** The planes. */
  End end() {
    ChainState state = chain.chain().at(frequencyHz, seen);
    if (chain.lossless()) {
      return new End(seen, state);
    }
    PortState full = full();
    Complex across = full.voltages().get(1).subtract(full.voltages().get(2));
    Complex around = full.currents().get(2).subtract(full.currents().get(1)).multiply(0.5);
    Complex feedpoint = across.divide(around);
    return new End(feedpoint, extended(state, feedpoint, -full.power(2) - full.power(3)));
  }

  /** Impedance in ohms that the terminals show to the chain. */
  private Complex seen() {
    PortState unit =
        PortState.driven(
            Terminals.beside(chain.terminals().at(frequencyHz), choke),
            Complex.ONE,
            new Complex(CIRCUIT_REFERENCE, 0),
            antenna);
    return unit.voltages().get(0).divide(unit.currents().get(0));
  }

  /** Everything, driven by the transmitter, with an impedance at the top of the line. */
  private PortState driven(Complex top) {
    double reference = chain.chain().source().referenceOhm();
    double open = 2 * Math.sqrt(chain.chain().source().availablePower() * reference);
    return PortState.driven(
        Terminals.beside(chain.toTerminals(frequencyHz, seen), top),
        new Complex(open, 0),
        new Complex(reference, 0),
        antenna);
  }

  /** From the open-circuit voltage and the short-circuit current at the place of the choke. */
  CommonModeDrive drive() {
    Complex open = driven(Complex.INF).voltages().get(3).negate();
    Complex shorted = driven(Complex.ZERO).currents().get(3).negate();
    return new CommonModeDrive(open, open.divide(shorted));
  }

  /** With the measured transformer between the chain's last plane and the feedpoint. */
  private ChainState extended(ChainState state, Complex feedpoint, double delivered) {
    List<ChainState.Plane> planes = new ArrayList<>(state.planes());
    List<ChainState.StageLoss> losses = new ArrayList<>(state.losses());
    planes.add(
        new ChainState.Plane(
            ChainModel.TRANSFORMER, Mismatch.of(feedpoint, chain.feedpointOhm()), delivered));
    losses.add(
        new ChainState.StageLoss(ChainModel.TRANSFORMER, state.deliveredPower() - delivered));
    return new ChainState(state.frequencyHz(), state.availablePower(), planes, losses);
  }
}
