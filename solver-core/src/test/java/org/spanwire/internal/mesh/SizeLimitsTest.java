package org.spanwire.internal.mesh;

import static org.assertj.core.api.Assertions.assertThatThrownBy;

import java.util.List;
import org.junit.jupiter.api.Test;
import org.spanwire.geometry.Feed;
import org.spanwire.geometry.GeometryException;
import org.spanwire.geometry.Point;
import org.spanwire.geometry.Position;
import org.spanwire.geometry.Wire;
import org.spanwire.medium.Conductor;
import org.spanwire.medium.Ground;

/** Sizes beyond reason are refused before anything overflows or runs for ever. */
class SizeLimitsTest {

  private static void mesh(double radius, Point from, Point to, double gap, double frequencyHz) {
    Wire wire = Wire.of("w", Conductor.perfect(radius), from, to);
    Feed feed = Feed.of("f", "w", Position.fraction(0.4)).withGap(gap);
    Mesher.mesh(
        List.of(wire),
        List.of(Port.of(feed)),
        Ground.freeSpace(),
        frequencyHz,
        MeshDensity.level(0));
  }

  private static final Point ORIGIN = new Point(0, 0, 0);

  @Test
  void eachWithItsLimitAndRemedy() {
    assertThatThrownBy(() -> mesh(1e-3, ORIGIN, new Point(1e308, 0, 0), 4e-3, 7e6))
        .isInstanceOf(GeometryException.class)
        .hasMessageContaining("move the origin nearer");
    assertThatThrownBy(() -> mesh(1e-3, ORIGIN, new Point(1e6, 0, 0), 4e-3, 7e6))
        .isInstanceOf(GeometryException.class)
        .hasMessageContaining("limit 300");
    assertThatThrownBy(() -> mesh(1e-300, ORIGIN, new Point(10, 0, 0), 4e-3, 7e6))
        .isInstanceOf(GeometryException.class)
        .hasMessageContaining(" at 7.000 MHz, least 1e-09; use a thicker conductor or a higher");
    assertThatThrownBy(() -> mesh(1e-3, ORIGIN, new Point(10, 0, 0), 1e-300, 7e6))
        .isInstanceOf(GeometryException.class)
        .hasMessageContaining("widen it");
    assertThatThrownBy(() -> mesh(1e-3, ORIGIN, new Point(10, 0, 0), 4e-3, 1e-300))
        .isInstanceOf(GeometryException.class)
        .hasMessageContaining("ask for another");
  }

  @Test
  void aNetOfManyLongWiresIsRefusedBeforeItsMatrixIsMade() {
    List<Wire> wires =
        java.util.stream.IntStream.range(0, 40)
            .mapToObj(
                i ->
                    Wire.of(
                        "w" + i,
                        Conductor.perfect(1e-3),
                        new Point(0, i, 0),
                        new Point(1200, i, 0)))
            .toList();
    assertThatThrownBy(
            () ->
                Mesher.mesh(
                    wires,
                    List.of(Port.of(Feed.of("f", "w0", Position.fraction(0.4)))),
                    Ground.freeSpace(),
                    28e6,
                    MeshDensity.level(0)))
        .isInstanceOf(GeometryException.class)
        .hasMessageContaining("unknowns, limit 8000");
  }
}
