package org.spanwire.validation;

import org.apache.commons.math3.complex.Complex;

/**
 * How far a result may lie from the published value.
 *
 * @param limit largest deviation that passes
 * @param relative true if the deviation is a fraction of the published value's modulus, false if it
 *     is in the quantity's unit
 * @param reason why this limit and no other
 */
record Tolerance(double limit, boolean relative, String reason) {

  Tolerance {
    if (!(limit > 0 && limit < Double.POSITIVE_INFINITY)) {
      throw new IllegalArgumentException("tolerance " + limit + " must be positive and finite");
    }
    if (reason.isBlank()) {
      throw new IllegalArgumentException("a tolerance needs its reason");
    }
  }

  /** Distance between a result and the published value, in the measure of this tolerance. */
  double deviation(Complex got, Complex expected) {
    double distance = got.subtract(expected).abs();
    return relative ? distance / expected.abs() : distance;
  }

  /** True if a deviation passes; a deviation that is not a number never does. */
  boolean admits(double deviation) {
    return deviation <= limit;
  }
}
