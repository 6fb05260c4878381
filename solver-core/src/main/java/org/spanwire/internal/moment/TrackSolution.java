package org.spanwire.internal.moment;

import java.util.List;
import java.util.Map;
import java.util.concurrent.ConcurrentHashMap;
import java.util.stream.IntStream;
import org.apache.commons.math3.complex.Complex;
import org.ejml.data.ZMatrixRMaj;
import org.spanwire.internal.basis.Unknowns;
import org.spanwire.internal.linear.ComplexSystem;
import org.spanwire.internal.linear.InverseRoot;
import org.spanwire.internal.mesh.FeedTrack;
import org.spanwire.internal.mesh.Mesh;
import org.spanwire.medium.Conductor;
import org.spanwire.medium.Ground;
import org.spanwire.unit.PhysicalConstants;

/**
 * A mesh solved once for a feed at every place of a track. A gap too narrow for the mesh is
 * replaced by splines that the mesh resolves, and what they lack is added: Y = eᵀ Z⁻¹ e + D with
 * {@link GapAdmittance}. Immutable.
 */
public final class TrackSolution {

  private final FeedTrack track;
  private final int lowestOrder;
  private final int ports;
  private final double[][] atNodes;

  /**
   * A mesh and a track on it: what does not depend on frequency, and what depends on nothing else.
   */
  public static final class Frame {
    private final FeedTrack track;
    private final double[] halfWidths;
    private final Map<Double, GapAdmittance> gaps = new ConcurrentHashMap<>();
    private final Unknowns unknowns;
    private final TrackWindows windows;
    private final TrackWindows.Sparse[] fixed;

    /** Projects the windows of a track on the basis of its mesh. */
    public Frame(Mesh mesh, FeedTrack track) {
      this.track = track;
      unknowns = new Unknowns(mesh);
      windows = new TrackWindows(unknowns, track);
      int steps = track.nodes().stream().mapToInt(FeedTrack.Node::step).max().orElse(0);
      halfWidths =
          IntStream.range(0, steps + TrackWindows.SPLINES).mapToDouble(track::halfWidth).toArray();
      double[][] weights = PortSolution.weights(unknowns);
      fixed = new TrackWindows.Sparse[weights.length];
      for (int port = 0; port < fixed.length; port++) {
        fixed[port] = TrackWindows.Sparse.of(weights[port]);
      }
    }

    /** Number of unknowns. */
    public int unknowns() {
      return unknowns.count();
    }

    /**
     * Solves at a frequency, the moments integrated for it alone.
     *
     * @param mesh the mesh or the same one farther up
     * @param ground what lies below z = 0
     * @param accuracy wanted relative accuracy of the integrals
     * @param tables kernels over soil, built here if they are not known
     * @throws ArithmeticException if the matrix cannot be inverted without pivoting
     */
    public TrackSolution solve(
        Mesh mesh, Ground ground, double frequencyHz, double accuracy, SoilKernels tables) {
      return solve(
          MomentMatrix.fill(
              unknowns,
              PhysicalConstants.wavenumber(frequencyHz),
              ComputedMoments.of(mesh, ground, frequencyHz, accuracy, tables),
              SeriesImpedance.of(mesh, frequencyHz)),
          frequencyHz);
    }

    /**
     * Solves at a frequency and lift with moments of the mesh at hand.
     *
     * @throws ArithmeticException if the matrix cannot be inverted without pivoting
     */
    public TrackSolution solve(MomentFamily moments, double frequencyHz, double lift) {
      return solve(moments.matrix(frequencyHz, lift), frequencyHz);
    }

    private TrackSolution solve(ZMatrixRMaj matrix, double frequencyHz) {
      return new TrackSolution(
          this,
          new ComplexSystem(matrix).inverseRoot(),
          gaps.computeIfAbsent(frequencyHz, this::gap));
    }

    private GapAdmittance gap(double frequencyHz) {
      Conductor conductor = unknowns.mesh().wires().get(track.wire()).conductor();
      return new GapAdmittance(TubeSpectrum.of(conductor, frequencyHz), track.gap(), halfWidths);
    }
  }

  private TrackSolution(Frame frame, InverseRoot root, GapAdmittance gap) {
    track = frame.track;
    lowestOrder = frame.unknowns.mesh().lowestOrder();
    ports = 1 + frame.fixed.length;
    NodeAdmittances compute =
        new NodeAdmittances(
            track, frame.windows, frame.fixed, gap, root, frame.unknowns.coarseCount());
    List<FeedTrack.Node> nodes = track.nodes();
    atNodes = new double[nodes.size()][];
    for (int node = 0; node < atNodes.length; node++) {
      atNodes[node] = compute.at(node);
    }
  }

  /** Lowest polynomial order on the mesh. */
  public int lowestOrder() {
    return lowestOrder;
  }

  /** Three ways to compute an admittance. */
  public enum Way {
    /** The best. */
    FINE,
    /** From a narrower pair of splines: what it differs by tells the error of replacing the gap. */
    NARROWER,
    /** From one polynomial order less on every piece. */
    COARSE
  }

  /**
   * A short-circuit admittance in siemens with the feed at a place that is not cramped. Port 0 is
   * the feed, the gaps of the mesh follow.
   */
  public Complex admittance(int place, Way way, int row, int column) {
    int entry = 2 * ((way.ordinal() * ports + row) * ports + column);
    double re = 0;
    double im = 0;
    double[] weights = track.weights(place);
    for (int i = 0; i < weights.length; i++) {
      double[] node = atNodes[track.firstNode(place) + i];
      re += weights[i] * node[entry];
      im += weights[i] * node[entry + 1];
    }
    return new Complex(re, im);
  }
}
