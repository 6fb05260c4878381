package org.spanwire.internal.halfspace;

/**
 * The distances for which kernels are wanted, in metres.
 *
 * @param rhoMax largest horizontal distance ρ, positive; every ρ from 0 on is covered
 * @param zetaMin smallest sum ζ of the heights of source and observer, positive
 * @param zetaMax largest sum of heights, not below the smallest; equal for wires at one height
 */
public record KernelRegion(double rhoMax, double zetaMin, double zetaMax) {

  /** Checks the ranges. */
  public KernelRegion {
    if (!(rhoMax > 0 && zetaMin > 0 && zetaMax >= zetaMin)
        || Double.isInfinite(rhoMax)
        || Double.isInfinite(zetaMax)) {
      throw new IllegalArgumentException(
          "region of kernels needs 0 < rhoMax and 0 < zetaMin <= zetaMax, all finite, got rhoMax "
              + rhoMax
              + " m, zetaMin "
              + zetaMin
              + " m, zetaMax "
              + zetaMax
              + " m");
    }
  }

  /** Whether every pair of distances of the other region lies in this one. */
  public boolean covers(KernelRegion other) {
    return rhoMax >= other.rhoMax && zetaMin <= other.zetaMin && zetaMax >= other.zetaMax;
  }
}
