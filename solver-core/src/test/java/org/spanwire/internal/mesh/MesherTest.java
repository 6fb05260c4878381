package org.spanwire.internal.mesh;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.util.List;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;
import org.spanwire.geometry.GeometryException.Subject;
import org.spanwire.geometry.Point;
import org.spanwire.geometry.Position;
import org.spanwire.geometry.Wire;
import org.spanwire.medium.Conductor;
import org.spanwire.medium.Ground;

class MesherTest {

  /** One metre is one wavelength. */
  private static final double FREQUENCY = 299_792_458.0;

  private static final double A = 1e-4;
  private static final Conductor THIN = Conductor.perfect(A);
  private static final Ground FREE = Ground.freeSpace();

  private static Point p(double x, double y, double z) {
    return new Point(x, y, z);
  }

  private static Port feed(String wire, Position at, double gap) {
    return new Port(Subject.FEED, "feed", wire, at, gap);
  }

  private static Mesh mesh(int level, Ground ground, List<Wire> wires, Port... ports) {
    return Mesher.mesh(wires, List.of(ports), ground, FREQUENCY, MeshDensity.level(level));
  }

  /** Every path point and both gap edges end pieces, pieces follow each other without a hole. */
  private static void checkCover(Mesh mesh) {
    for (int i = 0; i < mesh.size(); i++) {
      Wire wire = mesh.wires().get(mesh.wire()[i]);
      Piece piece = mesh.pieces().get(i);
      boolean first = i == 0 || mesh.wire()[i - 1] != mesh.wire()[i];
      boolean last = i == mesh.size() - 1 || mesh.wire()[i + 1] != mesh.wire()[i];
      double end = mesh.distance()[i] + piece.length();
      assertThat(piece.length()).isPositive();
      if (first) {
        assertThat(mesh.distance()[i]).isZero();
      }
      double next = last ? wire.length() : mesh.distance()[i + 1];
      assertThat(end).isCloseTo(next, within(1e-12));
      assertThat(along(wire, mesh.distance()[i] + 0.5 * piece.length()))
          .satisfies(
              middle ->
                  assertThat(middle.distance(p(piece.x(0), piece.y(0), piece.z(0))))
                      .isLessThan(1e-12));
    }
  }

  private static Point along(Wire wire, double distance) {
    double left = distance;
    for (int i = 1; ; i++) {
      Stretch stretch = new Stretch(wire.path().get(i - 1), wire.path().get(i));
      if (left <= stretch.length() || i == wire.path().size() - 1) {
        return stretch.at(left / stretch.length());
      }
      left -= stretch.length();
    }
  }

  private static double sumOfGap(Mesh mesh) {
    double sum = 0;
    for (int i : mesh.gaps().get(0).pieces()) {
      sum += mesh.pieces().get(i).length();
    }
    return sum;
  }

  @ParameterizedTest
  @ValueSource(ints = {0, 1, 2, 3, 4, 5, 6})
  void piecesGrowGeometricallyFromEndsAndGap(int level) {
    MeshDensity density = MeshDensity.level(level);
    Mesh mesh =
        mesh(
            level,
            FREE,
            List.of(Wire.of("w", THIN, p(0, 0, 0), p(3, 0, 0))),
            feed("w", Position.distance(1), 4e-4));
    checkCover(mesh);
    assertThat(mesh.pieces().get(0).length()).isLessThanOrEqualTo(density.smallest() * A * 1.0001);
    for (int i = 1; i < mesh.size(); i++) {
      double ratio = mesh.pieces().get(i).length() / mesh.pieces().get(i - 1).length();
      assertThat(Math.max(ratio, 1 / ratio)).isLessThanOrEqualTo(density.growth() * 1.0001);
      assertThat(mesh.pieces().get(i).length()).isLessThanOrEqualTo(density.largest() * 1.0001);
    }
    assertThat(sumOfGap(mesh)).isCloseTo(4e-4, within(1e-15));
    assertThat(mesh.gaps().get(0).width()).isCloseTo(4e-4, within(1e-15));
  }

  @Test
  void orderFollowsElectricalLength() {
    Mesh mesh = mesh(2, FREE, List.of(Wire.of("w", THIN, p(0, 0, 0), p(3, 0, 0))));
    MeshDensity density = MeshDensity.level(2);
    int longest = 0;
    for (int i = 0; i < mesh.size(); i++) {
      double kh = 2 * Math.PI * mesh.pieces().get(i).length();
      assertThat(mesh.order()[i]).isEqualTo(density.orderFor(kh)).isGreaterThanOrEqualTo(2);
      longest = Math.max(longest, mesh.order()[i]);
    }
    assertThat(longest).isEqualTo(mesh.highestOrder()).isGreaterThan(mesh.lowestOrder());
  }

  @Test
  void levelsAreNested() {
    List<Wire> wires = List.of(Wire.of("w", THIN, p(0, 0, 0), p(0.5, 0, 0)));
    int before = 0;
    for (int level = 0; level <= MeshDensity.FINEST_LEVEL; level++) {
      Mesh mesh = mesh(level, FREE, wires, feed("w", Position.fraction(0.5), 4e-4));
      int unknowns = 0;
      for (int order : mesh.order()) {
        unknowns += order;
      }
      assertThat(unknowns).as("level %d", level).isGreaterThan(before);
      before = unknowns;
    }
  }

  @Test
  void gapMayStraddleABend() {
    Wire vee = Wire.of("w", THIN, p(0.3, 0, 0), p(0, 0, 0), p(0, 0.3, 0));
    Mesh mesh = mesh(1, FREE, List.of(vee), feed("w", Position.fraction(0.5), 6e-4));
    checkCover(mesh);
    assertThat(sumOfGap(mesh)).isCloseTo(6e-4, within(1e-15));
    double onFirst = 0;
    for (int i : mesh.gaps().get(0).pieces()) {
      if (mesh.distance()[i] < 0.3 - 1e-9) {
        onFirst += mesh.pieces().get(i).length();
      }
    }
    assertThat(onFirst).isCloseTo(3e-4, within(1e-12));
  }

  @ParameterizedTest
  @ValueSource(doubles = {0, 1})
  void gapMayStraddleTheStartOfALoop(double fraction) {
    Wire loop =
        Wire.of("w", THIN, p(0, 0, 0), p(0.25, 0, 0), p(0.25, 0.25, 0), p(0, 0.25, 0), p(0, 0, 0));
    Mesh mesh = mesh(1, FREE, List.of(loop), feed("w", Position.fraction(fraction), 6e-4));
    checkCover(mesh);
    assertThat(sumOfGap(mesh)).isCloseTo(6e-4, within(1e-15));
    assertThat(mesh.gaps().get(0).width()).isCloseTo(6e-4, within(1e-15));
    assertThat(mesh.startNode()[0]).isEqualTo(mesh.endNode()[mesh.size() - 1]);
  }

  @ParameterizedTest
  @ValueSource(doubles = {0, 1})
  void gapAtTheBaseOfAMonopoleIsHalf(double fraction) {
    Wire up =
        fraction == 0
            ? Wire.of("w", THIN, p(0, 0, 0), p(0, 0, 0.25))
            : Wire.of("w", THIN, p(0, 0, 0.25), p(0, 0, 0));
    Mesh mesh =
        mesh(1, Ground.perfect(), List.of(up), feed("w", Position.fraction(fraction), 6e-4));
    checkCover(mesh);
    assertThat(sumOfGap(mesh)).isCloseTo(3e-4, within(1e-15));
    assertThat(mesh.gaps().get(0).width()).isCloseTo(3e-4, within(1e-15));
    assertThat(mesh.gaps().get(0).nominal()).isEqualTo(6e-4);
  }

  @Test
  void defaultGapIsTwoDiameters() {
    Mesh mesh =
        mesh(
            1,
            FREE,
            List.of(Wire.of("w", THIN, p(0, 0, 0), p(0.5, 0, 0))),
            feed("w", Position.fraction(0.4), Double.NaN));
    assertThat(mesh.gaps().get(0).nominal()).isEqualTo(4 * A);
    assertThat(sumOfGap(mesh)).isCloseTo(4 * A, within(1e-15));
  }

  /** Opposite a feed at distance d pieces end, and those next to the place are no longer than d. */
  @Test
  void neighbourOppositeAFeedIsRefined() {
    double d = 0.01;
    Mesh mesh =
        mesh(
            1,
            FREE,
            List.of(
                Wire.of("fed", THIN, p(-0.24, 0, 0), p(0.24, 0, 0)),
                Wire.of("near", THIN, p(-0.3, d, 0), p(0.4, d, 0))),
            feed("fed", Position.fraction(0.5), 4e-4));
    checkCover(mesh);
    boolean ends = false;
    for (int i = 0; i < mesh.size(); i++) {
      if (mesh.wire()[i] == 1) {
        double start = mesh.distance()[i] - 0.3;
        double end = start + mesh.pieces().get(i).length();
        ends |= Math.abs(start) < 0.5 * d;
        if (end > -1e-9 && start < 1e-9) {
          assertThat(end - start).isLessThanOrEqualTo(1.001 * d);
        }
      }
    }
    assertThat(ends).isTrue();
  }

  /**
   * A feed near a straight path point must not leave a node without pieces or a stretch of none.
   */
  @ParameterizedTest
  @ValueSource(doubles = {0, 1e-6, 1e-3})
  void feedNearAStraightPathPoint(double sag) {
    Wire wire = Wire.of("w", THIN, p(-0.24, 0, 0), p(0, 0, sag), p(0.1, 0, sag), p(0.24, 0, 0));
    for (int level = 0; level <= MeshDensity.FINEST_LEVEL; level++) {
      double shortest = Math.min(1e-3, 0.5 * MeshDensity.level(level).smallest()) * A;
      Mesh mesh = mesh(level, FREE, List.of(wire), feed("w", Position.fraction(0.4), 4e-4));
      checkCover(mesh);
      boolean[] used = new boolean[mesh.nodes()];
      for (int i = 0; i < mesh.size(); i++) {
        used[mesh.startNode()[i]] = true;
        used[mesh.endNode()[i]] = true;
        assertThat(mesh.pieces().get(i).length()).isGreaterThan(shortest);
      }
      assertThat(used).containsOnly(true);
    }
  }

  @Test
  void junctionsAreFoundWherePointsCoincide() {
    Mesh mesh =
        mesh(
            0,
            FREE,
            List.of(
                Wire.of("span", THIN, p(0, 0, 0), p(0.2, 0, 0), p(0.5, 0, 0)),
                Wire.of("drop", THIN, p(0.2, 0, -0.3), p(0.2, 0.05 * A, 0))));
    int last = mesh.endNode()[mesh.size() - 1];
    long ends = 0;
    for (int i = 0; i < mesh.size(); i++) {
      ends += (mesh.startNode()[i] == last ? 1 : 0) + (mesh.endNode()[i] == last ? 1 : 0);
    }
    assertThat(ends).isEqualTo(3);
  }
}
