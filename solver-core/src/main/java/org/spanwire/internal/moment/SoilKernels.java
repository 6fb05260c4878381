package org.spanwire.internal.moment;

import org.spanwire.internal.halfspace.ReflectedKernel;
import org.spanwire.internal.mesh.Mesh;
import org.spanwire.medium.Soil;

/** Reflected kernels over soil. */
public final class SoilKernels {

  /** The kernel for a mesh over soil at a frequency. */
  public ReflectedKernel kernel(Soil soil, double frequencyHz, Mesh mesh, double accuracy) {
    throw new UnsupportedOperationException("soil lands with the next change");
  }
}
