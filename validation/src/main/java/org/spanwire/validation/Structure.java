package org.spanwire.validation;

import org.spanwire.Antenna;

/**
 * An antenna at a frequency, as a shape with its parameters.
 *
 * @param shape what it looks like
 * @param parameters how large it is, of what, over what ground, at what frequency
 */
record Structure(Shape shape, Parameters parameters) {

  Antenna antenna() {
    return shape.antenna(parameters);
  }

  double frequencyHz() {
    return parameters.frequencyHz();
  }

  Structure with(String name, double number) {
    return new Structure(shape, parameters.with(name, number));
  }

  Structure without(String name) {
    return new Structure(shape, parameters.without(name));
  }

  /** The same structure without parameters that do not belong to it. */
  Structure bare() {
    return new Structure(shape, parameters.only(shape.parameterNames()));
  }
}
