package org.spanwire;

import java.util.List;
import org.apache.commons.math3.complex.Complex;
import org.apache.commons.math3.complex.ComplexField;
import org.apache.commons.math3.linear.Array2DRowFieldMatrix;
import org.apache.commons.math3.linear.ArrayFieldVector;
import org.apache.commons.math3.linear.FieldDecompositionSolver;
import org.apache.commons.math3.linear.FieldLUDecomposition;
import org.apache.commons.math3.linear.FieldMatrix;
import org.apache.commons.math3.linear.FieldVector;
import org.apache.commons.math3.linear.SingularMatrixException;

/**
 * The ports of a wire structure, the first ones fed, the others closed by fittings. From the
 * short-circuit admittance matrix Y follow the voltages across the fittings, (Y_ff + 1/Z) V_f =
 * −Y_fs V_s, and the admittance seen by the feeds, to which what lies across their terminals adds.
 */
final class PortNetwork {

  private final int feeds;
  private final int ports;
  private final FieldMatrix<Complex> admittance;
  private final FieldMatrix<Complex> transfer;

  /** Entry of an admittance matrix. */
  @FunctionalInterface
  interface Entries {
    Complex at(int row, int column);
  }

  /**
   * Closes the last ports.
   *
   * @param shunts admittance in siemens across the terminals of each fed port
   * @param fittings impedance of each closed port in ohms, infinite for open
   * @param entries short-circuit admittance of all ports in siemens
   */
  PortNetwork(List<Complex> shunts, List<Complex> fittings, Entries entries) {
    this.feeds = shunts.size();
    this.ports = feeds + fittings.size();
    transfer = transfer(fittings, entries);
    admittance = new Array2DRowFieldMatrix<>(ComplexField.getInstance(), feeds, feeds);
    for (int i = 0; i < feeds; i++) {
      for (int j = 0; j < feeds; j++) {
        Complex sum = entries.at(i, j);
        if (i == j) {
          sum = sum.add(shunts.get(i));
        }
        for (int f = 0; f < fittings.size(); f++) {
          sum = sum.add(entries.at(i, feeds + f).multiply(transfer.getEntry(f, j)));
        }
        admittance.setEntry(i, j, sum);
      }
    }
  }

  /** Voltage across every fitting for 1 V at every feed. */
  private FieldMatrix<Complex> transfer(List<Complex> fittings, Entries entries) {
    int count = fittings.size();
    FieldMatrix<Complex> result =
        new Array2DRowFieldMatrix<>(ComplexField.getInstance(), Math.max(1, count), feeds);
    int[] open = new int[count];
    int unknown = 0;
    for (int f = 0; f < count; f++) {
      if (!fittings.get(f).equals(Complex.ZERO)) {
        open[unknown++] = f;
      }
    }
    if (unknown == 0) {
      return result;
    }
    FieldMatrix<Complex> system =
        new Array2DRowFieldMatrix<>(ComplexField.getInstance(), unknown, unknown);
    FieldMatrix<Complex> right =
        new Array2DRowFieldMatrix<>(ComplexField.getInstance(), unknown, feeds);
    for (int i = 0; i < unknown; i++) {
      for (int j = 0; j < unknown; j++) {
        system.setEntry(i, j, entries.at(feeds + open[i], feeds + open[j]));
      }
      Complex z = fittings.get(open[i]);
      Complex y = z.isInfinite() ? Complex.ZERO : z.reciprocal();
      system.setEntry(i, i, system.getEntry(i, i).add(y));
      for (int j = 0; j < feeds; j++) {
        right.setEntry(i, j, entries.at(feeds + open[i], j).negate());
      }
    }
    FieldMatrix<Complex> solved = new FieldLUDecomposition<>(system).getSolver().solve(right);
    for (int i = 0; i < unknown; i++) {
      for (int j = 0; j < feeds; j++) {
        result.setEntry(open[i], j, solved.getEntry(i, j));
      }
    }
    return result;
  }

  /** Voltages at all ports for voltages at the feeds. */
  Complex[] voltages(Complex[] feedVoltages) {
    Complex[] all = new Complex[ports];
    System.arraycopy(feedVoltages, 0, all, 0, feeds);
    for (int p = feeds; p < ports; p++) {
      Complex sum = Complex.ZERO;
      for (int j = 0; j < feeds; j++) {
        sum = sum.add(transfer.getEntry(p - feeds, j).multiply(feedVoltages[j]));
      }
      all[p] = sum;
    }
    return all;
  }

  /** Currents out of the generators, shunts included, for voltages at the feeds. */
  Complex[] currents(Complex[] feedVoltages) {
    FieldVector<Complex> v = new ArrayFieldVector<>(ComplexField.getInstance(), feedVoltages);
    return admittance.operate(v).toArray();
  }

  /** Short-circuit admittance matrix of the feeds in siemens. */
  Complex[][] admittanceMatrix() {
    return admittance.getData();
  }

  /** Open-circuit impedance matrix of the feeds in ohms, symmetric. */
  Complex[][] impedanceMatrix() {
    FieldDecompositionSolver<Complex> solver = new FieldLUDecomposition<>(admittance).getSolver();
    Complex[][] z;
    try {
      z = solver.getInverse().getData();
    } catch (SingularMatrixException e) {
      throw new ArithmeticException(
          "the feeds' admittance matrix has no inverse: some feed carries no current");
    }
    for (int i = 0; i < feeds; i++) {
      for (int j = 0; j < i; j++) {
        Complex mean = z[i][j].add(z[j][i]).multiply(0.5);
        z[i][j] = mean;
        z[j][i] = mean;
      }
    }
    return z;
  }
}
