package org.spanwire.internal.basis;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.util.List;
import java.util.Random;
import org.junit.jupiter.api.Test;
import org.spanwire.geometry.Point;
import org.spanwire.geometry.Wire;
import org.spanwire.internal.mesh.Mesh;
import org.spanwire.internal.mesh.MeshDensity;
import org.spanwire.internal.mesh.Mesher;
import org.spanwire.medium.Conductor;
import org.spanwire.medium.Ground;

class UnknownsTest {

  private static final Conductor THIN = Conductor.perfect(1e-3);
  private static final Point NODE = new Point(0, 0, 1);

  /** Five wires at one node, some starting there, some ending; one of them bent. */
  private static List<Wire> star() {
    return List.of(
        Wire.of("a", THIN, NODE, new Point(1, 0, 1)),
        Wire.of("b", THIN, new Point(0, 1, 1), NODE),
        Wire.of("c", THIN, NODE, new Point(-1, 0, 1), new Point(-1, 1, 2)),
        Wire.of("d", THIN, new Point(0, -1, 1), NODE),
        Wire.of("e", THIN, NODE, new Point(0, 0, 3)));
  }

  private static Mesh mesh(List<Wire> wires, Ground ground) {
    return Mesher.mesh(wires, List.of(), ground, 30e6, MeshDensity.level(1));
  }

  private static CurrentExpansion randomCurrent(Unknowns unknowns) {
    Random random = new Random(11);
    double[] re = random.doubles(unknowns.count(), -1, 1).toArray();
    double[] im = random.doubles(unknowns.count(), -1, 1).toArray();
    return unknowns.expand(re, im);
  }

  private static double at(double[] legendre, int end) {
    double sum = 0;
    for (int n = 0; n < legendre.length; n++) {
      sum += end == 1 || n % 2 == 0 ? legendre[n] : -legendre[n];
    }
    return sum;
  }

  /** Whatever the unknowns are, the currents out of every node add up to zero. */
  @Test
  void currentsOutOfEveryNodeSumToZero() {
    Mesh mesh = mesh(star(), Ground.freeSpace());
    CurrentExpansion current = randomCurrent(new Unknowns(mesh));
    double[] sum = new double[mesh.nodes()];
    double[] size = new double[mesh.nodes()];
    int[] degree = new int[mesh.nodes()];
    for (double[][] part : new double[][][] {current.re(), current.im()}) {
      for (int i = 0; i < mesh.size(); i++) {
        double out = at(part[i], 0);
        double in = at(part[i], 1);
        sum[mesh.startNode()[i]] += out;
        sum[mesh.endNode()[i]] -= in;
        size[mesh.startNode()[i]] += Math.abs(out);
        size[mesh.endNode()[i]] += Math.abs(in);
        degree[mesh.startNode()[i]]++;
        degree[mesh.endNode()[i]]++;
      }
      for (int n = 0; n < mesh.nodes(); n++) {
        assertThat(sum[n]).as("node %d", n).isCloseTo(0, within(1e-12 * Math.max(1, size[n])));
      }
    }
    assertThat(degree).contains(10).doesNotContain(0);
    for (int n = 0; n < mesh.nodes(); n++) {
      if (degree[n] == 2) { // a free end, counted in both parts
        assertThat(size[n]).isCloseTo(0, within(1e-14));
      }
    }
  }

  @Test
  void currentIsContinuousAlongAWire() {
    Mesh mesh = mesh(star(), Ground.freeSpace());
    CurrentExpansion current = randomCurrent(new Unknowns(mesh));
    for (int i = 1; i < mesh.size(); i++) {
      if (mesh.wire()[i] == mesh.wire()[i - 1]) {
        assertThat(mesh.startNode()[i]).isEqualTo(mesh.endNode()[i - 1]);
        assertThat(at(current.re()[i], 0)).isCloseTo(at(current.re()[i - 1], 1), within(1e-13));
        assertThat(at(current.im()[i], 0)).isCloseTo(at(current.im()[i - 1], 1), within(1e-13));
      }
    }
  }

  /** n ends at a node bring n − 1 unknowns, a free end none, an end on perfect ground one. */
  @Test
  void countsUnknownsByNodeAndOrder() {
    for (boolean grounded : new boolean[] {false, true}) {
      List<Wire> wires = List.of(Wire.of("up", THIN, new Point(0, 0, 0), new Point(0, 0, 2)));
      Mesh mesh = mesh(wires, grounded ? Ground.perfect() : Ground.freeSpace());
      int bubbles = 0;
      for (int order : mesh.order()) {
        bubbles += order - 1;
      }
      assertThat(new Unknowns(mesh).count())
          .isEqualTo(bubbles + mesh.size() - 1 + (grounded ? 1 : 0));
    }
    Mesh mesh = mesh(star(), Ground.freeSpace());
    int bubbles = 0;
    for (int order : mesh.order()) {
      bubbles += order - 1;
    }
    // each wire has one joint less than pieces; the node of five ends adds four unknowns
    assertThat(new Unknowns(mesh).count()).isEqualTo(bubbles + mesh.size() - 5 + 4);
  }

  /** The coarser twin leaves out exactly the highest bubble of every piece. */
  @Test
  void coarseUnknownsLeaveOutOneBubblePerPiece() {
    Mesh mesh = mesh(star(), Ground.freeSpace());
    Unknowns unknowns = new Unknowns(mesh);
    assertThat(unknowns.coarseCount()).isEqualTo(unknowns.count() - mesh.size());
    for (int i = 0; i < mesh.size(); i++) {
      assertThat(unknowns.targets(i, mesh.order()[i])[0])
          .isGreaterThanOrEqualTo(unknowns.coarseCount());
      for (int f = 0; f < mesh.order()[i]; f++) {
        for (int u : unknowns.targets(i, f)) {
          assertThat(u).isLessThan(unknowns.coarseCount());
        }
      }
    }
  }
}
