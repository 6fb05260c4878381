package org.spanwire.internal.moment;

import java.util.Arrays;
import java.util.List;
import java.util.Optional;
import org.ejml.data.ZMatrixRMaj;
import org.spanwire.internal.basis.Unknowns;
import org.spanwire.internal.math.LejaNodes;
import org.spanwire.internal.mesh.Mesh;
import org.spanwire.internal.mesh.Piece;
import org.spanwire.medium.Ground;
import org.spanwire.unit.PhysicalConstants;

/**
 * The impedance matrix of one mesh as a function of frequency and of a lift common to all wires.
 * Resonances come from solving the equations; the moments that the matrix is made of are smooth.
 * For every pair of pieces they are integrated at a few nodes and interpolated, with the factor
 * exp(−jkR_c) taken out and put back, R_c the distance between the pieces' centres (for the
 * reflected part exp(−jkR'_c)/R'_c, to the image). What is left turns by at most k(h + h')/2 for
 * pieces of lengths h and h', however far apart they lie. The direct part does not depend on the
 * lift. What a wire adds itself is computed at every frequency.
 *
 * <p>The number of nodes follows from the interpolation error of the kernels, relative to 1/R ten
 * times the accuracy of the integrals, as much as the tables over soil may err. Port impedances err
 * by less than the accuracy. Immutable, safe for use by several threads, and the same to the last
 * bit whatever their number.
 */
public final class MomentFamily {

  private final FamilyPlan plan;
  private final Mesh mesh;
  private final LejaNodes frequencies;
  private final LejaNodes heights;
  private final double lowest;
  private final boolean oneLift;
  private final int frequencyCount;
  private final int heightCount;
  private final int mostFrequencies;
  private final double[][] direct;
  private final double[][] reflected;

  private MomentFamily(FamilyPlan plan, List<FamilyFill.Row> rows) {
    this.plan = plan;
    mesh = plan.mesh();
    frequencies = plan.frequencies();
    heights = plan.heights();
    lowest = plan.lowest();
    oneLift = plan.lifts().length == 1;
    frequencyCount = plan.frequencyCount();
    heightCount = plan.heightCount();
    mostFrequencies = plan.mostFrequencies();
    direct = rows.stream().flatMap(row -> Arrays.stream(row.direct())).toArray(double[][]::new);
    reflected =
        rows.stream().flatMap(row -> Arrays.stream(row.reflected())).toArray(double[][]::new);
  }

  /**
   * Integrates the moments at as many nodes as the wanted frequencies and lifts need.
   *
   * @param mesh made for the highest frequency, without a lift
   * @param ground what lies below z = 0
   * @param frequenciesHz wanted frequencies in hertz, rising; those between neighbours of a dense
   *     set are served too
   * @param lifts wanted heights in metres above that of the mesh, rising; {0} for none
   * @param accuracy wanted relative accuracy of the integrals
   * @param tables kernels over soil
   * @param mostBytes memory that the moments may take
   * @param threads number of threads; the result does not depend on it
   * @return empty where that takes too many nodes or too much memory: with fewer frequencies,
   *     closer together, it may work
   */
  public static Optional<MomentFamily> of(
      Mesh mesh,
      Ground ground,
      double[] frequenciesHz,
      double[] lifts,
      double accuracy,
      SoilKernels tables,
      long mostBytes,
      int threads) {
    return FamilyPlan.of(mesh, ground, FamilyPlan.nodes(frequenciesHz), lifts, accuracy)
        .filter(plan -> Double.BYTES * plan.values() <= mostBytes)
        .map(plan -> of(plan, tables, threads));
  }

  /**
   * The same on a finer mesh of the same wires, for some of the frequencies and lifts. Its nodes
   * are those of this family as far as they lie among the frequencies, so that tables over soil
   * serve again. Parameters and result are as with {@link #of}.
   */
  public Optional<MomentFamily> finer(
      Mesh finer,
      double[] frequenciesHz,
      double[] lifts,
      SoilKernels tables,
      long mostBytes,
      int threads) {
    return FamilyPlan.of(
            finer, plan.ground(), plan.nodesAmong(frequenciesHz), lifts, plan.accuracy())
        .filter(found -> Double.BYTES * found.values() <= mostBytes)
        .map(found -> of(found, tables, threads));
  }

  static MomentFamily of(FamilyPlan plan, SoilKernels tables, int threads) {
    return new MomentFamily(plan, FamilyFill.rows(plan, tables, threads));
  }

  /** Number of frequencies at which moments were integrated. */
  public int frequencyNodes() {
    return mostFrequencies;
  }

  /** Number of lifts at which reflected moments were integrated; 0 without a ground. */
  public int heightNodes() {
    return heightCount;
  }

  /** Whether a frequency in hertz and a lift in metres lie among those asked for. */
  public boolean covers(double frequencyHz, double lift) {
    return frequencies.covers(mostFrequencies, frequencyHz)
        && frequencies.covers(frequencyCount, frequencyHz)
        && (heightCount == 0 || heights.covers(heightCount, place(lift)));
  }

  private double place(double lift) {
    return oneLift ? 0 : Math.log(lowest + lift);
  }

  /** The impedance matrix in ohms at a frequency in hertz and a lift in metres. */
  public ZMatrixRMaj matrix(double frequencyHz, double lift) {
    return MomentMatrix.fill(
        new Unknowns(mesh),
        PhysicalConstants.wavenumber(frequencyHz),
        new Interpolated(frequencyHz, lift),
        SeriesImpedance.of(mesh, frequencyHz));
  }

  /** Solves at a frequency in hertz and a lift in metres; the solution's mesh is lifted. */
  public PortSolution solve(double frequencyHz, double lift) {
    return PortSolution.solve(
        new Unknowns(mesh.lifted(lift)), frequencyHz, new Interpolated(frequencyHz, lift));
  }

  /** Moments at one frequency and lift. */
  private final class Interpolated implements MomentSource {

    private final double k;
    private final double lift;

    /** Weights in frequency of the direct part, by their number. */
    private final double[][] directWeights = new double[frequencies.count() + 1][];

    private final double[] reflectedWeights;

    Interpolated(double frequencyHz, double lift) {
      k = PhysicalConstants.wavenumber(frequencyHz);
      this.lift = lift;
      for (int count = 1; count <= mostFrequencies; count++) {
        directWeights[count] = frequencies.weights(count, frequencyHz);
      }
      reflectedWeights = new double[frequencyCount * heightCount];
      if (reflects()) {
        double[] inFrequency = frequencies.weights(frequencyCount, frequencyHz);
        double[] inHeight = heights.weights(heightCount, place(lift));
        for (int n = 0; n < reflectedWeights.length; n++) {
          reflectedWeights[n] = inHeight[n / frequencyCount] * inFrequency[n % frequencyCount];
        }
      }
    }

    @Override
    public boolean reflects() {
      return heightCount > 0;
    }

    @Override
    public void direct(int i, int j, double[] re, double[] im) {
      double[] kept = direct[pair(i, j)];
      int size = (mesh.order()[i] + 1) * (mesh.order()[j] + 1);
      double[] weights = directWeights[kept.length / (2 * size)];
      sum(kept, 0, 2 * size, weights, size, re, im);
      turn(re, im, size, k * PairDistances.direct(piece(i), piece(j)), 1);
    }

    @Override
    public void reflected(int i, int j, double[][] re, double[][] im) {
      double[] kept = reflected[pair(i, j)];
      int size = (mesh.order()[i] + 1) * (mesh.order()[j] + 1);
      double centres = PairDistances.reflected(piece(i), piece(j), lift);
      for (int channel = 0; channel < 2; channel++) {
        sum(kept, 2 * size * channel, 4 * size, reflectedWeights, size, re[channel], im[channel]);
        turn(re[channel], im[channel], size, k * centres, 1 / centres);
      }
    }

    private int pair(int i, int j) {
      return i * mesh.size() - i * (i - 1) / 2 + j - i;
    }

    private Piece piece(int i) {
      return mesh.pieces().get(i);
    }

    private void sum(
        double[] kept, int from, int step, double[] weights, int size, double[] re, double[] im) {
      Arrays.fill(re, 0, size, 0);
      Arrays.fill(im, 0, size, 0);
      for (int c = 0; c < weights.length; c++) {
        double weight = weights[c];
        int at = from + c * step;
        for (int n = 0; n < size; n++) {
          re[n] += weight * kept[at + n];
        }
        at += size;
        for (int n = 0; n < size; n++) {
          im[n] += weight * kept[at + n];
        }
      }
    }

    /** Multiplies by exp(−j phase) and a factor. */
    private void turn(double[] re, double[] im, int size, double phase, double factor) {
      double c = factor * Math.cos(phase);
      double s = factor * Math.sin(phase);
      for (int n = 0; n < size; n++) {
        double real = re[n] * c + im[n] * s;
        im[n] = im[n] * c - re[n] * s;
        re[n] = real;
      }
    }
  }
}
