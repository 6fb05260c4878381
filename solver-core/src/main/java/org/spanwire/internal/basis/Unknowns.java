package org.spanwire.internal.basis;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import org.spanwire.internal.mesh.Mesh;
import org.spanwire.internal.mesh.Piece;

/**
 * Numbers the unknown currents of a mesh. A node where n piece ends meet carries n − 1 unknowns so
 * that the currents out of it sum to zero (Kirchhoff); a free end carries none; on perfect ground
 * every end carries its own. Bubbles follow, one unknown each, those of the highest order of their
 * piece last.
 *
 * <p>Every local function maps to unknowns with factors ±1: usually one, at a junction's reference
 * end all of the node's.
 */
public final class Unknowns {

  private final Mesh mesh;
  private final int[][][] targets;
  private final int[][] signs;
  private final int coarseCount;
  private final int count;

  /** Numbers the unknowns of a mesh. */
  public Unknowns(Mesh mesh) {
    this.mesh = mesh;
    targets = new int[mesh.size()][][];
    signs = new int[mesh.size()][];
    for (int i = 0; i < mesh.size(); i++) {
      targets[i] = new int[mesh.order()[i] + 1][];
      signs[i] = new int[mesh.order()[i] + 1];
      Arrays.fill(signs[i], 1);
    }
    int next = 0;
    List<List<int[]>> ends = endsByNode();
    for (int node = 0; node < mesh.nodes(); node++) {
      next = numberNode(ends.get(node), mesh.grounded()[node], next);
    }
    for (int i = 0; i < mesh.size(); i++) {
      for (int f = 2; f < mesh.order()[i]; f++) {
        targets[i][f] = new int[] {next++};
      }
    }
    coarseCount = next;
    for (int i = 0; i < mesh.size(); i++) {
      targets[i][mesh.order()[i]] = new int[] {next++};
    }
    count = next;
  }

  private List<List<int[]>> endsByNode() {
    List<List<int[]>> ends = new ArrayList<>();
    for (int n = 0; n < mesh.nodes(); n++) {
      ends.add(new ArrayList<>());
    }
    for (int i = 0; i < mesh.size(); i++) {
      ends.get(mesh.startNode()[i]).add(new int[] {i, 0});
      ends.get(mesh.endNode()[i]).add(new int[] {i, 1});
    }
    return ends;
  }

  /** Current out of the node along an end is +I at a piece's start and −I at its end. */
  private int numberNode(List<int[]> ends, boolean grounded, int first) {
    int next = first;
    if (grounded) {
      for (int[] end : ends) {
        targets[end[0]][end[1]] = new int[] {next++};
      }
      return next;
    }
    int[] reference = new int[ends.size() - 1];
    for (int e = 1; e < ends.size(); e++) {
      int[] end = ends.get(e);
      targets[end[0]][end[1]] = new int[] {next};
      signs[end[0]][end[1]] = end[1] == 0 ? 1 : -1;
      reference[e - 1] = next++;
    }
    int[] end = ends.get(0);
    targets[end[0]][end[1]] = reference;
    signs[end[0]][end[1]] = end[1] == 0 ? -1 : 1;
    return next;
  }

  /** Number of unknowns. */
  public int count() {
    return count;
  }

  /**
   * Unknowns to which a local function of a piece contributes, each with {@link #sign}; none for
   * the function of a free end.
   */
  public int[] targets(int piece, int function) {
    return targets[piece][function];
  }

  /** Sign with which a local function contributes. */
  public int sign(int piece, int function) {
    return signs[piece][function];
  }

  /**
   * Number of leading unknowns that are left without the bubble of the highest order on every
   * piece.
   */
  public int coarseCount() {
    return coarseCount;
  }

  /** The mesh. */
  public Mesh mesh() {
    return mesh;
  }

  /**
   * The current of a solution as Legendre series on every piece.
   *
   * @param re real parts of the unknowns in amperes
   * @param im imaginary parts
   */
  public CurrentExpansion expand(double[] re, double[] im) {
    List<Piece> pieces = mesh.pieces();
    double[][] outRe = new double[pieces.size()][];
    double[][] outIm = new double[pieces.size()][];
    for (int i = 0; i < pieces.size(); i++) {
      int order = mesh.order()[i];
      outRe[i] = new double[order + 1];
      outIm[i] = new double[order + 1];
      for (int f = 0; f <= order; f++) {
        double sumRe = 0;
        double sumIm = 0;
        for (int u : targets[i][f]) {
          sumRe += signs[i][f] * re[u];
          sumIm += signs[i][f] * im[u];
        }
        outRe[i][LocalBasis.low(f)] += LocalBasis.lowFactor(f) * sumRe;
        outIm[i][LocalBasis.low(f)] += LocalBasis.lowFactor(f) * sumIm;
        outRe[i][LocalBasis.high(f)] += LocalBasis.highFactor(f) * sumRe;
        outIm[i][LocalBasis.high(f)] += LocalBasis.highFactor(f) * sumIm;
      }
    }
    return new CurrentExpansion(pieces, outRe, outIm);
  }
}
