package org.spanwire.result;

import java.util.Objects;
import org.apache.commons.math3.complex.Complex;

/**
 * What a feed sees.
 *
 * @param ohm input impedance R + jX in ohms; {@link Complex#INF} where no current flows
 * @param errorOhm estimate of the error of its magnitude in ohms
 */
public record InputImpedance(Complex ohm, double errorOhm) {

  /** Checks that there is a value. */
  public InputImpedance {
    Objects.requireNonNull(ohm, "ohm");
  }

  /** Estimated error over the magnitude; 0 where no current flows. */
  public double relativeError() {
    return ohm.isInfinite() ? 0 : errorOhm / ohm.abs();
  }
}
