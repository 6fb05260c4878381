package org.spanwire.internal.moment;

import java.util.Arrays;
import java.util.List;
import org.apache.commons.math3.complex.Complex;
import org.ejml.data.ZMatrixRMaj;
import org.spanwire.internal.basis.CurrentExpansion;
import org.spanwire.internal.basis.LocalBasis;
import org.spanwire.internal.basis.Unknowns;
import org.spanwire.internal.halfspace.ReflectedKernel;
import org.spanwire.internal.linear.ComplexSystem;
import org.spanwire.internal.mesh.Gap;
import org.spanwire.internal.mesh.Mesh;
import org.spanwire.internal.mesh.Piece;
import org.spanwire.medium.Ground;
import org.spanwire.medium.Soil;
import org.spanwire.unit.PhysicalConstants;

/**
 * The currents that 1 V at each port in turn drives with the other ports shorted, and the
 * short-circuit admittance matrix. Immutable.
 *
 * <p>The same system is also solved without the bubble of highest order on every piece; what this
 * changes tells how far the solution is from convergence.
 */
public final class PortSolution {

  private final Mesh mesh;
  private final Unknowns unknowns;
  private final SeriesImpedance[] series;
  private final double[][] currentRe;
  private final double[][] currentIm;
  private final Complex[][] admittance;
  private final Complex[][] coarseAdmittance;

  private PortSolution(
      Unknowns unknowns,
      SeriesImpedance[] series,
      double[][] weights,
      double[][] currentRe,
      double[][] currentIm,
      Complex[][] coarseAdmittance) {
    this.unknowns = unknowns;
    this.mesh = unknowns.mesh();
    this.series = series;
    this.currentRe = currentRe;
    this.currentIm = currentIm;
    this.admittance = admittance(weights, currentRe, currentIm);
    this.coarseAdmittance = coarseAdmittance;
  }

  /**
   * Solves a mesh.
   *
   * @param ground what lies below z = 0
   * @param frequencyHz frequency in hertz
   * @param accuracy wanted relative accuracy of the integrals
   * @param tables kernels over soil, built here if they are not known
   */
  public static PortSolution solve(
      Mesh mesh, Ground ground, double frequencyHz, double accuracy, SoilKernels tables) {
    return solve(
        new Unknowns(mesh),
        frequencyHz,
        ComputedMoments.of(mesh, ground, frequencyHz, accuracy, tables));
  }

  static PortSolution solve(Unknowns unknowns, double frequencyHz, MomentSource moments) {
    SeriesImpedance[] series = SeriesImpedance.of(unknowns.mesh(), frequencyHz);
    ZMatrixRMaj matrix =
        MomentMatrix.fill(unknowns, PhysicalConstants.wavenumber(frequencyHz), moments, series);
    double[][] weights = weights(unknowns);
    ComplexSystem system = new ComplexSystem(matrix);
    Complex[][] coarse = coarse(unknowns, system, weights);
    double[][] re = new double[weights.length][];
    double[][] im = new double[weights.length][];
    for (int p = 0; p < weights.length; p++) {
      re[p] = weights[p].clone();
      im[p] = new double[unknowns.count()];
      system.solve(re[p], im[p]);
    }
    return new PortSolution(unknowns, series, weights, re, im, coarse);
  }

  /** For every port the mean of every basis function over its gap. */
  static double[][] weights(Unknowns unknowns) {
    Mesh mesh = unknowns.mesh();
    List<Gap> gaps = mesh.gaps();
    double[][] weights = new double[gaps.size()][unknowns.count()];
    for (int p = 0; p < gaps.size(); p++) {
      Gap gap = gaps.get(p);
      for (int i : gap.pieces()) {
        double share = mesh.pieces().get(i).length() / gap.width();
        for (int f = 0; f <= Math.min(2, mesh.order()[i]); f++) {
          double mean = share * (LocalBasis.low(f) == 0 ? LocalBasis.lowFactor(f) : 0);
          for (int u : unknowns.targets(i, f)) {
            weights[p][u] += unknowns.sign(i, f) * mean;
          }
        }
      }
    }
    return weights;
  }

  private static Complex[][] coarse(Unknowns unknowns, ComplexSystem system, double[][] weights) {
    int n = unknowns.coarseCount();
    double[][] right = new double[weights.length][];
    double[][] re = new double[weights.length][];
    double[][] im = new double[weights.length][n];
    for (int p = 0; p < weights.length; p++) {
      right[p] = Arrays.copyOf(weights[p], n);
      re[p] = right[p].clone();
      system.solveLeading(n, re[p], im[p]);
    }
    return admittance(right, re, im);
  }

  private static Complex[][] admittance(double[][] weights, double[][] re, double[][] im) {
    int ports = weights.length;
    Complex[][] y = new Complex[ports][ports];
    for (int p = 0; p < ports; p++) {
      for (int q = p; q < ports; q++) {
        double sumRe = 0;
        double sumIm = 0;
        for (int u = 0; u < weights[p].length; u++) {
          sumRe += weights[p][u] * re[q][u];
          sumIm += weights[p][u] * im[q][u];
        }
        y[p][q] = new Complex(sumRe, sumIm);
        y[q][p] = y[p][q];
      }
    }
    return y;
  }

  /** The mesh that was solved. */
  public Mesh mesh() {
    return mesh;
  }

  /** Number of unknowns. */
  public int unknowns() {
    return unknowns.count();
  }

  /** Short-circuit admittance in siemens between two ports. */
  public Complex admittance(int p, int q) {
    return admittance[p][q];
  }

  /** The same from one polynomial order less on every piece. */
  public Complex coarseAdmittance(int p, int q) {
    return coarseAdmittance[p][q];
  }

  /**
   * A neighbour of what was solved.
   *
   * @param mesh the same pieces, moved
   * @param ground of the same kind
   * @param frequencyHz frequency in hertz
   */
  public record Neighbour(Mesh mesh, Ground ground, double frequencyHz) {}

  /**
   * How much the short-circuit admittances Y = bᵀx, Zx = b, grow from one neighbour to another, to
   * first order and from the currents x of this solution alone: with Z symmetric, δY_pq = δb_pᵀ x_q
   * + x_pᵀ δb_q − x_pᵀ δZ x_q (the adjoint network of a reciprocal one is itself: Director and
   * Rohrer, IEEE Trans. Circuit Theory 16, 318, 1969).
   *
   * @param accuracy wanted relative accuracy of the integrals
   * @param tables kernels over soil, built here if they are not known
   */
  public Complex[][] change(Neighbour from, Neighbour to, double accuracy, SoilKernels tables) {
    MomentChange moments =
        new MomentChange(
            unknowns,
            from.mesh,
            to.mesh,
            from.frequencyHz == to.frequencyHz,
            from.ground.equals(to.ground),
            currentRe,
            currentIm);
    moments.add(blocks(from, to, accuracy, tables), blocks(to, from, accuracy, tables));
    double[][] before = weights(new Unknowns(from.mesh));
    double[][] after = weights(new Unknowns(to.mesh));
    Complex[][] change = new Complex[before.length][before.length];
    for (int p = 0; p < change.length; p++) {
      for (int q = 0; q <= p; q++) {
        double re = -moments.re(p, q);
        double im = -moments.im(p, q);
        for (int u = 0; u < unknowns.count(); u++) {
          double own = after[p][u] - before[p][u];
          double cross = after[q][u] - before[q][u];
          re += own * currentRe[q][u] + cross * currentRe[p][u];
          im += own * currentIm[q][u] + cross * currentIm[p][u];
        }
        change[p][q] = new Complex(re, im);
        change[q][p] = change[p][q];
      }
    }
    return change;
  }

  private static MomentBlocks blocks(
      Neighbour at, Neighbour other, double accuracy, SoilKernels tables) {
    List<ReflectedKernel> kernel =
        at.ground instanceof Soil soil
            ? List.of(
                tables.kernel(
                    soil,
                    at.frequencyHz,
                    SoilKernels.region(at.mesh, other.mesh),
                    at.mesh,
                    SoilKernels.SHARE * accuracy))
            : List.of();
    return new MomentBlocks(
        at.mesh,
        PhysicalConstants.wavenumber(at.frequencyHz),
        new ComputedMoments(at.mesh, at.ground, at.frequencyHz, accuracy, kernel),
        SeriesImpedance.of(at.mesh, at.frequencyHz));
  }

  /** The current along the pieces for voltages at the ports. */
  public CurrentExpansion currents(Complex[] voltages) {
    double[] re = new double[unknowns.count()];
    double[] im = new double[unknowns.count()];
    for (int p = 0; p < voltages.length; p++) {
      double vr = voltages[p].getReal();
      double vi = voltages[p].getImaginary();
      for (int u = 0; u < re.length; u++) {
        re[u] += vr * currentRe[p][u] - vi * currentIm[p][u];
        im[u] += vr * currentIm[p][u] + vi * currentRe[p][u];
      }
    }
    return unknowns.expand(re, im);
  }

  /** Power in watts that a current along the pieces (rms) loses in conductors and coats. */
  public double distributedLoss(CurrentExpansion current) {
    double loss = 0;
    for (int i = 0; i < mesh.size(); i++) {
      Piece piece = mesh.pieces().get(i);
      double currentSquare = 0;
      double chargeSquare = 0;
      double[] re = current.re()[i];
      double[] im = current.im()[i];
      for (int n = 0; n < re.length; n++) {
        currentSquare += (re[n] * re[n] + im[n] * im[n]) * 2 / (2 * n + 1);
      }
      if (series[i].chargeRe() != 0) {
        chargeSquare = derivativeSquare(re) + derivativeSquare(im);
      }
      loss += series[i].currentRe() * 0.5 * piece.length() * currentSquare;
      loss += series[i].chargeRe() * 2 / piece.length() * chargeSquare;
    }
    return loss;
  }

  /** ∫ (d/dt Σ c_n P_n)² dt, with dP_n/dt = Σ (2m + 1) P_m over m = n − 1, n − 3, …. */
  private static double derivativeSquare(double[] c) {
    double sum = 0;
    for (int m = 0; m < c.length - 1; m++) {
      double d = 0;
      for (int n = m + 1; n < c.length; n += 2) {
        d += c[n];
      }
      d *= 2 * m + 1;
      sum += d * d * 2 / (2 * m + 1);
    }
    return sum;
  }
}
