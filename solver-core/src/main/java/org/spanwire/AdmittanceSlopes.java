package org.spanwire;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.function.DoubleFunction;
import org.apache.commons.math3.complex.Complex;
import org.spanwire.geometry.Feed;
import org.spanwire.geometry.GeometryException;
import org.spanwire.internal.math.RiddersDerivative;
import org.spanwire.internal.mesh.Mesh;
import org.spanwire.internal.mesh.MovedMesh;
import org.spanwire.internal.mesh.Port;
import org.spanwire.internal.moment.PortSolution;
import org.spanwire.internal.moment.SoilKernels;
import org.spanwire.result.Sensitivity;

/**
 * Slopes of the admittances between the feeds of a solved antenna. The ports of the fittings are
 * closed: with V the voltages at all ports for 1 V at every feed in turn and I the currents through
 * the fittings, dY = Vᵀ (dY_ports + d jωC) V − Iᵀ dZ_fittings I (Tellegen's theorem for a
 * reciprocal network).
 */
final class AdmittanceSlopes {

  /** Error of a slope over the slope at which the steps end. */
  private static final double TOLERANCE = 1e-4;

  /** What a slope over the reach may err by however small it is, over the admittance. */
  private static final double LEAST = 1e-5;

  /** Integrals are asked to be this much better than for the solution: differences cancel. */
  private static final double TIGHTER = 0.1;

  private final Antenna antenna;
  private final double frequencyHz;
  private final PortSolution ports;
  private final PortNetwork network;
  private final double accuracy;
  private final SoilKernels tables;
  private final Complex[][] voltages;
  private final Complex[][] currents;

  /**
   * Prepares.
   *
   * @param accuracy relative accuracy of the integrals in the solution
   */
  AdmittanceSlopes(
      Antenna antenna,
      double frequencyHz,
      PortSolution ports,
      PortNetwork network,
      double accuracy,
      SoilKernels tables) {
    this.antenna = antenna;
    this.frequencyHz = frequencyHz;
    this.ports = ports;
    this.network = network;
    this.accuracy = TIGHTER * accuracy;
    this.tables = tables;
    int feeds = antenna.feeds().size();
    int fittings = antenna.fittings().size();
    voltages = new Complex[feeds][];
    currents = new Complex[feeds][fittings];
    for (int i = 0; i < feeds; i++) {
      Complex[] one = new Complex[feeds];
      Arrays.fill(one, Complex.ZERO);
      one[i] = Complex.ONE;
      voltages[i] = network.voltages(one);
      for (int f = 0; f < fittings; f++) {
        Complex sum = Complex.ZERO;
        for (int q = 0; q < feeds + fittings; q++) {
          sum = sum.add(ports.admittance(feeds + f, q).multiply(voltages[i][q]));
        }
        currents[i][f] = sum;
      }
    }
  }

  /** As {@link Solution#sensitivity} has it. */
  Sensitivity of(DoubleFunction<Antenna> changed, double reach) {
    if (!(reach > 0) || Double.isInfinite(reach)) {
      throw new IllegalArgumentException("reach " + reach + " must be positive and finite");
    }
    int feeds = voltages.length;
    double largest = 0;
    for (int i = 0; i < feeds; i++) {
      largest = Math.max(largest, ports.admittance(i, i).abs());
    }
    RiddersDerivative slopes =
        RiddersDerivative.of(
            step -> difference(changed.apply(-step), changed.apply(step), 2 * step),
            reach,
            TOLERANCE,
            LEAST * largest / reach);
    List<List<Complex>> rows = new ArrayList<>();
    double steepest = 0;
    for (int i = 0; i < feeds; i++) {
      List<Complex> row = new ArrayList<>();
      for (int j = 0; j < feeds; j++) {
        int at = 2 * (i * feeds + j);
        row.add(new Complex(slopes.values()[at], slopes.values()[at + 1]));
        steepest = Math.max(steepest, row.get(j).abs());
      }
      rows.add(row);
    }
    double error = slopes.error() == 0 ? 0 : slopes.error() / steepest;
    return new Sensitivity(rows, impedances(rows), error);
  }

  /** Z = V/I at every feed, with dI = dY V. */
  private List<Complex> impedances(List<List<Complex>> slopes) {
    Complex[] driven = antenna.feeds().stream().map(Feed::voltage).toArray(Complex[]::new);
    Complex[] total = network.currents(driven);
    List<Complex> impedances = new ArrayList<>();
    for (int i = 0; i < total.length; i++) {
      Complex slope = Complex.ZERO;
      for (int j = 0; j < total.length; j++) {
        slope = slope.add(slopes.get(i).get(j).multiply(driven[j]));
      }
      impedances.add(
          total[i].equals(Complex.ZERO)
              ? Complex.INF
              : driven[i].multiply(slope).divide(total[i].multiply(total[i])).negate());
    }
    return impedances;
  }

  /** Real and imaginary parts in turn of the difference quotient between the feeds. */
  private double[] difference(Antenna from, Antenna to, double apart) {
    Complex[][] change = ports.change(neighbour(from), neighbour(to), accuracy, tables);
    int feeds = voltages.length;
    double[] quotients = new double[2 * feeds * feeds];
    for (int i = 0; i < feeds; i++) {
      for (int j = 0; j <= i; j++) {
        Complex sum = ofPorts(change, i, j).subtract(ofFittings(from, to, i, j));
        if (i == j) {
          double farads = to.feeds().get(i).capacitance() - from.feeds().get(i).capacitance();
          sum = sum.add(new Complex(0, 2 * Math.PI * frequencyHz * farads));
        }
        for (int at : new int[] {2 * (i * feeds + j), 2 * (j * feeds + i)}) {
          quotients[at] = sum.getReal() / apart;
          quotients[at + 1] = sum.getImaginary() / apart;
        }
      }
    }
    return quotients;
  }

  private Complex ofPorts(Complex[][] change, int i, int j) {
    Complex sum = Complex.ZERO;
    for (int p = 0; p < change.length; p++) {
      for (int q = 0; q < change.length; q++) {
        sum = sum.add(voltages[i][p].multiply(change[p][q]).multiply(voltages[j][q]));
      }
    }
    return sum;
  }

  private Complex ofFittings(Antenna from, Antenna to, int i, int j) {
    Complex sum = Complex.ZERO;
    for (int f = 0; f < currents[i].length; f++) {
      Complex before = from.fittings().get(f).impedance().at(frequencyHz);
      Complex after = to.fittings().get(f).impedance().at(frequencyHz);
      if (before.isInfinite() != after.isInfinite()) {
        throw new GeometryException(
            GeometryException.Subject.FITTING,
            antenna.fittings().get(f).name(),
            "fitting '"
                + antenna.fittings().get(f).name()
                + "': its impedance becomes infinite within the change; take a smaller change");
      }
      if (!before.isInfinite()) {
        Complex grown = after.subtract(before);
        sum = sum.add(currents[i][f].multiply(grown).multiply(currents[j][f]));
      }
    }
    return sum;
  }

  private PortSolution.Neighbour neighbour(Antenna changed) {
    boolean alike = changed.ground().getClass() == antenna.ground().getClass();
    if (!alike) {
      throw new GeometryException(
          GeometryException.Subject.ANTENNA,
          "",
          "the changed antenna lies over another kind of ground; keep free space, perfect ground or"
              + " soil");
    }
    Mesh moved =
        MovedMesh.of(
            ports.mesh(),
            Port.of(antenna.feeds(), antenna.fittings()),
            antenna.ground(),
            changed.wires(),
            Port.of(changed.feeds(), changed.fittings()),
            changed.ground());
    return new PortSolution.Neighbour(moved, changed.ground(), frequencyHz);
  }
}
