package org.spanwire.internal.kernel;

/** Kernels between two points that are evaluated together at quadrature nodes. */
public interface NodeKernel {

  /** Number of kernels. */
  int channels();

  /**
   * Writes the kernels, each as real and imaginary part, into out.
   *
   * @param dx x of the observer less x of the source
   * @param dy the same for y
   * @param dz the same for z
   */
  void evaluate(double dx, double dy, double dz, double[] out);

  /**
   * Announces the nodes of one Gauss product, so that a kernel which comes in several forms keeps
   * to one of them there.
   *
   * @param leastDistance least distance in metres between the stretches that the nodes lie on
   */
  default void enter(double leastDistance) {}

  /**
   * Distance in metres of the kernel's singularities from nodes that a distance separates: less
   * than that distance for a kernel averaged around the wires.
   */
  default double clearance(double distance) {
    return distance;
  }
}
