package org.spanwire.internal.moment;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import org.spanwire.internal.mesh.Mesh;
import org.spanwire.internal.mesh.Piece;

/**
 * Moments that are integrated once for all pairs of pieces that are equal. Between two pieces of
 * one straight line they depend on the pieces' lengths and distance alone, and on a level line so
 * do the reflected ones; a pair seen from the other end is the same with M_ij = (−1)^(i+j) M_ji.
 * Long wires have mostly pieces of one length, and many meshes are as symmetric as their wires.
 * Holds work space: for one thread.
 */
final class EqualPairs implements MomentSource {

  /** Lengths are equal if they differ by less than this share of the longer piece. */
  private static final double SAME = 1e-9;

  /** Pairs kept at most, a few kilobytes each. */
  private static final int MOST_KEPT = 4096;

  private final Mesh mesh;
  private final MomentSource source;

  /** For every piece the number of its line and of its shape among all shapes. */
  private final int[] line;

  private final int[] shape;
  private final Map<Key, Kept> direct = new HashMap<>();
  private final Map<Key, Kept> reflected = new HashMap<>();

  private record Key(int line, int shape, int otherShape, long gap) {}

  /** Moments by channel, and whether they are those of the pair seen from the other end. */
  private record Kept(double[][] re, double[][] im, boolean mirrored) {}

  EqualPairs(Mesh mesh, MomentSource source) {
    this.mesh = mesh;
    this.source = source;
    line = new int[mesh.size()];
    shape = new int[mesh.size()];
    List<Integer> shapes = new ArrayList<>();
    for (int i = 0; i < mesh.size(); i++) {
      line[i] = i > 0 && continues(i - 1, i) ? line[i - 1] : i;
      shape[i] = shape(i, shapes);
    }
  }

  private boolean continues(int i, int next) {
    Piece a = mesh.pieces().get(i);
    Piece b = mesh.pieces().get(next);
    return mesh.wire()[i] == mesh.wire()[next]
        && a.ux() == b.ux()
        && a.uy() == b.uy()
        && a.uz() == b.uz();
  }

  /** Number of the first piece of the same length and order. */
  private int shape(int piece, List<Integer> shapes) {
    double length = mesh.pieces().get(piece).length();
    for (int known : shapes) {
      double other = mesh.pieces().get(known).length();
      if (mesh.order()[known] == mesh.order()[piece]
          && Math.abs(other - length) < SAME * Math.max(other, length)) {
        return known;
      }
    }
    shapes.add(piece);
    return piece;
  }

  @Override
  public boolean reflects() {
    return source.reflects();
  }

  @Override
  public void direct(int i, int j, double[] re, double[] im) {
    if (line[i] != line[j]) {
      source.direct(i, j, re, im);
      return;
    }
    double[][] toRe = {re};
    double[][] toIm = {im};
    if (!recall(direct, i, j, toRe, toIm)) {
      source.direct(i, j, re, im);
      keep(direct, i, j, toRe, toIm);
    }
  }

  @Override
  public void reflected(int i, int j, double[][] re, double[][] im) {
    boolean level = line[i] == line[j] && mesh.pieces().get(i).uz() == 0;
    if (!level || !recall(reflected, i, j, re, im)) {
      source.reflected(i, j, re, im);
      if (level) {
        keep(reflected, i, j, re, im);
      }
    }
  }

  private Key key(int i, int j) {
    double first = mesh.pieces().get(i).length();
    double gap = mesh.distance()[j] - mesh.distance()[i] - first;
    double longer = Math.max(first, mesh.pieces().get(j).length());
    return new Key(
        line[i],
        Math.min(shape[i], shape[j]),
        Math.max(shape[i], shape[j]),
        Math.round(gap / (SAME * longer)));
  }

  private boolean isMirrored(int i, int j) {
    return shape[i] > shape[j];
  }

  private void keep(Map<Key, Kept> known, int i, int j, double[][] re, double[][] im) {
    if (known.size() < MOST_KEPT) {
      int size = (mesh.order()[i] + 1) * (mesh.order()[j] + 1);
      known.put(key(i, j), new Kept(copies(re, size), copies(im, size), isMirrored(i, j)));
    }
  }

  private static double[][] copies(double[][] channels, int size) {
    double[][] copies = new double[channels.length][];
    for (int c = 0; c < channels.length; c++) {
      copies[c] = Arrays.copyOf(channels[c], size);
    }
    return copies;
  }

  private boolean recall(Map<Key, Kept> known, int i, int j, double[][] re, double[][] im) {
    Kept kept = known.get(key(i, j));
    if (kept == null) {
      return false;
    }
    for (int c = 0; c < kept.re.length; c++) {
      if (kept.mirrored == isMirrored(i, j)) {
        System.arraycopy(kept.re[c], 0, re[c], 0, kept.re[c].length);
        System.arraycopy(kept.im[c], 0, im[c], 0, kept.im[c].length);
      } else {
        mirror(kept.re[c], mesh.order()[i], mesh.order()[j], re[c]);
        mirror(kept.im[c], mesh.order()[i], mesh.order()[j], im[c]);
      }
    }
    return true;
  }

  /** Writes (−1)^(i+j) M_ji, row by row in i. */
  private static void mirror(double[] from, int orderA, int orderB, double[] to) {
    int at = 0;
    for (int i = 0; i <= orderA; i++) {
      for (int j = 0; j <= orderB; j++, at++) {
        double value = from[j * (orderA + 1) + i];
        to[at] = (i + j) % 2 == 0 ? value : -value;
      }
    }
  }
}
