package org.spanwire.circuit;

import java.util.Objects;
import org.apache.commons.math3.complex.Complex;
import org.spanwire.geometry.LumpedImpedance;

/**
 * A transformer wound with two-wire lines on cores, as a network of three terminals against a
 * common node.
 *
 * <p>Port 1 is the unbalanced port (towards the transmitter), port 2 the terminal towards the
 * wire's first point, port 3 the terminal towards its last. The common node of all three ports is
 * the cold side of the unbalanced port: the outside of the feed line ties to it.
 *
 * <p>Equivalent circuit. Each winding is a transmission line (differential voltage and current obey
 * the line equation with Z0, length, velocity factor and attenuation, which carries the copper
 * loss) with leakage inductance in series at its near end; along the winding, the sum of the two
 * wires' currents sees the choke impedance jωN²L0(μ′ − jμ″) in parallel with the winding
 * capacitance, driven by the mean of the voltages along the two wires. This is G. Guanella's
 * picture (Brown Boveri Review, September 1944) with a finite choke; without choke current it gives
 * the equations of C. L. Ruthroff (Proc. IRE 47, 1959). Mutual coupling between windings on
 * separate cores, and the spread of voltage along one winding, are left out: the winding should be
 * short against a quarter wavelength where the core matters.
 *
 * <p>Each line below has its two wires one above the other, near end at the left; Zc is the choke
 * along both. 1, 2, 3 are the ports' nodes, o the common node.
 *
 * <pre>
 * EqualDelay(1)            EqualDelay(2)                 Autotransformer(true)    Autotransformer(false)
 *
 * 1 ──[======]── 2         1 ─┬─[======]── 2             1, 2 ─[======]── o       1 ──[======]── 2
 * o ──[==Zc==]── 3         o ┬│─[==Zc==]─┐               o ────[==Zc==]── 3       o ──[==Zc==]── 1
 *                            │└─[======]─┘
 *                            └──[==Zc==]── 3             2 at +V, 3 at −V         2 at 2V, 3 = o
 * </pre>
 *
 * @param connection how the lines are joined
 * @param line one line: Z0, length, velocity factor, attenuation with the copper loss
 * @param choke impedance along one line on its core; {@link Complex#INF} for an ideal core
 * @param leakageInductance in series with each line, henries, not negative
 */
public record WoundTransformer(
    Connection connection, TransmissionLine line, LumpedImpedance choke, double leakageInductance)
    implements Network {

  private static final double UNBALANCED_REFERENCE = 50;

  /** How the lines are joined. */
  public sealed interface Connection {

    /** Impedance ratio, antenna side over transmitter side. */
    int ratio();

    /**
     * Sum over the windings of the squared voltage along each, over the squared voltage at the
     * unbalanced port, with a floating load and short lines: what the cores lose is this times |V|²
     * Re(1/Z) of one winding.
     */
    double windingShare();

    /** The largest single term of {@link #windingShare()}. */
    double largestWindingShare();

    /** Number of lines, each on a core of its own. */
    int windings();
  }

  /**
   * Guanella's: near ends in parallel, far ends in series, all lines equal in delay, each on a core
   * of its own; ratio is the square of the number of lines. One line is a 1:1 choke balun.
   *
   * @param lines number of lines, 1 to 8
   */
  public record EqualDelay(int lines) implements Connection {
    /** Checks the range. */
    public EqualDelay {
      if (lines < 1 || lines > 8) {
        throw new IllegalArgumentException("number of lines " + lines + " must be 1 to 8");
      }
    }

    @Override
    public int ratio() {
      return lines * lines;
    }

    /** Windings see (k − (n + 1)/2) V, k = 1 to n: n (n² − 1)/12 in all. */
    @Override
    public double windingShare() {
      return lines * (lines * lines - 1) / 12.0;
    }

    @Override
    public double largestWindingShare() {
      return (lines - 1) * (lines - 1) / 4.0;
    }

    @Override
    public int windings() {
      return lines;
    }
  }

  /**
   * Ruthroff's 4:1, one line connected as an autotransformer.
   *
   * @param balanced true for terminals at +V and −V about the common node (the far end's hot wire
   *     goes to the common node, its cold wire to port 3, port 2 to the hot side of port 1); false
   *     for 2V at port 2 with port 3 on the common node
   */
  public record Autotransformer(boolean balanced) implements Connection {
    @Override
    public int ratio() {
      return 4;
    }

    @Override
    public double windingShare() {
      return 1;
    }

    @Override
    public double largestWindingShare() {
      return 1;
    }

    @Override
    public int windings() {
      return 1;
    }
  }

  /** Checks the ranges. */
  public WoundTransformer {
    Objects.requireNonNull(connection, "connection");
    Objects.requireNonNull(line, "line");
    Objects.requireNonNull(choke, "choke");
    if (!(leakageInductance >= 0) || Double.isInfinite(leakageInductance)) {
      throw new IllegalArgumentException(
          "leakage inductance " + leakageInductance + " H must not be negative");
    }
  }

  /**
   * {@inheritDoc} Three ports; references 50 ohm at port 1 and half of ratio times as much at ports
   * 2 and 3.
   */
  @Override
  public NPort at(double frequencyHz) {
    NodalCircuit circuit;
    int first;
    int last;
    if (connection instanceof EqualDelay guanella) {
      circuit = new NodalCircuit(guanella.lines() + 2);
      for (int k = 0; k < guanella.lines(); k++) {
        circuit.add(wound(frequencyHz, 1, 0, k + 2, k + 3));
      }
      first = 2;
      last = guanella.lines() + 2;
    } else if (((Autotransformer) connection).balanced()) {
      circuit = new NodalCircuit(2);
      circuit.add(wound(frequencyHz, 1, 0, 0, 2));
      first = 1;
      last = 2;
    } else {
      circuit = new NodalCircuit(2);
      circuit.add(wound(frequencyHz, 1, 0, 2, 1));
      first = 2;
      last = 0;
    }
    double reference = UNBALANCED_REFERENCE * connection.ratio() / 2;
    circuit.addPort(1, UNBALANCED_REFERENCE);
    circuit.addPort(first, reference);
    circuit.addPort(last, reference);
    return circuit.toNetwork();
  }

  private NodalCircuit.WoundLine wound(
      double f, int nearHot, int nearCold, int farHot, int farCold) {
    return new NodalCircuit.WoundLine(
        nearHot,
        nearCold,
        farHot,
        farCold,
        choke.at(f),
        new Complex(0, 2 * Math.PI * f * leakageInductance),
        line.characteristicImpedance(f),
        line.propagation(f));
  }

  /** As a 2-port for an antenna that takes no common-mode current; see {@link Transformer}. */
  public Network floating() {
    return Transformer.floating(this);
  }

  /**
   * Impedance from both antenna terminals tied together to the common node, in ohms, with the
   * transmitter's side ended in its reference: what an antenna's common-mode current meets on its
   * way to the outside of the feed line.
   */
  public Complex commonModeImpedance(double frequencyHz) {
    // With Z/2 as common reference and the differential port shorted, both terminals are one.
    NPort modes = at(frequencyHz).mixedMode(2, 3).terminated(2, Complex.ZERO);
    return modes.terminated(1, new Complex(UNBALANCED_REFERENCE, 0)).inputImpedance();
  }
}
