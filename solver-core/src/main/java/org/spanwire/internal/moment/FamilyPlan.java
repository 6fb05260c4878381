package org.spanwire.internal.moment;

import java.util.Arrays;
import java.util.Optional;
import java.util.OptionalInt;
import java.util.stream.DoubleStream;
import java.util.stream.IntStream;
import org.spanwire.internal.halfspace.KernelRegion;
import org.spanwire.internal.math.LejaNodes;
import org.spanwire.internal.mesh.Mesh;
import org.spanwire.internal.mesh.Piece;
import org.spanwire.medium.FreeSpace;
import org.spanwire.medium.Ground;
import org.spanwire.medium.Soil;
import org.spanwire.unit.PhysicalConstants;

/**
 * Where the moments of a family are integrated.
 *
 * @param mesh without a lift
 * @param accuracy wanted relative accuracy of the integrals
 * @param frequencies nodes in hertz
 * @param lifts in metres, rising; nodes refer to them by index
 * @param heights nodes, ln of the height of the lowest point; one at 0 for one lift alone
 * @param frequencyCount nodes in frequency of the reflected part
 * @param heightCount nodes in height, 0 without a ground
 * @param directCounts nodes in frequency of the direct part for the longest pieces and for pieces
 *     shorter by each power of {@link #SHORTER}
 */
record FamilyPlan(
    Mesh mesh,
    Ground ground,
    double accuracy,
    LejaNodes frequencies,
    double[] lifts,
    LejaNodes heights,
    int frequencyCount,
    int heightCount,
    int[] directCounts) {

  /** Error of interpolation relative to 1/R over the accuracy of the integrals. */
  private static final double SHARE = 10;

  private static final int MOST_NODES = 40;

  /** Points that stand for all when nodes are picked. */
  private static final int MOST_POINTS = 401;

  private static final double SHORTER = 0.8;
  private static final int LENGTHS = 48;

  /** Least height of the probe over perfect ground, on which wires may stand, over its width. */
  private static final double LOWEST_PROBE = 1e-3;

  /** Empty if too many nodes were needed, or the lift would take wires off the ground. */
  static Optional<FamilyPlan> of(
      Mesh mesh, Ground ground, LejaNodes frequencies, double[] lifts, double accuracy) {
    if (stands(mesh) && !(lifts.length == 1 && lifts[0] == 0)) {
      return Optional.empty();
    }
    double[] up = thinned(lifts);
    double lowest = lowest(mesh);
    double[] places =
        up.length == 1
            ? new double[1]
            : Arrays.stream(up).map(lift -> Math.log(lowest + lift)).toArray();
    LejaNodes heights = new LejaNodes(places, MOST_NODES);
    int[] directCounts = directCounts(frequencies, longest(mesh), SHARE * accuracy);
    if (ground instanceof FreeSpace) {
      return Optional.of(
          new FamilyPlan(mesh, ground, accuracy, frequencies, up, heights, 0, 0, directCounts));
    }
    ReflectionProbe probe =
        new ReflectionProbe(ground, region(mesh, ground), longest(mesh), SHARE * accuracy);
    OptionalInt frequencyCount =
        largest(
            NodeCount.of(frequencies, f -> probe.at(f, up[0]), probe.tolerance()),
            NodeCount.of(frequencies, f -> probe.at(f, up[up.length - 1]), probe.tolerance()));
    double[] ends = {frequencies.lowest(), frequencies.highest()};
    OptionalInt heightCount =
        largest(
            NodeCount.of(heights, x -> probe.at(ends[0], lift(x, lowest, up)), probe.tolerance()),
            NodeCount.of(heights, x -> probe.at(ends[1], lift(x, lowest, up)), probe.tolerance()));
    return frequencyCount.isPresent() && heightCount.isPresent()
        ? Optional.of(
            new FamilyPlan(
                mesh,
                ground,
                accuracy,
                frequencies,
                up,
                heights,
                frequencyCount.getAsInt(),
                heightCount.getAsInt(),
                directCounts))
        : Optional.empty();
  }

  /** Nodes for frequencies in hertz, rising. */
  static LejaNodes nodes(double[] frequenciesHz) {
    return new LejaNodes(thinned(frequenciesHz), MOST_NODES);
  }

  /** Nodes that begin with those of this plan that lie among the frequencies. */
  LejaNodes nodesAmong(double[] frequenciesHz) {
    double[] points = thinned(frequenciesHz);
    double[] common =
        IntStream.range(0, frequencyCount)
            .mapToDouble(frequencies::node)
            .filter(f -> f >= points[0] && f <= points[points.length - 1])
            .toArray();
    if (common.length == 0) {
      return nodes(points);
    }
    double[] all =
        DoubleStream.concat(Arrays.stream(points), Arrays.stream(common))
            .sorted()
            .distinct()
            .toArray();
    int[] first = Arrays.stream(common).mapToInt(f -> Arrays.binarySearch(all, f)).toArray();
    return new LejaNodes(all, first, MOST_NODES);
  }

  private static boolean stands(Mesh mesh) {
    for (boolean grounded : mesh.grounded()) {
      if (grounded) {
        return true;
      }
    }
    return false;
  }

  private static double lift(double place, double lowest, double[] lifts) {
    return lifts.length == 1 ? lifts[0] : Math.exp(place) - lowest;
  }

  private static OptionalInt largest(OptionalInt a, OptionalInt b) {
    return a.isPresent() && b.isPresent()
        ? OptionalInt.of(Math.max(a.getAsInt(), b.getAsInt()))
        : OptionalInt.empty();
  }

  /** At most {@link #MOST_POINTS} of the points, both ends among them. */
  private static double[] thinned(double[] points) {
    int n = points.length;
    return n <= MOST_POINTS
        ? points
        : IntStream.range(0, MOST_POINTS)
            .mapToDouble(i -> points[(int) ((long) i * (n - 1) / (MOST_POINTS - 1))])
            .toArray();
  }

  /** The phase exp(−jks) with s at most half the sum of two pieces' lengths is what is left. */
  private static int[] directCounts(LejaNodes frequencies, double longest, double accuracy) {
    int[] counts = new int[LENGTHS];
    double length = longest;
    for (int i = 0; i < LENGTHS; i++) {
      double s = length;
      counts[i] =
          NodeCount.of(
                  frequencies,
                  f -> {
                    double phase = PhysicalConstants.wavenumber(f) * s;
                    return new double[] {Math.cos(phase), -Math.sin(phase)};
                  },
                  accuracy)
              .orElseThrow(() -> new IllegalStateException("pieces of many wavelengths"));
      length *= SHORTER;
    }
    return counts;
  }

  private static double longest(Mesh mesh) {
    return mesh.pieces().stream().mapToDouble(Piece::length).max().orElseThrow();
  }

  private static double lowest(Mesh mesh) {
    return mesh.pieces().stream()
        .mapToDouble(piece -> Math.min(piece.z(-1), piece.z(1)))
        .min()
        .orElseThrow();
  }

  private static KernelRegion region(Mesh mesh, Ground ground) {
    return ground instanceof Soil
        ? SoilKernels.region(mesh)
        : SoilKernels.region(mesh.lifted(LOWEST_PROBE * longest(mesh)));
  }

  boolean reflects() {
    return heightCount > 0;
  }

  /** Height of the lowest point without a lift. */
  double lowest() {
    return lowest(mesh);
  }

  /** Lift in metres at a node in height. */
  double lift(int node) {
    return lifts[heights.index(node)];
  }

  /** Nodes in frequency of the direct part between two pieces. */
  int directCount(int i, int j) {
    double mean = 0.5 * (mesh.pieces().get(i).length() + mesh.pieces().get(j).length());
    double steps = Math.log(mean / longest(mesh)) / Math.log(SHORTER);
    return directCounts[Math.max(0, Math.min(LENGTHS - 1, (int) steps))];
  }

  /** Largest number of nodes in frequency. */
  int mostFrequencies() {
    return Math.max(directCounts[0], frequencyCount);
  }

  /** Doubles that the moments take. */
  long values() {
    long ends = IntStream.of(mesh.order()).mapToLong(p -> p + 1).sum();
    return ends * ends * (directCounts[0] + 2L * frequencyCount * heightCount);
  }
}
