package org.spanwire.internal.moment;

import org.spanwire.internal.basis.Unknowns;
import org.spanwire.internal.mesh.Mesh;
import org.spanwire.internal.mesh.Piece;

/**
 * xᵀ(Z' − Z)y of currents x and y with the impedance matrices of two meshes of the same pieces,
 * block by block, so that neither matrix is kept. Blocks of pieces that lie to each other as before
 * do not change and are left out.
 */
final class MomentChange {

  /** Differences of coordinates below this share of the pieces' extent are rounding. */
  private static final double ROUNDING = 1e-13;

  private final Mesh one;
  private final Mesh other;
  private final boolean sameDirect;
  private final boolean sameReflected;

  /** For every current the coefficients of the local functions of every piece. */
  private final double[][][] re;

  private final double[][][] im;
  private final double[] diffRe;
  private final double[] diffIm;
  private final double[][] sumRe;
  private final double[][] sumIm;

  /**
   * Prepares.
   *
   * @param unknowns numbering that both meshes share
   * @param one mesh of Z
   * @param other mesh of Z'
   * @param sameFrequency whether both are at one frequency
   * @param sameGround whether both are over the same ground
   * @param re real parts of the currents' unknowns
   * @param im imaginary parts
   */
  MomentChange(
      Unknowns unknowns,
      Mesh one,
      Mesh other,
      boolean sameFrequency,
      boolean sameGround,
      double[][] re,
      double[][] im) {
    this.one = one;
    this.other = other;
    sameDirect = sameFrequency;
    sameReflected = sameFrequency && sameGround;
    this.re = new double[re.length][][];
    this.im = new double[re.length][][];
    for (int p = 0; p < re.length; p++) {
      this.re[p] = local(unknowns, re[p]);
      this.im[p] = local(unknowns, im[p]);
    }
    int size = (one.highestOrder() + 1) * (one.highestOrder() + 1);
    diffRe = new double[size];
    diffIm = new double[size];
    sumRe = new double[re.length][re.length];
    sumIm = new double[re.length][re.length];
  }

  private static double[][] local(Unknowns unknowns, double[] values) {
    Mesh mesh = unknowns.mesh();
    double[][] local = new double[mesh.size()][];
    for (int i = 0; i < local.length; i++) {
      local[i] = new double[mesh.order()[i] + 1];
      for (int f = 0; f < local[i].length; f++) {
        for (int u : unknowns.targets(i, f)) {
          local[i][f] += unknowns.sign(i, f) * values[u];
        }
      }
    }
    return local;
  }

  /** Adds up all blocks. */
  void add(MomentBlocks blocks, MomentBlocks otherBlocks) {
    for (int i = 0; i < one.size(); i++) {
      for (int j = i; j < one.size(); j++) {
        boolean direct = !(sameDirect && isUnmoved(i, j, 1));
        boolean reflected = !(sameReflected && isUnmoved(i, j, -1));
        if (i == j || direct || reflected) {
          blocks.compute(i, j, direct, reflected);
          otherBlocks.compute(i, j, direct, reflected);
          subtract(blocks, otherBlocks, (one.order()[i] + 1) * (one.order()[j] + 1));
          contract(i, j);
        }
      }
    }
  }

  private void subtract(MomentBlocks blocks, MomentBlocks otherBlocks, int size) {
    for (int n = 0; n < size; n++) {
      diffRe[n] = otherBlocks.re()[n] - blocks.re()[n];
      diffIm[n] = otherBlocks.im()[n] - blocks.im()[n];
    }
  }

  private void contract(int i, int j) {
    for (int p = 0; p < sumRe.length; p++) {
      for (int q = 0; q < sumRe.length; q++) {
        contract(p, i, q, j, p, q);
        if (i != j) {
          contract(q, i, p, j, p, q);
        }
      }
    }
  }

  /** Adds what current x on piece i and current y on piece j make. */
  private void contract(int x, int i, int y, int j, int p, int q) {
    double[] leftRe = re[x][i];
    double[] leftIm = im[x][i];
    double[] rightRe = re[y][j];
    double[] rightIm = im[y][j];
    int index = 0;
    double totalRe = 0;
    double totalIm = 0;
    for (int f = 0; f < leftRe.length; f++) {
      double rowRe = 0;
      double rowIm = 0;
      for (int g = 0; g < rightRe.length; g++, index++) {
        rowRe += diffRe[index] * rightRe[g] - diffIm[index] * rightIm[g];
        rowIm += diffRe[index] * rightIm[g] + diffIm[index] * rightRe[g];
      }
      totalRe += leftRe[f] * rowRe - leftIm[f] * rowIm;
      totalIm += leftRe[f] * rowIm + leftIm[f] * rowRe;
    }
    sumRe[p][q] += totalRe;
    sumIm[p][q] += totalIm;
  }

  /** Real part for two currents. */
  double re(int p, int q) {
    return 0.5 * (sumRe[p][q] + sumRe[q][p]);
  }

  /** Imaginary part for two currents. */
  double im(int p, int q) {
    return 0.5 * (sumIm[p][q] + sumIm[q][p]);
  }

  /**
   * Whether two pieces, the second one mirrored in the ground if the side is −1, are as long and
   * thick as before and lie to each other as before.
   */
  private boolean isUnmoved(int i, int j, int side) {
    Piece a = one.pieces().get(i);
    Piece b = one.pieces().get(j);
    Piece c = other.pieces().get(i);
    Piece d = other.pieces().get(j);
    double extent =
        Math.abs(a.x()) + Math.abs(b.x()) + Math.abs(a.y()) + Math.abs(b.y()) + a.z() + b.z();
    double least = ROUNDING * (extent + a.length() + b.length());
    return isAlike(a, c)
        && isAlike(b, d)
        && Math.abs((a.x() - b.x()) - (c.x() - d.x())) <= least
        && Math.abs((a.y() - b.y()) - (c.y() - d.y())) <= least
        && Math.abs((a.z() - side * b.z()) - (c.z() - side * d.z())) <= least;
  }

  private static boolean isAlike(Piece a, Piece b) {
    return a.radius() == b.radius()
        && Math.abs(a.length() - b.length()) <= ROUNDING * a.length()
        && Math.abs(a.ux() - b.ux()) <= ROUNDING
        && Math.abs(a.uy() - b.uy()) <= ROUNDING
        && Math.abs(a.uz() - b.uz()) <= ROUNDING;
  }
}
