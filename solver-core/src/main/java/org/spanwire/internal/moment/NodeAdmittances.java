package org.spanwire.internal.moment;

import org.apache.commons.math3.complex.Complex;
import org.spanwire.internal.linear.InverseRoot;
import org.spanwire.internal.mesh.FeedTrack;

/** Admittances with the feed at the nodes of a track. Holds work space: for one thread. */
final class NodeAdmittances {

  private final FeedTrack track;
  private final TrackWindows windows;
  private final InverseRoot root;
  private final int coarseCount;
  private final int ports;
  private final GapAdmittance gap;
  private final double[][] splineRe;
  private final double[][] splineIm;
  private final double[][] portRe;
  private final double[][] portIm;

  /**
   * Prepares what all nodes share.
   *
   * @param fixed means over the gaps of the mesh
   * @param gap of the moving feed, with the half-widths of the track's steps
   * @param coarseCount leading unknowns with one polynomial order less
   */
  NodeAdmittances(
      FeedTrack track,
      TrackWindows windows,
      TrackWindows.Sparse[] fixed,
      GapAdmittance gap,
      InverseRoot root,
      int coarseCount) {
    this.track = track;
    this.windows = windows;
    this.root = root;
    this.coarseCount = coarseCount;
    ports = 1 + fixed.length;
    int n = root.size();
    portRe = new double[ports][n];
    portIm = new double[ports][n];
    for (int port = 1; port < ports; port++) {
      TrackWindows.Sparse mean = fixed[port - 1];
      root.project(mean.rows(), mean.values(), portRe[port], portIm[port]);
    }
    splineRe = new double[TrackWindows.SPLINES][n];
    splineIm = new double[TrackWindows.SPLINES][n];
    this.gap = gap;
  }

  /** The matrices of all {@link TrackSolution.Way}s one after the other, row by row. */
  double[] at(int node) {
    for (int spline = 0; spline < TrackWindows.SPLINES; spline++) {
      TrackWindows.Sparse mean = windows.mean(node, spline);
      root.project(mean.rows(), mean.values(), splineRe[spline], splineIm[spline]);
    }
    int step = track.nodes().get(node).step();
    double[] all = new double[TrackSolution.Way.values().length * 2 * ports * ports];
    combine(gap.pair(step + 1), 1);
    matrix(root.size(), gap.over(step + 1), TrackSolution.Way.NARROWER, all);
    combine(gap.pair(step), 0);
    matrix(root.size(), gap.over(step), TrackSolution.Way.FINE, all);
    matrix(coarseCount, gap.over(step), TrackSolution.Way.COARSE, all);
    return all;
  }

  /** Puts a pair of splines on port 0. */
  private void combine(SplinePair pair, int first) {
    double ar = pair.wideWeight().getReal();
    double ai = pair.wideWeight().getImaginary();
    double br = pair.narrowWeight().getReal();
    double bi = pair.narrowWeight().getImaginary();
    for (int i = 0; i < root.size(); i++) {
      double xr = splineRe[first][i];
      double xi = splineIm[first][i];
      double yr = splineRe[first + 1][i];
      double yi = splineIm[first + 1][i];
      portRe[0][i] = ar * xr - ai * xi + br * yr - bi * yi;
      portIm[0][i] = ar * xi + ai * xr + br * yi + bi * yr;
    }
  }

  private void matrix(int leading, Complex difference, TrackSolution.Way way, double[] all) {
    for (int p = 0; p < ports; p++) {
      for (int q = p; q < ports; q++) {
        double re = p + q == 0 ? difference.getReal() : 0;
        double im = p + q == 0 ? difference.getImaginary() : 0;
        double[] aRe = portRe[p];
        double[] aIm = portIm[p];
        double[] bRe = portRe[q];
        double[] bIm = portIm[q];
        for (int i = 0; i < leading; i++) {
          re += aRe[i] * bRe[i] - aIm[i] * bIm[i];
          im += aRe[i] * bIm[i] + aIm[i] * bRe[i];
        }
        int offset = way.ordinal() * ports;
        put(all, (offset + p) * ports + q, re, im);
        put(all, (offset + q) * ports + p, re, im);
      }
    }
  }

  private static void put(double[] all, int at, double re, double im) {
    all[2 * at] = re;
    all[2 * at + 1] = im;
  }
}
