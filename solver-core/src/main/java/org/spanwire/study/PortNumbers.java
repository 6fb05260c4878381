package org.spanwire.study;

import java.util.List;
import java.util.function.ToDoubleFunction;
import org.apache.commons.math3.complex.Complex;
import org.spanwire.Solution;
import org.spanwire.Solver;
import org.spanwire.circuit.NPort;

/**
 * A solved antenna as numbers that may be interpolated: the scattering parameters of its terminals,
 * which are bounded, and ratios in decibels.
 *
 * @param route whether the outside of the feed line is a conductor of the antenna
 * @param decibels the ratios
 */
record PortNumbers(boolean route, List<ToDoubleFunction<Solution>> decibels) {

  /** A tenth of a decibel counts as much as an error of 0.002 in a reflection coefficient. */
  static final double PER_DECIBEL = 0.02;

  double[] solve(Installation installation, Solver solver, double frequencyHz) {
    return flat(installation.solveWithPorts(solver, frequencyHz));
  }

  /** The numbers of what is solved already. */
  double[] flat(FeedLineCircuit.Solved solved) {
    int n = solved.terminals().ports();
    double[] flat = new double[n * (n + 1) + decibels.size()];
    fill(flat, n, (i, j) -> solved.terminals().s(i + 1, j + 1));
    int next = n * (n + 1);
    for (ToDoubleFunction<Solution> ratio : decibels) {
      flat[next++] = PER_DECIBEL * ratio.applyAsDouble(solved.operation().solution());
    }
    return flat;
  }

  /** An entry of a matrix, counted from 0. */
  @FunctionalInterface
  interface Entries {
    Complex at(int row, int column);
  }

  /** Scattering parameters, or their slopes, without ratios. */
  static double[] flat(int ports, Entries entries) {
    double[] flat = new double[ports * (ports + 1)];
    fill(flat, ports, entries);
    return flat;
  }

  private static void fill(double[] flat, int ports, Entries entries) {
    int next = 0;
    for (int i = 0; i < ports; i++) {
      for (int j = i; j < ports; j++) {
        Complex entry = entries.at(i, j);
        flat[next++] = entry.getReal();
        flat[next++] = entry.getImaginary();
      }
    }
  }

  NPort ports(double[] flat) {
    int n = route ? 3 : 1;
    Complex[][] s = new Complex[n][n];
    int next = 0;
    for (int i = 0; i < n; i++) {
      for (int j = i; j < n; j++) {
        s[i][j] = new Complex(flat[next], flat[next + 1]);
        s[j][i] = s[i][j];
        next += 2;
      }
    }
    return NPort.ofScattering(
        s, route ? DrivenChain.CIRCUIT_REFERENCE : Installation.ONE_PORT_REFERENCE);
  }

  /** A ratio in decibels, by its number. */
  double decibels(double[] flat, int number) {
    return flat[flat.length - decibels.size() + number] / PER_DECIBEL;
  }
}
