package org.spanwire.internal.moment;

/**
 * Moments of the kernels between the pieces of a mesh at one frequency. Holds work space: one
 * instance for each thread.
 */
interface MomentSource {

  /**
   * Moments of exp(−jkR)/R between two pieces, row by row.
   *
   * @param re real parts, overwritten
   * @param im imaginary parts
   */
  void direct(int i, int j, double[] re, double[] im);

  /** Whether the ground reflects anything. */
  boolean reflects();

  /**
   * Moments of the reflected kernels u·G_A·u' (first) and G_φ (second) between two pieces.
   *
   * @param re real parts of both, overwritten
   * @param im imaginary parts
   */
  void reflected(int i, int j, double[][] re, double[][] im);
}
