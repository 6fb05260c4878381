package org.spanwire.circuit;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import org.apache.commons.math3.complex.Complex;

/**
 * A circuit of nodes, impedances and wound lines, turned into an n-port. Node 0 is the common node.
 * Unknowns are node voltages and branch currents (modified nodal analysis, C. W. Ho, A. E. Ruehli
 * and P. A. Brennan, IEEE Trans. CAS 22, 1975), so that short and open circuits and lines of any
 * length are exact.
 */
final class NodalCircuit {

  private final int nodes;
  private final List<Integer> ports = new ArrayList<>();
  private final List<Double> portReferences = new ArrayList<>();
  private final List<WoundLine> lines = new ArrayList<>();

  /**
   * A two-wire line wound on a core. Between its wires it is a line; along it, the mean of the
   * voltages that its two wires drop is that of the sum of their currents in the choke impedance,
   * which is shared evenly by the wires.
   *
   * @param nearHot node, as the next three
   * @param choke impedance along the winding in ohms, infinite for none to flow
   * @param leakage impedance in series with the line at its near end, in ohms
   * @param z0 characteristic impedance in ohms
   * @param gamma propagation constant times length
   */
  record WoundLine(
      int nearHot,
      int nearCold,
      int farHot,
      int farCold,
      Complex choke,
      Complex leakage,
      Complex z0,
      Complex gamma) {}

  /**
   * Empty circuit.
   *
   * @param nodes number of nodes besides the common one
   */
  NodalCircuit(int nodes) {
    this.nodes = nodes;
  }

  void add(WoundLine line) {
    lines.add(line);
  }

  /** A port from a node to the common node, with a reference in ohms. */
  void addPort(int node, double reference) {
    ports.add(node);
    portReferences.add(reference);
  }

  /** Scattering parameters from the ports' currents for unit incident waves. */
  NPort toNetwork() {
    int size = nodes + 3 * lines.size() + ports.size();
    Equations equations = new Equations(size);
    for (int k = 0; k < lines.size(); k++) {
      equations.add(lines.get(k), nodes + 3 * k);
    }
    int first = size - ports.size();
    Complex[] references = new Complex[ports.size()];
    Complex[][] drive = new Complex[size][ports.size()];
    for (Complex[] row : drive) {
      Arrays.fill(row, Complex.ZERO);
    }
    for (int p = 0; p < ports.size(); p++) {
      double r = portReferences.get(p);
      references[p] = new Complex(r, 0);
      // V + Z I = 2 √R a, with I into the circuit.
      equations.voltage(first + p, ports.get(p), Complex.ONE);
      equations.entry(first + p, first + p, references[p]);
      equations.current(ports.get(p), first + p, new Complex(-1, 0));
      drive[first + p][p] = new Complex(2 * Math.sqrt(r), 0);
    }
    ComplexMatrix unknowns =
        ComplexMatrix.of(equations.matrix).solveConsistent(ComplexMatrix.of(drive));
    // b = a − √R I for a real reference.
    return NPort.of(
        ComplexMatrix.of(
            ports.size(),
            ports.size(),
            (i, j) ->
                new Complex(i == j ? 1 : 0, 0)
                    .subtract(
                        unknowns.at(first + i, j).multiply(Math.sqrt(references[i].getReal())))),
        references);
  }

  /** Rows 0 to nodes − 1: currents that leave a node sum to zero. Further rows: branches. */
  private static final class Equations {
    private final Complex[][] matrix;

    Equations(int size) {
      matrix = new Complex[size][size];
      for (Complex[] row : matrix) {
        Arrays.fill(row, Complex.ZERO);
      }
    }

    void entry(int row, int column, Complex value) {
      matrix[row][column] = matrix[row][column].add(value);
    }

    void voltage(int row, int node, Complex factor) {
      if (node > 0) {
        entry(row, node - 1, factor);
      }
    }

    void current(int node, int branch, Complex factor) {
      if (node > 0) {
        entry(node - 1, branch, factor);
      }
    }

    /** Branch currents: into the near end, into the far end, along the winding. */
    void add(WoundLine line, int at) {
      Complex one = Complex.ONE;
      Complex half = new Complex(0.5, 0);
      Complex cosh = line.gamma().cosh();
      Complex sinh = line.gamma().sinh();
      // V1 = leakage I1 + cosh V2 − Z0 sinh I2
      difference(at, line.nearHot(), line.nearCold(), one);
      difference(at, line.farHot(), line.farCold(), cosh.negate());
      entry(at, at, line.leakage().negate());
      entry(at, at + 1, line.z0().multiply(sinh));
      // I1 = sinh/Z0 V2 − cosh I2, times Z0
      entry(at + 1, at, line.z0());
      difference(at + 1, line.farHot(), line.farCold(), sinh.negate());
      entry(at + 1, at + 1, line.z0().multiply(cosh));
      if (line.choke().isInfinite()) {
        entry(at + 2, at + 2, one);
      } else {
        for (int[] end :
            new int[][] {
              {line.nearHot(), 1}, {line.nearCold(), 1}, {line.farHot(), -1}, {line.farCold(), -1}
            }) {
          voltage(at + 2, end[0], half.multiply(end[1]));
        }
        entry(at + 2, at + 2, line.choke().negate());
      }
      current(line.nearHot(), at, one);
      current(line.nearCold(), at, one.negate());
      current(line.farHot(), at + 1, one);
      current(line.farCold(), at + 1, one.negate());
      current(line.nearHot(), at + 2, half);
      current(line.nearCold(), at + 2, half);
      current(line.farHot(), at + 2, half.negate());
      current(line.farCold(), at + 2, half.negate());
    }

    private void difference(int row, int plus, int minus, Complex factor) {
      voltage(row, plus, factor);
      voltage(row, minus, factor.negate());
    }
  }
}
