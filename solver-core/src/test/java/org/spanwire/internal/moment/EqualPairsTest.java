package org.spanwire.internal.moment;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.List;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.spanwire.geometry.Point;
import org.spanwire.geometry.Wire;
import org.spanwire.internal.mesh.Mesh;
import org.spanwire.internal.mesh.MeshDensity;
import org.spanwire.internal.mesh.Mesher;
import org.spanwire.medium.Conductor;
import org.spanwire.medium.Ground;
import org.spanwire.medium.Materials;
import org.spanwire.medium.Soils;

/** The judge integrates every pair on its own. */
class EqualPairsTest {

  private static final double FREQUENCY_HZ = 21e6;
  private static final double ACCURACY = 1e-8;

  private static Mesh mesh(Ground ground, Point... path) {
    Wire wire = new Wire("wire", Conductor.bare(Materials.COPPER, 1e-3), List.of(path));
    return Mesher.mesh(List.of(wire), List.of(), ground, FREQUENCY_HZ, MeshDensity.level(0));
  }

  private static Mesh level(Ground ground) {
    return mesh(ground, new Point(0, 0, 8), new Point(70, 0, 8));
  }

  private static Mesh bent(Ground ground) {
    return mesh(ground, new Point(0, 0, 4), new Point(30, 0, 9), new Point(30, 40, 9));
  }

  private static Ground ground(String below) {
    return switch (below) {
      case "free-space" -> Ground.freeSpace();
      case "perfect" -> Ground.perfect();
      default -> Soils.find(below).orElseThrow();
    };
  }

  private static MomentSource plain(Mesh mesh, Ground ground, SoilKernels tables) {
    return new ComputedMoments(mesh, ground, FREQUENCY_HZ, ACCURACY, tables);
  }

  /** Largest difference over the largest moment. */
  private static double apart(double[][] a, double[][] b, int channels, int size) {
    double largest = 0;
    double worst = 0;
    for (int c = 0; c < channels; c++) {
      for (int n = 0; n < size; n++) {
        largest = Math.max(largest, Math.abs(a[c][n]));
        worst = Math.max(worst, Math.abs(a[c][n] - b[c][n]));
      }
    }
    return largest == 0 ? worst : worst / largest;
  }

  @ParameterizedTest
  @CsvSource({"free-space, level", "perfect, level", "medium-dry, level", "medium-dry, bent"})
  void equalPairsHaveTheMomentsOfTheirOwn(String below, String form) {
    Ground ground = ground(below);
    Mesh mesh = form.equals("level") ? level(ground) : bent(ground);
    SoilKernels tables = new SoilKernels();
    MomentSource judge = plain(mesh, ground, tables);
    MomentSource shared = new EqualPairs(mesh, plain(mesh, ground, tables));
    int most = (mesh.highestOrder() + 1) * (mesh.highestOrder() + 1);
    double[][][] got = new double[2][2][most];
    double[][][] right = new double[2][2][most];
    for (int i = 0; i < mesh.size(); i++) {
      for (int j = i; j < mesh.size(); j++) {
        int size = (mesh.order()[i] + 1) * (mesh.order()[j] + 1);
        judge.direct(i, j, right[0][0], right[1][0]);
        shared.direct(i, j, got[0][0], got[1][0]);
        assertThat(apart(right[0], got[0], 1, size)).isLessThan(1e-7);
        assertThat(apart(right[1], got[1], 1, size)).isLessThan(1e-7);
        if (judge.reflects()) {
          judge.reflected(i, j, right[0], right[1]);
          shared.reflected(i, j, got[0], got[1]);
          assertThat(apart(right[0], got[0], 2, size)).isLessThan(1e-6);
          assertThat(apart(right[1], got[1], 2, size)).isLessThan(1e-6);
        }
      }
    }
  }

  /** Ten equal pieces between graded ends, the same from both sides. */
  @Test
  void mostPairsOfALevelWireAreEqualToOthers() {
    Mesh mesh = level(Ground.perfect());
    int[] asked = new int[2];
    MomentSource source = plain(mesh, Ground.perfect(), new SoilKernels());
    MomentSource counting =
        new MomentSource() {
          @Override
          public void direct(int i, int j, double[] re, double[] im) {
            asked[0]++;
            source.direct(i, j, re, im);
          }

          @Override
          public boolean reflects() {
            return true;
          }

          @Override
          public void reflected(int i, int j, double[][] re, double[][] im) {
            asked[1]++;
            source.reflected(i, j, re, im);
          }
        };
    MomentSource shared = new EqualPairs(mesh, counting);
    double[][] re = new double[2][400];
    double[][] im = new double[2][400];
    for (int i = 0; i < mesh.size(); i++) {
      for (int j = i; j < mesh.size(); j++) {
        shared.direct(i, j, re[0], im[0]);
        shared.reflected(i, j, re, im);
      }
    }
    int pairs = mesh.size() * (mesh.size() + 1) / 2;
    assertThat(asked[0]).isLessThan(pairs / 2);
    assertThat(asked[1]).isEqualTo(asked[0]);
  }
}
