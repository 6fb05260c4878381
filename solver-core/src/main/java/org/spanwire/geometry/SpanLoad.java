package org.spanwire.geometry;

import java.util.List;
import java.util.Objects;
import org.apache.commons.math3.geometry.euclidean.threed.Vector3D;

/**
 * What pulls at a wire between its supports: its own weight, wind, ice, and whatever hangs from it.
 *
 * @param perMetre force in newtons per metre of unstretched wire; weight points down
 * @param points forces at single places, in any order
 */
public record SpanLoad(Vector3D perMetre, List<PointLoad> points) {

  /**
   * A force at a place of the wire.
   *
   * @param at fraction of the unstretched length from the first support, above 0 and below 1
   * @param force newtons; weight points down
   */
  public record PointLoad(double at, Vector3D force) {
    /** Checks the range. */
    public PointLoad {
      Objects.requireNonNull(force, "force");
      if (!(at > 0 && at < 1)) {
        throw new IllegalArgumentException(
            "load at "
                + at
                + " of the wire's length; must lie between its ends, above 0 and below 1");
      }
      requireFinite(force);
    }
  }

  /** Checks and copies. */
  public SpanLoad {
    requireFinite(perMetre);
    points = List.copyOf(points);
  }

  /** Weight alone, in newtons per metre. */
  public static SpanLoad weight(double newtonsPerMetre) {
    return new SpanLoad(new Vector3D(0, 0, -newtonsPerMetre), List.of());
  }

  private static void requireFinite(Vector3D force) {
    if (force.isNaN() || force.isInfinite()) {
      throw new IllegalArgumentException("load " + force + " N must be finite");
    }
  }
}
