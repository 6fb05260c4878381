package org.spanwire.internal.kernel;

/** A kernel between two points, evaluated at quadrature nodes. */
public interface NodeKernel {

  /**
   * Writes the kernel's channels, each as real and imaginary part, into out.
   *
   * @param dx x of the observer less x of the source
   * @param dy the same for y
   * @param dz the same for z
   */
  void evaluate(double dx, double dy, double dz, double[] out);
}
