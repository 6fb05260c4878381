package org.spanwire.validation;

import java.util.List;
import java.util.function.Function;
import org.apache.commons.math3.complex.Complex;

/**
 * The value that a quantity tends to as the wire gets thinner.
 *
 * <p>Classical formulas with a sinusoidal current are the limit of zero radius. What a real wire
 * adds to them is a power series in 1/ln(λ/a) (Hallén 1938), which is still some ten percent at a =
 * 1e-5 λ. The limit is the value at zero of the polynomial in 1/ln(λ/a) through the results at
 * several radii.
 */
final class ThinLimit {

  /** Name of the parameter that lists the radii in wavelengths. */
  static final String PARAMETER = "thinLimit";

  private ThinLimit() {}

  static Complex of(ValidationCase subject, Function<ValidationCase, Complex> measurement) {
    List<Double> radii = subject.parameters().numbers(PARAMETER);
    Complex limit = Complex.ZERO;
    for (double radius : radii) {
      ValidationCase thin =
          subject.about(at(subject.structure(), radius), at(subject.reference(), radius));
      limit = limit.add(measurement.apply(thin).multiply(weight(radius, radii)));
    }
    return limit;
  }

  private static Structure at(Structure structure, double radius) {
    return structure.without(PARAMETER).with("radius", radius);
  }

  /** Lagrange's weight at zero of the point that belongs to a radius. */
  private static double weight(double radius, List<Double> radii) {
    double x = thickness(radius);
    double product = 1;
    for (double other : radii) {
      if (other != radius) {
        product *= thickness(other) / (thickness(other) - x);
      }
    }
    return product;
  }

  private static double thickness(double radius) {
    return -1 / Math.log(radius);
  }
}
