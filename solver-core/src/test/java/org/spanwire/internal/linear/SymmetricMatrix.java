package org.spanwire.internal.linear;

import java.util.SplittableRandom;
import org.ejml.data.ZMatrixRMaj;

/** A random complex symmetric matrix with the strong diagonal of an impedance matrix. */
final class SymmetricMatrix {

  private SymmetricMatrix() {}

  static ZMatrixRMaj random(int size) {
    SplittableRandom random = new SplittableRandom(size);
    ZMatrixRMaj matrix = new ZMatrixRMaj(size, size);
    for (int i = 0; i < size; i++) {
      for (int j = i; j < size; j++) {
        double decay = 1.0 / (1 + Math.abs(i - j));
        double re = decay * (random.nextDouble() - 0.5);
        double im = i == j ? -2 : decay * (random.nextDouble() - 0.5);
        matrix.set(i, j, re, im);
        matrix.set(j, i, re, im);
      }
    }
    return matrix;
  }
}
