package org.spanwire.internal.moment;

import java.util.Arrays;
import java.util.List;
import java.util.stream.IntStream;
import org.spanwire.internal.basis.LocalBasis;
import org.spanwire.internal.basis.Unknowns;
import org.spanwire.internal.math.GaussLegendre;
import org.spanwire.internal.math.LegendrePolynomials;
import org.spanwire.internal.mesh.FeedTrack;
import org.spanwire.internal.mesh.Mesh;

/**
 * The means of all basis functions over splines at every node of a track: three splines for each
 * node, every one narrower than the one before by a step of the track. Independent of frequency.
 */
final class TrackWindows {

  /** Number of splines at a node: two pairs that share the one in the middle. */
  static final int SPLINES = 3;

  private final Unknowns unknowns;
  private final Sparse[][] means;

  /** Sums over the pieces, and how many of them are not zero any more: work space. */
  private final double[] sums;

  private final boolean[] touched;
  private final int[] rows;
  private int count;

  /** Entries of a vector that is zero elsewhere. */
  record Sparse(int[] rows, double[] values) {
    static Sparse of(double[] all) {
      int[] rows = IntStream.range(0, all.length).filter(i -> all[i] != 0).toArray();
      return new Sparse(rows, Arrays.stream(rows).mapToDouble(i -> all[i]).toArray());
    }
  }

  TrackWindows(Unknowns unknowns, FeedTrack track) {
    this.unknowns = unknowns;
    sums = new double[unknowns.count()];
    touched = new boolean[unknowns.count()];
    rows = new int[unknowns.count()];
    List<FeedTrack.Node> nodes = track.nodes();
    means = new Sparse[nodes.size()][SPLINES];
    for (int node = 0; node < means.length; node++) {
      FeedTrack.Node at = nodes.get(node);
      for (int spline = 0; spline < SPLINES; spline++) {
        means[node][spline] = means(track.wire(), at.at(), track.halfWidth(at.step() + spline));
      }
    }
  }

  Sparse mean(int node, int spline) {
    return means[node][spline];
  }

  private Sparse means(int wire, double centre, double halfWidth) {
    Mesh mesh = unknowns.mesh();
    for (int i = 0; i < mesh.size(); i++) {
      double start = mesh.distance()[i] - centre;
      double end = start + mesh.pieces().get(i).length();
      if (mesh.wire()[i] == wire && start < halfWidth && end > -halfWidth) {
        double[] moments = moments(start, end, halfWidth, mesh.order()[i]);
        for (int f = 0; f <= mesh.order()[i]; f++) {
          double mean =
              LocalBasis.lowFactor(f) * moments[LocalBasis.low(f)]
                  + LocalBasis.highFactor(f) * moments[LocalBasis.high(f)];
          for (int row : unknowns.targets(i, f)) {
            add(row, unknowns.sign(i, f) * mean);
          }
        }
      }
    }
    return gathered();
  }

  private void add(int row, double value) {
    if (!touched[row]) {
      touched[row] = true;
      rows[count++] = row;
    }
    sums[row] += value;
  }

  /** Takes the sums away. */
  private Sparse gathered() {
    Sparse gathered = new Sparse(Arrays.copyOf(rows, count), new double[count]);
    for (int i = 0; i < count; i++) {
      gathered.values[i] = sums[rows[i]];
      sums[rows[i]] = 0;
      touched[rows[i]] = false;
    }
    count = 0;
    return gathered;
  }

  /** ∫ P_n over a spline at 0 on a piece, exact: the spline is a cubic between its knots. */
  private static double[] moments(double start, double end, double halfWidth, int order) {
    double[] moments = new double[order + 1];
    double[] values = new double[order + 1];
    int nodes = (order + 3) / 2 + 1;
    GaussLegendre rule = GaussLegendre.of(nodes);
    for (int knot = -2; knot < 2; knot++) {
      double from = Math.max(start, 0.5 * knot * halfWidth);
      double to = Math.min(end, 0.5 * (knot + 1) * halfWidth);
      for (int q = 0; to > from && q < nodes; q++) {
        double s = 0.5 * (from + to) + 0.5 * (to - from) * rule.node(q);
        double weight = 0.5 * (to - from) * rule.weight(q) * SplinePair.value(s, halfWidth);
        LegendrePolynomials.fill(2 * (s - start) / (end - start) - 1, order, weight, values, 0);
        for (int n = 0; n <= order; n++) {
          moments[n] += values[n];
        }
      }
    }
    return moments;
  }
}
