package org.spanwire.medium;

import java.util.OptionalDouble;

/**
 * Bare round strands of one metal laid in concentric layers around one strand (7, 19, 37, 61 …),
 * and the solid round wire that stands for them.
 *
 * <p>Assumption: the strands touch each other with good contact, so that the current may choose its
 * strand, and the lay is long, so that no strand is longer than the wire. With k layers, N = 1 +
 * 3k(k + 1) strands of radius r fill a circle of radius (1 + 2k) r.
 *
 * <ul>
 *   <li>The equivalent radius is that of the round wire of equal capacitance, (1 + 2k) r (1 −
 *       1/(16k)): within 0.3 % of a solution of Laplace's equation around 6, 12 and 18 touching
 *       circles.
 *   <li>The equivalent metal has the conductivity that gives the resistance of N strands at direct
 *       current. Where the skin depth is far below r, its resistance is that of the enclosing solid
 *       wire times (1 + 2k)/√N = 1.13 … 1.15; the same solutions of Laplace's equation give 1.137,
 *       1.115 and 1.107 for 7, 19 and 37 strands, so the model is at most 4 % high there.
 * </ul>
 *
 * <p>Numbers of strands between those of full layers are taken by the same formulas with a broken k
 * (common practice, no source). Corroded or insulated strands are not covered: there the current
 * follows each strand into the wire and out again, and the loss may be several times larger.
 *
 * @param count number of strands, at least 7
 * @param strandRadius radius of one strand in metres, positive
 */
public record Stranding(int count, double strandRadius) {

  /** Checks the ranges. */
  public Stranding {
    if (count < 7) {
      throw new IllegalArgumentException(
          "strand count " + count + " must be at least 7; fewer strands form no round wire");
    }
    if (!(strandRadius > 0) || Double.isInfinite(strandRadius)) {
      throw new IllegalArgumentException(
          "strand radius " + strandRadius + " m must be positive and finite");
    }
  }

  private double layers() {
    return (Math.sqrt(12.0 * count - 3) - 3) / 6;
  }

  /** Radius in metres of the circle around all strands. */
  public double enclosingRadius() {
    return (1 + 2 * layers()) * strandRadius;
  }

  /** Radius in metres of the round wire of equal capacitance. */
  public double equivalentRadius() {
    return enclosingRadius() * (1 - 1 / (16 * layers()));
  }

  /** Resistance far above the skin effect's onset over that of the enclosing solid wire. */
  public double resistanceFactor() {
    return enclosingRadius() / (Math.sqrt(count) * strandRadius);
  }

  /**
   * The metal of the equivalent round wire, for strands of a metal: the wire has the resistance at
   * direct current and the mass of the strands.
   */
  public Material equivalent(Material strand) {
    double r = strandRadius / equivalentRadius();
    return new Material(
        strand.name() + ", " + count + " strands",
        strand.conductivity() * count * r * r,
        strand.relativePermeability(),
        strand.density().isEmpty()
            ? strand.density()
            : OptionalDouble.of(strand.density().getAsDouble() * count * r * r),
        strand.source() + "; " + count + " strands as an equivalent round wire");
  }
}
