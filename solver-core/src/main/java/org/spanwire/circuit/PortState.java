package org.spanwire.circuit;

import java.util.List;
import java.util.stream.IntStream;
import org.apache.commons.math3.complex.Complex;

/**
 * Voltages and currents at the ports of a network that is driven at port 1 and loaded at all
 * others.
 *
 * @param voltages rms volts, port 1 first
 * @param currents rms amperes into the network, port 1 first
 */
public record PortState(List<Complex> voltages, List<Complex> currents) {

  /** Copies the lists. */
  public PortState {
    voltages = List.copyOf(voltages);
    currents = List.copyOf(currents);
  }

  /**
   * Drives port 1 by a source and joins port k + 1 to port k of a load, which may couple its ports,
   * as an antenna does with the two terminals of its feedpoint and the outside of its feed line.
   *
   * @param network network with at least two ports
   * @param openVoltage open-circuit voltage of the source, rms volts
   * @param sourceImpedance impedance of the source in ohms, finite
   * @param load network with one port less
   * @throws CircuitException if the circuit has no unique answer
   */
  public static PortState driven(
      NPort network, Complex openVoltage, Complex sourceImpedance, NPort load) {
    int n = network.ports();
    if (load.ports() != n - 1) {
      throw new IllegalArgumentException(
          "load has " + load.ports() + " ports; expected " + (n - 1) + ", all but the driven one");
    }
    Complex[] conjugates =
        IntStream.rangeClosed(2, n)
            .mapToObj(k -> network.reference(k).conjugate())
            .toArray(Complex[]::new);
    ComplexMatrix s = network.matrix();
    ComplexMatrix reflected = load.renormalized(conjugates).matrix();
    Complex z = network.reference(1);
    double scale = z.abs() + sourceImpedance.abs();
    // Port 1: V + Zs I = Voc, over the scale of the impedances; others: what leaves the network
    // enters the load, a = S_load b.
    ComplexMatrix system =
        ComplexMatrix.of(
            n,
            n,
            (i, j) -> {
              if (i == 0) {
                Complex own = j == 0 ? z.conjugate().add(sourceImpedance) : Complex.ZERO;
                return own.add(z.subtract(sourceImpedance).multiply(s.at(0, j))).divide(scale);
              }
              Complex sum = i == j ? Complex.ONE : Complex.ZERO;
              for (int k = 1; k < n; k++) {
                sum = sum.subtract(reflected.at(i - 1, k - 1).multiply(s.at(k, j)));
              }
              return sum;
            });
    Complex drive = openVoltage.multiply(Math.sqrt(z.getReal()) / scale);
    ComplexMatrix unit = ComplexMatrix.of(n, 1, (i, j) -> i == 0 ? Complex.ONE : Complex.ZERO);
    try {
      ComplexMatrix response = system.solveWaves(unit);
      ComplexMatrix incident = ComplexMatrix.of(n, 1, (i, j) -> response.at(i, j).multiply(drive));
      Complex[] references =
          IntStream.rangeClosed(1, n).mapToObj(network::reference).toArray(Complex[]::new);
      PowerWaves waves = new PowerWaves(incident, s.times(incident), references);
      return new PortState(column(waves.voltages()), column(waves.currents()));
    } catch (ArithmeticException e) {
      throw new CircuitException("driven network has no unique answer; give its parts some loss");
    }
  }

  private static List<Complex> column(ComplexMatrix matrix) {
    return IntStream.range(0, matrix.rows()).mapToObj(i -> matrix.at(i, 0)).toList();
  }

  /** Power into a port in watts, ports from 1. */
  public double power(int port) {
    return voltages.get(port - 1).multiply(currents.get(port - 1).conjugate()).getReal();
  }
}
