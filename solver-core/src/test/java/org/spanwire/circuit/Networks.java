package org.spanwire.circuit;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.SplittableRandom;
import org.apache.commons.math3.complex.Complex;

/** Random networks and comparisons for tests. */
final class Networks {

  private Networks() {}

  static Complex complex(double re, double im) {
    return new Complex(re, im);
  }

  /** A passive n-port that is not reciprocal: any matrix, scaled below unit gain. */
  static NPort randomPassive(SplittableRandom random, int ports, double gain) {
    NPort any = NPort.ofScattering(randomMatrix(random, ports), 50);
    double scale = Math.sqrt(gain / any.largestGain());
    Complex[][] s = any.scattering();
    for (Complex[] row : s) {
      for (int j = 0; j < row.length; j++) {
        row[j] = row[j].multiply(scale);
      }
    }
    return NPort.ofScattering(s, 50);
  }

  static Complex[][] randomMatrix(SplittableRandom random, int size) {
    Complex[][] s = new Complex[size][size];
    for (Complex[] row : s) {
      for (int j = 0; j < size; j++) {
        row[j] = complex(random.nextDouble(-1, 1), random.nextDouble(-1, 1));
      }
    }
    return s;
  }

  static Complex[] randomReferences(SplittableRandom random, int ports) {
    Complex[] z = new Complex[ports];
    for (int i = 0; i < ports; i++) {
      z[i] = complex(random.nextDouble(5, 300), random.nextDouble(-200, 200));
    }
    return z;
  }

  static void assertClose(Complex[][] actual, Complex[][] expected, double tolerance) {
    assertThat(actual.length).isEqualTo(expected.length);
    for (int i = 0; i < actual.length; i++) {
      for (int j = 0; j < actual.length; j++) {
        assertClose(actual[i][j], expected[i][j], tolerance);
      }
    }
  }

  static void assertClose(Complex actual, Complex expected, double tolerance) {
    assertThat(actual.subtract(expected).abs())
        .as("%s against %s", actual, expected)
        .isLessThanOrEqualTo(tolerance);
  }
}
